#include "fabrication/gluing.h"

#include <algorithm>
#include <cmath>
#include <tuple>
#include <unordered_map>

#include "base/index.h"

namespace splay::fabrication {

namespace {

// A group that may come off, whatever its way: what makes it good or bad.
struct Division {
  std::vector<int> joints;  // between it and the rest
  int pieces = 0;           // of both sides, that nothing holds together
  int items_broken = 0;
  int unevenness = 0;
};

struct Split {
  PartSet off, rest;
  Vec3 way;  // out
  std::vector<int> joints;
  bool slides = false;
  bool found = false;
  // Less is better: pieces that would fall about, items broken, joints wiped along, joints at once,
  // unevenness.
  std::tuple<int, int, int, std::size_t, int> worth;
};

class TakingApart {
 public:
  explicit TakingApart(const parts::Assembly& assembly)
      : assembly_(assembly),
        blocking_(assembly, likely_ways(assembly)),
        all_(assembly.parts.size()) {
    for (std::size_t i = 0; i < assembly.parts.size(); ++i) all_.add(static_cast<int>(i));
  }

  void everything() {
    if (!all_.empty()) loosely(components(all_));
  }
  bool as_pinned(std::span<const Pinned> pinned);
  AssemblyOrder order() { return std::move(order_); }

 private:
  std::vector<PartSet> components(PartSet left) const;
  PartSet component(int part, const PartSet& within) const;
  int pieces(PartSet left) const;
  int items_broken(const PartSet& off, const PartSet& rest) const;
  void loosely(std::vector<PartSet> groups);
  void apart(const PartSet& whole);
  Division division(const PartSet& off, const PartSet& rest) const;
  void consider(std::size_t way, const PartSet& off, const PartSet& whole, const Division& division,
                Split& best);
  void join(Split split);
  void stick(const PartSet& whole);
  bool bring(const Pinned& next, const PartSet& moving, const PartSet& there);
  std::vector<std::string> closed_by(const PartSet& moving, const PartSet& there);

  const parts::Assembly& assembly_;
  Blocking blocking_;
  PartSet all_;
  AssemblyOrder order_;
};

// Those that joints or ties hang together with `part`.
PartSet TakingApart::component(int part, const PartSet& within) const {
  PartSet group(all_), fresh(assembly_.parts.size());
  group -= all_;
  fresh.add(part);
  while (!fresh.empty()) {
    group |= fresh;
    PartSet next(assembly_.parts.size());
    fresh.each([&](int p) {
      next |= blocking_.neighbours(p);
      next |= blocking_.tied(p);
    });
    fresh = (next & within) - group;
  }
  return group;
}

std::vector<PartSet> TakingApart::components(PartSet left) const {
  std::vector<PartSet> found;
  while (!left.empty()) {
    found.push_back(component(left.first(), left));
    left -= found.back();
  }
  return found;
}

int TakingApart::pieces(PartSet left) const {
  int count = 0;
  for (; !left.empty(); ++count) left -= component(left.first(), left);
  return count;
}

// Items of the project that have parts on both sides: a face frame is made up whole, a drawer too.
int TakingApart::items_broken(const PartSet& off, const PartSet& rest) const {
  const auto items = [&](const PartSet& group) {
    std::vector<int> found;
    group.each([&](int part) { found.push_back(assembly_.parts[index(part)].item); });
    std::sort(found.begin(), found.end());
    found.erase(std::unique(found.begin(), found.end()), found.end());
    return found;
  };
  const std::vector<int> left = items(off), right = items(rest);
  return static_cast<int>(std::count_if(left.begin(), left.end(), [&](int item) {
    return std::binary_search(right.begin(), right.end(), item);
  }));
}

Division TakingApart::division(const PartSet& off, const PartSet& rest) const {
  Division found;
  const PartSet& fewer = off.count() < rest.count() ? off : rest;
  const PartSet& others = off.count() < rest.count() ? rest : off;
  fewer.each([&](int part) {
    for (const int joint : blocking_.joints_of(part))
      if (blocking_.joints()[index(joint)].meets(others)) found.joints.push_back(joint);
  });
  std::sort(found.joints.begin(), found.joints.end());
  found.joints.erase(std::unique(found.joints.begin(), found.joints.end()), found.joints.end());
  found.pieces = pieces(off) + pieces(rest);
  found.items_broken = items_broken(off, rest);
  found.unevenness = std::abs(off.count() - rest.count());
  return found;
}

void TakingApart::consider(std::size_t way, const PartSet& off, const PartSet& whole,
                           const Division& division, Split& best) {
  const auto sliding =
      static_cast<int>(std::count_if(division.joints.begin(), division.joints.end(),
                                     [&](int j) { return blocking_.slides(way, index(j)); }));
  const std::tuple worth{division.pieces, division.items_broken, sliding, division.joints.size(),
                         division.unevenness};
  if (best.found && worth >= best.worth) return;
  best = {off, whole - off, blocking_.ways()[way], division.joints, sliding > 0, true, worth};
}

void TakingApart::join(Split split) {
  if (split.off.count() > split.rest.count()) {
    std::swap(split.off, split.rest);
    split.way = -split.way;
  }
  order_.joinings.push_back({split.off.list(), split.rest.list(), -split.way + Vec3{},
                             std::move(split.joints), split.slides});
}

void TakingApart::apart(const PartSet& whole) {
  if (whole == blocking_.tied(whole.first())) return;
  Split best;
  std::unordered_map<PartSet, Division, PartSet::Hash> known;
  const PartSet ways = blocking_.ways_for(whole);
  blocking_.expect(ways);
  ways.each([&](int way) {
    const std::vector<PartSet> gently = blocking_.with(index(way), whole, true);
    const std::vector<PartSet> roughly = blocking_.with(index(way), whole, false);
    for (std::size_t i = 0; i < gently.size(); ++i) {
      for (const PartSet* off : {&gently[i], &roughly[i]}) {
        if (*off == whole) continue;
        const auto [entry, fresh] = known.try_emplace(*off);
        if (fresh) entry->second = division(*off, whole - *off);
        consider(index(way), *off, whole, entry->second, best);
      }
    }
  });
  if (!best.found) {
    stick(whole);
    return;
  }
  const bool swapped = best.off.count() > best.rest.count();
  apart(swapped ? best.off : best.rest);
  apart(swapped ? best.rest : best.off);
  join(std::move(best));
}

// Groups that no joint holds to another: each is made up by itself, and put in its place.
void TakingApart::loosely(std::vector<PartSet> groups) {
  PartSet whole(assembly_.parts.size());
  for (const PartSet& group : groups) whole |= group;
  blocking_.expect(PartSet(blocking_.ways().size()));
  std::vector<Split> off_first;
  while (groups.size() > 1) {
    Split best;
    std::size_t chosen = 0;
    for (std::size_t g = 0; g < groups.size() && !best.found; ++g)
      for (std::size_t way = 0; way < blocking_.ways().size() && !best.found; ++way)
        if (blocking_.free(way, groups[g], whole - groups[g])) {
          consider(way, groups[g], whole, division(groups[g], whole - groups[g]), best);
          chosen = g;
        }
    if (!best.found) break;
    whole -= groups[chosen];
    apart(groups[chosen]);
    blocking_.expect(PartSet(blocking_.ways().size()));
    groups.erase(groups.begin() + static_cast<std::ptrdiff_t>(chosen));
    off_first.push_back(std::move(best));
  }
  // What hangs in each other without a joint is taken apart part by part, if at all.
  apart(whole);
  for (auto split = off_first.rbegin(); split != off_first.rend(); ++split) join(std::move(*split));
}

void TakingApart::stick(const PartSet& whole) {
  Finding finding{Level::caution, "no-way-in", {}, "", ""};
  whole.each([&](int part) { finding.about.push_back(assembly_.parts[index(part)].name); });
  finding.text = "No part or group of these " + std::to_string(whole.count()) +
                 " can be brought to the others along a straight line: every way tried is closed "
                 "by a mated face, a dowel or a loose tenon.";
  finding.remedy =
      "Close the last joint by springing the parts if they give, turn one joint's dowels or "
      "tenons to the direction of another, or put a butt or mitre without them at one place.";
  order_.findings.push_back(std::move(finding));
  order_.stuck.push_back(whole.list());
}

// What closes the way on which least stands in the way.
std::vector<std::string> TakingApart::closed_by(const PartSet& moving, const PartSet& there) {
  PartSet least = there;
  for (std::size_t way = 0; way < blocking_.ways().size(); ++way) {
    PartSet closing(assembly_.parts.size());
    moving.each([&](int part) { closing |= blocking_.held_by(way, part, there); });
    if (closing.count() < least.count()) least = closing;
  }
  std::vector<std::string> names;
  least.each([&](int part) { names.push_back(assembly_.parts[index(part)].name); });
  return names;
}

bool TakingApart::bring(const Pinned& next, const PartSet& moving, const PartSet& there) {
  Split best;
  const PartSet both = moving | there;
  for (std::size_t way = 0; way < blocking_.ways().size(); ++way)
    if (blocking_.free(way, moving, there))
      consider(way, moving, both, division(moving, there), best);
  if (best.found) {
    join(std::move(best));
    return true;
  }
  Finding finding{Level::caution, "order-closed", {next.name}, "", ""};
  std::string names;
  for (const std::string& name : closed_by(moving, there)) {
    names += (names.empty() ? "" : ", ") + name;
    finding.about.push_back(name);
  }
  finding.text = "The order asked for brings " + next.name +
                 " when every straight way to its place is closed, on the best of them by " +
                 names + ".";
  finding.remedy = "Bring " + next.name + " before " + names +
                   ", or leave `order` out. The pages follow the computed order.";
  order_.findings.push_back(std::move(finding));
  return false;
}

bool TakingApart::as_pinned(std::span<const Pinned> pinned) {
  PartSet there(assembly_.parts.size());
  for (const Pinned& next : pinned) {
    PartSet moving(assembly_.parts.size());
    for (const int part : next.parts) moving |= blocking_.tied(part);
    moving -= there;
    if (moving.empty()) continue;
    loosely(components(moving));
    if (!order_.complete() || (!there.empty() && !bring(next, moving, there))) return false;
    there |= moving;
  }
  blocking_.tie(there);
  everything();
  return true;
}

}  // namespace

AssemblyOrder order_of_assembly(const parts::Assembly& assembly, std::span<const Pinned> pinned) {
  std::vector<Finding> closed;
  if (!pinned.empty()) {
    TakingApart taking(assembly);
    if (taking.as_pinned(pinned)) return taking.order();
    closed = taking.order().findings;
  }
  TakingApart taking(assembly);
  taking.everything();
  AssemblyOrder order = taking.order();
  for (Finding& finding : closed)
    if (finding.code == "order-closed") order.findings.push_back(std::move(finding));
  return order;
}

}  // namespace splay::fabrication
