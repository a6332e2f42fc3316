// Round holes: where the bit is set down, how it leans and how deep it goes.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "fabrication/derive.h"
#include "fabrication/sides.h"

namespace splay::fabrication {

using parts::outward;
using parts::Side;

namespace {

constexpr double square_within = 1e-7;

struct Round {
  Vec3 axis, centre;  // the axis points into the wood; a point of it
  double radius = 0;
  std::vector<Plane> facets;
  std::optional<Plane> bottom;
};

// The direction that most of the planes lie along.
std::optional<Vec3> common_axis(const Region& removed) {
  for (std::size_t i = 0; i + 1 < removed.size(); ++i) {
    const Vec3 line = cross(removed[i].n, removed[i + 1].n);
    if (norm(line) < 1e-3) continue;
    const Vec3 axis = unit(line);
    const auto along = std::count_if(removed.begin(), removed.end(), [&](const Plane& plane) {
      return std::abs(dot(plane.n, axis)) < square_within;
    });
    if (along >= 6 && static_cast<std::size_t>(along) + 2 >= removed.size()) return axis;
  }
  return {};
}

// Where three planes whose normals are square to `axis` keep the same distance inside.
bool find_circle(Round& round) {
  const std::size_t n = round.facets.size();
  const Plane& a = round.facets[0];
  const Plane& b = round.facets[n / 3];
  const Plane& c = round.facets[2 * n / 3];
  const Vec3 u = a.n - b.n, v = a.n - c.n;
  const double uu = dot(u, u), uv = dot(u, v), vv = dot(v, v), p = a.d - b.d, q = a.d - c.d;
  const double det = uu * vv - uv * uv;
  if (std::abs(det) < 1e-9) return false;
  round.centre = u * ((p * vv - q * uv) / det) + v * ((q * uu - p * uv) / det);
  round.radius = a.d - dot(a.n, round.centre);
  return std::all_of(round.facets.begin(), round.facets.end(), [&](const Plane& facet) {
    return std::abs(facet.d - dot(facet.n, round.centre) - round.radius) < 1e-7;
  });
}

bool evenly_spaced(const Round& round, Vec3 right, Vec3 across, double& first) {
  const auto angle = [&](const Plane& plane) {
    return std::atan2(dot(plane.n, across), dot(plane.n, right));
  };
  const auto n = static_cast<double>(round.facets.size());
  const double pitch = 2 * std::numbers::pi / n;
  first = angle(round.facets.front());
  return std::all_of(round.facets.begin(), round.facets.end(), [&](const Plane& plane) {
    const double steps = (angle(plane) - first) / pitch;
    return std::abs(steps - std::round(steps)) < 1e-6;
  });
}

std::optional<Round> round_hole(const Derivation& at, const Region& removed) {
  const std::optional<Vec3> axis = common_axis(removed);
  if (!axis) return {};
  Round round;
  round.axis = *axis;
  for (const Plane& plane : removed)
    if (std::abs(dot(plane.n, *axis)) < square_within) round.facets.push_back(plane);
  if (round.facets.size() < 6 || !find_circle(round)) return {};
  // The end that bounds it inside the wood is its bottom.
  for (const Plane& plane : removed) {
    if (std::abs(dot(plane.n, *axis)) < square_within) continue;
    const double end = plane.d - dot(plane.n, round.centre);
    const Vec3 bottom = round.centre + plane.n * end;
    const bool inside = [&] {
      for (const Side side : all_sides)
        if (dot(outward(side), bottom) > at.high(outward(side)) - 1e-6) return false;
      return true;
    }();
    if (!inside || std::abs(std::abs(dot(plane.n, *axis)) - 1) > square_within) continue;
    if (round.bottom) return {};
    round.bottom = plane;
  }
  if (round.bottom && dot(round.axis, round.bottom->n) < 0) round.axis = -round.axis;
  return round;
}

}  // namespace

std::optional<Step> bore(const Derivation& at, const Region& removed) {
  const std::optional<Round> round = round_hole(at, removed);
  if (!round) return {};
  Step step;
  step.row = at.row;
  step.machine = Machine::drill;
  step.tool = Tool::bore;
  step.guide = Guide::marks;
  Vec3 axis = round->axis;
  double best = -1;
  for (const Side side : all_sides) {
    const double against = -dot(outward(side), axis);
    const double fit = round->bottom ? against : std::abs(against);
    if (fit <= best + 1e-9) continue;
    best = fit;
    step.face = side;
  }
  if (dot(outward(step.face), axis) > 0) axis = -axis;
  count_marks_from(at, step);
  step.against = step.across_from;
  step.leads = parts::opposite(step.against);
  const Vec3 out = outward(step.face), up = -out, to = outward(step.against);
  const double away = (at.high(out) - dot(out, round->centre)) / dot(out, axis);
  step.exact.marks = {mark_at(at, step, round->centre + axis * away)};
  step.exact.tilt = std::atan2(norm(cross(axis, up)), dot(axis, up));
  if (step.exact.tilt < 1e-9) step.exact.tilt = 0;
  const Vec3 x0 = cross(up, to), y0 = -to;
  if (step.exact.tilt > 0) step.exact.gauge = std::atan2(-dot(axis, y0), dot(axis, x0));
  const Vec3 feed = x0 * std::sin(step.exact.gauge) + y0 * std::cos(step.exact.gauge);
  const Vec3 right = cross(feed, axis), across = cross(axis, right);
  step.exact.width = 2 * round->radius;
  step.exact.facets = static_cast<int>(round->facets.size());
  if (!evenly_spaced(*round, right, across, step.exact.facet_turn)) return {};
  const Vec3 mouth = round->centre + axis * away;
  if (round->bottom) step.exact.height = round->bottom->d - dot(round->bottom->n, mouth);
  step.cuts_through = !round->bottom;
  if (!firm(at, step.face)) step.flags.push_back(Flag::block);
  if (step.exact.tilt > at.shop->drill.tilt->rad + 1e-9) step.machine = Machine::hand;
  return step;
}

}  // namespace splay::fabrication
