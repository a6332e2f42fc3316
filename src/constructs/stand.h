// A stand: leaning legs held by braces that are half-lapped into them.
#pragma once

#include "constructs/construct.h"
#include "joinery/half_lap.h"

namespace splay::constructs {

enum class StandLevel { foot, top };
enum class LegTaper { inside, outside, both };
enum class LegWidths { level, square };
enum class LegFaces { front_and_back, left_and_right };

// A leg's broad faces lie in one of the stand's planes (of legs on a ring: in the plumb plane
// through the middle of the plan) and its width runs in that plane; its thickness is square to it.
struct StandLeg : model::Fields {
  model::Given<std::string> stock;
  model::Given<Length> top_width, foot_width, thickness;
  model::Given<LegTaper> taper{LegTaper::inside};
  model::Given<LegWidths> widths{LegWidths::level};
  model::Given<LegFaces> faces{LegFaces::front_and_back};
  void fields(model::FieldVisitor& visit) override;
};

enum class BraceRun { front_and_back, left_and_right, front, back, left, right };
enum class BraceCross { none, in_elevation, in_plan };
enum class BraceLies { on_edge, flat };
enum class BraceWalls { along_brace, floor };

struct StandBrace : model::Fields {
  std::string name;
  model::Given<std::string> stock;
  model::Given<Length> width, thickness, at, other_at, inset, proud, within;
  model::Given<BraceRun> runs{BraceRun::front_and_back};
  model::Given<BraceCross> crossed{BraceCross::none};
  model::Given<BraceLies> lies{BraceLies::on_edge};
  model::Given<BraceWalls> walls{BraceWalls::along_brace};
  model::Given<double> share{0.5};
  model::Given<std::vector<std::string>> between, crosses;
  void fields(model::FieldVisitor& visit) override;
  void check(model::Complaints& complaints) const override;
  double second_height() const { return other_at.given ? other_at->mm : at->mm; }

 private:
  void check_between(model::Complaints& complaints) const;
};

// Four legs lean one way (their angles seen from the front, or from the side) or both ways. Their
// outside is a rectangle at every height, given at the foot or the top; with `under` the top
// follows the outside of an item that stands on it, and the legs run on at that item's lean. Three,
// five or more legs stand on a ring, the first to the front, and lean towards its middle.
class Stand : public Construct {
 public:
  void fields(model::FieldVisitor& visit) override;
  void check(model::Complaints& complaints) const override;
  void build(parts::Builder& builder) const override;

  // "left front leg", ...; on a ring "leg 1" onwards, anticlockwise from above.
  std::vector<std::string> leg_names() const;
  bool on_ring() const { return *count != 4; }

  model::Given<int> count{4};
  model::Given<Length> height, width, depth, radius;
  model::Given<std::string> under;
  model::Given<StandLevel> stated_at{StandLevel::foot};
  model::Given<std::vector<Angle>> lean_in, lean_in_depth;
  PointField at;
  StandLeg legs;
  model::Tables<StandBrace> braces;

 private:
  void check_plan(model::Complaints& complaints) const;
  void check_braces(model::Complaints& complaints) const;
};

}  // namespace splay::constructs
