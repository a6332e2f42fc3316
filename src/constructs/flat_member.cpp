#include "constructs/flat_member.h"

#include <cmath>

#include "constructs/section.h"

namespace splay::constructs {

parts::Blank flat_member(const RingMember& member, double from, double to, double back,
                         double thick, const std::string& face) {
  const Vec2 along = reading_direction(member.direction);
  const double sense = dot(along, member.direction) > 0 ? 1 : -1;
  parts::Blank blank;
  blank.place = frame(lift(member.outer_1, back), lift_direction(along), world_front);
  const double x1 = sense > 0 ? from : -to, x2 = sense > 0 ? to : -from;
  const double width = member.outside.d + member.inside.d;
  const bool outside_high = dot(blank.place.ey, lift_direction(member.out)) > 0;
  blank.body =
      Solid::box({x1, outside_high ? -width : 0, 0}, {x2, outside_high ? 0 : width, thick});
  const bool upright = std::abs(along.y) > std::abs(along.x);
  blank.side_names = {upright ? "foot" : "left end",
                      upright ? "head" : "right end",
                      outside_high ? "inside edge" : "outside edge",
                      outside_high ? "outside edge" : "inside edge",
                      "back",
                      face};
  return blank;
}

}  // namespace splay::constructs
