// A piece of a part cut open and drawn large: the end of a board with its bevel, a housing with its
// tilt and depths.
#pragma once

#include <string>
#include <vector>

#include "drafting/dimension.h"
#include "drafting/scale.h"
#include "sheets/part_view_facts.h"

namespace splay::sheets {

struct DetailAngle {
  Vec3 at, from, to;  // part frame, in the plane of the section
  double radians = 0;
  std::string name;
};

struct DetailRow {
  drafting::RowKind kind = drafting::RowKind::overall;
  std::vector<Vec3> stations;
  Vec3 along, out;
  std::string note;
  double further = 0;  // mm on paper, beyond the usual place
};

struct Detail {
  View view;
  double cut_at = 0;  // of the section plane, along view.toward
  Box of;             // what must be seen of the part; the rest is broken off
  double air = 8;     // mm on paper that is shown around it
  bool cut = true;    // a section, else the view as it is seen
  bool with_hidden = true;
  std::string title;
  std::vector<std::string> below, above;  // names of the lower and the upper face
  std::string caption;
  std::vector<DetailAngle> angles;
  std::vector<DetailRow> rows;
};

struct DetailStyle {
  double most_up = 26;      // what must be seen takes no more of the paper's height, mm
  double least_width = 52;  // of the detail with its caption below
  bool beside = false;      // the caption stands beside the drawing instead
};

// At the largest standard scale that the style allows.
drafting::Picture draw_detail(const PartSheet& sheet, const Detail& detail, DetailStyle style);

}  // namespace splay::sheets
