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
  double cut_at = 0;   // of the section plane, along view.toward
  Box of;              // what must be seen of the part; the rest is broken off
  double air = 8;      // mm on paper that is shown around it
  double across = 46;  // mm on paper that what must be seen may be wide
  bool cut = true;     // a section, else the view as it is seen
  bool with_hidden = true;
  std::string title;
  std::vector<std::string> below, above;  // names of the lower and the upper face
  std::string caption;
  std::vector<DetailAngle> angles;
  std::vector<DetailRow> rows;
};

struct DetailDrawing {
  drafting::Picture picture;
  drafting::Scale scale;
};

// The drawing alone, at the largest standard scale at which what must be seen takes no more than
// `most_up` mm of the paper's height.
DetailDrawing draw_detail(const PartSheet& sheet, const Detail& detail, double most_up);

struct DetailStyle {
  double most_up = 26;
  double least_width = 52;  // with the caption below the drawing
  bool beside = false;      // the caption stands beside the drawing instead
};

// The drawing with its title above and its caption.
drafting::Picture worded(const drafting::Kit& kit, const Detail& detail,
                         const DetailDrawing& drawing, const DetailStyle& style);

}  // namespace splay::sheets
