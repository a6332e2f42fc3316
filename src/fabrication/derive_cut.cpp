// Cuts right through: what the machines can do, and the best way to lie for a plane.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/figure.h"
#include "base/tolerance.h"
#include "fabrication/derive.h"
#include "fabrication/sides.h"

namespace splay::fabrication {

using parts::outward;
using parts::Side;

namespace {

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

// The work bears on table and on fence or gauge, and rocks on neither.
bool steady(const Derivation& at, const Step& step) {
  const Vec3 to = outward(step.against);
  return firm(at, step.face) && (step.guide == Guide::marks ||
                                 bearing(at, to, cross(outward(step.face), to)) >= least_bearing);
}

// What the work's end towards `out` still has over the finished part.
double oversize(const Derivation& at, Vec3 out) {
  return at.high(out) - std::max(0.0, dot(out, at.part->size));
}

// The fence reaches so far, and the line of cut is not inside of it. An end with wood to spare is
// squared to the long point before the work stands on it.
bool fence_can(const Derivation& at, const Step& step) {
  const model::Saw& saw = at.shop->saw;
  const double distance = step.exact.distance;
  if (distance > (step.reference_right ? saw.rip_right : saw.rip_left)->mm) return false;
  const bool squared_first = step.position() == Position::on_end && step.tool == Tool::blade &&
                             oversize(at, outward(step.face)) > tolerance::weld;
  return squared_first || distance > -tolerance::weld;
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
  if (step.guide == Guide::fence && !fence_can(at, step)) return -1;
  if (step.guide == Guide::marks && room.up > between_heights(saw, set.tilt)) return -1;
  return position_cost(step) + (too_near_fence(step) ? 6 : 0);
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

// No saw or plane follows a line on a face that the cut runs nearly along.
constexpr double by_hand = 20, along_the_face = 40, most_from_upright = 1.3;  // radians

double led_fitness(const Derivation& at, const Step& step) {
  if (step.machine == Machine::hand)
    return by_hand + position_cost(step) +
           (step.exact.tilt > most_from_upright ? along_the_face : 0);
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
  for (const Side face : all_sides) {
    for (const Side against : all_sides) {
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

// Along marks; packed level where no side of the work lies firm any more, as after tapers all
// round.
void offer_marks(const Derivation& at, const Plane& plane, bool packed, std::optional<Step>& best,
                 double& fit) {
  for (const Machine machine : {Machine::table_saw, Machine::track_saw, Machine::hand}) {
    if (thin(at) && machine != Machine::hand) continue;
    for (const Side face : all_sides)
      for (const bool backwards : {false, true}) {
        if (along_x(face)) continue;
        std::optional<Step> step = set_marks(at, machine, face, plane, backwards);
        if (step && packed) step->flags.push_back(Flag::block);
        offer(at, std::move(step), best, fit);
      }
  }
}

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
  offer_marks(at, plane, false, best, fit);
  if (!best || fit >= along_the_face) offer_marks(at, plane, true, best, fit);
  return best;
}

// Why it is not simply cut flat at the table saw.
void say_why(const Derivation& at, const Plane& plane, Step& step) {
  const double flat = std::asin(std::min(1.0, std::abs(plane.n.z)));
  const std::string past = "Flat it would need a tilt of " + degrees_text(Angle{flat}.degrees()) +
                           "; the saw tilts to " + degrees_text(at.shop->saw.tilt->degrees()) + ".";
  const bool too_steep = flat > at.shop->saw.tilt->rad + no_angle;
  if (step.position() == Position::on_end) {
    step.flags.push_back(Flag::tall_fence);
    if (step.exact.distance < step.exact.width) step.flags.push_back(Flag::sacrificial);
    if (too_steep && step.exact.tilt > 0) step.flags.push_back(Flag::complement);
  }
  // Nearly along the face it is no cut that anyone would make flat.
  const bool across = std::abs(plane.n.z) < 0.97;
  const bool plain = step.machine == Machine::table_saw && step.position() == Position::flat;
  if (!plain && too_steep && across && std::abs(plane.n.y) < 0.7) step.remark = past;
  if (step.machine == Machine::hand || step.machine == Machine::track_saw)
    step.flags.push_back(Flag::chosen_way);
}

}  // namespace

bool too_near_fence(const Step& step) {
  return step.machine == Machine::table_saw && step.guide == Guide::fence &&
         step.tool == Tool::blade && step.position() != Position::on_end &&
         step.exact.distance < least_at_fence;
}

double fitness(const Derivation& at, const Step& step) {
  if (!step.has(Flag::block) && !steady(at, step)) return -1;
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
  say_why(at, plane, *best);
  return *best;
}

}  // namespace splay::fabrication
