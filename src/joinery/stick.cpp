#include "joinery/stick.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <set>

#include "base/tolerance.h"

namespace splay::joinery {

namespace {

// A plane steeper to the length than this bounds an end, not a side.
constexpr double steepest_side = 0.5;                    // cosine: 30 degrees of taper
constexpr double least_meeting = std::numbers::pi / 36;  // 5 degrees
// Planes that look within 30 degrees of each other are one side with its slope changed.
constexpr double one_side = 0.866;
constexpr double noise = 1e-9;

std::vector<Plane> find_hull(const Solid& body) {
  std::vector<Plane> hull;
  std::set<std::pair<std::int32_t, std::int32_t>> seen;
  for (const Cell& cell : body.cells()) {
    for (const CellFace& face : cell.faces) {
      if (!seen.insert({face.plane, face.side}).second) continue;
      const Plane& table = body.planes()[static_cast<std::size_t>(face.plane)];
      const Plane plane = face.side > 0 ? table : table.flipped();
      if (body.extent(plane.n)[1] <= plane.d + tolerance::on_plane) hull.push_back(plane);
    }
  }
  return hull;
}

// Those planes of a hull that run along a direction.
Region along(const std::vector<Plane>& hull, Vec3 line) {
  Region result;
  for (const Plane& plane : hull)
    if (std::abs(dot(plane.n, line)) <= steepest_side) result.push_back(plane);
  return result;
}

const Plane& most_towards(const std::vector<Plane>& planes, Vec3 direction) {
  return *std::max_element(planes.begin(), planes.end(), [&](const Plane& a, const Plane& b) {
    return dot(a.n, direction) < dot(b.n, direction);
  });
}

struct Pass {
  double from = 0, to = 0;
  Plane entry, exit;
};

// Where the line at + s * along passes through a convex cell.
bool passes(const Solid& body, const Cell& cell, Vec3 at, Vec3 along, Pass& pass) {
  pass = {-1e300, 1e300, {}, {}};
  for (const CellFace& face : cell.faces) {
    const Plane& table = body.planes()[static_cast<std::size_t>(face.plane)];
    const Plane plane = face.side > 0 ? table : table.flipped();
    const double speed = dot(plane.n, along), distance = plane.distance(at);
    if (std::abs(speed) < noise) {
      if (distance > -tolerance::on_plane) return false;
      continue;
    }
    const double s = -distance / speed;
    if (speed < 0 && s > pass.from) {
      pass.from = s;
      pass.entry = plane;
    } else if (speed > 0 && s < pass.to) {
      pass.to = s;
      pass.exit = plane;
    }
  }
  return pass.to - pass.from > tolerance::weld;
}

bool line_through(const Solid& body, Vec3 at, Vec3 along, Pass& whole) {
  bool any = false;
  for (const Cell& cell : body.cells()) {
    Pass pass;
    if (!passes(body, cell, at, along, pass)) continue;
    if (!any || pass.from < whole.from) {
      whole.from = pass.from;
      whole.entry = pass.entry;
    }
    if (!any || pass.to > whole.to) {
      whole.to = pass.to;
      whole.exit = pass.exit;
    }
    any = true;
  }
  return any;
}

// The meeting by one line of the guest. "" or why not.
std::string meet_by_line(const Stick& host, const Stick& guest, Vec3 line, Meeting& meeting) {
  Pass pass;
  if (!line_through(host.body, guest.centre, line, pass))
    return "The centre line of " + guest.name + " does not meet " + host.name + ".";
  const auto [low, high] = guest.body.extent(line);
  const double origin = dot(guest.centre, line);
  const double before = pass.from - (low - origin), after = (high - origin) - pass.to;
  if (before < tolerance::weld && after < tolerance::weld)
    return guest.name + " lies wholly inside " + host.name + ".";
  if (before >= after) {
    meeting = {pass.entry, pass.exit, guest.centre + line * pass.from, line, 0, 0, true};
    meeting.reach = (high - origin) - pass.from;
  } else {
    meeting = {pass.exit, pass.entry, guest.centre + line * pass.to, -line, 0, 0, true};
    meeting.reach = pass.to - (low - origin);
  }
  meeting.room = pass.to - pass.from;
  if (angle_to_surface(line, meeting.face) < least_meeting)
    return guest.name + " runs almost along the face of " + host.name +
           ": under 5 degrees no joint holds.";
  if (meeting.reach < tolerance::weld) return guest.name + " stops short of " + host.name + ".";
  return "";
}

}  // namespace

Stick stick(const parts::Builder& builder, int index) {
  const parts::Part& part = builder.part(index);
  Stick result;
  result.index = index;
  result.name = part.name;
  result.place = part.place;
  result.body = part.body.transformed(part.place);
  const Box box = part.body.bounds();
  result.centre = part.place.point((box.low + box.high) * 0.5);
  result.along = part.place.ex;
  result.hull = find_hull(result.body);
  result.sides = along(result.hull, result.along);
  return result;
}

const Plane& side_towards(const Stick& stick, Vec3 direction) {
  return most_towards(stick.sides, direction);
}

const Plane& side_at(const Stick& stick, Vec3 at, Vec3 direction) {
  const Plane* found = &side_towards(stick, direction);
  const auto away = [&](const Plane& side) { return -side.distance(at) / dot(side.n, direction); };
  const Vec3 out = found->n;
  for (const Plane& side : stick.sides)
    if (dot(side.n, out) > one_side && dot(side.n, direction) > noise && away(side) < away(*found))
      found = &side;
  return *found;
}

const Plane& hull_towards(const Stick& stick, Vec3 direction) {
  return most_towards(stick.hull, direction);
}

std::string find_meeting(const Stick& host, const Stick& guest, Lines lines, Meeting& meeting) {
  if (host.body.empty() || guest.body.empty())
    return "Nothing is left of " + (host.body.empty() ? host.name : guest.name) + ".";
  std::string fault = meet_by_line(host, guest, guest.along, meeting);
  if (fault.empty() || lines == Lines::length_only) return fault;
  if (!meet_by_line(host, guest, guest.place.ey, meeting).empty()) return fault;
  meeting.along = false;
  return "";
}

double angle_to_surface(Vec3 line, const Plane& plane) {
  return std::abs(std::numbers::pi / 2 - angle_between(line, plane.n));
}

double crossing_angle(Vec3 a, Vec3 b) {
  const double angle = angle_between(a, b);
  return std::min(angle, std::numbers::pi - angle);
}

std::array<double, 2> section_extent(const Stick& guest, const Plane& plane, Vec3 direction) {
  std::array<double, 2> range = {1e300, -1e300};
  for (const Face& face : guest.body.section(plane))
    for (const std::vector<Vec3>& loop : face.loops)
      for (const Vec3 p : loop) {
        range[0] = std::min(range[0], dot(direction, p));
        range[1] = std::max(range[1], dot(direction, p));
      }
  return range[0] > range[1] ? std::array<double, 2>{0, 0} : range;
}

bool whole_behind(const Stick& stick, const Plane& cut, Vec3 line) {
  constexpr double slice = 0.1;  // mm
  Region region = along(stick.hull, line);
  region.push_back(cut);
  region.push_back(Plane{cut.n, cut.d - slice}.flipped());
  return volume_outside(region, stick.body) < Solid::convex(region).volume() * 1e-6;
}

Exit way_out(const Solid& body, Vec3 at, Vec3 way) {
  Pass pass;
  if (!line_through(body, at, way, pass)) return {};
  return {pass.to, pass.exit};
}

double volume_outside(const Region& region, const Solid& body) {
  Solid rest = Solid::convex(region);
  rest.subtract(body);
  return rest.volume();
}

}  // namespace splay::joinery
