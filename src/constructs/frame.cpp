#include "constructs/frame.h"

#include <algorithm>
#include <cmath>

#include "constructs/flat_member.h"
#include "constructs/frame_build.h"
#include "joinery/half_lap.h"
#include "joinery/joint.h"
#include "joinery/loose_tenon.h"
#include "joinery/tenon.h"

namespace splay::constructs {

namespace {

void to_origin(Polygon& polygon) {
  Vec2 low = polygon.front();
  for (const Vec2 p : polygon) low = {std::min(low.x, p.x), std::min(low.y, p.y)};
  for (Vec2& p : polygon) p = p - low;
}

}  // namespace

bool FrameBuild::stop(std::string code, std::string text, std::string remedy) const {
  const SourceSpan span = choice_.span.line > 0 ? choice_.span : owner_.span;
  refuse(builder_, {std::move(code), owner_.name, std::move(text), std::move(remedy), span});
  return false;
}

bool FrameBuild::lay_out() {
  std::vector<double> widths, outwards;
  for (const std::string& side : place_.sides) {
    const FrameSide* member = choice_.members.find(side);
    const bool own = member != nullptr && member->width.given;
    const double width = own ? member->width->mm : choice_.width->mm;
    widths.push_back(width);
    outwards.push_back(place_.measured == Measured::outside  ? 0
                       : place_.measured == Measured::inside ? -width
                                                             : choice_.rebate.width->mm - width);
  }
  std::optional<Polygon> outer = offset_edges(place_.polygon, outwards);
  std::optional<Ring> ring;
  if (outer) {
    if (place_.to_origin) to_origin(*outer);
    ring = lay_ring(*outer, widths);
  }
  if (!ring)
    return stop("no-opening", "The members of " + owner_.name + " leave no opening.",
                "Make the outline larger or the members narrower.");
  ring_ = std::move(*ring);
  return check_sizes();
}

bool FrameBuild::check_sizes() const {
  const FrameRebate& rebate = choice_.rebate;
  if (rebate.given && rebate.depth->mm > thick_ - 1)
    return stop("rebate-too-large",
                "A rebate " + joinery::figure(builder_, rebate.depth->mm) + " deep leaves " +
                    joinery::figure(builder_, std::max(0.0, thick_ - rebate.depth->mm)) +
                    " of the members of " + owner_.name + " in front of it.",
                "Make it shallower or the members thicker.");
  constexpr double skin = 1.5;  // mm: thinner wood between a rebate and a lap breaks away
  const double over_lap = thick_ / 2 - rebate.depth->mm;
  if (rebate.given && choice_.corners.value == FrameCorner::half_lap && over_lap < skin &&
      std::abs(over_lap) > 1e-6)
    return stop("rebate-too-large",
                "The rebate of " + owner_.name + ", " +
                    joinery::figure(builder_, rebate.depth->mm) + " deep, " +
                    (over_lap < 0 ? "would cut into the half laps of the corners."
                                  : "would leave a skin of " + joinery::figure(builder_, over_lap) +
                                        " on the half laps of the corners."),
                "Half the members' thickness or less, or another joint for the corners.");
  for (std::size_t i = 0; i < count(); ++i) {
    const RingMember& m = ring_.members[i];
    if (into() > 0 && into() + rise(i) > m.outside.d + m.inside.d - 1)
      return stop("rebate-too-large",
                  "The rebate or groove of " + owner_.name + ", " +
                      joinery::figure(builder_, into() + rise(i)) + ", is as wide as a member.",
                  "Make it smaller or the members wider.");
  }
  return true;
}

bool FrameBuild::lay_corners() {
  std::vector<std::string> through = *choice_.through;
  if (!choice_.through.given) through = {"left", "right"};
  std::string fault;
  const bool mitred = choice_.corners.value == FrameCorner::mitre;
  corners_ = resolve_corners(place_.sides, mitred ? CornerKind::mitre : CornerKind::butt, through,
                             nullptr, fault);
  return fault.empty() ||
         stop("unclear-corner", fault, "Name in `through` one of its two members.");
}

// As far as the neighbours' outside lines and a little further. Longer overhangs would hide from a
// joint which end of a short member is meant.
std::array<double, 2> FrameBuild::reach(std::size_t side) const {
  const RingMember& m = ring_.members[side];
  if (choice_.corners.value == FrameCorner::mitre) return {m.from, m.to};
  constexpr double room = 5;  // mm
  double low = 1e300, high = -1e300;
  for (const std::size_t other : {before(side), (side + 1) % count()}) {
    const RingMember& neighbour = ring_.members[other];
    for (const Vec2 start : {m.outer_1, m.inner_1}) {
      const auto at = meet(start, m.direction, neighbour.outer_1, neighbour.direction);
      if (!at) continue;
      const double along = dot(m.direction, *at - m.outer_1);
      low = std::min(low, along);
      high = std::max(high, along);
    }
  }
  return {low - room, high + room};
}

void FrameBuild::add_member(std::size_t side) {
  const auto [from, to] = reach(side);
  parts::Blank blank = flat_member(ring_.members[side], from, to, thick_, thick_, "face");
  blank.name = part_name(builder_, owner_, place_.word + place_.sides[side] + " member");
  blank.stock = *choice_.stock;
  blank.place = place_.place * blank.place;
  parts_.push_back(builder_.add(std::move(blank)));
}

// "" or why the corner can't be joined so.
std::string FrameBuild::cut_joint(int host, int guest, std::size_t guest_side) const {
  if (choice_.corners.value == FrameCorner::half_lap) {
    joinery::HalfLapKind lap;
    lap.form.value = joinery::LapForm::corner;
    return lap.make(builder_, host, guest);
  }
  if (choice_.corners.value == FrameCorner::loose_tenon) {
    // In front of the rebate: the tenon stays whole where the panel comes.
    joinery::LooseTenonKind loose;
    const double front = choice_.rebate.given ? thick_ - choice_.rebate.depth->mm : thick_;
    loose.thickness = model::Given<Length>(Length{front / 3});
    loose.thickness.given = true;
    // No wider than the panel's rebate or groove leaves it: a mortise would open into that.
    if (into() > 0) {
      const RingMember& m = ring_.members[guest_side];
      const double deep = std::max(into() + rise(guest_side), Length::inches(0.25).mm);
      const double left = m.outside.d + m.inside.d - 2 * deep;
      loose.width = model::Given<Length>(Length{std::min(left, 6 * loose.thickness->mm)});
      loose.width.given = true;
    }
    return loose.make(builder_, host, guest);
  }
  joinery::TenonKind tenon;
  // Shoulders as wide as the rebate or groove: no tenon stands in the panel's way.
  if (into() > 0) {
    const double deep = into() + rise(guest_side);
    tenon.shoulder = model::Given<Length>(Length{std::max(deep, Length::inches(0.25).mm)});
    tenon.shoulder.given = true;
  }
  return tenon.make(builder_, host, guest);
}

bool FrameBuild::join_corner(std::size_t corner) {
  const RingCorner& choice = corners_[corner];
  const double angle = ring_.members[before(corner)].corner_angle;
  const int a = parts_[before(corner)], b = parts_[corner];
  if (choice.kind == CornerKind::mitre) {
    joinery::mitre(builder_, {a, b, world(mitre_line(ring_, corner)), angle});
    return true;
  }
  const int host = choice.before_through ? a : b, guest = choice.before_through ? b : a;
  const std::size_t through = choice.before_through ? before(corner) : corner;
  const std::size_t stopped = choice.before_through ? corner : before(corner);
  if (choice_.corners.value != FrameCorner::half_lap)
    builder_.cut_end(host, world(ring_.members[stopped].outside),
                     "end past " + builder_.part(guest).name, "");
  if (choice_.corners.value == FrameCorner::butt) {
    joinery::butt(builder_, {host, guest, world(ring_.members[through].inside), angle});
    return true;
  }
  const std::string fault = cut_joint(host, guest, stopped);
  return fault.empty() ||
         stop("no-corner-joint", fault, "Choose another joint for the corners, or wider members.");
}

void FrameBuild::add_loop(const std::string& what, const Polygon& polygon, double y) {
  parts::CheckLoop loop{what + " of " + (place_.word + owner_.name), {}};
  for (const Vec2 p : polygon) loop.corners.push_back(place_.place.point(lift(p, y)));
  builder_.add_loop(std::move(loop));
  for (std::size_t i = 0; i < count(); ++i)
    builder_.measure(parts_[i], what + " edge", norm(polygon[(i + 1) % count()] - polygon[i]));
}

void FrameBuild::add_measures() {
  add_loop("outside", ring_.outer, 0);
  add_loop("sight", ring_.inner, 0);
  if (choice_.rebate.given) {
    std::vector<double> grow;
    for (std::size_t i = 0; i < count(); ++i) grow.push_back(-choice_.rebate.width->mm - rise(i));
    if (const auto shape = offset_edges(ring_.inner, grow)) add_loop("rebate", *shape, thick_);
  }
  Vec2 low = ring_.outer.front(), high = low;
  for (const Vec2 p : ring_.outer) {
    low = {std::min(low.x, p.x), std::min(low.y, p.y)};
    high = {std::max(high.x, p.x), std::max(high.y, p.y)};
  }
  const auto at = [&](double x, double z) { return place_.place.point({x, 0, z}); };
  const std::string name = place_.word + owner_.name;
  builder_.add_length(
      {name + " width", at(low.x, low.y), at(high.x, low.y), name + " width", true});
  builder_.add_length(
      {name + " height", at(low.x, low.y), at(low.x, high.y), name + " height", true});
}

std::vector<int> FrameBuild::run() {
  if (!lay_out() || !lay_corners()) return {};
  for (std::size_t i = 0; i < count(); ++i) add_member(i);
  for (std::size_t i = 0; i < count(); ++i)
    if (!join_corner(i)) return {};
  const bool in_rebate = choice_.panel.given && choice_.panel.fit.value == PanelFit::rebate;
  if (choice_.rebate.given && !in_rebate) cut_rebates();
  if (choice_.panel.given && !add_panel()) return {};
  if (!cut_arches()) return {};
  add_measures();
  return parts_;
}

std::vector<int> lay_frame(parts::Builder& builder, const FrameChoice& choice,
                           const FramePlace& place, const model::Item& owner) {
  return FrameBuild(builder, choice, place, owner).run();
}

Rigid plane_place(Vec3 at, Lies lies) {
  if (lies == Lies::upright) return {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}, at};
  return {{1, 0, 0}, {0, 0, -1}, {0, 1, 0}, at};
}

void Frame::build(parts::Builder& builder) const {
  lay_frame(builder, choice,
            {outline.polygon(), outline.measured.value, outline.edge_names(),
             plane_place(point_of(at), lies.value), true},
            *this);
}

}  // namespace splay::constructs
