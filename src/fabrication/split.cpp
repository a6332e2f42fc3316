#include "fabrication/split.h"

#include <algorithm>
#include <cmath>

#include "base/tolerance.h"
#include "fabrication/derive.h"
#include "parts/audit.h"

namespace splay::fabrication {

using parts::Operation;
using parts::OperationKind;
using parts::Part;

namespace {

struct Seam {
  double x = 0;
  std::string where;  // "in the housing for middle partition"
};

// The housing nearest to the middle whose two sides are both short enough; else the middle.
Seam choose_seam(const Part& part, double longest) {
  Seam seam{part.size.x / 2, "in the middle"};
  double off = 1e300;
  for (const Operation& operation : part.operations) {
    if (operation.kind != OperationKind::housing || operation.trench.walls.size() != 2) continue;
    const Plane &one = operation.trench.walls[0], &other = operation.trench.walls[1];
    if (std::abs(one.n.x) < 0.7 || std::abs(other.n.x) < 0.7) continue;
    const double z = part.size.z / 2, y = part.size.y / 2;
    const auto at = [&](const Plane& wall) {
      return (wall.d - wall.n.y * y - wall.n.z * z) / wall.n.x;
    };
    const double x = (at(one) + at(other)) / 2, away = std::abs(x - part.size.x / 2);
    if (away >= off || std::max(x, part.size.x - x) > longest) continue;
    off = away;
    seam = {x, "in the " + operation.name};
  }
  return seam;
}

bool touches(const Operation& operation, Vec3 low, Vec3 high) {
  Solid box = Solid::box(low, high);
  box.keep(operation.removed);
  return !box.empty() && box.volume() > 1e-6;
}

Plane shifted(const Plane& plane, double by) { return {plane.n, plane.d - plane.n.x * by}; }

void shift(Part& part, double by) {
  part.body = part.body.transformed({{1, 0, 0}, {0, 1, 0}, {0, 0, 1}, {-by, 0, 0}});
  part.place.origin = part.place.point({by, 0, 0});
  for (Operation& operation : part.operations) {
    for (Plane& plane : operation.removed) plane = shifted(plane, by);
    operation.cut = shifted(operation.cut, by);
    operation.trench.floor = shifted(operation.trench.floor, by);
    for (Plane& plane : operation.trench.walls) plane = shifted(plane, by);
    for (Plane& plane : operation.trench.stops) plane = shifted(plane, by);
  }
}

Part half_of(const Part& whole, const Seam& seam, bool second, const std::string& joint) {
  Part half = whole;
  half.name = whole.name + (second ? ", second length" : ", first length");
  const Plane end = second ? Plane{{-1, 0, 0}, -seam.x} : Plane{{1, 0, 0}, seam.x};
  half.body.keep(end);
  half.operations.clear();
  const Vec3 low{second ? seam.x : 0, 0, 0};
  const Vec3 high{second ? whole.size.x : seam.x, whole.size.y, whole.size.z};
  for (const Operation& operation : whole.operations)
    if (touches(operation, low, high)) half.operations.push_back(operation);
  half.operations.push_back({OperationKind::end_cut, "seam", joint, {end.flipped()}, end, {}});
  half.measures.clear();
  half.remarks.push_back("One of two lengths of " + whole.name + ", glued end to end " +
                         seam.where + ".");
  if (second) shift(half, seam.x);
  half.size = half.body.bounds().high;
  half.world = half.body.transformed(half.place);
  return half;
}

// Mates and ends of joints go to the length that has the surface.
void divide_joint(parts::Joint& joint, int first, int second, const parts::Assembly& assembly) {
  if (std::find(joint.between.begin(), joint.between.end(), first) == joint.between.end()) return;
  std::vector<parts::Mate> mates;
  bool at_first = false, at_second = false;
  for (const parts::Mate& mate : joint.mates) {
    if (mate.a != first && mate.b != first) {
      mates.push_back(mate);
      continue;
    }
    for (const int which : {first, second}) {
      parts::Mate divided = mate;
      (mate.a == first ? divided.a : divided.b) = which;
      const auto world = [&](int part) -> const Solid& {
        return assembly.parts[static_cast<std::size_t>(part)].world;
      };
      if (parts::measure(divided, world(divided.a), world(divided.b)).area < 1e-3) continue;
      (which == first ? at_first : at_second) = true;
      mates.push_back(divided);
    }
  }
  joint.mates = std::move(mates);
  if (!at_second) return;
  if (!at_first) {
    std::replace(joint.between.begin(), joint.between.end(), first, second);
    return;
  }
  joint.between.push_back(second);
  // Edging that runs over the seam waits for it.
  if (joint.made == parts::Made::before_cuts) joint.made = parts::Made::before_assembly;
}

void divide_fittings(parts::Assembly& assembly, int first, int second, const Plane& seam) {
  for (parts::Fitting& fitting : assembly.fittings)
    if (seam.distance(fitting.at) > 0)
      std::replace(fitting.parts.begin(), fitting.parts.end(), first, second);
}

void split(Plan& plan, std::size_t index, double longest) {
  parts::Assembly& assembly = plan.assembly;
  const Part whole = assembly.parts[index];
  const Seam seam = choose_seam(whole, longest);
  const FigureStyle style = plan.project->job.figures();
  if (std::max(seam.x, whole.size.x - seam.x) > longest + tolerance::weld) {
    plan.findings.push_back({Level::stop,
                             "split-still-too-long",
                             {whole.name},
                             "Half of " + whole.name + " is still longer than the " +
                                 style.with_unit(longest) + " that can stand on end.",
                             "Choose another way with saw.beyond, or a shorter part."});
    return;
  }
  const int first = static_cast<int>(index), second = static_cast<int>(assembly.parts.size());
  const std::string name = whole.name + ", seam";
  assembly.parts[index] = half_of(whole, seam, false, name);
  assembly.parts.push_back(half_of(whole, seam, true, name));
  for (parts::Joint& joint : assembly.joints) divide_joint(joint, first, second, assembly);
  const Plane plane = whole.place.plane({{1, 0, 0}, seam.x});
  divide_fittings(assembly, first, second, plane);
  assembly.joints.push_back(
      {name, "glued", {first, second}, 0, {{first, second, plane}}, parts::Made::before_assembly});
  plan.findings.push_back(
      {Level::note,
       "split",
       {whole.name},
       whole.name + " is " + style.with_unit(whole.size.x) +
           " long, too long to stand on end at the saw; it is made of two lengths glued end to "
           "end " +
           seam.where + ", " + style.with_unit(seam.x) + " from its " +
           parts::side_name(whole, parts::Side::x_low) + ".",
       "An end-grain seam holds little by itself: put a spline or dowels across it, or back it."});
}

}  // namespace

void split_long_parts(Plan& plan) {
  const model::Saw& saw = plan.project->shop.saw;
  if (*saw.beyond != model::Beyond::split) return;
  const std::size_t whole_parts = plan.assembly.parts.size();
  for (std::size_t i = 0; i < whole_parts; ++i) {
    const Part& part = plan.assembly.parts[i];
    if (part.size.x <= saw.longest_on_end->mm) continue;
    if (!derive_steps(*plan.project, part, 0).without.empty())
      split(plan, i, saw.longest_on_end->mm);
  }
}

}  // namespace splay::fabrication
