// Cuts right through: the setting of a blade that makes a plane, and the best way to lie for it.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/tolerance.h"
#include "fabrication/derive.h"

namespace splay::fabrication {

using parts::outward;
using parts::Side;

namespace {

constexpr double no_angle = 1e-9;  // radians
constexpr std::array<Side, 6> sides = {Side::z_low,  Side::z_high, Side::y_low,
                                       Side::y_high, Side::x_low,  Side::x_high};

bool along_x(Side side) { return side == Side::x_low || side == Side::x_high; }
bool same_axis(Side a, Side b) { return a == b || a == parts::opposite(b); }

Side side_towards(Vec3 way) {
  for (const Side side : sides)
    if (dot(outward(side), way) > 0.5) return side;
  return Side::x_low;
}

double between_heights(const model::Saw& saw, double tilt) {
  const double share = std::min(1.0, tilt / (std::numbers::pi / 4));
  return saw.height->mm + share * (saw.height_at_45->mm - saw.height->mm);
}

// What the step needs of the room over and beside the table.
struct Room {
  double up = 0, feed = 0, across = 0;
  Room(const Derivation& at, const Step& step) {
    const auto span = [&](Vec3 way) { return at.high(way) + at.high(-way); };
    up = span(outward(step.face));
    across = span(outward(step.against));
    feed = span(cross(outward(step.face), outward(step.against)));
    if (step.guide == Guide::gauge) std::swap(feed, across);
  }
};

double position_cost(const Step& step) {
  double cost = step.face == Side::z_low ? 0 : 0.2;
  if (step.position() == Position::on_edge) cost = 2;
  if (step.position() == Position::on_end) cost = 4;
  if (step.guide != Guide::marks && step.against != Side::y_low) cost += 0.1;
  if (step.guide == Guide::fence && !step.reference_right) cost += 0.4;
  if (step.guide == Guide::fence && step.position() != Position::flat &&
      !same_axis(step.against, Side::z_low))
    cost += 1;
  return cost;
}

// How long the work's furthest surface towards `out` is along a direction.
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

constexpr double least_bearing = 2.0;  // mm

// The work bears on table and on fence or gauge, and rocks on neither.
bool steady(const Derivation& at, const Step& step) {
  const Vec3 to = outward(step.against);
  return firm(at, step.face) && (step.guide == Guide::marks ||
                                 bearing(at, to, cross(outward(step.face), to)) >= least_bearing);
}

double saw_fitness(const Derivation& at, const Step& step) {
  const model::Saw& saw = at.shop->saw;
  const Setting& set = step.exact;
  const Room room(at, step);
  if (set.tilt > saw.tilt->rad + no_angle) return -1;
  if (set.tilt > no_angle && step.tilts_right != (*saw.tilts == model::Tilts::right)) return -1;
  if (std::abs(set.gauge) > saw.gauge->rad + no_angle) return -1;
  const double needs = set.height > 0 ? set.height : room.up;
  const bool standing = step.position() == Position::on_end;
  // A cut near the foot of standing work takes its wedge off there; the blade need not reach up.
  const double reach = standing && step.tool == Tool::blade ? std::min(needs, room.across) : needs;
  if (reach > between_heights(saw, set.tilt) + tolerance::weld) return -1;
  // The finished length counts: its other end can be cut off first.
  const double stands = std::min(room.up, at.part->size.x);
  if (standing && (saw.tall_fence->mm <= 0 || stands > saw.longest_on_end->mm + tolerance::weld ||
                   std::max(room.feed, room.across) > saw.widest_on_end->mm))
    return -1;
  if (step.guide == Guide::gauge && room.feed / std::cos(set.gauge) > saw.longest_crosscut->mm)
    return -1;
  if (step.guide == Guide::fence &&
      set.distance > (step.reference_right ? saw.rip_right : saw.rip_left)->mm)
    return -1;
  if (step.guide == Guide::marks && room.up > between_heights(saw, set.tilt)) return -1;
  return position_cost(step);
}

double mitre_saw_fitness(const Derivation& at, const Step& step) {
  const model::MitreSaw& saw = at.shop->mitre_saw;
  const Room room(at, step);
  if (!saw.given || step.guide != Guide::gauge || step.exact.height > 0) return -1;
  if (step.exact.tilt > saw.bevel->rad + no_angle) return -1;
  if (std::abs(step.exact.gauge) > saw.mitre->rad + no_angle) return -1;
  if (room.up > saw.thickest->mm ||
      room.feed > saw.widest->mm * std::cos(std::abs(step.exact.gauge)))
    return -1;
  return position_cost(step) + 0.3;
}

double led_fitness(const Derivation& at, const Step& step) {
  if (step.machine == Machine::hand) return 20 + position_cost(step);
  const model::TrackSaw& saw = at.shop->track_saw;
  const Room room(at, step);
  if (!saw.given || step.exact.tilt > saw.tilt->rad + no_angle) return -1;
  if (room.up > saw.depth->mm * std::cos(step.exact.tilt)) return -1;
  const Vec3 line =
      outward(step.stopped) * (step.exact.marks[1].along - step.exact.marks[0].along) +
      outward(step.across_from) * (step.exact.marks[1].across - step.exact.marks[0].across);
  if (norm(line) > saw.longest->mm) return -1;
  return 8 + position_cost(step);
}

// Every way to lie for a guided cut.
std::vector<Lying> guided(const model::Shop& shop) {
  std::vector<Lying> ways;
  for (const Side face : sides) {
    for (const Side against : sides) {
      if (same_axis(face, against) || along_x(against)) continue;
      for (const bool right : {true, false})
        ways.push_back({Machine::table_saw, Guide::fence, face, against, right});
      if (along_x(face)) continue;
      ways.push_back({Machine::table_saw, Guide::gauge, face, against, true});
      if (shop.mitre_saw.given)
        ways.push_back({Machine::mitre_saw, Guide::gauge, face, against, true});
    }
  }
  return ways;
}

void offer(const Derivation& at, std::optional<Step> step, std::optional<Step>& best,
           double& best_fitness) {
  if (!step) return;
  const double fit = fitness(at, *step);
  if (fit < 0 || fit >= best_fitness - 1e-12) return;
  best_fitness = fit;
  best = std::move(step);
}

bool thin(const Derivation& at) { return at.part->size.z < 3.0; }

// Work stands on end only for what is done to that end.
std::optional<Step> best_way(const Derivation& at, const Plane& plane, Side own) {
  std::optional<Step> best;
  double fit = 1e9;
  if (!thin(at))
    for (const Lying& lying : guided(*at.shop)) {
      if (along_x(lying.face) && lying.face != own) continue;
      std::optional<Step> step = set_blade(at, lying, plane);
      // What is kept lies at the reference, and nothing is trapped.
      if (step && step->reference_right == step->waste_right) continue;
      offer(at, std::move(step), best, fit);
    }
  for (const Machine machine : {Machine::table_saw, Machine::track_saw, Machine::hand}) {
    if (thin(at) && machine != Machine::hand) continue;
    for (const Side face : sides)
      for (const bool backwards : {false, true}) {
        if (along_x(face)) continue;
        std::optional<Step> step = set_marks(at, machine, face, plane, backwards);
        offer(at, std::move(step), best, fit);
      }
  }
  return best;
}

}  // namespace

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
  for (const Side side : sides)
    if (!same_axis(side, face) && bearing(at, out, outward(side)) < least_bearing) return false;
  return true;
}

void count_marks_from(Step& step) {
  const bool face_x = along_x(step.face);
  step.stopped = face_x ? Side::y_low : Side::x_low;
  step.across_from = same_axis(step.face, Side::z_low) ? Side::y_low : Side::z_low;
}

Mark mark_at(const Derivation& at, const Step& step, Vec3 point) {
  const Vec3 end = outward(step.stopped), edge = outward(step.across_from);
  return {at.high(end) - dot(end, point), at.high(edge) - dot(edge, point)};
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
  for (const Side side : sides) {
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
  count_marks_from(step);
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

double fitness(const Derivation& at, const Step& step) {
  if (!steady(at, step)) return -1;
  switch (step.machine) {
    case Machine::table_saw: {
      const double fit = saw_fitness(at, step);
      return fit < 0 || step.guide != Guide::marks ? fit : fit + 3 + (step.waste_right ? 0.2 : 0);
    }
    case Machine::mitre_saw:
      return mitre_saw_fitness(at, step);
    default:
      return led_fitness(at, step);
  }
}

Step cut_through(Derivation& at, const Plane& plane, const std::string& name, Side own) {
  std::optional<Step> best = best_way(at, plane, own);
  if (best && best->face == own) {
    // The work stands on the end it is cut at: that end is first made square, to the long point.
    const Vec3 out = outward(own);
    const double box = same_axis(own, Side::x_low)   ? at.part->size.x
                       : same_axis(own, Side::y_low) ? at.part->size.y
                                                     : at.part->size.z;
    const Plane square{out, dot(out, {1, 1, 1}) > 0 ? box : 0};
    if (at.high(out) > square.d + tolerance::weld) {
      at.add(cut_through(at, square, "square to the long point, for " + name, own),
             {square.flipped()});
      best = best_way(at, plane, own);
    }
  }
  if (!best) {
    best.emplace();
    best->row = at.row;
    best->machine = Machine::hand;
    best->guide = Guide::marks;
    best->unproven_why = "No way to set this cut out was found.";
  }
  best->name = name;
  if (best->machine == Machine::hand && !thin(at)) at.without.push_back(name);
  if (best->position() == Position::on_end) best->flags.push_back(Flag::tall_fence);
  return *best;
}

}  // namespace splay::fabrication
