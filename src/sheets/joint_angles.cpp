#include "sheets/joint_angles.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

namespace splay::sheets {

namespace {

constexpr double near_point = 1e-4;  // mm
using std::numbers::pi;

double between(Vec2 a, Vec2 b) { return std::abs(std::atan2(cross(a, b), dot(a, b))); }

// The part's face that leaves a point and doesn't run along the line of contact.
std::optional<Vec2> face_from(const drafting::Loops& loops, Vec2 at, Vec2 contact) {
  for (const std::vector<Vec2>& loop : loops)
    for (std::size_t i = 0; i < loop.size(); ++i) {
      if (norm(loop[i] - at) > near_point) continue;
      for (const Vec2 next :
           {loop[(i + 1) % loop.size()], loop[(i + loop.size() - 1) % loop.size()]}) {
        const Vec2 way = unit(next - at);
        if (std::abs(cross(way, contact)) > no_angle) return way;
      }
    }
  return std::nullopt;
}

struct End {
  Vec2 at, contact;  // the line of contact goes on in this direction
  std::vector<std::optional<Vec2>> faces;
};

End end_of(const JointCut& cut, Vec2 at, Vec2 other) {
  End end{at, unit(other - at), {}};
  for (const drafting::Loops& loops : cut.loops)
    end.faces.push_back(face_from(loops, at, end.contact));
  return end;
}

// On the part's face the line of a cut is seen, else its surface on edge.
std::string name_of(const Context& context, const JointCut& cut, int part) {
  constexpr double square_on = 0.9999;  // cosine
  const Vec3 face = context.plan.assembly.parts[static_cast<std::size_t>(part)].place.ez;
  return (std::abs(dot(face, cut.view.toward)) > square_on ? "face angle of " : "bevel of ") +
         context.plan.mark_of(part);
}

void add_bevels(const Context& context, const JointCut& cut, const End& end,
                std::vector<JointAngle>& angles) {
  for (std::size_t i = 0; i < end.faces.size(); ++i) {
    if (!end.faces[i]) continue;
    const Vec2 face = *end.faces[i];
    Vec2 square = left_of(face);
    if (dot(square, end.contact) < 0) square = -square;
    const double off = between(square, end.contact);
    if (off < no_angle) continue;
    angles.push_back({name_of(context, cut, cut.parts[i]), end.at, square, end.contact, off});
  }
}

}  // namespace

std::vector<JointAngle> joint_angles(const Context& context, const JointCut& cut) {
  if (cut.contacts.empty() || cut.loops.size() < 2) return {};
  const Line2 line =
      *std::ranges::max_element(cut.contacts, {}, [](const Line2& l) { return norm(l.b - l.a); });
  std::vector<JointAngle> angles;
  const End ends[] = {end_of(cut, line.a, line.b), end_of(cut, line.b, line.a)};
  const End* inner = nullptr;
  for (const End& end : ends) {
    if (!end.faces[0] || !end.faces[1]) continue;
    const Vec2 a = *end.faces[0], b = *end.faces[1];
    const double corner = between(a, b);
    // The wood is on the side of the contact: the air between the faces is on the other.
    const bool inside = dot(a + b, end.contact) <= 0 || corner > pi - no_angle;
    if (!inside || corner > pi - no_angle || corner < no_angle) continue;
    inner = &end;
    if (std::abs(corner - pi / 2) > no_angle) angles.push_back({"corner", end.at, a, b, corner});
  }
  const End& outer = inner == &ends[0] ? ends[1] : ends[0];
  add_bevels(context, cut, outer, angles);
  return angles;
}

}  // namespace splay::sheets
