// Housings, rabbets, grooves, laps, shoulders, mortises: a convex region taken out from one face.
#include <algorithm>
#include <array>
#include <cmath>

#include "base/tolerance.h"
#include "fabrication/derive.h"
#include "fabrication/sides.h"

namespace splay::fabrication {

using parts::outward;
using parts::Side;

namespace {

constexpr double steep = 0.7;  // cosine: a plane that looks so much along a face is no wall of it
// So many times deeper than wide, a cut is a slit that no tool goes down well: a hinge's recess is
// let in from the edge, not from the face.
constexpr double slit = 5;

// Whether a cell is wholly outside of one of the planes.
bool apart(const Solid& body, const Cell& cell, const Region& region) {
  return std::any_of(region.begin(), region.end(), [&](const Plane& plane) {
    for (const CellFace& face : cell.faces)
      for (const std::int32_t v : face.loop)
        if (plane.distance(body.vertices()[static_cast<std::size_t>(v)]) < -2e-6) return false;
    return true;
  });
}

// No wood of the finished part is inside the region.
bool spares(const Solid& body, const Region& region) {
  for (std::size_t i = 0; i < body.cells().size(); ++i) {
    if (apart(body, body.cells()[i], region)) continue;
    Solid common = body.single_cell(i);
    common.keep(region);
    if (!common.empty() && common.volume() > 1e-6) return false;
  }
  return true;
}

// Without planes that another one, parallel and nearer, makes idle.
Region tightened(const Region& removed) {
  Region tight;
  for (const Plane& plane : removed) {
    const bool idle = std::any_of(removed.begin(), removed.end(), [&](const Plane& other) {
      return norm(other.n - plane.n) < 1e-9 &&
             (other.d < plane.d - 1e-9 || (&other < &plane && std::abs(other.d - plane.d) <= 1e-9));
    });
    if (!idle) tight.push_back(plane);
  }
  return tight;
}

// Where the floor bounds nothing of the part but another plane that looks out of the hollow as a
// floor does is needed, that one is the floor.
void deepen(const Derivation& at, Pocket& pocket) {
  if (!pocket.floor || !spares(at.part->body, pocket.walls)) return;
  const Vec3 out = outward(pocket.open);
  const auto lowest = std::ranges::min_element(pocket.walls, {},
                                               [&](const Plane& wall) { return dot(wall.n, out); });
  if (lowest == pocket.walls.end() || dot(lowest->n, out) > -steep) return;
  pocket.floor = *lowest;
  pocket.walls.erase(lowest);
}

// The region cut from `open`: whatever bounds it towards the tool is let go, and so are walls that
// stand where no wood is to stay. Nothing when that would cut into the part.
std::optional<Pocket> opened(const Derivation& at, const Region& removed, Side open) {
  const Vec3 out = outward(open);
  Pocket pocket;
  pocket.open = open;
  for (const Plane& plane : removed) {
    const double towards = dot(plane.n, out);
    if (towards > steep) continue;
    if (towards < -steep && (!pocket.floor || towards < dot(pocket.floor->n, out))) {
      if (pocket.floor) pocket.walls.push_back(*pocket.floor);
      pocket.floor = plane;
    } else {
      pocket.walls.push_back(plane);
    }
  }
  if (!spares(at.part->body, planes_of(pocket))) return {};
  for (std::size_t i = pocket.walls.size(); i-- > 0;) {
    Pocket without = pocket;
    without.walls.erase(without.walls.begin() + static_cast<std::ptrdiff_t>(i));
    if (spares(at.part->body, planes_of(without))) pocket = std::move(without);
  }
  deepen(at, pocket);
  return planes_of(pocket).empty() ? std::nullopt : std::optional(pocket);
}

bool square_to_sides(const Plane& plane) {
  return std::max({std::abs(plane.n.x), std::abs(plane.n.y), std::abs(plane.n.z)}) > 1 - 1e-9;
}

// Two parallel walls and a bottom square to them that a tilted blade or stack makes from a face,
// whichever of them looks most along it: a slot in a mitre, the board flat and the blade tilted as
// it was for the mitre.
std::optional<Pocket> slotted(const Derivation& at, const Region& removed) {
  for (const Plane& wall : removed)
    for (const Plane& other : removed)
      for (const Plane& bottom : removed) {
        if (square_to_sides(wall) || square_to_sides(bottom)) continue;
        if (norm(wall.n + other.n) > 1e-9 || std::abs(dot(wall.n, bottom.n)) > no_angle) continue;
        for (const Side open : all_sides) {
          if (dot(bottom.n, outward(open)) > -0.1) continue;
          Pocket slot{open, bottom, {wall, other}};
          if (!spares(at.part->body, planes_of(slot))) continue;
          if (by_stack(at, slot) || !by_passes(at, slot).empty()) return slot;
        }
      }
  return {};
}

double floor_slope(const Pocket& pocket) {
  return pocket.floor ? 1 - std::abs(dot(pocket.floor->n, outward(pocket.open))) : 0;
}

// How far it goes in from the face at the most, and the least it is wide along any other side.
struct Reach {
  double deep = 0, narrow = 1e9;
};
Reach reach_of(const Derivation& at, const Pocket& pocket) {
  const Vec3 out = outward(pocket.open);
  const Solid hollow = hollow_of(at, pocket);
  if (hollow.empty()) return {};
  Reach found{at.high(out) + hollow.extent(-out)[1]};
  for (const Side side : {Side::x_low, Side::y_low, Side::z_low}) {
    const Vec3 across = outward(side);
    if (std::abs(dot(across, out)) > 0.5) continue;
    const auto [low, high] = hollow.extent(across);
    found.narrow = std::min(found.narrow, high - low);
  }
  return found;
}

// The lower the easier to make.
double difficulty(const Derivation& at, const Pocket& pocket) {
  const Vec3 out = outward(pocket.open);
  double sum = 4.0 * static_cast<double>(pocket.walls.size());
  const Reach reach = reach_of(at, pocket);
  if (reach.deep > at.shop->router.deepest->mm) sum += 12;
  if (reach.deep > slit * reach.narrow) sum += 8;
  for (const Plane& wall : pocket.walls) {
    if (std::abs(dot(wall.n, out)) > no_angle) sum += 2;
    if (!trace(at, pocket.open, wall)) sum += 100;  // a line that can't be drawn on the wood
  }
  if (floor_slope(pocket) > 1e-12) sum += 3;
  if (!firm(at, pocket.open)) sum += 200;
  if (!pocket.floor) sum += 4;
  if (pocket.open == Side::x_low || pocket.open == Side::x_high) sum += 12;
  if (pocket.open == Side::y_low || pocket.open == Side::y_high) sum += 6;
  return sum;
}

// A line on the open face where the wall meets it, so that the waste is to its right.
Line line_for(const Derivation& at, const Step& step, Side open, const Plane& wall) {
  const Vec3 out = outward(open), up = -out;
  std::array<Vec3, 2> ends;
  if (const auto on_face = trace(at, open, wall)) {
    ends = *on_face;
  } else {
    // Beyond the wood: any two points of the line will do for the hand that squares it round.
    const double c = dot(out, wall.n), s = 1 - c * c, h = at.high(out);
    const Vec3 foot = out * ((h - wall.d * c) / s) + wall.n * ((wall.d - h * c) / s);
    ends = {foot, foot + unit(cross(out, wall.n)) * 100};
  }
  const Vec3 into = -wall.n;
  if (dot(cross(ends[1] - ends[0], up), into) < 0) std::swap(ends[0], ends[1]);
  Line line{mark_at(at, step, ends[0]), mark_at(at, step, ends[1]), std::asin(dot(into, up))};
  if (std::abs(line.lean) < no_angle) line.lean = 0;
  return line;
}

// The three corners of a sloping floor that lie furthest apart: there its depth is measured.
std::array<Vec3, 3> corners_for(const Derivation& at, const Step& step, const Pocket& pocket) {
  Solid waste = at.work;
  waste.keep(planes_of(pocket));
  std::vector<Vec3> corners;
  for (const Vec3& p : waste.empty() ? std::vector<Vec3>{} : waste.vertices())
    if (std::abs(pocket.floor->distance(p)) < 1e-5) corners.push_back(p);
  const Vec3 end = outward(step.stopped), edge = outward(step.across_from);
  const Vec3 corner = end * at.high(end) + edge * at.high(edge);
  const double length = at.high(end) + at.high(-end), width = at.high(edge) + at.high(-edge);
  std::array<Vec3, 3> best{corner, corner - end * length, corner - edge * width};
  double most = 1;  // mm2: less gives no plane to measure
  for (std::size_t i = 0; i < corners.size(); ++i)
    for (std::size_t k = i + 1; k < corners.size(); ++k)
      for (std::size_t m = k + 1; m < corners.size(); ++m) {
        const double area = norm(cross(corners[k] - corners[i], corners[m] - corners[i])) / 2;
        if (area < most * (1 + 1e-9)) continue;
        most = area;
        best = {corners[i], corners[k], corners[m]};
      }
  return best;
}

std::vector<DepthMark> depths_for(const Derivation& at, const Step& step, const Pocket& pocket) {
  const Vec3 out = outward(pocket.open);
  const Plane& floor = *pocket.floor;
  const double face = at.high(out), slope = dot(floor.n, out);
  const auto depth_at = [&](Vec3 p) {
    const Vec3 on_face = p + out * (face - dot(out, p));
    return floor.distance(on_face) / slope;
  };
  if (std::abs(std::abs(slope) - 1) < 1e-12) return {{{}, depth_at({})}};
  std::vector<DepthMark> depths;
  for (const Vec3 p : corners_for(at, step, pocket))
    depths.push_back({mark_at(at, step, p), depth_at(p)});
  return depths;
}

bool square_walled(const Step& step) {
  return std::all_of(step.exact.lines.begin(), step.exact.lines.end(),
                     [](const Line& line) { return line.lean == 0; }) &&
         step.exact.depths.size() < 2;
}

}  // namespace

Region planes_of(const Pocket& pocket) {
  Region region = pocket.walls;
  if (pocket.floor) region.push_back(*pocket.floor);
  return region;
}

Solid hollow_of(const Derivation& at, const Pocket& pocket) {
  const Box box = at.work.bounds();
  Solid hollow = Solid::box(box.low, box.high);
  hollow.keep(planes_of(pocket));
  return hollow;
}

Step by_lines(const Derivation& at, const Pocket& pocket) {
  Step step;
  step.row = at.row;
  step.tool = Tool::clear;
  step.guide = Guide::marks;
  step.face = pocket.open;
  count_marks_from(at, step);
  step.against = step.across_from;
  step.leads = parts::opposite(step.stopped);
  for (const Plane& wall : pocket.walls)
    step.exact.lines.push_back(line_for(at, step, pocket.open, wall));
  if (pocket.floor) step.exact.depths = depths_for(at, step, pocket);
  step.cuts_through = !pocket.floor;
  const double deep = step.exact.depths.empty()
                          ? at.high(outward(step.face)) + at.high(-outward(step.face))
                          : step.exact.depths.front().depth;
  step.machine =
      square_walled(step) && deep <= at.shop->router.deepest->mm ? Machine::router : Machine::hand;
  if (!firm(at, pocket.open)) step.flags.push_back(Flag::block);
  if (step.exact.lines.size() > 2 && step.machine == Machine::router)
    step.flags.push_back(Flag::square_corners);
  return step;
}

std::optional<Pocket> open_pocket(const Derivation& at, const Region& removed) {
  std::optional<Pocket> best;
  double least = 1e9;
  const Region tight = tightened(removed);
  if (std::optional<Pocket> slot = slotted(at, tight)) return slot;
  for (const Side open : all_sides) {
    std::optional<Pocket> pocket = opened(at, tight, open);
    if (!pocket) continue;
    const double hard = difficulty(at, *pocket);
    if (hard >= least) continue;
    least = hard;
    best = std::move(pocket);
  }
  return best;
}

std::optional<Step> follow_lines(const Derivation& at, const std::vector<Plane>& lines) {
  for (const Side face : {Side::z_low, Side::y_low, Side::x_low}) {
    const Vec3 out = outward(face);
    if (std::any_of(lines.begin(), lines.end(),
                    [&](const Plane& p) { return std::abs(dot(p.n, out)) > 0.9; }))
      continue;
    Step step;
    step.row = at.row;
    step.tool = Tool::follow;
    step.guide = Guide::marks;
    step.face = face;
    count_marks_from(at, step);
    step.against = step.across_from;
    for (const Plane& line : lines)
      step.exact.lines.push_back(line_for(at, step, face, line.flipped()));
    const double thick = at.high(out) + at.high(-out);
    step.machine =
        at.shop->band_saw.given && square_walled(step) && thick <= at.shop->band_saw.height->mm
            ? Machine::band_saw
            : Machine::hand;
    return step;
  }
  return {};
}

}  // namespace splay::fabrication
