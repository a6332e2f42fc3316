#include "constructs/orientation.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/figure.h"

namespace splay::constructs {

namespace {

constexpr double no_angle = 1e-9;

Vec3 looking(Facing facing, Vec3 along) {
  switch (facing) {
    case Facing::front:
      return {0, -1, 0};
    case Facing::back:
      return {0, 1, 0};
    case Facing::left:
      return {-1, 0, 0};
    case Facing::right:
      return {1, 0, 0};
    case Facing::top:
      return {0, 0, 1};
    case Facing::underside:
      return {0, 0, -1};
    default:
      break;
  }
  const bool to_back =
      std::abs(along.y) > std::max(std::abs(along.x), std::abs(along.z)) + no_angle;
  return to_back ? Vec3{0, 0, 1} : Vec3{0, -1, 0};
}

}  // namespace

void Orientation::fields(model::FieldVisitor& visit) {
  model::choose<Facing, 7>(
      visit,
      model::may("facing",
                 "where the show face looks before any roll; by itself: to the front, or "
                 "up when it runs mostly to the back"),
      facing, {"by itself", "front", "back", "left", "right", "top", "underside"});
  visit.angle(
      model::may("roll", "turn about its length, anticlockwise as seen from the second end"), roll,
      model::Range::degrees(-360, 360));
}

std::optional<Rigid> Orientation::place(Vec3 from, Vec3 to) const {
  const Vec3 along = unit(to - from);
  const Vec3 face = looking(facing.value, along);
  if (norm(cross(along, face)) < 1e-6) return std::nullopt;
  const Rigid straight = frame(from, along, face);
  const double c = std::cos(roll->rad), s = std::sin(roll->rad);
  return Rigid{straight.ex, straight.ey * c + straight.ez * s, straight.ez * c - straight.ey * s,
               from};
}

std::array<std::string, 2> end_names(Vec3 v) {
  const double flat = std::hypot(v.x, v.y);
  std::array<std::string, 2> names = {"foot", "head"};
  bool turned = v.z < 0;
  if (std::abs(v.z) <= flat) {
    const bool sideways = std::abs(v.x) >= std::abs(v.y);
    names = sideways ? std::array<std::string, 2>{"left end", "right end"}
                     : std::array<std::string, 2>{"front end", "back end"};
    turned = (sideways ? v.x : v.y) < 0;
  }
  if (turned) std::swap(names[0], names[1]);
  return names;
}

Lean lean_of(Vec3 line) {
  const double rise = std::abs(line.z), run = std::hypot(line.x, line.y);
  Lean lean;
  lean.from_plumb = std::atan2(run, rise);
  lean.front = std::atan2(std::abs(line.x), rise);
  lean.side = std::atan2(std::abs(line.y), rise);
  lean.plan = std::atan2(std::abs(line.y), std::abs(line.x));
  lean.factor = norm(line) / rise;
  return lean;
}

void state_lean(parts::Builder& builder, int part, Vec3 foot, Vec3 head) {
  const Lean lean = lean_of(head - foot);
  if (lean.from_plumb < no_angle) return;
  const std::string& name = builder.part(part).name;
  const Vec3 up{0, 0, 1}, line = unit(head - foot);
  if (lean.front > no_angle)
    builder.add_angle({"lean of " + name + ", from the front", foot, up,
                       unit(Vec3{line.x, 0, line.z}), lean.front});
  if (lean.side > no_angle)
    builder.add_angle({"lean of " + name + ", from the side", foot, up,
                       unit(Vec3{0, line.y, line.z}), lean.side});
  std::string text = "Leans " + degrees_of(lean.from_plumb) + " from plumb";
  if (lean.front > no_angle && lean.side > no_angle) {
    builder.add_angle({"true lean of " + name, foot, up, line, lean.from_plumb});
    text += " along a sight line " + degrees_of(lean.plan) +
            " from the front in plan; seen from the front " + degrees_of(lean.front) +
            ", from the side " + degrees_of(lean.side);
  }
  builder.remark(part, text + "; " + plain_number(lean.factor, 4) + " times as long as high.");
}

void state_end_lines(parts::Builder& builder, int part, const Plane& world,
                     const std::string& end) {
  const Vec3 n = builder.part(part).place.local_direction(world.n);
  const double face = std::atan2(std::abs(n.y), std::abs(n.x));
  const double edge = std::atan2(std::abs(n.z), std::abs(n.x));
  if (face < no_angle && edge < no_angle) return;
  builder.remark(part, "Line of the " + end + ": " + off_square_words(face) + " on the face, " +
                           off_square_words(edge) + " on the edge.");
}

std::string off_square_words(double radians) {
  constexpr double prints_square = 5e-5;  // radians: less would print as 0.00 degrees
  return std::abs(radians) < prints_square ? "square" : degrees_of(radians) + " off square";
}

std::string degrees_of(double radians) { return degrees_text(Angle{radians}.degrees()); }

}  // namespace splay::constructs
