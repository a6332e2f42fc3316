// A frame: members laid round any polygon, each with its own width, joined at the corners, with a
// rebate or groove for a panel.
#pragma once

#include "constructs/construct.h"
#include "constructs/curve.h"
#include "constructs/outline.h"
#include "constructs/ring_layout.h"

namespace splay::constructs {

enum class FrameCorner { mitre, butt, half_lap, tenon, loose_tenon };
enum class Lies { upright, flat };

struct FrameSide : model::Fields {  // a member that differs
  std::string name;
  model::Given<Length> width;
  EdgeArch arch{Length{0}};  // of its inside edge
  void fields(model::FieldVisitor& visit) override;
};

// A step along the inside edges, open to the back.
struct FrameRebate : model::Fields {
  model::Given<Length> width{Length{0}}, depth{Length{0}};
  void fields(model::FieldVisitor& visit) override;
};

enum class PanelFit { rebate, groove };
struct FramePanel : model::Fields {
  model::Given<std::string> stock;
  model::Given<PanelFit> fit{PanelFit::rebate};
  model::Given<Length> clearance{Length::inches(1.0 / 16)};
  model::Given<Length> into;
  model::Given<Length> set_in;
  void fields(model::FieldVisitor& visit) override;
  void check(model::Complaints& complaints) const override;
};

// What frames and framed doors have in common.
struct FrameChoice : model::Fields {
  model::Given<std::string> stock;
  model::Given<Length> width;
  model::Given<FrameCorner> corners{FrameCorner::mitre};
  model::Given<std::vector<std::string>> through;
  model::Tables<FrameSide> members;
  FrameRebate rebate;
  FramePanel panel;
  void fields(model::FieldVisitor& visit) override;
  void check_frame(const std::vector<std::string>& sides, model::Complaints& complaints) const;
};

// Where a frame is laid: the polygon in its own plane (x to the right, z up, y from its front face
// to the back) and that plane's place in the world.
struct FramePlace {
  Polygon polygon;
  Measured measured = Measured::outside;
  std::vector<std::string> sides;  // a name for each edge
  Rigid place;
  bool to_origin = false;  // the outside's low left corner to the plane's origin
  std::string word{};      // in front of the names of its parts: "left leaf "
};

// A panel behind an arched member is cut straight: its rebate or groove lies deeper by the rise.
// Lays down the parts, named after `owner` where more items than one make parts. Returns the
// members in the order of the polygon's edges and then the panel; empty after a finding of level
// stop ("no-opening", "unclear-corner", "no-corner-joint", "rebate-too-large", "no-panel",
// "no-arch").
std::vector<int> lay_frame(parts::Builder& builder, const FrameChoice& choice,
                           const FramePlace& place, const model::Item& owner);

class Frame : public Construct {
 public:
  void fields(model::FieldVisitor& visit) override;
  void check(model::Complaints& complaints) const override;
  void build(parts::Builder& builder) const override;

  FrameOutline outline;
  FrameChoice choice;
  PointField at;
  model::Given<Lies> lies{Lies::upright};
};

// The plane that an upright piece or one that lies with its face up is drawn in.
Rigid plane_place(Vec3 at, Lies lies);

}  // namespace splay::constructs
