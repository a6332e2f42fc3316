#include "joinery/screw.h"

#include <cmath>
#include <numbers>

#include "base/tolerance.h"

namespace splay::joinery {

using model::may;
using model::Range;

namespace {

// Shank diameter of a wood screw of gauge N: 0.060 + 0.013 N in (ANSI/ASME B18.6.1, from memory).
double shank(int gauge) { return Length::inches(0.060 + 0.013 * gauge).mm; }
// The root of the thread is about two thirds of the shank (USDA Wood Handbook, FPL-GTR-190, ch. 8).
double root(int gauge) { return shank(gauge) * 2 / 3; }
// Flat heads are about twice the shank wide and have an angle of 82 degrees (from memory).
double head(int gauge) { return shank(gauge) * 2; }
constexpr double half_head_angle = 41 * std::numbers::pi / 180;

double up_to(double mm, double step) { return std::ceil(mm / step - 1e-9) * step; }

// Screws of one joint: from the first part's outer face through the bed into the second.
struct Screws {
  const ScrewKind& kind;
  const parts::Builder& builder;
  const Stick &first, &second;
  const Bed& bed;
  int side;  // of the bed that the second part is on: 1 for the guest
  Vec3 way;

  double length_for(double thick) const {
    if (kind.length.given) return kind.length->mm;
    return up_to(thick + 7 * shank(*kind.gauge), Length::inches(0.25).mm);
  }
  std::string drill(Vec3 at, Draft& draft) const;
  std::string drill_holes(Vec3 at, const Exit& exit, double into, Draft& draft) const;
  void sink_head(Vec3 top, const Exit& exit, double sunk, Draft& draft) const;
};

std::string Screws::drill(Vec3 at, Draft& draft) const {
  const Exit exit = way_out(draft.body(first.index), at, -way);
  const double sunk = kind.counterbore.given ? kind.counterbore->mm : 0;
  const double thick = exit.distance - sunk;
  if (thick < tolerance::weld) return "The counterbore is as deep as " + first.name + " is thick.";
  const double whole = length_for(thick);
  if (whole < thick + root(*kind.gauge))
    return "Screws of " + figure(builder, whole) + " do not reach from " + first.name + ", " +
           figure(builder, thick) + " thick, into " + second.name + ".";
  if (std::string fault = drill_holes(at, exit, whole - thick, draft); !fault.empty()) return fault;
  const Vec3 top = at - way * thick;
  sink_head(top, exit, sunk, draft);
  const std::string size =
      "#" + std::to_string(*kind.gauge) + " x " + builder.project().job.figures().with_unit(whole);
  draft.fit({"screw", size, top, way, shank(*kind.gauge), whole, {first.index, second.index}, ""});
  return "";
}

std::string Screws::drill_holes(Vec3 at, const Exit& exit, double into, Draft& draft) const {
  const double clearance = kind.clearance.given
                               ? kind.clearance->mm
                               : up_to(shank(*kind.gauge), Length::inches(1.0 / 64).mm);
  const double pilot = kind.pilot.given ? kind.pilot->mm : root(*kind.gauge) * 0.9;
  const std::vector<Plane> wide = cylinder(at, way, clearance / 2);
  const std::vector<Plane> narrow = cylinder(at, way, pilot / 2);
  Region through = wide;
  through.push_back(side > 0 ? bed.plane : bed.plane.flipped());
  through.push_back(exit.plane);
  if (!inside(through, draft.body(first.index)))
    return "The screw holes would break out of a side of " + first.name + ".";
  const Region lead = pocket(narrow, bed, at, way * side, side, into);
  if (!inside(lead, draft.body(second.index)))
    return "The screws go " + figure(builder, into) + " into " + second.name +
           " and would come out of it.";
  draft.remove(first.index, parts::OperationKind::hole, through,
               "clearance hole for the screw to " + second.name, {wide});
  draft.remove(second.index, parts::OperationKind::hole, lead,
               "pilot hole for the screw from " + first.name, {narrow});
  return "";
}

void Screws::sink_head(Vec3 top, const Exit& exit, double sunk, Draft& draft) const {
  const double radius = head(*kind.gauge) / 2;
  if (kind.countersink.value) {
    const Vec3 tip = top + way * (radius / std::tan(half_head_angle));
    const std::vector<Plane> seat = cone(tip, -way, half_head_angle, radius);
    Region region = seat;
    region.push_back(sunk > 0 ? Plane::through(top, -way) : exit.plane);
    draft.remove(first.index, parts::OperationKind::hole, region,
                 "countersink for the screw to " + second.name, {seat});
  }
  if (sunk <= 0) return;
  const std::vector<Plane> wide = cylinder(top, way, radius);
  Region region = wide;
  region.push_back(Plane::through(top, way));
  region.push_back(exit.plane);
  draft.remove(first.index, parts::OperationKind::hole, region,
               "counterbore for the screw to " + second.name, {wide});
}

}  // namespace

void ScrewKind::fields(model::FieldVisitor& visit) {
  model::choose<ScrewThrough, 2>(
      visit,
      may("through", "the part a screw goes through: the one that takes the end, or the end's"),
      through, {"host", "guest"});
  visit.count(may("gauge", "number of the screw; its shank is 0.060 + 0.013 x number inches"),
              gauge, Range::between(2, 24));
  visit.length(may("length", "length of the screw",
                   "seven shanks into the second part, up to the next 1/4 in; common practice"),
               length, Range::size());
  visit.length(may("clearance", "diameter of the hole in the first part",
                   "the shank up to the next 1/64 in, common practice"),
               clearance, Range::size());
  visit.length(may("pilot", "diameter of the hole in the second part",
                   "nine tenths of the thread's root, for hardwood (USDA Wood Handbook, ch. 8)"),
               pilot, Range::size());
  visit.length(may("counterbore", "how deep the head lies below the face", "level with it"),
               counterbore, Range::size());
  visit.flag(may("countersink", "a cone for a flat head"), countersink);
  row_fields(visit);
  bed_field(visit);
}

std::string ScrewKind::shape(parts::Builder& builder, int host, int guest) const {
  const Stick h = stick(builder, host), g = stick(builder, guest);
  Draft draft(builder, "screw", host, guest);
  Bed bed;
  if (std::string fault = lay_bed(builder, h, g, draft, bed); !fault.empty()) return fault;
  std::vector<Vec3> at;
  if (std::string fault = places(builder, bed, head(*gauge), at); !fault.empty()) return fault;
  const bool by_host = through.value == ScrewThrough::host;
  const int side = by_host ? 1 : -1;
  const Screws screws{*this, builder, by_host ? h : g,    by_host ? g : h,
                      bed,   side,    axis(g, bed) * side};
  for (const Vec3 point : at)
    if (std::string fault = screws.drill(point, draft); !fault.empty()) return fault;
  return draft.carry_out(builder);
}

}  // namespace splay::joinery
