// The leaves of a door: slabs, and frames with their panels.
#include <algorithm>
#include <cmath>

#include "base/tolerance.h"
#include "constructs/curve.h"
#include "constructs/door_build.h"
#include "constructs/plate.h"
#include "joinery/joint.h"

namespace splay::constructs {

bool DoorBuild::add_slab(DoorLeaf& leaf) {
  const bool up = spec_.slab.grain.value == SlabGrain::up;
  const std::string name = leaf.word.empty() ? "door" : leaf.word + "leaf";
  leaf.parts = {add_plate(
      builder_, {part_name(builder_, spec_, name), *spec_.slab.stock, leaf.shape, y_[0], y_[1],
                 up ? Vec2{0, 1} : Vec2{1, 0}, parts::ShowFace::high_z, opening_.place})};
  return true;
}

bool DoorBuild::add_frame(DoorLeaf& leaf) {
  const std::vector<std::string> sides = edge_words(leaf.shape);
  for (std::size_t i = 0; i < spec_.frame.members.size(); ++i) {
    const FrameSide& member = spec_.frame.members[i];
    if (std::find(sides.begin(), sides.end(), member.name) != sides.end()) continue;
    std::string list;
    for (const std::string& side : sides) list += (list.empty() ? "" : ", ") + side;
    return stop("unknown-side", spec_.name + " has no member \"" + member.name + "\".",
                "Its members are " + list + ".", member.span);
  }
  const Rigid face{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}, {0, y_[0], 0}};
  leaf.parts = lay_frame(builder_, spec_.frame,
                         {leaf.shape, Measured::outside, sides, opening_.place * face, false,
                          leaf.word.empty() ? "" : leaf.word + "leaf "},
                         spec_);
  if (leaf.parts.empty()) return false;
  if (spec_.frame.panel.given) state_panel_room(leaf);
  return true;
}

// From the floors of the grooves or rebates to the panel, as the parts are.
void DoorBuild::state_panel_room(const DoorLeaf& leaf) {
  const int panel = leaf.parts.back();
  const parts::Part& board = builder_.part(panel);
  const Solid body = board.body.transformed(board.place);
  double least = 1e300;
  for (const int part : leaf.parts)
    for (const parts::Operation& each : builder_.part(part).operations) {
      using parts::OperationKind;
      const bool holds = each.kind == OperationKind::groove || each.kind == OperationKind::rabbet;
      if (part == panel || !holds) continue;
      const Plane floor = builder_.part(part).place.plane(each.trench.floor);
      least = std::min(least, -body.extent(-floor.n)[1] - floor.d);
    }
  if (least > 1e200) return;
  builder_.measure(panel, "room for the panel at every edge", least);
  const model::Stock* stock = builder_.project().stocks.find(board.stock);
  const double wide = board.body.bounds().size().y;
  // One hundredth of its width, an eighth of an inch to the foot: common practice, no source.
  if (stock != nullptr && stock->kind.value == model::StockKind::board && 2 * least < wide / 100)
    builder_.report({Level::caution,
                     "panel-may-swell",
                     {board.name},
                     "The panel of " + words(leaf) + " is solid wood, " + figure(wide) +
                         " across the grain, and has " + figure(2 * least) + " to swell in.",
                     "About a hundredth of its width, " + figure(wide / 100) +
                         ", over both edges: a larger panel.clearance.",
                     spec_.frame.panel.span});
}

bool DoorBuild::bevel_closing_edge(const DoorLeaf& leaf) {
  if (!spec_.closing_bevel.given || spec_.closing_bevel->rad <= 0) return true;
  const double c = std::cos(spec_.closing_bevel->rad), s = std::sin(spec_.closing_bevel->rad);
  for (std::size_t i = 0; i < leaf.shape.size(); ++i) {
    const Vec2 out = edge_out(leaf.shape, i);
    if ((leaf.left ? out.x : -out.x) < 0.3) continue;
    const Vec2 at = leaf.shape[i];
    const Plane bevel = plane({out.x * c, s, out.y * c}, {at.x, y_[0], at.y});
    for (const int part : leaf.parts) {
      const Plane local = builder_.part(part).place.local_plane(bevel);
      if (builder_.part(part).body.extent(local.n)[1] < local.d + tolerance::on_plane) continue;
      if (std::abs(local.n.x) >= std::abs(local.n.y))
        builder_.cut_end(part, bevel, "bevel of the closing edge", "");
      else
        builder_.cut_edge(part, bevel, "bevel of the closing edge", "");
    }
  }
  return true;
}

bool DoorBuild::round_corners(const DoorLeaf& leaf) {
  if (!spec_.corner_radius.given) return true;
  const auto corners = constructs::round_corners(leaf.shape, spec_.corner_radius->mm);
  if (corners.empty())
    return stop("radius-too-large",
                "Corners of " + figure(spec_.corner_radius->mm) + " radius have no room on " +
                    words(leaf) + ", or one of its corners turns inwards.",
                "A smaller radius.", spec_.corner_radius.span);
  cut_roundings(builder_, leaf.parts, corners, opening_.place);
  return true;
}

bool DoorBuild::add_leaf(DoorLeaf& leaf) {
  const bool added = spec_.slab.given ? add_slab(leaf) : add_frame(leaf);
  return added && bevel_closing_edge(leaf) && round_corners(leaf);
}

}  // namespace splay::constructs
