// Pockets that no tool makes in one go: the saw cuts the shoulder line, a router or drill on a
// sloped jig or the upright one takes the waste, and what is left is pared by hand.
#include <algorithm>
#include <cmath>

#include "base/tolerance.h"
#include "fabrication/derive.h"
#include "fabrication/sides.h"

namespace splay::fabrication {

using parts::outward;
using parts::Side;

namespace {

constexpr double steepest_jig = 30;  // degrees: a tool stands on no steeper wedge; common practice
constexpr double worthwhile = 0.3;   // of the waste: for less no machine is set up
constexpr double nothing = 1e-6;     // mm3

double left_of(const Solid& work, const Region& region) {
  Solid rest = work;
  rest.keep(region);
  return rest.empty() ? 0 : rest.volume();
}

// The least that the hollow's corners on a plane reach along a direction.
double least_on(const Solid& hollow, const Plane& plane, Vec3 along) {
  double least = 1e300;
  for (const Vec3& p : hollow.vertices())
    if (std::abs(plane.distance(p)) < 1e-5) least = std::min(least, dot(along, p));
  return least;
}

// Which way a straight tool goes into the pocket: along as many walls as it can.
Vec3 tool_axis(const Pocket& pocket) {
  const Vec3 up = -outward(pocket.open);
  Vec3 best = up;
  long most = -1;
  const auto offer = [&](Vec3 axis) {
    if (dot(axis, up) < 0) axis = -axis;
    const auto along = std::count_if(pocket.walls.begin(), pocket.walls.end(), [&](const Plane& w) {
      return std::abs(dot(w.n, axis)) < no_angle;
    });
    if (along <= most) return;
    most = along;
    best = axis;
  };
  offer(up);
  for (const Plane& wall : pocket.walls) {
    const Vec3 in_wall = up - wall.n * dot(up, wall.n);
    if (norm(in_wall) > 0.1) offer(unit(in_wall));
    for (const Plane& other : pocket.walls)
      if (const Vec3 line = cross(wall.n, other.n); norm(line) > 1e-3) offer(unit(line));
  }
  return best;
}

// What of the pocket a straight tool along an axis clears and no more: walls that lean otherwise
// are kept clear of, and the floor is square to the tool.
std::optional<Pocket> within(const Derivation& at, const Pocket& pocket, Vec3 axis) {
  const Solid hollow = hollow_of(at, pocket);
  if (hollow.empty()) return {};
  Pocket inner;
  inner.open = pocket.open;
  for (const Plane& wall : pocket.walls) {
    const double leans = dot(wall.n, axis);
    if (std::abs(leans) < no_angle) {
      inner.walls.push_back(wall);
      continue;
    }
    const Vec3 n = unit(wall.n - axis * leans);
    inner.walls.push_back({n, least_on(hollow, wall, n)});
  }
  if (pocket.floor) inner.floor = {axis, least_on(hollow, *pocket.floor, axis)};
  for (const Plane& plane : planes_of(inner))
    if (std::abs(plane.d) > 1e200) return {};
  const double all = left_of(at.work, planes_of(pocket));
  if (left_of(at.work, planes_of(inner)) < worthwhile * all) return {};
  return inner;
}

// A router on a wedge, or the drill with its table tilted, for walls along one leaning axis.
std::optional<Step> on_jig(const Derivation& at, const Pocket& pocket, Vec3 axis) {
  Step step = by_lines(at, pocket);
  const Vec3 up = -outward(pocket.open), to = outward(step.against);
  step.exact.tilt = std::atan2(norm(cross(axis, up)), dot(axis, up));
  if (step.exact.tilt < no_angle || step.has(Flag::block)) return {};
  step.exact.gauge = std::atan2(-dot(axis, to), dot(axis, cross(up, to)));
  for (Line& line : step.exact.lines) line.lean = 0;
  double deep = (at.high(outward(pocket.open)) + at.high(up)) / std::cos(step.exact.tilt);
  step.exact.depths.clear();
  if (pocket.floor) {
    const Vec3 mouth = hollow_of(at, pocket).centroid();
    const Vec3 out = outward(pocket.open);
    const Vec3 on_face = mouth - axis * ((dot(out, mouth) - at.high(out)) / dot(out, axis));
    deep = pocket.floor->d - dot(pocket.floor->n, on_face);
    step.exact.depths = {{mark_at(at, step, on_face), deep}};
  }
  const bool routed = deep <= at.shop->router.deepest->mm &&
                      step.exact.tilt <= Angle::degrees(steepest_jig).rad + no_angle;
  const bool drilled =
      pocket.floor && pocket.walls.size() > 2 && step.exact.tilt <= at.shop->drill.tilt->rad;
  if (!routed && !drilled) return {};
  step.machine = routed ? Machine::router : Machine::drill;
  step.flags.push_back(Flag::sloped_jig);
  if (pocket.walls.size() > 2) step.flags.push_back(Flag::square_corners);
  return step;
}

// One wall and a floor along the face: the saw cuts along the wall down to the floor's level.
std::optional<Step> shoulder_kerf(const Derivation& at, const Pocket& pocket) {
  if (!pocket.floor || pocket.walls.size() != 1) return {};
  const Vec3 out = outward(pocket.open);
  if (dot(pocket.floor->n, -out) < 1 - 1e-12) return {};
  std::optional<Step> best;
  double fit = 1e9;
  for (const Side against : all_sides) {
    if (same_axis(against, pocket.open) || along_x(against) || along_x(pocket.open)) continue;
    std::optional<Step> step =
        set_blade(at, {Machine::table_saw, Guide::gauge, pocket.open, against, true},
                  pocket.walls.front().flipped());
    if (!step || step->exact.tilt < no_angle) continue;
    step->exact.height = pocket.floor->d + at.high(out);
    step->cuts_through = false;
    const double here = fitness(at, *step);
    if (here < 0 || here >= fit) continue;
    fit = here;
    best = std::move(step);
  }
  if (best) best->flags.push_back(Flag::guard_off);
  return best;
}

// The kerf as it stands in the part: what the saw takes of the pocket.
Region kerf_region(const Step& step, const Pocket& pocket) {
  const Plane wall = pocket.walls.front().flipped();
  const Vec3 up = -outward(pocket.open);
  const Vec3 blade = unit(up - wall.n * dot(up, wall.n));
  const double lift = std::max(0.0, dot(up, wall.n) * step.exact.width);
  // Where the blade's middle line through the wall's foot ends.
  const double table = pocket.floor->d - step.exact.height;
  const double top = (step.exact.height - lift) / dot(blade, up);
  const Vec3 line = cross(wall.n, up);
  const Vec3 in_face = unit(cross(up, line));
  const double slope = dot(wall.n, in_face);
  const Vec3 foot = up * table + in_face * ((wall.d - dot(wall.n, up) * table) / slope);
  return {wall.flipped(),
          {wall.n, wall.d + step.exact.width},
          Plane::through(foot + blade * top, blade)};
}

// What a machine takes of a pocket.
struct Waste {
  Step step;
  Region region;
  double volume = 0;
};

std::optional<Waste> waste_along(const Derivation& at, const Pocket& pocket, Vec3 axis) {
  const std::optional<Pocket> inner = within(at, pocket, axis);
  if (!inner) return {};
  const bool leans = norm(cross(axis, outward(pocket.open))) > no_angle;
  std::optional<Step> step = leans ? on_jig(at, *inner, axis) : by_stack(at, *inner);
  if (!step && !leans) step = by_lines(at, *inner);
  if (!step || step->machine == Machine::hand) return {};
  Region region = planes_of(*inner);
  const double volume = left_of(at.work, region);
  return Waste{std::move(*step), std::move(region), volume};
}

// Along the walls or upright, whichever takes more; after the saw's line upright.
std::optional<Waste> most_waste(const Derivation& at, const PocketJob& job) {
  std::optional<Waste> upright = waste_along(at, job.pocket, -outward(job.pocket.open));
  if (job.begun) return upright;
  std::optional<Waste> along = waste_along(at, job.pocket, tool_axis(job.pocket));
  return !along || (upright && upright->volume > along->volume + nothing) ? upright : along;
}

// Where there is no stack for a slot that leans with its walls, the blade takes it in passes.
bool pass_by_pass(Derivation& at, const PocketJob& job) {
  const bool leans = std::any_of(job.pocket.walls.begin(), job.pocket.walls.end(), [&](Plane wall) {
    return std::abs(dot(wall.n, outward(job.pocket.open))) > no_angle;
  });
  if (!leans) return false;
  const std::vector<Pocket> passes = by_passes(at, job.pocket);
  if (passes.empty()) return false;
  for (std::size_t i = 0; i < passes.size(); ++i) {
    std::optional<Step> step = by_stack(at, passes[i]);
    if (!step) return false;
    const bool last = i + 1 == passes.size();
    step->name =
        job.name + ", pass " + std::to_string(i + 1) + " of " + std::to_string(passes.size());
    if (last) step->operations = {job.operation};
    at.add(std::move(*step), planes_of(passes[i]));
  }
  return true;
}

}  // namespace

void begin_pocket(Derivation& at, PocketJob& job) {
  if (by_stack(at, job.pocket) || by_lines(at, job.pocket).machine != Machine::hand) return;
  std::optional<Step> kerf = shoulder_kerf(at, job.pocket);
  if (!kerf) return;
  kerf->name = job.name + ", the line";
  const Region region = kerf_region(*kerf, job.pocket);
  at.add(std::move(*kerf), region);
  job.begun = true;
}

bool machine_pocket(Derivation& at, PocketJob& job) {
  const Region whole = planes_of(job.pocket);
  const auto finish = [&](Step step, const std::string& how) {
    step.name = job.name + how;
    step.operations = {job.operation};
    at.add(std::move(step), whole);
    return true;
  };
  if (std::optional<Step> step = by_stack(at, job.pocket)) return finish(std::move(*step), "");
  if (pass_by_pass(at, job)) return true;
  Step lines = by_lines(at, job.pocket);
  if (lines.machine != Machine::hand) return finish(std::move(lines), "");
  const std::optional<Waste> waste = most_waste(at, job);
  if (!waste) return false;
  Solid after = at.work;
  after.subtract(waste->region);
  if (left_of(after, whole) < nothing) return finish(waste->step, job.begun ? ", the waste" : "");
  Step step = waste->step;
  step.name = job.name + ", the waste";
  step.cuts_through = false;
  at.add(std::move(step), waste->region);
  job.begun = true;
  return false;
}

void pare_pocket(Derivation& at, const PocketJob& job) {
  Step step = by_lines(at, job.pocket);
  step.name = job.name + (job.begun ? ", pared" : "");
  if (job.begun) step.machine = Machine::hand;
  step.operations = {job.operation};
  at.add(std::move(step), planes_of(job.pocket));
}

}  // namespace splay::fabrication
