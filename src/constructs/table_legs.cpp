#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/tolerance.h"
#include "constructs/orientation.h"
#include "constructs/table_build.h"

namespace splay::constructs {

namespace {

// Distances from the stated line, outwards, at the foot and at the head.
struct Offsets {
  double outer_foot = 0, outer_head = 0, inner_foot = 0, inner_head = 0;
};
Offsets offsets(TableLegTaper taper, double foot, double head) {
  switch (taper) {
    case TableLegTaper::inside:
      return {0, 0, -foot, -head};
    case TableLegTaper::outside:
      return {foot, head, 0, 0};
    default:
      return {foot / 2, head / 2, -foot / 2, -head / 2};
  }
}

// The leg's faces: their outward normals, and the directions that sizes are measured in.
struct Faces {
  Vec3 front, side;
  Vec3 front_measure, side_measure;
};

Vec3 towards(Vec3 v, Vec3 way) { return dot(v, way) < 0 ? -v : v; }

Faces lay_faces(const TableLeg& leg, const PlacedLeg& place, Vec3 spread) {
  const Vec3 d = place.along;
  const Vec3 front = towards(unit(cross(d, place.side)), place.front);
  const Vec3 side = towards(unit(cross(d, place.front)), place.side);
  if (leg.section.value == LegSection::trued) return {front, side, place.front, place.side};
  Vec3 first = front;
  if (leg.roll.value == LegRoll::side) {
    const Vec3 other = towards(unit(cross(side, d)), place.front);
    return {other, side, other, side};
  }
  if (leg.roll.value == LegRoll::line_of_lean && norm(spread) > 1e-9) {
    const Vec3 level = unit(spread);
    first = unit(level - d * dot(level, d));
  }
  const Vec3 second = cross(first, d);
  const double way = dot(second, place.side);
  const Vec3 other = towards(second, std::abs(way) > 1e-9 ? place.side : -place.front);
  return {first, other, first, other};
}

}  // namespace

TableBuild::TableBuild(const Table& spec, parts::Builder& builder)
    : spec_(spec), builder_(builder) {
  middle_ = point_of(spec.at);
  if (spec.top.given)
    top_thickness_ = spec.top.thickness.given ? spec.top.thickness->mm
                                              : stock_thickness(builder, *spec.top.stock);
  head_ = middle_.z + spec.height->mm - top_thickness_;
}

void Table::build(parts::Builder& builder) const { TableBuild(*this, builder).run(); }

void TableBuild::stop(std::string code, std::string text, std::string remedy,
                      SourceSpan span) const {
  refuse(builder_, {std::move(code), spec_.name, std::move(text), std::move(remedy), span});
}

void TableBuild::run() {
  if (head_ - middle_.z < 1) {
    stop("no-height", "The top of " + spec_.name + " is as thick as it is high.",
         "More height or a thinner top.", spec_.height.span);
    return;
  }
  for (std::size_t i = 0; i < count(); ++i)
    if (!add_leg(i)) return;
  if (spec_.apron.given) add_apron();
  for (std::size_t i = 0; i < spec_.stretchers.size(); ++i) add_stretcher(spec_.stretchers[i]);
  if (spec_.top.given) add_top();
  add_measures();
}

// Level: how far the foot stands out for each mm of height.
Vec3 TableBuild::spread(const PlacedLeg& leg) const {
  double side = 0, front = 0;
  if (spec_.splay.given) {
    side = std::tan(spec_.splay->front().rad);
    front = std::tan(spec_.splay->back().rad);
  } else {
    const double size = std::tan(spec_.lean->rad), turn = spec_.direction->rad;
    // Counted from the line of the front for four legs, from straight out for others.
    side = size * (count() == 4 ? std::cos(turn) : std::sin(turn));
    front = size * (count() == 4 ? std::sin(turn) : std::cos(turn));
    if (count() == 4 && !spec_.direction.given) side = front = size * std::sqrt(0.5);
  }
  return leg.side * side + leg.front * front;
}

// Planes of the leg's sides with the head of the stated line at `head`.
std::vector<MemberSide> TableBuild::leg_sides(const PlacedLeg& place, Vec3 head) const {
  const TableLeg& leg = spec_.leg;
  const double width = leg.width->mm, depth = leg.depth.given ? leg.depth->mm : width;
  const double foot_width = leg.foot_width.given ? leg.foot_width->mm : width;
  const double foot_depth = leg.foot_depth.given ? leg.foot_depth->mm : depth * foot_width / width;
  const Faces faces = lay_faces(leg, place, spread(place));
  const Vec3 foot = head - place.along * ((head_ - middle_.z) / place.along.z);
  const Vec3 bend = head - place.along * leg.straight->mm;
  std::vector<MemberSide> sides;
  const auto add = [&](Vec3 measure, Vec3 run, Vec3 out, double at_foot, double at_head,
                       const std::string& name) {
    sides.push_back(
        {side_plane(foot + measure * at_foot, bend + measure * at_head, run, out), name});
    if (leg.straight->mm > 0 && at_foot != at_head)
      sides.push_back(
          {side_plane(bend + measure * at_head, head + measure * at_head, run, out), name});
  };
  // A face holds the length and a line square to it; of a trued leg, a level line of the plan.
  const bool trued = leg.section.value == LegSection::trued;
  const Vec3 front_run = trued ? place.side : faces.side;
  const Vec3 side_run = trued ? place.front : faces.front;
  const Offsets f = offsets(leg.taper.value, foot_depth, depth);
  // On a ring a leg has no inner side along the ring: both taper alike.
  const bool ring = count() != 4;
  const Offsets s = offsets(ring ? TableLegTaper::all : leg.taper.value, foot_width, width);
  add(faces.front_measure, front_run, faces.front, f.outer_foot, f.outer_head, "outer face");
  add(faces.front_measure, front_run, -faces.front, f.inner_foot, f.inner_head, "inner face");
  add(faces.side_measure, side_run, faces.side, s.outer_foot, s.outer_head,
      ring ? "right side" : "outer side");
  add(faces.side_measure, side_run, -faces.side, s.inner_foot, s.inner_head,
      ring ? "left side" : "inner side");
  return sides;
}

// What moves a leg to its place: the outside of four legs onto the rectangle, the middle of others
// onto the ring, at the stated level.
Vec3 TableBuild::shift_to_plan(const PlacedLeg& leg, const std::vector<MemberSide>& sides) const {
  const double z = spec_.stated_at.value == LegLevel::top ? head_ : middle_.z;
  Region region = {{{0, 0, 1}, head_}, {{0, 0, -1}, -middle_.z}};
  for (const MemberSide& side : sides) region.push_back(side.plane);
  const Solid body = Solid::convex(region);
  double front = -1e300, side = -1e300;
  Vec3 mean;
  double points = 0;
  for (const Vec3& v : body.vertices()) {
    if (std::abs(v.z - z) > tolerance::weld) continue;
    front = std::max(front, dot(v, leg.front));
    side = std::max(side, dot(v, leg.side));
    mean = mean + v;
    ++points;
  }
  const Vec3 level_middle{middle_.x, middle_.y, 0};
  if (count() == 4) {
    const double to_front = dot(level_middle, leg.front) + spec_.depth->mm / 2 - front;
    const double to_side = dot(level_middle, leg.side) + spec_.width->mm / 2 - side;
    return leg.front * to_front + leg.side * to_side;
  }
  const Vec3 wanted = level_middle + leg.front * spec_.radius->mm;
  return {wanted.x - mean.x / points, wanted.y - mean.y / points, 0};
}

// The name of leg i and its own front and side in plan.
PlacedLeg TableBuild::face_leg(std::size_t i) const {
  PlacedLeg leg;
  if (count() == 4) {
    const bool right = i == 1 || i == 2, back = i >= 2;
    leg.name = std::string(right ? "right " : "left ") + (back ? "back" : "front") + " leg";
    leg.front = {0, back ? 1.0 : -1.0, 0};
    leg.side = {right ? 1.0 : -1.0, 0, 0};
  } else {
    const double step = 2 * std::numbers::pi / static_cast<double>(count());
    const double turn = -std::numbers::pi / 2 + step * static_cast<double>(i);
    leg.name = "leg " + std::to_string(i + 1);
    leg.front = {std::cos(turn), std::sin(turn), 0};
    leg.side = {-std::sin(turn), std::cos(turn), 0};
  }
  leg.along = unit(Vec3{0, 0, 1} - spread(leg));
  return leg;
}

Member TableBuild::leg_member(const PlacedLeg& leg, Vec3 head) const {
  const Faces faces = lay_faces(spec_.leg, leg, spread(leg));
  Member member;
  member.name = part_name(builder_, spec_, leg.name);
  member.stock = *spec_.leg.stock;
  member.from = head - leg.along * ((head_ - middle_.z) / leg.along.z);
  member.to = head;
  member.axis = leg.along;
  member.facing = faces.front;
  member.sides = leg_sides(leg, head);
  const std::string inner = count() == 4 ? "inner side" : "left side";
  const std::string outer = count() == 4 ? "outer side" : "right side";
  const bool side_high = dot(cross(member.facing, member.axis), faces.side) > 0;
  member.side_names = {
      "foot",       "head",      side_high ? inner : outer, side_high ? outer : inner,
      "inner face", "outer face"};
  member.from_end = {Plane{{0, 0, -1}, -middle_.z}, "foot", 0};
  member.to_end = {Plane{{0, 0, 1}, head_}, "head", 0};
  return member;
}

bool TableBuild::add_leg(std::size_t i) {
  PlacedLeg leg = face_leg(i);
  const Vec3 head{middle_.x, middle_.y, head_};
  const Member member = leg_member(leg, head + shift_to_plan(leg, leg_sides(leg, head)));
  leg.part = add_member(builder_, member);
  if (leg.part < 0) {
    stop("nothing-left", "The legs of " + spec_.name + " have no wood left.",
         "Check their sizes and their lean.", spec_.leg.span);
    return false;
  }
  builder_.measure(leg.part, "along the leg, foot to head", norm(member.to - member.from));
  state_lean(builder_, leg.part, member.from, member.to);
  state_end_lines(builder_, leg.part, *member.from_end.plane, "foot");
  leg.stick = joinery::stick(builder_, leg.part);
  legs_.push_back(std::move(leg));
  return true;
}

std::vector<Vec3> TableBuild::corners(const PlacedLeg& leg, double z) const {
  std::vector<Vec3> points;
  for (const Vec3& v : leg.stick.body.vertices())
    if (std::abs(v.z - z) < 10 * tolerance::weld) points.push_back(v);
  return points;
}

void TableBuild::add_measures() {
  Box over_all;
  for (const bool top : {false, true}) {
    const double z = top ? head_ : middle_.z;
    const std::string where = top ? "top" : "foot";
    parts::CheckLoop loop{where + " of " + spec_.name + ", outer corners of the legs", {}};
    Box box;
    for (const PlacedLeg& leg : legs_) {
      const std::vector<Vec3> points = corners(leg, z);
      const Vec3 way = leg.front + leg.side * (count() == 4 ? 1 : 1e-3);
      loop.corners.push_back(*std::max_element(
          points.begin(), points.end(), [&](Vec3 a, Vec3 b) { return dot(a, way) < dot(b, way); }));
      for (const Vec3 p : points) box.add(p);
    }
    builder_.add_loop(std::move(loop));
    builder_.add_length({"width over the legs, " + where,
                         box.low,
                         {box.high.x, box.low.y, z},
                         "width over the legs, " + where,
                         true});
    builder_.add_length({"depth over the legs, " + where,
                         {box.high.x, box.low.y, z},
                         box.high,
                         "depth over the legs, " + where,
                         true});
    over_all.add(box.low);
    over_all.add(box.high);
  }
  const Vec3 low{over_all.high.x, over_all.low.y, middle_.z};
  builder_.add_length({"height of " + spec_.name, low,
                       low + Vec3{0, 0, head_ + top_thickness_ - middle_.z}, "height", true});
}

}  // namespace splay::constructs
