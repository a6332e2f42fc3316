#include "constructs/member.h"

#include <algorithm>
#include <cmath>

#include "base/figure.h"
#include "base/tolerance.h"
#include "constructs/orientation.h"

namespace splay::constructs {

namespace {

constexpr double same_direction = 1e-12;

Plane moved(const Plane& plane, double out) { return {plane.n, plane.d + out}; }

// The space between the sides and the ends, in the part frame.
Solid finished_body(const Member& member, const Rigid& place) {
  Region region;
  for (const MemberSide& side : member.sides) region.push_back(place.local_plane(side.plane));
  const double length = place.local_point(member.to).x;
  region.push_back(member.from_end.plane ? place.local_plane(*member.from_end.plane)
                                         : Plane{{-1, 0, 0}, member.from_end.past});
  region.push_back(member.to_end.plane ? place.local_plane(*member.to_end.plane)
                                       : Plane{{1, 0, 0}, length + member.to_end.past});
  return Solid::convex(region);
}

// Whether cutting along the plane would take wood from the blank.
bool cuts(const Plane& local, const Solid& blank) {
  return blank.extent(local.n)[1] > local.d + tolerance::on_plane;
}

void state_taper(parts::Builder& builder, int part, const Plane& local, const std::string& side) {
  const double angle = std::asin(std::min(1.0, std::abs(local.n.x)));
  const parts::Part& made = builder.part(part);
  const Box box = made.body.bounds();
  const Vec3 along{1, 0, 0};
  const Vec3 slope = unit(along - local.n * dot(along, local.n));
  // From the middle of the tapered side, which the blank's straight line crosses.
  Vec3 at = (box.low + box.high) * 0.5;
  at = at - local.n * local.distance(at);
  builder.add_angle({"taper of " + made.name + ", " + side, made.place.point(at),
                     made.place.direction(along), made.place.direction(slope), angle});
}

void cut_side(parts::Builder& builder, int part, const MemberSide& side) {
  const Plane local = builder.part(part).place.local_plane(side.plane);
  if (!cuts(local, builder.part(part).body)) return;
  const bool taper = std::abs(local.n.x) > same_direction;
  builder.cut_edge(part, side.plane, (taper ? "taper, " : "bevel, ") + side.name, "");
  if (taper) state_taper(builder, part, local, side.name);
}

void cut_end(parts::Builder& builder, int part, const MemberEnd& end) {
  if (!end.plane) return;
  if (cuts(builder.part(part).place.local_plane(*end.plane), builder.part(part).body))
    builder.cut_end(part, *end.plane, end.name, "");
}

}  // namespace

int add_member(parts::Builder& builder, const Member& member) {
  parts::Blank blank;
  blank.place = frame(member.from, member.axis, member.facing);
  const Solid finished = finished_body(member, blank.place);
  if (finished.empty()) return -1;
  const Box box = finished.bounds();
  const Vec3 size = box.size();
  if (std::min({size.x, size.y, size.z}) < tolerance::shortest_line) return -1;
  blank.name = member.name;
  blank.stock = member.stock;
  blank.body = Solid::box(box.low, box.high);
  blank.side_names = member.side_names;
  const int part = builder.add(std::move(blank));
  for (const MemberSide& side : member.sides) cut_side(builder, part, side);
  cut_end(builder, part, member.from_end);
  cut_end(builder, part, member.to_end);
  return part;
}

Plane side_plane(Vec3 a, Vec3 b, Vec3 run, Vec3 out) {
  const Vec3 n = cross(b - a, run);
  return Plane::through(a, dot(n, out) < 0 ? -n : n);
}

std::vector<MemberSide> square_sides(const Rigid& line, double length, const SquareSection& section,
                                     const std::array<std::string, 6>& names) {
  struct Row {
    SquareSection::Distance distance;
    Vec3 out, run;
    std::string name;
  };
  const Row rows[] = {{section.y_low, -line.ey, line.ez, names[2]},
                      {section.y_high, line.ey, line.ez, names[3]},
                      {section.z_low, -line.ez, line.ey, names[4]},
                      {section.z_high, line.ez, line.ey, names[5]}};
  std::vector<MemberSide> sides;
  for (const Row& row : rows) {
    const auto [at_from, at_to] = row.distance;
    const Plane level = Plane::through(line.origin, row.out);
    if (at_from == at_to) {
      sides.push_back({moved(level, at_from), row.name});
      continue;
    }
    const bool broad_to = at_to > at_from;
    const Vec3 a = line.origin + line.ex * (broad_to ? 0 : section.straight) + row.out * at_from;
    const Vec3 b =
        line.origin + line.ex * (broad_to ? length - section.straight : length) + row.out * at_to;
    sides.push_back({side_plane(a, b, row.run, row.out), row.name});
    if (section.straight > 0) sides.push_back({moved(level, std::max(at_from, at_to)), row.name});
  }
  return sides;
}

Member bar_member(const Bar& bar) {
  const Rigid line = frame(bar.from, bar.to - bar.from, bar.facing);
  const std::array<std::string, 2> ends = end_names(line.ex);
  const double across = bar.width / 2, through = bar.thickness / 2;
  Member member{bar.name, bar.stock, bar.from, bar.to, line.ex, line.ez, {}, {}, {}, {}};
  member.side_names = {ends[0],           ends[1],           bar.long_sides[0],
                       bar.long_sides[1], bar.long_sides[2], bar.long_sides[3]};
  member.sides =
      square_sides(line, norm(bar.to - bar.from),
                   {{across, across}, {across, across}, {through, through}, {through, through}, 0},
                   member.side_names);
  return member;
}

}  // namespace splay::constructs
