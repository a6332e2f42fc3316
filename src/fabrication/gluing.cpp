#include "fabrication/gluing.h"

#include <algorithm>
#include <cmath>
#include <set>
#include <tuple>

namespace splay::fabrication {

namespace {

constexpr double same_way = 1e-9;  // sine of the angle between directions that are one

using Group = std::vector<int>;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

bool contains(const Group& group, int part) {
  return std::binary_search(group.begin(), group.end(), part);
}

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

// Would a run along `way` press none of the joint's faces home?
bool only_slid(const parts::Joint& joint, Vec3 way) {
  constexpr double pressed = 0.1;  // of the way's unit length is square to a mated face
  return std::none_of(joint.mates.begin(), joint.mates.end(), [&](const parts::Mate& mate) {
    return std::abs(dot(mate.plane.n, way)) > pressed;
  });
}

// Who stands in whose way, worked out when first asked.
class Blocking {
 public:
  Blocking(const parts::Assembly& assembly, std::vector<Vec3> ways)
      : assembly_(assembly),
        ways_(std::move(ways)),
        known_(ways_.size() * assembly.parts.size() * assembly.parts.size(), 0) {
    for (const parts::Part& part : assembly.parts) solids_.emplace_back(part.world);
  }
  const std::vector<Vec3>& ways() const { return ways_; }

  bool waits(std::size_t way, int part, int other) {
    const std::size_t n = assembly_.parts.size();
    char& known = known_[(way * n + at(part)) * n + at(other)];
    if (known == 0) known = held(ways_[way], part, other) ? 2 : 1;
    return known == 2;
  }

  // The least that must come off together with `part`: all it waits for within `whole`, and where
  // it goes gently also all it would wipe along.
  Group with(std::size_t way, int part, const Group& whole, bool gently) {
    Group group{part};
    for (std::size_t i = 0; i < group.size(); ++i)
      for (const int other : whole)
        if (std::find(group.begin(), group.end(), other) == group.end() &&
            (waits(way, group[i], other) || (gently && wipes(way, group[i], other))))
          group.push_back(other);
    std::sort(group.begin(), group.end());
    return group;
  }

 private:
  bool wipes(std::size_t way, int part, int other) const {
    return std::any_of(assembly_.joints.begin(), assembly_.joints.end(), [&](const auto& joint) {
      const auto joins = [&](int p) {
        return std::find(joint.between.begin(), joint.between.end(), p) != joint.between.end();
      };
      return joins(part) && joins(other) && only_slid(joint, ways_[way]);
    });
  }

  bool held(Vec3 way, int part, int other) const {
    for (const parts::Fitting& fitting : assembly_.fittings) {
      if (!guides(fitting) || parallel(fitting.axis, way)) continue;
      const auto touches = [&](int p) {
        return std::find(fitting.parts.begin(), fitting.parts.end(), p) != fitting.parts.end();
      };
      if (touches(part) && touches(other)) return true;
    }
    return stands_in_the_way(solids_[at(part)], solids_[at(other)], way);
  }

  const parts::Assembly& assembly_;
  std::vector<Vec3> ways_;
  std::vector<SweepSolid> solids_;
  std::vector<char> known_;  // 0 not asked, 1 free, 2 waits
};

// In how many pieces a group falls when it is lifted: those that its joints hold together.
int loose_pieces(const Group& group, const parts::Assembly& assembly) {
  Group left = group;
  int pieces = 0;
  while (!left.empty()) {
    ++pieces;
    Group piece{left.front()};
    left.erase(left.begin());
    for (std::size_t i = 0; i < piece.size(); ++i) {
      for (const parts::Joint& joint : assembly.joints) {
        if (std::find(joint.between.begin(), joint.between.end(), piece[i]) == joint.between.end())
          continue;
        for (const int other : joint.between) {
          const auto found = std::find(left.begin(), left.end(), other);
          if (found == left.end()) continue;
          piece.push_back(other);
          left.erase(found);
        }
      }
    }
  }
  return pieces;
}

// The joints with parts on both sides, and how many of them are only slid along.
struct Crossing {
  std::vector<int> joints;
  int sliding = 0;
};

Crossing crossing(const Group& off, const Group& rest, Vec3 way, const parts::Assembly& assembly) {
  Crossing result;
  for (std::size_t j = 0; j < assembly.joints.size(); ++j) {
    const parts::Joint& joint = assembly.joints[j];
    const auto in = [&](const Group& group) {
      return std::any_of(joint.between.begin(), joint.between.end(),
                         [&](int part) { return contains(group, part); });
    };
    if (!in(off) || !in(rest)) continue;
    result.joints.push_back(static_cast<int>(j));
    if (only_slid(joint, way)) ++result.sliding;
  }
  return result;
}

// Items of the project that have parts on both sides: a face frame is made up whole, a drawer too.
int items_broken(const Group& off, const Group& rest, const parts::Assembly& assembly) {
  const auto items = [&](const Group& group) {
    std::set<int> found;
    for (const int part : group) found.insert(assembly.parts[at(part)].item);
    return found;
  };
  const std::set<int> left = items(off), right = items(rest);
  return static_cast<int>(
      std::count_if(left.begin(), left.end(), [&](int item) { return right.count(item) > 0; }));
}

struct Split {
  Group off, rest;
  Vec3 way;  // out
  Crossing crossing;
  // Less is better: pieces that would fall about, items broken, joints wiped along, joints at once,
  // unevenness.
  std::tuple<int, int, int, std::size_t, std::size_t> worth;
};

class TakingApart {
 public:
  explicit TakingApart(const parts::Assembly& assembly)
      : assembly_(assembly), blocking_(assembly, likely_ways(assembly)) {}

  void apart(const Group& whole) {
    if (whole.size() < 2) return;
    Split best;
    for (std::size_t way = 0; way < blocking_.ways().size(); ++way)
      for (const int part : whole)
        for (const bool gently : {true, false}) consider(way, part, whole, gently, best);
    if (best.off.empty()) {
      stick(whole);
      return;
    }
    if (best.off.size() > best.rest.size()) {
      std::swap(best.off, best.rest);
      best.way = -best.way;
    }
    apart(best.rest);
    apart(best.off);
    order_.joinings.push_back(
        {best.off, best.rest, -best.way + Vec3{}, best.crossing.joints, best.crossing.sliding > 0});
  }

  AssemblyOrder order() { return std::move(order_); }

 private:
  void consider(std::size_t way, int part, const Group& whole, bool gently, Split& best) {
    Split split;
    split.off = blocking_.with(way, part, whole, gently);
    if (split.off.size() == whole.size()) return;
    std::set_difference(whole.begin(), whole.end(), split.off.begin(), split.off.end(),
                        std::back_inserter(split.rest));
    split.way = blocking_.ways()[way];
    split.crossing = crossing(split.off, split.rest, split.way, assembly_);
    const std::size_t a = split.off.size(), b = split.rest.size();
    split.worth = {loose_pieces(split.off, assembly_) + loose_pieces(split.rest, assembly_),
                   items_broken(split.off, split.rest, assembly_), split.crossing.sliding,
                   split.crossing.joints.size(), a > b ? a - b : b - a};
    if (best.off.empty() || split.worth < best.worth) best = std::move(split);
  }

  void stick(const Group& whole) {
    Finding finding{Level::caution, "no-way-in", {}, "", ""};
    for (const int part : whole) finding.about.push_back(assembly_.parts[at(part)].name);
    finding.text = "No part or group of these " + std::to_string(whole.size()) +
                   " can be brought to the others along a straight line: every way tried is closed "
                   "by a mated face, a dowel or a loose tenon.";
    finding.remedy =
        "Close the last joint by springing the parts if they give, turn one joint's dowels or "
        "tenons to the direction of another, or put a butt or mitre without them at one place.";
    order_.findings.push_back(std::move(finding));
    order_.stuck.push_back(whole);
  }

  const parts::Assembly& assembly_;
  Blocking blocking_;
  AssemblyOrder order_;
};

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

AssemblyOrder order_of_assembly(const parts::Assembly& assembly) {
  Group all;
  for (std::size_t i = 0; i < assembly.parts.size(); ++i) all.push_back(static_cast<int>(i));
  TakingApart taking(assembly);
  taking.apart(all);
  return taking.order();
}

}  // namespace splay::fabrication
