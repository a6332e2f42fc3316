#include <algorithm>
#include <cmath>

#include "fabrication/gluing.h"

namespace splay::fabrication {

namespace {

constexpr double same_way = 1e-9;  // sine of the angle between directions that are one

std::size_t at(int i) { return static_cast<std::size_t>(i); }

bool parallel(Vec3 a, Vec3 b) { return norm(cross(a, b)) < same_way; }

// A dowel or loose tenon lets its parts come apart along itself only.
bool guides(const parts::Fitting& fitting) {
  return fitting.kind == "dowel" || fitting.kind == "loose tenon";
}

void add_both(std::vector<Vec3>& ways, Vec3 way) {
  const double length = norm(way);
  if (length < same_way) return;
  const Vec3 zero;  // added, it makes -0 to 0
  const Vec3 u = way * (1 / length) + zero;
  for (const Vec3& known : ways)
    if (parallel(known, u)) return;
  ways.push_back(u);
  ways.push_back(-u + zero);
}

}  // namespace

std::vector<Vec3> likely_ways(const parts::Assembly& assembly) {
  std::vector<Vec3> ways;
  for (const Vec3 axis : {Vec3{0, 0, 1}, Vec3{1, 0, 0}, Vec3{0, 1, 0}}) add_both(ways, axis);
  for (const parts::Fitting& fitting : assembly.fittings)
    if (guides(fitting)) add_both(ways, fitting.axis);
  for (const parts::Slide& slide : assembly.slides) add_both(ways, slide.way);
  for (const parts::Joint& joint : assembly.joints) {
    for (const parts::Mate& mate : joint.mates) add_both(ways, mate.plane.n);
    for (const parts::Mate& a : joint.mates)
      for (const parts::Mate& b : joint.mates) add_both(ways, cross(a.plane.n, b.plane.n));
  }
  for (const parts::Part& part : assembly.parts)
    for (const Vec3 axis : {part.place.ex, part.place.ey, part.place.ez}) add_both(ways, axis);
  return ways;
}

bool only_slid(const parts::Joint& joint, Vec3 way) {
  constexpr double pressed = 0.1;  // of the way's unit length is square to a mated face
  return std::none_of(joint.mates.begin(), joint.mates.end(), [&](const parts::Mate& mate) {
    return std::abs(dot(mate.plane.n, way)) > pressed;
  });
}

Blocking::Blocking(const parts::Assembly& assembly, std::vector<Vec3> ways)
    : assembly_(assembly), ways_(std::move(ways)) {
  const std::size_t n = assembly.parts.size();
  for (const parts::Part& part : assembly.parts) solids_.emplace_back(part.world);
  for (std::size_t i = 0; i < n; ++i) {
    tied_.emplace_back(n);
    tied_.back().add(static_cast<int>(i));
  }
  runs_.resize(ways_.size());
  wiped_.resize(ways_.size());
  wiped_known_.resize(ways_.size());
  find_opposites();
  find_joints();
  find_guides();
}

void Blocking::find_joints() {
  const std::size_t n = parts();
  neighbours_.assign(n, PartSet(n));
  for (const parts::Joint& joint : assembly_.joints) {
    PartSet between(n);
    for (const int part : joint.between) between.add(part);
    between.each([&](int part) { neighbours_[at(part)] |= between; });
    joints_.push_back(std::move(between));
  }
  for (const Vec3 way : ways_) {
    std::vector<bool> slid;
    for (const parts::Joint& joint : assembly_.joints) slid.push_back(only_slid(joint, way));
    slides_.push_back(std::move(slid));
  }
}

void Blocking::find_guides() {
  for (const parts::Fitting& fitting : assembly_.fittings) {
    if (!guides(fitting)) continue;
    Guide guide{fitting.axis, PartSet(parts())};
    for (const int part : fitting.parts) guide.parts.add(part);
    guides_.push_back(std::move(guide));
  }
}

void Blocking::tie(const PartSet& together) {
  PartSet all = together;
  together.each([&](int part) { all |= tied_[at(part)]; });
  all.each([&](int part) { tied_[at(part)] = all; });
}

void Blocking::find_opposites() {
  for (const Vec3& way : ways_) {
    const auto found = std::find_if(ways_.begin(), ways_.end(),
                                    [&](const Vec3& other) { return other + way == Vec3{}; });
    opposite_.push_back(found == ways_.end() ? -1 : static_cast<int>(found - ways_.begin()));
  }
}

Blocking::Run& Blocking::run(std::size_t way, int part) {
  if (runs_[way].empty()) {
    runs_[way].assign(parts(), {PartSet(parts()), PartSet(parts())});
    for (std::size_t i = 0; i < parts(); ++i) {
      Run& each = runs_[way][i];
      for (const Guide& guide : guides_)
        if (guide.parts.has(static_cast<int>(i)) && !parallel(guide.axis, ways_[way]))
          each.held |= guide.parts;
      each.asked = each.held;
      each.asked.add(static_cast<int>(i));
    }
  }
  return runs_[way][at(part)];
}

const PartSet& Blocking::held_by(std::size_t way, int part) {
  PartSet others(parts());
  for (std::size_t i = 0; i < parts(); ++i) others.add(static_cast<int>(i));
  held_by(way, part, others);
  return run(way, part).held;
}

PartSet Blocking::held_by(std::size_t way, int part, const PartSet& others) {
  Run& mine = run(way, part);
  (others - mine.asked).each([&](int other) {
    const bool held = stands_in_the_way(solids_[at(part)], solids_[at(other)], ways_[way]);
    if (held) mine.held.add(other);
    // The other way round it is the same run.
    if (opposite_[way] < 0) return;
    Run& theirs = run(at(opposite_[way]), other);
    theirs.asked.add(part);
    if (held) theirs.held.add(part);
  });
  mine.asked |= others;
  return mine.held & others;
}

const PartSet& Blocking::wiped(std::size_t way, int part) {
  const std::size_t n = parts();
  if (wiped_[way].empty()) {
    wiped_[way].resize(n);
    wiped_known_[way].assign(n, false);
  }
  PartSet& wiped = wiped_[way][at(part)];
  if (wiped_known_[way][at(part)]) return wiped;
  wiped_known_[way][at(part)] = true;
  wiped = PartSet(n);
  for (std::size_t j = 0; j < joints_.size(); ++j)
    if (joints_[j].has(part) && slides_[way][j]) wiped |= joints_[j];
  return wiped;
}

PartSet Blocking::with(std::size_t way, int part, const PartSet& whole, bool gently) {
  PartSet group = tied(part), fresh = group;
  while (!fresh.empty()) {
    PartSet more(parts());
    fresh.each([&](int p) {
      more |= held_by(way, p, whole - group - more);
      if (gently) more |= wiped(way, p);
    });
    more &= whole;
    more -= group;
    PartSet tied_too(parts());
    more.each([&](int p) { tied_too |= tied(p); });
    fresh = (more | tied_too) - group;
    group |= fresh;
  }
  return group;
}

}  // namespace splay::fabrication
