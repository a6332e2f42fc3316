// The outline of a case, frame or ring, as an author states it: a closed polygon in a plane.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "geometry/polygon.h"
#include "model/field.h"

namespace splay::constructs {

enum class Measured { outside, inside, rebate };
enum class Resting { on_a_side, on_a_corner };

// Three ways to say it: corners; sides with one size of a regular polygon; or bottom, top, height
// and leans of a four-sided outline, any that fix it (all four must agree).
struct Outline : model::Fields {
  model::Given<Length> bottom, top, height;
  model::Given<std::vector<Angle>> lean_in;
  model::Given<std::vector<Vec2>> corners;
  model::Given<int> sides{4};
  model::Given<Length> side, across_flats, across_corners;
  model::Given<Resting> rests{Resting::on_a_side};
  model::Given<Measured> measured{Measured::outside};
  model::Given<std::vector<std::string>> names;

  void fields(model::FieldVisitor& visit) override;
  void check(model::Complaints& complaints) const override;

  // The polygon as stated (outside or inside), anticlockwise as the front is seen, its lowest left
  // corner first for four-sided outlines and regular polygons; regular ones and four-sided ones
  // have their bounding box at the origin. Empty when check() complains.
  Polygon polygon() const;
  // A name for each edge: bottom, right, top, left for four-sided outlines, the author's names, or
  // "side 1" onwards.
  std::vector<std::string> edge_names() const;

 protected:
  bool seen_from_above = false;  // front, right, back, left; widths front and back, depth
  bool has_rebate = false;       // may be measured in the rebate; inside is the sight size

 private:
  std::string four_words() const;
  bool four_sided() const;
  bool regular() const;
};

// The same seen from above: the first side to the front.
struct PlanOutline : Outline {
  PlanOutline() { seen_from_above = true; }
};

// The same of a frame, whose sizes can be those of its rebate.
struct FrameOutline : Outline {
  FrameOutline() { has_rebate = true; }
};

}  // namespace splay::constructs
