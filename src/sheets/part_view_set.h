// The views of one part: the face that is worked on, an edge, an end, and the other face when it
// is worked on too, in the projection of the binder.
#pragma once

#include <optional>
#include <vector>

#include "drafting/view.h"
#include "sheets/part_view_facts.h"

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
  std::optional<SideView> other;  // the opposite face, turned over beyond the edge view
  Vec2 to_edge, to_end;           // on paper: where edge and end view stand from the face view
};

// The side of the box that is seen against a direction of the part frame.
parts::Side side_seen(Vec3 toward);

// The face with the trenches, or the show face.
parts::Side worked_face(const PartSheet& sheet);

// Binders in inches are drawn in third angle, those in millimetres in first (as start_page marks
// them): the same views stand on opposite sides.
ViewSet view_set(const PartSheet& sheet, bool lying);

}  // namespace splay::sheets
