// A door, or a pair: a slab or a frame with its panel that fills or covers an opening, hung on
// hinges, and tried in the model whether it opens.
#pragma once

#include "constructs/clear_opening.h"
#include "constructs/frame.h"

namespace splay::constructs {

enum class DoorFit { inset, over };
enum class HungOn { left, right };
enum class HingeKind { butt, cup, pivot };
enum class SlabGrain { up, across };

// An amount for every edge of the opening, by the way the edge looks.
struct EdgeAmounts : model::Fields {
  // `when_left_out`: what holds of `all` when it isn't the usual amount.
  explicit EdgeAmounts(Length usual, std::string_view when_left_out = {})
      : all(usual), when_left_out_(when_left_out) {}
  model::Given<Length> all, left, right, top, bottom;
  void fields(model::FieldVisitor& visit) override;
  // mm; `out` is the edge's outward direction as the front is seen.
  double for_edge(Vec2 out) const { return given_for(out).value.mm; }
  const model::Given<Length>& given_for(Vec2 out) const;

 private:
  std::string_view when_left_out_;
};

struct DoorSlab : model::Fields {
  model::Given<std::string> stock;
  model::Given<SlabGrain> grain{SlabGrain::up};
  void fields(model::FieldVisitor& visit) override;
};

// A door's frame takes its outline from the opening.
struct DoorFrame : FrameChoice {};

struct DoorHinges : model::Fields {
  model::Given<HingeKind> kind{HingeKind::butt};
  model::Given<int> count;
  model::Given<Length> from_ends;
  model::Given<std::vector<Length>> at;
  model::Given<Length> length, leaf, let_in, barrel;  // butt; barrel: pivot pins too
  model::Given<Length> cup, cup_depth, tab, plate;    // cup
  model::Given<Length> pin;                           // pivot
  model::Given<Length> line_out, line_in_front;       // of the line that the door turns about
  model::Given<bool> may_lean{false};
  void fields(model::FieldVisitor& visit) override;
  void check(model::Complaints& complaints) const override;
};

class Door : public Construct, public OpeningChoice {
 public:
  void fields(model::FieldVisitor& visit) override;
  void check(model::Complaints& complaints) const override;
  void build(parts::Builder& builder) const override;

  model::Given<DoorFit> fit{DoorFit::inset};
  model::Given<Length> set_back{Length{0}};
  EdgeAmounts gap{Length::inches(1.0 / 16), "1/16 in, or more for swelling and accuracy"},
      overlap{Length{0}};
  model::Given<int> leaves{1};
  model::Given<Length> meeting_gap{Length::inches(1.0 / 8)};
  model::Given<HungOn> hung{HungOn::left};
  DoorSlab slab;
  DoorFrame frame;
  model::Given<Length> corner_radius;
  model::Given<Angle> closing_bevel;
  DoorHinges hinges;
  model::Given<Angle> opens{Angle::degrees(90)};
};

}  // namespace splay::constructs
