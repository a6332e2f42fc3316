// Where the corners of a face are measured from: rows of dimensions along an edge.
#pragma once

#include <vector>

#include "drafting/dimension.h"
#include "sheets/part_view_set.h"

namespace splay::sheets {

struct FaceRow {
  drafting::Row row;
  std::string from;  // where a running row starts and what it lies on: "from the foot, inside"
};

// Figures along `axis` (x or y of the part frame) for the corners of a face: beside the view's edge
// that lies towards `out` on paper, or beside the opposite one when its corners say more, or beside
// both when each has its own. A row of more than two stations is running; it starts at the low end
// along x and at the front edge along y.
std::vector<FaceRow> face_rows(const PartSheet& sheet, const SideView& face, Vec3 axis, Vec2 out);

// Lengths of both faces as the edge view shows them, and the overall when it is neither. `face` has
// its figures in the face view already.
std::vector<drafting::Row> edge_rows(const PartSheet& sheet, const ViewSet& set);

}  // namespace splay::sheets
