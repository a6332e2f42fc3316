// The views of one part: the face that is worked on, an edge, an end, and the other face and edge
// when they are worked on too, in the projection of the binder.
#pragma once

#include <optional>
#include <vector>

#include "drafting/view.h"
#include "sheets/part_view_shape.h"

namespace splay::sheets {

struct SideView {
  parts::Side side = parts::Side::z_high;  // which side is looked at
  View view;
  std::vector<ViewLine> lines;
  ink::Rect box;  // view plane
};

struct ViewSet {
  bool lying = true;  // the length runs across the paper, else up it
  SideView face, edge, end;
  std::optional<SideView> other;     // the opposite face, turned over beyond the edge view
  std::optional<SideView> far_edge;  // the opposite edge, on the other side of the face view
  Vec2 to_edge, to_end;              // on paper: where edge and end view stand from the face view
};

// The face and the edge that most is worked into; else the show face and the front edge.
parts::Side worked_face(const PartSheet& sheet);
parts::Side worked_edge(const PartSheet& sheet);

// Binders in inches are drawn in third angle, those in millimetres in first (as start_page marks
// them): the same views stand on opposite sides.
ViewSet view_set(const PartSheet& sheet, bool lying);

}  // namespace splay::sheets
