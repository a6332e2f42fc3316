// The setting of a blade that makes a plane: by fence or gauge, and along two marks.
#include <algorithm>
#include <cmath>

#include "base/tolerance.h"
#include "fabrication/derive.h"
#include "fabrication/sides.h"

namespace splay::fabrication {

using parts::outward;
using parts::Side;

double bearing(const Derivation& at, Vec3 out, Vec3 along) {
  const double edge = at.high(out) - 1e-5;
  double low = 1e300, high = -1e300;
  for (const Vec3& p : at.work.vertices()) {
    if (dot(out, p) < edge) continue;
    low = std::min(low, dot(along, p));
    high = std::max(high, dot(along, p));
  }
  return high - low;
}

std::optional<Step> set_blade(const Derivation& at, const Lying& lying, const Plane& plane) {
  Step step;
  step.row = at.row;
  step.machine = lying.machine;
  step.guide = lying.guide;
  step.face = lying.face;
  step.against = lying.against;
  const Vec3 down = outward(lying.face), to = outward(lying.against);
  const Vec3 up = -down;
  const bool fence = lying.guide == Guide::fence;
  const Vec3 right = fence ? (lying.reference_right ? to : -to) : cross(up, to);
  const Vec3 feed = cross(up, right);
  const double sideways = dot(plane.n, right), ahead = dot(plane.n, feed), rise = dot(plane.n, up);
  if (std::abs(sideways) < 1e-6) return {};
  if (fence && std::abs(ahead) > no_angle) return {};
  step.exact.gauge = fence ? 0 : std::atan(-ahead / sideways);
  if (std::abs(step.exact.gauge) < no_angle) step.exact.gauge = 0;
  step.exact.tilt = std::atan2(std::abs(rise), std::hypot(sideways, ahead));
  if (step.exact.tilt < no_angle) step.exact.tilt = 0;
  step.waste_right = sideways > 0;
  step.tilts_right = step.exact.tilt > 0 && (step.waste_right ? rise < 0 : rise > 0);
  step.reference_right = fence ? lying.reference_right : !step.waste_right;
  // Where the plane meets the table, at the reference edge.
  const double table = at.high(down);
  const double back = fence ? 0 : at.high(to);
  const double x = (plane.d + rise * table + (fence ? 0 : ahead * back)) / sideways;
  step.exact.distance = step.reference_right ? at.high(right) - x : x + at.high(-right);
  if (std::abs(step.exact.distance) < 1e-9) step.exact.distance = 0;
  step.stopped = side_towards(step.reference_right ? right : -right);
  step.leads = side_towards(feed);
  step.across_from = lying.against;
  // The surface falls back as one moves along its normal.
  step.to_long_point = rise >= 0 && (fence || ahead >= 0);
  step.exact.width =
      lying.machine == Machine::mitre_saw ? at.shop->mitre_saw.kerf->mm : at.shop->saw.kerf->mm;
  return step;
}

bool firm(const Derivation& at, Side face) {
  const Vec3 out = outward(face);
  for (const Side side : all_sides)
    if (!same_axis(side, face) && bearing(at, out, outward(side)) < least_bearing) return false;
  return true;
}

namespace {

// How far a face of the work goes towards a side.
double face_high(const Derivation& at, Side face, Vec3 way) {
  const double level = at.high(outward(face)) - 1e-5;
  double most = -1e300;
  for (const Vec3& p : at.work.vertices())
    if (dot(outward(face), p) > level) most = std::max(most, dot(way, p));
  return most;
}

// The work ends in a bevel there, its long point on the other face: a rule or a square is laid to
// the arris of this one. What falls back further than a bevel does is a taper.
bool behind_bevel(const Derivation& at, Side face, Side side) {
  constexpr double steepest = 1.74;  // tangent of 60 degrees
  const Vec3 way = outward(side);
  const double behind = at.high(way) - face_high(at, face, way);
  const double thick = at.high(outward(face)) + at.high(-outward(face));
  const double other = at.high(way) - face_high(at, parts::opposite(face), way);
  return firm(at, face) && behind > tolerance::weld && behind < thick * steepest &&
         other < tolerance::weld;
}

}  // namespace

void count_marks_from(const Derivation& at, Step& step) {
  const bool face_x = along_x(step.face);
  step.stopped = face_x ? Side::y_low : Side::x_low;
  step.across_from = same_axis(step.face, Side::z_low) ? Side::y_low : Side::z_low;
  step.stopped_on_face = behind_bevel(at, step.face, step.stopped);
  step.across_on_face = behind_bevel(at, step.face, step.across_from);
}

Mark mark_at(const Derivation& at, const Step& step, Vec3 point) {
  const Vec3 end = outward(step.stopped), edge = outward(step.across_from);
  const double along = step.stopped_on_face ? face_high(at, step.face, end) : at.high(end);
  const double across = step.across_on_face ? face_high(at, step.face, edge) : at.high(edge);
  return {along - dot(end, point), across - dot(edge, point)};
}

std::optional<std::array<Vec3, 2>> trace(const Derivation& at, Side face, const Plane& plane) {
  const Vec3 out = outward(face);
  const Vec3 line = cross(out, plane.n);
  if (norm(line) < 1e-6) return {};
  const Vec3 way = unit(line);
  // The point of both planes nearest to the origin's foot (two planes, the third through 0).
  const double c = dot(out, plane.n), s = 1 - c * c, h = at.high(out);
  const Vec3 foot = out * ((h - plane.d * c) / s) + plane.n * ((plane.d - h * c) / s);
  double from = -1e300, to = 1e300;
  for (const Side side : all_sides) {
    if (same_axis(side, face)) continue;
    const Vec3 n = outward(side);
    const double slope = dot(n, way), room = at.high(n) - dot(n, foot);
    if (std::abs(slope) < 1e-12) {
      if (room < -tolerance::weld) return {};
    } else if (slope > 0) {
      to = std::min(to, room / slope);
    } else {
      from = std::max(from, room / slope);
    }
  }
  if (to - from < 1e-3) return {};
  return std::array<Vec3, 2>{foot + way * from, foot + way * to};
}

std::optional<Step> set_marks(const Derivation& at, Machine machine, Side face, const Plane& plane,
                              bool backwards) {
  const auto line = trace(at, face, plane);
  if (!line || norm((*line)[1] - (*line)[0]) < 5) return {};
  Step step;
  step.row = at.row;
  step.machine = machine;
  step.guide = Guide::marks;
  step.face = face;
  count_marks_from(at, step);
  step.against = step.across_from;
  const Vec3 a = (*line)[backwards ? 1 : 0], b = (*line)[backwards ? 0 : 1];
  step.exact.marks = {mark_at(at, step, a), mark_at(at, step, b)};
  const Vec3 up = -outward(face), right = cross(unit(b - a), up);
  const double rise = dot(plane.n, up), sideways = dot(plane.n, right);
  step.exact.tilt = std::atan2(std::abs(rise), std::abs(sideways));
  if (step.exact.tilt < no_angle) step.exact.tilt = 0;
  step.waste_right = sideways > 0;
  step.tilts_right = step.exact.tilt > 0 && (step.waste_right ? rise < 0 : rise > 0);
  step.to_long_point = rise >= 0;
  step.exact.jig_offset = std::abs(step.exact.marks[1].across - step.exact.marks[0].across);
  step.exact.width =
      machine == Machine::track_saw ? at.shop->track_saw.kerf->mm : at.shop->saw.kerf->mm;
  if (machine == Machine::hand) step.exact.width = 1.0;  // a hand saw's, common practice
  if (machine != Machine::table_saw) step.leads = Side::x_high;
  return step;
}

}  // namespace splay::fabrication
