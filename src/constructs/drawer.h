// A drawer in a rectangular or leaning opening: a rectangular box on runners, packing pieces that
// make leaning sides plumb for them, and a front that follows the opening.
#pragma once

#include "constructs/clear_opening.h"

namespace splay::constructs {

enum class RunnerKind { side, undermount, wooden };
struct Runner : model::Fields {
  model::Given<RunnerKind> kind{RunnerKind::side};
  model::Given<Length> at, height, length;
  model::Given<Length> each_side, play, below, above;
  void fields(model::FieldVisitor& visit) override;
};

enum class BoxCorner { butt, rabbet, tongue, dowel, box_joint, dovetail };
struct DrawerBox : model::Fields {
  model::Given<std::string> stock;
  model::Given<Length> height;
  model::Given<BoxCorner> corners{BoxCorner::rabbet};
  model::Given<std::string> bottom;
  model::Given<Length> into{Length::inches(0.25)}, bottom_up{Length::inches(0.25)};
  model::Given<Length> clearance{Length::inches(1.0 / 32)};
  model::Given<Length> lap{Length{0}};
  // The ends of front and back stand between the sides' own, in sight at the sides.
  bool ends_in_sight() const {
    return corners.value == BoxCorner::box_joint || corners.value == BoxCorner::dovetail;
  }
  void check(model::Complaints& complaints) const override;
  void fields(model::FieldVisitor& visit) override;
};

enum class FrontFit { inset, over };
struct DrawerFront : model::Fields {
  model::Given<std::string> stock;
  model::Given<FrontFit> fit{FrontFit::inset};
  model::Given<Length> gap{Length::inches(1.0 / 16)}, overlap;
  void fields(model::FieldVisitor& visit) override;
  void check(model::Complaints& complaints) const override;
};

struct Packing : model::Fields {
  model::Given<std::string> stock;
  model::Given<Length> least;
  void fields(model::FieldVisitor& visit) override;
};

class Drawer : public Construct, public OpeningChoice {
 public:
  void fields(model::FieldVisitor& visit) override;
  void check(model::Complaints& complaints) const override;
  void build(parts::Builder& builder) const override;

  model::Given<Length> depth;
  model::Given<std::vector<std::string>> beside;
  Runner runner;
  DrawerBox box;
  DrawerFront front;
  Packing packing;
};

// The corners of a four-sided opening with level foot and top, anticlockwise from the lowest left;
// empty after a finding ("opening-shape") for any other.
Polygon level_opening(parts::Builder& builder, const model::Item& owner, const Polygon& shape,
                      SourceSpan span);

}  // namespace splay::constructs
