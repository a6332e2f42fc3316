// Where the corners of a face are measured from: rows of dimensions along an edge.
#pragma once

#include <span>
#include <vector>

#include "drafting/dimension.h"
#include "drafting/room.h"
#include "sheets/part_view_set.h"

namespace splay::sheets {

struct FaceRow {
  drafting::Row row;
  std::string from;  // where a running row starts and what it lies on: "from the foot, inside"
};

// Figures along `axis` (x, y or z of the part frame) for the corners of a side: beside the view's
// edge that lies towards `out` on paper, or beside the opposite one when its corners say more, or
// beside both when each has its own. A row of more than two stations is running; it starts at the
// low end along x, at the front edge along y and at the show face along z.
// `outside`: all rows stand on the side of `out`, whichever edge they are for.
std::vector<FaceRow> face_rows(const PartSheet& sheet, const SideView& face, Vec3 axis, Vec2 out,
                               bool outside = false);

// More figures than this along one end of a board (dovetails, fingers) fan out of a view: the view
// gives the width there, and a detail of the end the figures.
inline constexpr std::size_t most_across_end = 12;
struct CrowdedEnd {
  parts::Side end = parts::Side::x_low, face = parts::Side::z_high;
  std::vector<Vec3> corners;  // of the face nearer to this end than to the other, part frame
};
std::vector<CrowdedEnd> crowded_ends(const PartSheet& sheet);

// Values in their order, those nearer than `step` to the one before left out.
std::vector<double> ascending(std::vector<double> values, double step);

// A line or an arrow of the group runs over one of the texts, or close beside it.
bool runs_over(const ink::Group& group, std::span<const drafting::Quad> texts);

// A row drawn where none of its figures lies over anything in `room`: at `at` or as much further
// out as it takes. The room learns of it, `texts` of its figures.
struct ClearRow {
  drafting::DrawnRow row;
  double at = 0;
};
ClearRow draw_clear(const drafting::Kit& kit, const drafting::Placement& placement,
                    const drafting::Row& row, double at, drafting::Room& room,
                    std::vector<drafting::Quad>& texts);

// Lengths of both faces as the edge view shows them, and the overall when it is neither. `face` has
// its figures in the face view already.
std::vector<drafting::Row> edge_rows(const PartSheet& sheet, const ViewSet& set);

}  // namespace splay::sheets
