#include "constructs/fasteners.h"

#include <algorithm>
#include <cmath>

#include "joinery/bed.h"
#include "joinery/draft.h"
#include "joinery/joint.h"
#include "joinery/stick.h"
#include "model/movement.h"
#include "parts/audit.h"

namespace splay::constructs {

namespace {

// Sizes from project articles on fastening table tops and common practice; measure the hardware in
// hand. Millimetres.
constexpr double plate_diameter = 15.9;  // figure-8: 5/8 in
constexpr double plate_thickness = 3.2;  // and its recess as deep
constexpr double plate_inset = 7.6;      // its centre from the rail's face: just under 5/16 in
constexpr double clip_width = 19, clip_slot = 3.2, clip_deep = 9.5, clip_down = 12.7;
constexpr double block_width = 38, block_slot = 12.7, block_deep = 9.5, block_down = 9.5;

// Square to the rail, level, towards the face.
Vec3 direction(const parts::Builder& builder, HeldFace face, const joinery::Stick& rail,
               const HeldTop& top) {
  switch (face) {
    case HeldFace::front:
      return {0, -1, 0};
    case HeldFace::back:
      return {0, 1, 0};
    case HeldFace::left:
      return {-1, 0, 0};
    case HeldFace::right:
      return {1, 0, 0};
    default:
      break;
  }
  const parts::Part& panel = builder.part(top.panel);
  const Vec3 middle = panel.place.point(panel.body.centroid()) - rail.centre;
  const Vec3 beside = cross(rail.along, {0, 0, 1});
  return norm(beside) < 1e-9 ? beside : unit(beside) * (dot(beside, middle) < 0 ? -1.0 : 1.0);
}

// How far the top moves to either side over a point between the shop and the room's extremes, held
// in its middle.
double moves_at(const parts::Builder& builder, int panel, Vec3 at) {
  const parts::Part& top = builder.part(panel);
  const model::Stock* stock = builder.project().stocks.find(top.stock);
  if (stock == nullptr || *stock->kind != model::StockKind::board) return 0;
  const auto [low, high] = top.body.extent({0, 1, 0});
  const double off = std::abs(top.place.local_point(at).y - (low + high) / 2);
  return model::movement(off, stock->timber.across_coefficient(), 0,
                         model::most_points(builder.project().room));
}

// A kind's place in the rail: how wide along it, and for those that slide the slot.
struct Pocket {
  double wide = 0, slot = 0, deep = 0, down = 0;
};

Pocket pocket_of(FastenerType type) {
  if (type == FastenerType::figure_eight) return {plate_diameter};
  if (type == FastenerType::clip) return {clip_width, clip_slot, clip_deep, clip_down};
  return {block_width, block_slot, block_deep, block_down};
}

class Fastening {
 public:
  Fastening(parts::Builder& builder, const TopFastener& choice, const HeldTop& top, int rail)
      : builder_(builder),
        choice_(choice),
        top_(top),
        rail_(rail),
        stick_(joinery::stick(builder, rail)),
        pocket_(pocket_of(choice.type.value)),
        joint_(joinery::joint_name(builder, top.panel, rail)) {}

  bool run() {
    if (stick_.body.empty()) return false;
    const Vec3 way = direction(builder_, choice_.face.value, stick_, top_);
    face_ = joinery::hull_towards(stick_, way);
    if (dot(face_.n, way) < 0.7 || std::abs(stick_.along.z) > 0.5)
      return refused(*choice_.to + " has no such face along a level length.",
                     "Choose another `face`, or another part.");
    const parts::Mate lies_on{rail_, top_.panel, {{0, 0, 1}, top_.under}};
    if (parts::measure(lies_on, stick_.body, joinery::stick(builder_, top_.panel).body).area == 0)
      return refused(
          "Nothing of " + builder_.part(top_.panel).name + " lies on " + *choice_.to + ".",
          "Bring its upper edge under the top, and inside of breadboard ends.");
    in_ = unit(Vec3{-face_.n.x, -face_.n.y, 0});
    const auto [from, to] = stick_.body.extent(stick_.along);
    const int n = *choice_.count;
    const double margin = choice_.margin.given ? choice_.margin->mm : (to - from) / (2 * n);
    const double pitch = n > 1 ? (to - from - 2 * margin) / (n - 1) : to - from;
    if (pitch < 2 * pocket_.wide || margin < pocket_.wide / 2)
      return refused(std::to_string(n) + " fasteners have no room along " + *choice_.to + ", " +
                         joinery::figure(builder_, to - from) + " long.",
                     "Fewer of them, or another margin.");
    for (int i = 0; i < n; ++i) {
      const Vec3 at = place(n > 1 ? from + margin + pitch * i : (from + to) / 2);
      builder_.add_fitting(choice_.type.value == FastenerType::figure_eight ? let_in(at)
                                                                            : slot_for(at));
    }
    return true;
  }

 private:
  bool refused(std::string text, std::string remedy) {
    refuse(builder_, {"no-fastener", top_.name, std::move(text), std::move(remedy), choice_.span});
    return false;
  }

  // On the face, at the top's underside.
  Vec3 place(double run) const {
    Vec3 at = stick_.along * (run - dot(stick_.along, stick_.centre)) + stick_.centre;
    at.z = top_.under;
    return at + in_ * (face_.distance(at) / -dot(face_.n, in_));
  }

  parts::Fitting let_in(Vec3 at) {
    const Vec3 centre = at + in_ * plate_inset - Vec3{0, 0, plate_thickness};
    const std::vector<Plane> facets = joinery::cylinder(centre, {0, 0, 1}, plate_diameter / 2);
    Region recess = facets;
    recess.push_back({{0, 0, -1}, -centre.z});
    builder_.cut_region(rail_, parts::OperationKind::hole, recess, "recess for a figure-8", joint_,
                        facets);
    return {"figure-8 fastener", "5/8 in", centre, {0, 0, 1}, plate_diameter, plate_thickness,
            {rail_, top_.panel}, joint_};
  }

  parts::Fitting slot_for(Vec3 at) {
    const bool clip = choice_.type.value == FastenerType::clip;
    // Where the rail lies across the top's grain, the top moves along it.
    const bool across = std::abs(dot(stick_.along, builder_.part(top_.panel).place.ey)) > 0.7;
    const double half = pocket_.wide / 2 + (across ? moves_at(builder_, top_.panel, at) : 0);
    const double run = dot(stick_.along, at), upper = top_.under - pocket_.down;
    const Region mortise = {{stick_.along, run + half},
                            {-stick_.along, -(run - half)},
                            {{0, 0, 1}, upper},
                            {{0, 0, -1}, -(upper - pocket_.slot)},
                            {in_, dot(in_, at) + pocket_.deep}};
    builder_.cut_region(rail_, parts::OperationKind::mortise, mortise,
                        clip ? "slot for a clip" : "slot for a block", joint_);
    return {clip ? "table clip" : "slotted block",
            clip ? "3/4 in wide" : "1 1/2 in wide, 3/8 in tongue",
            at - Vec3{0, 0, pocket_.down + pocket_.slot / 2},
            in_,
            pocket_.slot,
            pocket_.deep,
            {rail_, top_.panel},
            joint_};
  }

  parts::Builder& builder_;
  const TopFastener& choice_;
  const HeldTop& top_;
  int rail_;
  joinery::Stick stick_;
  Pocket pocket_;
  std::string joint_;
  Plane face_;
  Vec3 in_;  // into the rail, level
};

}  // namespace

void TopFastener::fields(model::FieldVisitor& visit) {
  model::choose<FastenerType, 3>(visit, model::may("type", "what holds the top to the rail"), type,
                                 {"figure-8", "clip", "slotted block"});
  visit.text(model::need("to", "name of the part under the top, built before it"), to);
  model::choose<HeldFace, 5>(
      visit,
      model::may("face",
                 "the part's face that they stand at; inside: towards the middle of the top"),
      face, {"inside", "front", "back", "left", "right"});
  visit.count(model::may("count", "how many"), count, model::Range::between(1, 20));
  visit.length(model::may("margin", "from the part's ends to the first and last",
                          "half of the distance between two"),
               margin, model::Range::allowance());
}

std::vector<int> add_fasteners(parts::Builder& builder, const model::Tables<TopFastener>& choices,
                               const HeldTop& top) {
  std::vector<int> held;
  for (std::size_t i = 0; i < choices.size(); ++i) {
    const TopFastener& choice = choices[i];
    const int rail = find_part(builder, *choice.to, top.name, choice.to.span);
    if (rail < 0 || !Fastening(builder, choice, top, rail).run()) continue;
    if (std::find(held.begin(), held.end(), rail) == held.end()) held.push_back(rail);
  }
  for (const int rail : held)
    builder.add_joint({joinery::joint_name(builder, top.panel, rail),
                       "fasteners",
                       {top.panel, rail},
                       0,
                       {{rail, top.panel, {{0, 0, 1}, top.under}}}});
  return held;
}

}  // namespace splay::constructs
