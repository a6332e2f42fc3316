// The knock-down break: which joints of a piece that doesn't pass are left dry. All joints are
// thought loose, then closed one after the other, the ones that bear it least first, as long as
// everything still passes and can be brought together on the spot along straight lines. That is
// done anew from each natural division of the piece, and the break that asks least is taken.
#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>
#include <tuple>

#include "base/index.h"
#include "fabrication/gluing.h"
#include "fabrication/plan.h"
#include "fabrication/soundness.h"

namespace splay::fabrication {

namespace {

using Groups = std::vector<std::vector<int>>;

// What a joint left dry asks of the maker, and what holds it then. Common practice, no source.
struct DryWay {
  std::string_view kind;
  double asks;  // by how much it is worse than to glue it; 0 for what comes apart anyway
  const char* how;
};
constexpr std::array<DryWay, 20> dry_ways{{
    {"fasteners", 0, "take the fasteners' screws out"},
    {"hinges", 0, "take the hinges' screws or pins out"},
    {"screwed", 0, "screws, no glue"},
    {"groove", 0, "slides in its groove, no glue"},
    {"tongue and groove", 0, "goes together dry"},
    {"screw", 0.5, "screws, no glue; threaded inserts where it is taken apart often"},
    {"dowel", 1, "glue the dowels into one part only; connecting bolts with cross dowels"},
    {"butt", 1, "dry dowels to place it; connecting bolts with cross dowels"},
    {"housing", 1, "no glue; connecting bolts or screws through the housed face"},
    {"rabbet", 1, "screws, no glue"},
    {"mortise and tenon", 1, "no glue; a bolt with a cross dowel, a wedge or a loose draw pin"},
    {"loose tenon", 1, "glue the tenon into one part only; a bolt with a cross dowel"},
    {"bridle", 1.5, "no glue; a bolt through the cheeks"},
    {"half lap", 1.5, "no glue; a bolt or screws through the lap"},
    {"stick", 1.5, "no glue; a bolt with a cross dowel"},
    {"spline", 3, "glue the spline into one part only; bolts or draw catches across the mitre"},
    {"mitre", 3, "dry loose tenons to place it; bolts or draw catches across the mitre"},
    {"box joint", 4, "no glue; a rod or screws through the fingers"},
    {"dovetail", 4, "no glue; a screw through a tail keeps it from creeping"},
    {"glued", 8, "no glue; screws or bolts, and the seam will show"},
}};
constexpr DryWay any_other{"", 2, "no glue; bolts or screws that can be taken out"};

const DryWay& dry_way(const std::string& kind) {
  const auto found = std::ranges::find(dry_ways, kind, &DryWay::kind);
  return found == dry_ways.end() ? any_other : *found;
}

// What comes apart anyway, as the author says, asks nothing more.
std::vector<double> asked(const Plan& plan) {
  std::vector<double> asks;
  constexpr double worst = 100;  // edging stays on its panel
  for (const parts::Joint& joint : plan.assembly.joints)
    asks.push_back(joint.made == parts::Made::in_turn ? dry_way(joint.kind).asks : worst);
  for (const int joint : undone_as_asked(plan)) asks[index(joint)] = 0;
  return asks;
}

class Breaking {
 public:
  explicit Breaking(const Plan& plan)
      : plan_(plan),
        all_(plan.assembly),
        count_(static_cast<int>(all_.parts.size())),
        asks_(asked(plan)),
        blocking_(all_, likely_ways(all_)) {}

  KnockDown find() {
    KnockDown result;
    for (int i = 0; i < count_; ++i)
      if (!made_up({i}).passes) result.too_large.push_back(i);
    if (!result.too_large.empty()) return result;
    Groups best;
    // What it asks, how many pieces it makes, and how bulky they are.
    std::tuple<double, std::size_t, double> least{1e300, 0, 0};
    for (const std::vector<int>& division : divisions()) {
      const Groups groups = closed_as_far_as_may_be(division);
      if (groups.empty()) continue;
      double asks = 0;
      for (const int joint : crossing(groups)) asks += asks_[index(joint)];
      double bulk = 0;
      for (const std::vector<int>& group : groups) {
        const Vec3 size = made_up(group).piece.size;
        bulk += size.x * size.y * size.z;
      }
      if (std::tuple worth{asks, groups.size(), bulk}; worth < least) {
        least = worth;
        best = groups;
      }
    }
    for (const int joint : crossing(best))
      result.joints.push_back({joint, held_dry(all_.joints[index(joint)].kind)});
    for (const std::vector<int>& group : best) result.pieces.push_back(made_up(group).piece);
    std::ranges::stable_sort(result.pieces, std::ranges::greater{}, &SubAssembly::mass);
    return result;
  }

 private:
  struct MadeUp {
    SubAssembly piece;
    bool passes = true;
  };

  // A group's boxes along the world's axes and those of its parts.
  std::vector<Vec3> boxes(const std::vector<int>& group) const {
    std::vector<std::array<Vec3, 3>> frames{{{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}}};
    for (const int part : group) {
      const Rigid& place = all_.parts[index(part)].place;
      frames.push_back({place.ex, place.ey, place.ez});
    }
    std::vector<Vec3> found;
    for (const auto& frame : frames) {
      std::array<double, 3> size{};
      for (std::size_t k = 0; k < 3; ++k) {
        double low = 1e300, high = -1e300;
        for (const int part : group) {
          const auto reach = all_.parts[index(part)].world.extent(frame[k]);
          low = std::min(low, reach[0]);
          high = std::max(high, reach[1]);
        }
        size[k] = high - low;
      }
      found.push_back({size[0], size[1], size[2]});
    }
    return found;
  }

  MadeUp made_up(const std::vector<int>& group) const {
    MadeUp made;
    made.piece.parts = group;
    const std::vector<Vec3> found = boxes(group);
    const auto smallest =
        std::ranges::min_element(found, {}, [](Vec3 box) { return box.x * box.y * box.z; });
    std::array<double, 3> sides{smallest->x, smallest->y, smallest->z};
    std::ranges::sort(sides, std::ranges::greater{});
    made.piece.size = {sides[0], sides[1], sides[2]};
    for (const int part : group)
      made.piece.mass += plan_.rows[index(plan_.row_of_part[index(part)])].mass;
    const model::Room& room = plan_.project->room;
    for (std::size_t i = 0; i < room.ways.size(); ++i) {
      made.piece.passages.push_back(best_passage(room.ways[i], found));
      made.passes = made.passes && made.piece.passages.back().passes;
    }
    const Vec3 stands = found.front();
    made.piece.turned_up = turning_height(stands.z, std::min(stands.x, stands.y));
    made.passes = made.passes && turns_up(room, made.piece.turned_up);
    return made;
  }

  // Can some of these groups leave the others one after the other, until each is by itself?
  bool comes_apart(const Groups& groups) {
    if (groups.size() < 2) return true;
    for (std::size_t way = 0; way < blocking_.ways().size(); ++way)
      for (std::size_t first = 0; first < groups.size(); ++first) {
        Groups off, rest = groups;
        const auto take = [&](std::size_t which) {
          off.push_back(rest[which]);
          rest.erase(rest.begin() + static_cast<std::ptrdiff_t>(which));
        };
        take(first);
        for (std::size_t i = 0; i < off.size(); ++i)
          for (std::size_t j = 0; j < rest.size();)
            if (waits(way, off[i], rest[j]))
              take(j);
            else
              ++j;
        if (!rest.empty()) return comes_apart(off) && comes_apart(rest);
      }
    return false;
  }

  bool waits(std::size_t way, const std::vector<int>& group, const std::vector<int>& other) {
    for (const int part : group)
      for (const int each : other)
        if (blocking_.waits(way, part, each)) return true;
    return false;
  }

  // Joints with parts in more than one group.
  std::vector<int> crossing(const Groups& groups) const {
    std::vector<int> group_of(all_.parts.size(), -1), found;
    for (std::size_t g = 0; g < groups.size(); ++g)
      for (const int part : groups[g]) group_of[index(part)] = static_cast<int>(g);
    for (std::size_t j = 0; j < all_.joints.size(); ++j) {
      const std::vector<int>& between = all_.joints[j].between;
      if (std::ranges::any_of(
              between, [&](int p) { return group_of[index(p)] != group_of[index(between[0])]; }))
        found.push_back(static_cast<int>(j));
    }
    return found;
  }

  static Groups united(const Groups& groups, const std::vector<int>& parts) {
    Groups result;
    std::vector<int> one;
    for (const std::vector<int>& group : groups) {
      const bool in = std::ranges::any_of(
          parts, [&](int part) { return std::binary_search(group.begin(), group.end(), part); });
      if (in)
        one.insert(one.end(), group.begin(), group.end());
      else
        result.push_back(group);
    }
    std::ranges::sort(one);
    result.push_back(std::move(one));
    return result;
  }

  // Which part of the piece each part is in, one list for each natural division: beyond a plane
  // across each axis, all that lie along an axis by themselves, each kind of part by itself.
  std::vector<std::vector<int>> divisions() const {
    std::vector<std::vector<int>> found;
    const auto add = [&](const std::vector<int>& labels) {
      if (std::ranges::find(found, labels) == found.end()) found.push_back(labels);
    };
    for (const Vec3 axis : {Vec3{1, 0, 0}, Vec3{0, 1, 0}, Vec3{0, 0, 1}}) {
      std::vector<double> along;
      for (const parts::Part& part : all_.parts) along.push_back(dot(axis, part.world.centroid()));
      for (const double cut : along) {
        std::vector<int> beyond(along.size());
        std::ranges::transform(along, beyond.begin(),
                               [&](double each) { return each > cut - 1e-6 ? 1 : 0; });
        add(beyond);
      }
      std::vector<int> labels(all_.parts.size(), -1);
      for (std::size_t i = 0; i < labels.size(); ++i)
        if (std::abs(dot(axis, all_.parts[i].place.ex)) > 0.7) labels[i] = static_cast<int>(i);
      add(labels);
    }
    for (const PartRow& row : plan_.rows) {
      std::vector<int> labels(all_.parts.size(), -1);
      for (const int member : row.members) labels[index(member)] = member;
      add(labels);
    }
    std::vector<int> loose(all_.parts.size());
    std::iota(loose.begin(), loose.end(), 0);
    add(loose);
    return found;
  }

  // Joints of a division's own parts first, then those between them; each by what it asks.
  std::vector<int> in_order(const std::vector<int>& labels) const {
    std::vector<int> order(all_.joints.size());
    std::iota(order.begin(), order.end(), 0);
    const auto between = [&](int joint) {
      const std::vector<int>& parts = all_.joints[index(joint)].between;
      return std::ranges::any_of(
          parts, [&](int p) { return labels[index(p)] != labels[index(parts.front())]; });
    };
    std::ranges::stable_sort(order, {}, [&](int joint) {
      return std::tuple{between(joint), -asks_[index(joint)]};
    });
    return order;
  }

  Groups closed_as_far_as_may_be(const std::vector<int>& labels) {
    Groups groups;
    for (int i = 0; i < count_; ++i) groups.push_back({i});
    if (!comes_apart(groups)) return {};
    for (const int joint : in_order(labels)) {
      Groups more = united(groups, all_.joints[index(joint)].between);
      if (more.size() == groups.size()) continue;
      if (made_up(more.back()).passes && comes_apart(more)) groups = std::move(more);
    }
    return groups;
  }

  const Plan& plan_;
  const parts::Assembly& all_;
  int count_;
  std::vector<double> asks_;  // of each joint
  Blocking blocking_;
};

}  // namespace

std::string held_dry(const std::string& kind) { return dry_way(kind).how; }

KnockDown find_knock_down(const Plan& plan) {
  if (plan.stopped()) return {};
  const Soundness& sound = plan.soundness;
  const bool whole = std::ranges::all_of(sound.passages, &Passage::passes) &&
                     turns_up(plan.project->room, sound.turned_up);
  if (whole) return {};
  return Breaking(plan).find();
}

}  // namespace splay::fabrication
