// What is cut for hinges in the leaf and in the wood beside it.
#include <algorithm>

#include "constructs/door_build.h"
#include "constructs/section.h"
#include "joinery/bed.h"
#include "joinery/draft.h"
#include "joinery/joint.h"

namespace splay::constructs {

namespace {

constexpr double probe = 1;         // mm beside a face, to find whose wood is there
constexpr double round_a_pin = 2;   // mm of wood that must be left round a pivot's hole
constexpr double plate_hole = 5;    // mm: what a hinge plate is drilled for, and how far apart
constexpr double plate_depth = 12;  // and deep its two holes are: common practice, no source
constexpr double plate_apart = 32;

}  // namespace

std::vector<int> DoorBuild::others(const DoorLeaf& leaf) const {
  std::vector<int> result;
  for (int i = 0; i < builder_.count(); ++i)
    if (std::find(leaf.parts.begin(), leaf.parts.end(), i) == leaf.parts.end()) result.push_back(i);
  return result;
}

int DoorBuild::part_at(const std::vector<int>& among, Vec3 point) const {
  return constructs::part_at(builder_, among, opening_.place.point(point));
}

// The name of the hinges' joint between two parts, recorded once. Nothing of it is glued: it has
// no surfaces that meet.
std::string DoorBuild::tie(int part, int host, const std::string& kind) {
  if (host < 0) return "";
  std::string name = joinery::joint_name(builder_, host, part);
  if (std::find(tied_.begin(), tied_.end(), name) == tied_.end()) {
    builder_.add_joint({name, kind, {host, part}, 0, {}});
    tied_.push_back(name);
  }
  return name;
}

// A recess in the leaf's edge and in the wood beside it, or in the back of a leaf over its opening.
void DoorBuild::let_in(const DoorHinge& hinge, int part, int host, const std::string& number,
                       const std::string& joint) {
  const DoorHinges& spec = spec_.hinges;
  const double deep = or_else(spec.let_in, 2), wide = or_else(spec.leaf, thick_ * 0.75);
  if (deep <= 0) return;
  const double half = hinge_length(spec) / 2;
  const Vec3 along = lift_direction(hinge.along), out = lift_direction(hinge.out);
  const Vec3 at = lift(hinge.at, y_[0]);
  const Plane upper = plane(-along, at + along * half), lower = plane(along, at - along * half);
  const auto gain = [&](int index, const Plane& floor, const Plane& limit,
                        const std::vector<Plane>& more) {
    parts::Trench trench;
    trench.floor = floor;
    trench.walls = {lower, upper};
    trench.stops = {limit};
    trench.open = joinery::nearest_side(builder_.part(index), floor.n);
    trench.shallow = trench.deep = deep;
    Region removed = {floor.flipped(), lower.flipped(), upper.flipped(), limit.flipped()};
    removed.insert(removed.end(), more.begin(), more.end());
    builder_.cut_trench(index, parts::OperationKind::notch, removed, trench,
                        "recess for hinge " + number, joint);
  };
  if (over()) {
    gain(part, plane({0, 1, 0}, {0, y_[1] - deep, 0}), plane(out, at - out * wide), {});
    return;
  }
  const Plane limit = plane({0, -1, 0}, {0, y_[0] + wide, 0});
  gain(part, plane(out, at - out * deep), limit, {});
  if (host < 0) return;
  const double gap = gap_at(hinge.out);
  gain(host, plane(-out, at + out * (gap + deep)), limit, {plane(-out, at)});
}

bool DoorBuild::drill_cup(const DoorHinge& hinge, int part, const std::string& joint) {
  const DoorHinges& spec = spec_.hinges;
  const double across = or_else(spec.cup, 35), deep = or_else(spec.cup_depth, 13);
  const double in = or_else(spec.tab, 5) + across / 2;
  const Vec3 at = opening_.place.point(lift(hinge.at - hinge.out * in, y_[1]));
  const Vec3 way = opening_.place.direction({0, -1, 0});
  const std::vector<Plane> round = joinery::cylinder(at, way, across / 2);
  Region hole = round;
  hole.push_back(Plane::through(at + way * deep, way));
  Region in_wood = hole;
  in_wood.push_back(Plane::through(at, -way));
  if (!joinery::inside(in_wood, builder_.part(part).body.transformed(builder_.part(part).place)))
    return stop("no-cup",
                "A cup " + figure(across) + " wide and " + figure(deep) + " deep breaks out of " +
                    builder_.part(part).name + ".",
                "A wider or thicker stile, or a smaller tab.", spec.span);
  hole.push_back(Plane::through(at - way, -way));
  builder_.cut_region(part, parts::OperationKind::hole, hole, "cup of a hinge", joint, round);
  return true;
}

// Two holes for the plate, over each other, in the face beside the leaf.
bool DoorBuild::drill_plate(const DoorHinge& hinge, int host, const std::string& joint) {
  const double back = or_else(spec_.hinges.plate, 37);
  if (back <= 0 || host < 0) return true;
  const double beside = over() ? -spec_.overlap.for_edge(hinge.out) : gap_at(hinge.out);
  const Vec3 way = opening_.place.direction(lift_direction(hinge.out));
  const Solid wood = builder_.part(host).body.transformed(builder_.part(host).place);
  for (const double up : {-plate_apart / 2, plate_apart / 2}) {
    const Vec2 on_face = hinge.at + hinge.out * beside + hinge.along * up;
    const Vec3 at = opening_.place.point(lift(on_face, y_[1] + back));
    const std::vector<Plane> round = joinery::cylinder(at, way, plate_hole / 2);
    Region hole = round;
    hole.push_back(Plane::through(at + way * plate_depth, way));
    Region in_wood = hole;
    in_wood.push_back(Plane::through(at, -way));
    if (!joinery::inside(in_wood, wood))
      return stop("no-plate",
                  "The plate of a hinge has no wood at " + builder_.part(host).name + ", " +
                      figure(back) + " behind the leaf.",
                  "Another place for its holes (hinges.plate), or 0 and a plate of another kind.",
                  spec_.hinges.span);
    hole.push_back(Plane::through(at - way * probe, -way));
    builder_.cut_region(host, parts::OperationKind::hole, hole, "hole for a hinge plate", joint,
                        round);
  }
  return true;
}

bool DoorBuild::hang_on(const DoorLeaf& leaf, std::size_t index, int part, int host) {
  const DoorHinges& spec = spec_.hinges;
  const DoorHinge& hinge = leaf.hinges[index];
  const bool butt = spec.kind.value == HingeKind::butt;
  const std::string kind = butt ? "butt hinge" : "cup hinge";
  const std::string joint = tie(part, host, "hinges");
  std::vector<int> touches{part};
  if (host >= 0) touches.push_back(host);
  parts::Fitting fitting;
  fitting.kind = kind;
  fitting.parts = touches;
  fitting.joint = joint;
  if (butt) {
    let_in(hinge, part, host, std::to_string(index + 1), joint);
    fitting.length = hinge_length(spec);
    fitting.size = figure(fitting.length);
    fitting.diameter = barrel(spec);
    const Vec3 line = leaf.line_along;
    const Vec3 on_line =
        leaf.line_at + line * dot(lift(hinge.at, leaf.line_at.y) - leaf.line_at, line);
    fitting.at = opening_.place.point(on_line);
    fitting.axis = opening_.place.direction(line);
  } else {
    if (!drill_cup(hinge, part, joint) || !drill_plate(hinge, host, joint)) return false;
    if (index == 0)
      builder_.remark(part,
                      "Its cup hinges are tried as a plain turn about one line; their arms carry "
                      "the door outwards as well. The hinge's own drilling table decides.");
    fitting.diameter = or_else(spec.cup, 35);
    fitting.length = or_else(spec.cup_depth, 13);
    fitting.size = "cup " + figure(fitting.diameter);
    const double in = or_else(spec.tab, 5) + fitting.diameter / 2;
    fitting.at = opening_.place.point(lift(hinge.at - hinge.out * in, y_[1]));
    fitting.axis = opening_.place.direction({0, -1, 0});
  }
  builder_.add_fitting(std::move(fitting));
  return true;
}

bool DoorBuild::drill_pivot(int part, Vec3 at, Vec3 way, const std::string& joint) {
  const double radius = barrel(spec_.hinges) / 2, deep = or_else(spec_.hinges.pin, 12);
  const Solid wood = builder_.part(part).body.transformed(builder_.part(part).place);
  // Past the slope of a leaning edge.
  Region round_it = joinery::cylinder(at, way, radius + round_a_pin);
  round_it.push_back(Plane::through(at + way * (deep + round_a_pin), way));
  round_it.push_back(Plane::through(at + way * std::min(radius, deep / 2), -way));
  if (!joinery::inside(round_it, wood))
    return stop("no-pivot",
                "A pivot hole " + figure(2 * radius) + " wide and " + figure(deep) +
                    " deep leaves " + "less than " + figure(round_a_pin) + " of " +
                    builder_.part(part).name + " round it.",
                "Move the line (hinges.line_out, line_in_front), or a thinner or shorter pin "
                "(hinges.barrel, pin).",
                spec_.hinges.span);
  const std::vector<Plane> round = joinery::cylinder(at, way, radius);
  Region hole = round;
  hole.push_back(Plane::through(at + way * deep, way));
  hole.push_back(Plane::through(at - way * probe, -way));
  builder_.cut_region(part, parts::OperationKind::hole, hole, "hole for a pivot", joint, round);
  return true;
}

// Pins in the head and the foot of the leaf and in what is above and below it.
bool DoorBuild::hang_on_pivots(DoorLeaf& leaf) {
  const double x = leaf.line_at.x, y = leaf.line_at.y;
  double low = 1e300, high = -1e300;
  for (const Interval& each : clip_segment(leaf.shape, {x, -1e5}, {x, 1e5})) {
    low = std::min(low, -1e5 + 2e5 * each.from);
    high = std::max(high, -1e5 + 2e5 * each.to);
  }
  for (const bool head : {false, true}) {
    const double z = head ? high : low, up = head ? 1 : -1;
    const int part = low < high ? part_at(leaf.parts, {x, y, z - up * probe}) : -1;
    if (part < 0)
      return stop("no-pivot", "The pivots of " + words(leaf) + " miss its wood.",
                  "Change hinges.line_out and line_in_front.", spec_.hinges.span);
    const double gap = over() ? 0 : gap_at({0, up});
    const int host = part_at(others(leaf), {x, y, z + up * (gap + probe)});
    const std::string joint = tie(part, host, "pivot");
    const Vec3 at = opening_.place.point({x, y, z});
    const Vec3 way = opening_.place.direction({0, 0, -up});
    if (!drill_pivot(part, at, way, joint)) return false;
    std::vector<int> touches{part};
    if (host >= 0) {
      const Vec3 there = opening_.place.point({x, y, z + up * gap});
      if (!drill_pivot(host, there, -way, joint)) return false;
      touches.push_back(host);
    }
    builder_.add_fitting({"pivot", figure(barrel(spec_.hinges)) + " pin", at, way,
                          barrel(spec_.hinges), or_else(spec_.hinges.pin, 12), touches, joint});
    if (head) continue;
    const auto first = std::find(leaf.parts.begin(), leaf.parts.end(), part);
    std::rotate(leaf.parts.begin(), first, first + 1);
  }
  return true;
}

bool DoorBuild::hang(DoorLeaf& leaf) {
  if (spec_.hinges.kind.value == HingeKind::pivot) return hang_on_pivots(leaf);
  const double middle = (y_[0] + y_[1]) / 2;
  for (std::size_t i = 0; i < leaf.hinges.size(); ++i) {
    const DoorHinge& hinge = leaf.hinges[i];
    const int part = part_at(leaf.parts, lift(hinge.at - hinge.out * probe, middle));
    const double gap = gap_at(hinge.out);
    const Vec2 beside = over() ? hinge.at - hinge.out * (spec_.overlap.for_edge(hinge.out) / 2)
                               : hinge.at + hinge.out * (gap + probe);
    const int host = part_at(others(leaf), lift(beside, over() ? y_[1] + probe : middle));
    if (part < 0 || (host < 0 && opening_.item >= 0))
      return stop("hinge-on-nothing",
                  "Hinge " + std::to_string(i + 1) + " of " + words(leaf) + " has no wood " +
                      (part < 0 ? "of the door behind it." : "beside it to be screwed to."),
                  "Move it (hinges.at), or change the gap, the overlap or the set_back.",
                  spec_.hinges.given ? spec_.hinges.span : spec_.span);
    if (!hang_on(leaf, i, part, host)) return false;
    if (i > 0) continue;
    const auto first = std::find(leaf.parts.begin(), leaf.parts.end(), part);
    std::rotate(leaf.parts.begin(), first, first + 1);
  }
  return true;
}

}  // namespace splay::constructs
