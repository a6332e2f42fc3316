#include "fabrication/edging.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "base/index.h"
#include "base/tolerance.h"

namespace splay::fabrication {

using parts::Operation;
using parts::OperationKind;
using parts::Part;
using parts::Side;

namespace {

constexpr double no_wood = 1e-6;  // mm3

bool flush(double a, double b) { return std::abs(a - b) < tolerance::on_plane; }

// From a strip's frame to its panel's.
Plane onto(const Part& panel, const Part& strip, const Plane& plane) {
  return panel.place.local_plane(strip.place.plane(plane));
}

Box box_in(const Part& panel, const Part& strip) {
  Box box;
  for (const Vec3& p : strip.world.vertices()) box.add(panel.place.local_point(p));
  return box;
}

std::optional<Edging> edging_on(const parts::Assembly& all, const parts::Joint& joint) {
  const int strip = joint.between.front(), panel = joint.between.back();
  const Part& core = all.parts[index(panel)];
  const Box box = box_in(core, all.parts[index(strip)]);
  const bool over = flush(box.low.z, 0) && flush(box.high.z, core.size.z) &&
                    box.low.x > -tolerance::on_plane &&
                    box.high.x < core.size.x + tolerance::on_plane;
  if (!over) return {};
  const double thick = box.high.y - box.low.y;
  if (flush(box.high.y, 0)) return Edging{strip, Side::y_low, thick, {{0, -1, 0}, 0}};
  if (flush(box.low.y, core.size.y))
    return Edging{strip, Side::y_high, thick, {{0, 1, 0}, core.size.y}};
  return {};
}

// Cuts of a strip that no cut of its panel makes too, in the panel's frame and beyond the seam.
void add_own_cuts(const parts::Assembly& all, const std::vector<Edging>& edging, Part& whole) {
  Solid work = Solid::box({0, 0, 0}, whole.size);
  for (const Edging& each : edging) {
    const bool low = each.side == Side::y_low;
    work.add_disjoint(
        Solid::box({0, low ? -each.thickness : whole.size.y, 0},
                   {whole.size.x, low ? 0 : whole.size.y + each.thickness, whole.size.z}));
  }
  for (const Operation& operation : whole.operations) work.subtract(operation.removed);
  for (const Edging& each : edging) {
    const Part& strip = all.parts[index(each.strip)];
    for (const Operation& operation : strip.operations) {
      Region removed{each.seam.flipped()};
      for (const Plane& plane : operation.removed) removed.push_back(onto(whole, strip, plane));
      Solid more = work;
      more.keep(removed);
      if (more.empty() || more.volume() < no_wood) continue;
      work.subtract(removed);
      whole.operations.push_back(
          {OperationKind::notch, operation.name, operation.joint, removed, {}, {}});
    }
  }
}

}  // namespace

std::vector<Edging> edging_of(const parts::Assembly& all, int part) {
  std::vector<Edging> found;
  for (const parts::Joint& joint : all.joints) {
    if (joint.made != parts::Made::before_cuts || joint.between.size() != 2) continue;
    if (joint.between.back() != part) continue;
    if (const std::optional<Edging> edging = edging_on(all, joint)) found.push_back(*edging);
  }
  return found;
}

int panel_of(const parts::Assembly& all, int part) {
  for (const parts::Joint& joint : all.joints)
    if (joint.made == parts::Made::before_cuts && joint.between.size() == 2 &&
        joint.between.front() == part && edging_on(all, joint))
      return joint.between.back();
  return -1;
}

Part as_cut(const parts::Assembly& all, int part) {
  Part whole = all.parts[index(part)];
  const std::vector<Edging> edging = edging_of(all, part);
  if (edging.empty()) return whole;
  for (const Edging& each : edging) {
    const Part& strip = all.parts[index(each.strip)];
    whole.body.add_disjoint(strip.body.transformed(whole.place.inverse() * strip.place));
  }
  add_own_cuts(all, edging, whole);
  return whole;
}

Solid panel_share(Solid whole, const std::vector<Edging>& edging) {
  for (const Edging& each : edging) whole.keep(each.seam);
  return whole;
}

Solid strip_share(Solid whole, const parts::Assembly& all, int panel, const Edging& edging) {
  whole.keep(edging.seam.flipped());
  return whole.transformed(all.parts[index(edging.strip)].place.inverse() *
                           all.parts[index(panel)].place);
}

}  // namespace splay::fabrication
