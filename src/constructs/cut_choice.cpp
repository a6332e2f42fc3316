#include "constructs/cut_choice.h"

#include <cmath>

namespace splay::constructs {

using model::may;
using model::Range;

void CutChoice::fields(model::FieldVisitor& visit) {
  model::choose<CutKind, 5>(
      visit,
      may("cut",
          "square to the length; level with the floor; plumb; sloping in the room; or by the "
          "angles of a saw on the board"),
      cut, {"square", "level", "plumb", "slope", "angles"});
  visit.angle(may("slope", "slope: how steep the plane lies, from level"), slope,
              Range::degrees(0, 90));
  visit.angle(may("downhill",
                  "slope: the plan direction it falls towards, counted from the right, "
                  "anticlockwise as seen from above"),
              downhill, Range::degrees(-360, 360));
  visit.angle(may("turn",
                  "plumb: how far it is turned, as seen from above, from square to the "
                  "length, anticlockwise"),
              turn, Range::degrees(-90, 90));
  visit.angle(may("face_angle",
                  "angles: off square on the show face; with the first end down, "
                  "positive leaves the left edge short at the second end"),
              face_angle, Range::degrees(-180, 180));
  visit.angle(may("bevel",
                  "angles: off square through the thickness; positive leaves the show "
                  "face short at the second end"),
              bevel, Range::degrees(-85, 85));
}

void CutChoice::check(model::Complaints& complaints) const {
  struct Row {
    const model::Given<Angle>* angle;
    CutKind of;
    const char* name;
  };
  const Row rows[] = {{&slope, CutKind::slope, "slope"},
                      {&downhill, CutKind::slope, "downhill"},
                      {&turn, CutKind::plumb, "turn"},
                      {&face_angle, CutKind::angles, "face_angle"},
                      {&bevel, CutKind::angles, "bevel"}};
  static constexpr const char* words[] = {"square", "level", "plumb", "slope", "angles"};
  for (const Row& row : rows)
    if (row.angle->given && cut.value != row.of)
      complaints.complain(
          {row.angle->span, "not-together",
           std::string(row.name) + " with a cut that is \"" + words[static_cast<int>(cut.value)] +
               "\"",
           std::string(row.name) + " belongs to cut = \"" + words[static_cast<int>(row.of)] + "\"",
           "change cut, or leave the angle out"});
  if (given && cut.value == CutKind::slope && !slope.given)
    complaints.complain({span, "missing-field", "a sloping cut without its slope",
                         "slope = an angle from level", "write slope = \"25 deg\""});
}

std::optional<Plane> CutChoice::plane(const Rigid& place, Vec3 through, Vec3 way) const {
  Vec3 n = place.ex;
  switch (cut.value) {
    case CutKind::square:
      break;
    case CutKind::level:
      n = {0, 0, 1};
      break;
    case CutKind::plumb: {
      const Vec2 along{place.ex.x, place.ex.y};
      if (norm(along) < 1e-9) return std::nullopt;
      const double c = std::cos(turn->rad), s = std::sin(turn->rad);
      n = {along.x * c - along.y * s, along.x * s + along.y * c, 0};
      break;
    }
    case CutKind::slope: {
      const double s = std::sin(slope->rad);
      n = {s * std::cos(downhill->rad), s * std::sin(downhill->rad), std::cos(slope->rad)};
      break;
    }
    case CutKind::angles: {
      const double c = std::cos(bevel->rad);
      n = place.direction(
          {c * std::cos(face_angle->rad), c * std::sin(face_angle->rad), std::sin(bevel->rad)});
      break;
    }
  }
  const double towards = dot(unit(n), unit(way));
  if (std::abs(towards) < 1e-9) return std::nullopt;
  return Plane::through(through, towards < 0 ? -n : n);
}

}  // namespace splay::constructs
