// Which details a part needs.
#pragma once

#include "sheets/part_view_detail.h"
#include "sheets/part_view_set.h"

namespace splay::sheets {

// Bevelled ends as they lie on the saw; housings, grooves and rabbets with their open side up;
// bevelled edges; mitred ends that the views at `scale` show too small; the whole end where the
// views show it too small.
std::vector<Detail> wanted_details(const PartSheet& sheet, drafting::Scale scale);

// Cuts that no detail shows, a line each: squares are not listed.
std::vector<std::string> plain_cut_lines(const PartSheet& sheet, drafting::Scale scale);

// The fittings that touch the part, a line for those alike: what is drilled for them, and where.
std::vector<std::string> fitting_lines(const PartSheet& sheet);

// Fittings that lie on the part, with nothing drilled or let in for them.
struct LaidFitting {
  parts::Side side = parts::Side::z_high;
  Vec3 at;              // part frame
  double diameter = 0;  // mm, 0: not known
};
std::vector<LaidFitting> laid_fittings(const PartSheet& sheet);

// The tenons at the ends: where they stand across the part and how long they are.
std::vector<Detail> tenon_details(const PartSheet& sheet);

// Ends with more corners than the views give figures for: dovetails, fingers.
std::vector<Detail> end_details(const PartSheet& sheet);

// Housings, grooves, rabbets and laps of all sides; those of one shape share a detail.
std::vector<Detail> trench_details(const PartSheet& sheet);

}  // namespace splay::sheets
