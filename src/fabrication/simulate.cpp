#include "fabrication/simulate.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace splay::fabrication {

using parts::outward;
using parts::Side;

namespace {

constexpr double touching = 1e-5;      // mm: vertices nearer than this to a surface touch it
constexpr double least_contact = 1.0;  // mm: a shorter contact does not keep the work from rocking

double high(const Solid& work, Vec3 way) { return work.extent(way)[1]; }

// A place on `face`.
Vec3 place_of(const Step& step, const Solid& work, const Mark& mark) {
  const Vec3 end = outward(step.stopped), edge = outward(step.across_from),
             face = outward(step.face);
  return end * (marks_start(step, work, step.stopped) - mark.along) +
         edge * (marks_start(step, work, step.across_from) - mark.across) + face * high(work, face);
}

// How far the points where the work touches a plane reach along a direction; `at` is the furthest
// the work goes along `way`.
double contact_along(const Solid& work, Vec3 way, double at, Vec3 direction) {
  double low = 1e300, top = -1e300;
  for (const Vec3& p : work.vertices()) {
    if (dot(way, p) < at - touching) continue;
    low = std::min(low, dot(direction, p));
    top = std::max(top, dot(direction, p));
  }
  return top - low;
}

// Not on an edge alone: what touches the table is as wide as that across its longest line.
bool lies_flat(const Solid& work, Side face) {
  const Vec3 way = outward(face);
  const double at = high(work, way) - touching;
  std::vector<Vec3> touch;
  for (const Vec3& p : work.vertices())
    if (dot(way, p) >= at) touch.push_back(p);
  const auto furthest = [&](Vec3 from) {
    return *std::ranges::max_element(touch, {}, [&](Vec3 p) { return norm(p - from); });
  };
  // Any point's furthest is an end of a line nearly as long as the longest.
  const Vec3 begin = furthest(touch.front()), line = furthest(begin) - begin;
  if (norm(line) <= least_contact) return false;
  const Vec3 across = cross(way, unit(line));
  return contact_along(work, way, at + touching, across) > least_contact;
}

Rigid square_frame(const Step& step) {
  const Vec3 z = -outward(step.face);
  const Vec3 toward = outward(step.against);
  if (step.guide == Guide::fence) {
    const Vec3 x = step.reference_right ? toward : -toward;
    return {x, cross(z, x), z, {}};
  }
  return {cross(-toward, z), -toward, z, {}};
}

std::string lay_at_fence(const Step& step, const Setting& setting, const Solid& work,
                         Rigid& machine) {
  const Vec3 toward = outward(step.against);
  const double at = high(work, toward);
  if (contact_along(work, toward, at, machine.ey) < least_contact)
    return "the work rocks against the fence";
  machine.origin = toward * (at - setting.distance) + outward(step.face) * high(work, -machine.ez);
  return "";
}

std::string lay_at_gauge(const Step& step, const Setting& setting, const Solid& work,
                         Rigid& machine) {
  const Vec3 toward = outward(step.against), along = machine.ex;
  const double at = high(work, toward);
  if (contact_along(work, toward, at, along) < least_contact)
    return "the work rocks against the gauge";
  const Vec3 stop = step.reference_right ? along : -along;
  if (dot(stop, outward(step.stopped)) < 0.5) return "the end at the stop is not the one named";
  machine.origin = toward * at + stop * (high(work, stop) - setting.distance) +
                   outward(step.face) * high(work, -machine.ez);
  const double c = std::cos(setting.gauge), s = std::sin(setting.gauge);
  const Vec3 x = machine.ex, y = machine.ey;
  machine.ex = x * c - y * s;
  machine.ey = x * s + y * c;
  return "";
}

std::string lay_on_marks(const Step& step, const Setting& setting, const Solid& work,
                         Rigid& machine) {
  if (step.tool == Tool::clear || step.tool == Tool::follow) {
    machine.origin = place_of(step, work, {});
    return "";
  }
  if (setting.marks.empty()) return "there is no mark to line up";
  machine.origin = place_of(step, work, setting.marks.front());
  if (step.tool == Tool::bore) {
    const double c = std::cos(setting.gauge), s = std::sin(setting.gauge);
    const Vec3 x = machine.ex, y = machine.ey;
    machine.ex = x * c - y * s;
    machine.ey = x * s + y * c;
    return "";
  }
  if (setting.marks.size() < 2) return "one mark does not give a line";
  const Vec3 line = place_of(step, work, setting.marks[1]) - machine.origin;
  if (norm(line) < least_contact) return "the marks are too near each other";
  machine.ey = unit(line);
  machine.ex = cross(machine.ey, machine.ez);
  return "";
}

// The blade's own directions in the machine frame: from the table up along it, and to its right.
struct Blade {
  Vec3 up, right;
  Blade(double tilt, bool to_right)
      : up{(to_right ? 1 : -1) * std::sin(tilt), 0, std::cos(tilt)}, right{cross({0, 1, 0}, up)} {}
};

Region blade_region(const Step& step, const Setting& setting) {
  const Blade blade(setting.tilt, step.tilts_right);
  const Vec3 away = step.waste_right ? blade.right : -blade.right;
  Region region = {{-away, 0}};
  const bool through = step.tool == Tool::blade && setting.height == 0;
  // What a cut right through leaves on the waste side falls away, kerf and all.
  if (through) return region;
  region.push_back({away, setting.width});
  const double top = setting.height - std::max(0.0, away.z * setting.width);
  region.push_back({blade.up, top / std::cos(setting.tilt)});
  return region;
}

// Which way a tool on a sloped jig goes into the wood, in the machine frame turned to the marks.
Vec3 jig_axis(const Setting& setting) {
  const Vec3 right{std::cos(setting.gauge), std::sin(setting.gauge), 0};
  return right * std::sin(setting.tilt) + Vec3{0, 0, 1} * std::cos(setting.tilt);
}

Region clear_region(const Step& step, const Setting& setting, const Rigid& machine,
                    const Solid& work) {
  const auto local = [&](const Mark& mark) {
    return machine.local_point(place_of(step, work, mark));
  };
  const bool sloped = setting.tilt > 0;
  const Vec3 axis = jig_axis(setting);
  Region region;
  for (const Line& line : setting.lines) {
    const Vec3 a = local(line.a), b = local(line.b);
    const Vec3 into = sloped ? unit(cross(b - a, axis))
                             : cross(unit(b - a), {0, 0, 1}) * std::cos(line.lean) +
                                   Vec3{0, 0, 1} * std::sin(line.lean);
    region.push_back(Plane::through(a, -into));
  }
  if (setting.depths.size() == 1) {
    const DepthMark& depth = setting.depths.front();
    if (sloped)
      region.push_back(Plane::through(local(depth.at) + axis * depth.depth, axis));
    else
      region.push_back({{0, 0, 1}, depth.depth});
  }
  if (setting.depths.size() == 3) {
    std::array<Vec3, 3> p;
    for (std::size_t i = 0; i < 3; ++i)
      p[i] = local(setting.depths[i].at) + Vec3{0, 0, 1} * setting.depths[i].depth;
    const Vec3 n = cross(p[1] - p[0], p[2] - p[0]);
    region.push_back(Plane::through(p[0], n.z > 0 ? n : -n));
  }
  return region;
}

Region bore_region(const Setting& setting) {
  const Blade bit(setting.tilt, true);
  const Vec3 across = cross(bit.up, bit.right);
  Region region;
  for (int i = 0; i < setting.facets; ++i) {
    const double at = setting.facet_turn + 2 * std::numbers::pi * i / setting.facets;
    region.push_back({bit.right * std::cos(at) + across * std::sin(at), setting.width / 2});
  }
  if (setting.height > 0) region.push_back({bit.up, setting.height});
  return region;
}

// A strip from end to end and from face to face, pressed on until it touches.
void glue_on(const Step& step, const Setting& setting, Solid& work) {
  Box strip = work.bounds();
  const auto side = static_cast<int>(step.against);
  const bool at_high = (side & 1) != 0;
  const auto along = [&](Vec3& p) -> double& {
    return side / 2 == 0 ? p.x : side / 2 == 1 ? p.y : p.z;
  };
  const double edge = along(at_high ? strip.high : strip.low);
  along(strip.low) = at_high ? edge : edge - setting.width;
  along(strip.high) = at_high ? edge + setting.width : edge;
  work.add_disjoint(Solid::box(strip.low, strip.high));
}

}  // namespace

double marks_start(const Step& step, const Solid& work, Side side) {
  const bool on_face = (side == step.stopped && step.stopped_on_face) ||
                       (side == step.across_from && step.across_on_face);
  const double face = on_face ? high(work, outward(step.face)) - touching : -1e300;
  double most = -1e300;
  for (const Vec3& p : work.vertices())
    if (dot(outward(step.face), p) >= face) most = std::max(most, dot(outward(side), p));
  return most;
}

std::string lay(const Step& step, const Setting& setting, const Solid& work, Rigid& machine) {
  if (work.empty()) return "nothing is left of the work";
  machine = square_frame(step);
  const bool on_block = step.has(Flag::block) && step.guide == Guide::marks;
  if (!on_block && !lies_flat(work, step.face)) return "the work rocks on the table";
  if (step.at_fence() || step.at_gauge()) {
    if (dot(outward(step.leads), machine.ey) < 0.5)
      return "the end that leads is not the one named";
  }
  if (step.tool == Tool::thickness || step.tool == Tool::edging) {
    machine.origin = outward(step.face) * high(work, outward(step.face));
    return "";
  }
  if (step.guide == Guide::fence) return lay_at_fence(step, setting, work, machine);
  if (step.guide == Guide::gauge) return lay_at_gauge(step, setting, work, machine);
  return lay_on_marks(step, setting, work, machine);
}

Region swept(const Step& step, const Setting& setting, const Rigid& machine, const Solid& work) {
  switch (step.tool) {
    case Tool::clear:
    case Tool::follow:
      return clear_region(step, setting, machine, work);
    case Tool::bore:
      return bore_region(setting);
    case Tool::edging:
      return {};
    case Tool::thickness:
      // The planer leaves a thickness over its bed; the jointer takes one off from below.
      if (step.machine == Machine::planer) return {{{0, 0, -1}, -setting.width}};
      return {{{0, 0, 1}, setting.width}};
    default:
      return blade_region(step, setting);
  }
}

std::string sweep(const Step& step, const Setting& setting, const Solid& work, Region& region) {
  Rigid machine;
  if (std::string why = lay(step, setting, work, machine); !why.empty()) return why;
  region = swept(step, setting, machine, work);
  for (Plane& plane : region) plane = machine.plane(plane);
  return region.empty() && step.tool != Tool::edging ? "the step cuts nothing" : "";
}

std::string take_off(const Step& step, const Setting& setting, const Region& region, Solid& work) {
  if (step.tool == Tool::edging) {
    glue_on(step, setting, work);
  } else if (step.tool == Tool::follow) {
    // What is outside of any line goes: what is inside of all stays.
    Region inside = region;
    for (Plane& line : inside) line = line.flipped();
    work.keep(inside);
  } else {
    work.subtract(region);
    if (step.tool == Tool::blade && setting.height > 0)
      drop_offcuts(work, region.front().flipped());
  }
  return work.empty() ? "the step leaves nothing of the work" : "";
}

std::string carry_out(const Step& step, const Setting& setting, Solid& work) {
  Region region;
  if (std::string why = sweep(step, setting, work, region); !why.empty()) return why;
  return take_off(step, setting, region, work);
}

}  // namespace splay::fabrication
