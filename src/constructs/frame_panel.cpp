// What a frame holds: rebates, grooves, the panel, arches in its edges.
#include <algorithm>
#include <cmath>

#include "constructs/frame_build.h"
#include "constructs/plate.h"
#include "joinery/joint.h"

namespace splay::constructs {

double FrameBuild::into() const {
  const double rebate = choice_.rebate.given ? choice_.rebate.width->mm : 0;
  const FramePanel& panel = choice_.panel;
  if (!panel.given || panel.fit.value == PanelFit::rebate) return rebate;
  return std::max(rebate, panel.into.given ? panel.into->mm : Length::inches(0.375).mm);
}

double FrameBuild::rise(std::size_t side) const {
  const FrameSide* member = choice_.members.find(place_.sides[side]);
  return member != nullptr && member->arch.given ? member->arch.rise->mm : 0;
}

bool FrameBuild::cut_arches() {
  for (std::size_t i = 0; i < count(); ++i) {
    if (rise(i) <= 0) continue;
    const RingMember& m = ring_.members[i];
    const auto at = [&](Vec2 p) { return place_.place.point(lift(p)); };
    const std::string fault =
        cut_arch(builder_, parts_[i], choice_.members.find(place_.sides[i])->arch,
                 {at(m.inner_1), at(m.inner_2), place_.place.direction(lift_direction(m.out)),
                  m.outside.d + m.inside.d, "inside edge"});
    if (!fault.empty())
      return stop("no-arch", fault, "A smaller rise, a wider member, or less that stays straight.");
  }
  return true;
}

// Where the trench of a side ends short of a joint: a mitre bounds it by itself; elsewhere it ends
// where the neighbour's begins.
std::vector<Plane> FrameBuild::stops(std::size_t side, double into) const {
  std::vector<Plane> result;
  const bool lapped = choice_.corners.value == FrameCorner::half_lap;
  const auto stop_at = [&](std::size_t corner, bool side_is_before, std::size_t neighbour) {
    if (corners_[corner].kind == CornerKind::mitre) return;
    if (!lapped && corners_[corner].before_through != side_is_before) return;
    Line2 floor = ring_.members[neighbour].inside;
    floor.d -= into + rise(neighbour);
    result.push_back(world(floor));
  };
  stop_at(side, false, before(side));
  stop_at((side + 1) % count(), true, (side + 1) % count());
  return result;
}

void FrameBuild::cut_rebates() {
  const FrameRebate& rebate = choice_.rebate;
  for (std::size_t i = 0; i < count(); ++i) {
    parts::Trench trench;
    Line2 floor = ring_.members[i].inside;
    floor.d -= rebate.width->mm + rise(i);
    trench.floor = world(floor);
    trench.walls = {depth_plane(thick_ - rebate.depth->mm, 1)};
    trench.stops = stops(i, rebate.width->mm);
    trench.open = joinery::nearest_side(builder_.part(parts_[i]), world(ring_.members[i].inside).n);
    trench.shallow = trench.deep = rebate.width->mm + rise(i);
    Region removed = {trench.floor.flipped(), trench.walls[0].flipped()};
    for (const Plane& each : trench.stops) removed.push_back(each.flipped());
    builder_.cut_trench(parts_[i], parts::OperationKind::rabbet, removed, trench, "rebate", "");
  }
}

void FrameBuild::seat_panel(std::size_t side, int panel, double front, double back) {
  const bool groove = choice_.panel.fit.value == PanelFit::groove;
  Line2 floor = ring_.members[side].inside;
  const double deep =
      !groove ? choice_.rebate.width->mm
              : (choice_.panel.into.given ? choice_.panel.into->mm : Length::inches(0.375).mm);
  floor.d -= deep + rise(side);
  joinery::Seat seat;
  seat.host = parts_[side];
  seat.guest = panel;
  seat.floor = world(floor);
  seat.seat = depth_plane(front, 1);
  seat.groove = groove;
  seat.other_wall = depth_plane(back, -1);
  seat.stops = stops(side, deep);
  seat.depth = deep + rise(side);
  joinery::seat(builder_, seat);
}

bool FrameBuild::add_panel() {
  const FramePanel& panel = choice_.panel;
  const bool groove = panel.fit.value == PanelFit::groove;
  const double t = stock_thickness(builder_, *panel.stock);
  const double deep = groove ? (panel.into.given ? panel.into->mm : Length::inches(0.375).mm)
                             : choice_.rebate.width->mm;
  const double front = !groove              ? thick_ - choice_.rebate.depth->mm
                       : panel.set_in.given ? panel.set_in->mm
                                            : (thick_ - t) / 2;
  std::vector<double> grow;
  for (std::size_t i = 0; i < count(); ++i) grow.push_back(panel.clearance->mm - deep - rise(i));
  const std::optional<Polygon> shape = offset_edges(ring_.inner, grow);
  if (!shape || panel.clearance->mm >= deep || (groove && (front < 1 || front + t > thick_ - 1)))
    return stop("no-panel",
                "The panel of " + owner_.name + " can't be held: " +
                    (panel.clearance->mm >= deep ? "its clearance is all of the room at its edges."
                                                 : "it is too thick for a groove in the members."),
                "Change its clearance, its stock or the depth it goes in.");
  const model::Stock* stock = builder_.project().stocks.find(*panel.stock);
  const bool either = stock != nullptr && stock->two_good_faces.value;
  Plate plate{part_name(builder_, owner_, place_.word + "panel"),
              *panel.stock,
              *shape,
              front,
              front + t,
              {0, 1},
              either ? parts::ShowFace::either : parts::ShowFace::high_z,
              place_.place};
  const int part = add_plate(builder_, plate);
  for (std::size_t i = 0; i < count(); ++i) seat_panel(i, part, front, front + t);
  parts_.push_back(part);
  if (!groove && t > choice_.rebate.depth->mm + 1e-6)
    builder_.report({Level::note,
                     "panel-stands-out",
                     {builder_.part(part).name},
                     "The panel stands " + joinery::figure(builder_, t - choice_.rebate.depth->mm) +
                         " out of the back of " + owner_.name + ".",
                     "A deeper rebate, if it shouldn't.",
                     panel.span});
  return true;
}

}  // namespace splay::constructs
