// A top: solid or sheet, of any convex outline, with overhangs, bevelled edges, rounded corners,
// breadboard ends and the fasteners that hold it.
#pragma once

#include <string>
#include <vector>

#include "constructs/construct.h"
#include "constructs/fasteners.h"
#include "constructs/outline.h"

namespace splay::constructs {

// Past the outline that is stated, which is then that of what the top rests on.
struct Overhang : model::Fields {
  model::Given<Length> all, front, back, left, right;
  void fields(model::FieldVisitor& visit) override;
};

enum class BevelAt { underside, top };
struct EdgeBevel : model::Fields {
  model::Given<Angle> angle;
  model::Given<Length> height;
  model::Given<BevelAt> at{BevelAt::underside};
  model::Given<std::vector<std::string>> sides;
  void fields(model::FieldVisitor& visit) override;
};

// A board across the grain at an end: a tongue of the top in its groove, pinned in the middle so
// that the top can move, in slots elsewhere.
struct Breadboard : model::Fields {
  model::Given<std::string> stock;
  model::Given<Length> width;
  model::Given<Length> tongue_thickness, tongue_length{Length::inches(1)};
  model::Given<Length> bottom_gap{Length::inches(1.0 / 16)};
  model::Given<Length> stopped, movement, pin{Length::inches(0.25)};
  model::Given<int> pins{3};
  model::Given<std::vector<std::string>> ends;
  void fields(model::FieldVisitor& visit) override;
  void check(model::Complaints& complaints) const override;
};

enum class TopGrain { across, deep };

class Top : public Construct {
 public:
  void fields(model::FieldVisitor& visit) override;
  void check(model::Complaints& complaints) const override;
  void build(parts::Builder& builder) const override;

  PlanOutline outline;
  model::Given<Length> diameter;
  Overhang overhang;
  model::Given<std::string> stock;
  PointField at;
  model::Given<TopGrain> grain{TopGrain::across};
  model::Given<Length> corner_radius;
  EdgeBevel bevel;
  Breadboard breadboard;
  model::Tables<TopFastener> fasteners;
};

}  // namespace splay::constructs
