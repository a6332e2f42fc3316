#include <algorithm>
#include <cmath>

#include "base/index.h"
#include "fabrication/gluing.h"

namespace splay::fabrication {

namespace {

int opposite(std::size_t way) { return static_cast<int>(way ^ 1U); }

bool two_of(const std::vector<int>& parts, const PartSet& group) {
  return std::ranges::count_if(parts, [&](int part) { return group.has(part); }) > 1;
}

}  // namespace

bool only_slid(const parts::Joint& joint, Vec3 way) {
  constexpr double pressed = 0.1;  // of the way's unit length is square to a mated face
  return std::none_of(joint.mates.begin(), joint.mates.end(), [&](const parts::Mate& mate) {
    return std::abs(dot(mate.plane.n, way)) > pressed;
  });
}

Blocking::Blocking(const parts::Assembly& assembly, LikelyWays ways)
    : assembly_(assembly), likely_(std::move(ways)), expected_(likely_.ways.size()) {
  const std::size_t n = assembly.parts.size();
  for (const parts::Part& part : assembly.parts) solids_.emplace_back(part.world, part.place);
  for (std::size_t i = 0; i < n; ++i) {
    tied_.emplace_back(n);
    tied_.back().add(static_cast<int>(i));
  }
  runs_.resize(likely_.ways.size());
  slides_.resize(likely_.ways.size());
  find_joints();
  find_guides();
  for (std::size_t j = 0; j < joints_.size(); ++j)
    if (assembly.joints[j].made == parts::Made::before_cuts) tie(joints_[j]);
}

void Blocking::find_joints() {
  const std::size_t n = parts();
  neighbours_.assign(n, PartSet(n));
  joints_of_.resize(n);
  for (const parts::Joint& joint : assembly_.joints) {
    PartSet between(n);
    for (const int part : joint.between) between.add(part);
    between.each([&](int part) {
      neighbours_[index(part)] |= between;
      joints_of_[index(part)].push_back(static_cast<int>(joints_.size()));
    });
    joints_.push_back(std::move(between));
  }
}

void Blocking::find_guides() {
  guides_of_.resize(parts());
  for (const parts::Fitting& fitting : assembly_.fittings) {
    if (!guides(fitting)) continue;
    Guide guide{fitting.axis, PartSet(parts())};
    for (const int part : fitting.parts) guide.parts.add(part);
    guide.parts.each(
        [&](int part) { guides_of_[index(part)].push_back(static_cast<int>(guides_.size())); });
    guides_.push_back(std::move(guide));
  }
}

// Others' ways too, as long as there are not too many: one that runs askew to a group's own may
// press all of its joints home.
PartSet Blocking::ways_for(const PartSet& group) const {
  constexpr std::size_t many = 512;
  PartSet found(ways().size());
  if (ways().size() <= many) {
    for (std::size_t way = 0; way < ways().size(); ++way) found.add(static_cast<int>(way));
    return found;
  }
  const auto add = [&](const std::vector<int>& ways) {
    for (const int way : ways) found.add(way);
  };
  add(likely_.of_piece);
  group.each([&](int part) {
    add(likely_.of_part[index(part)]);
    for (const int joint : joints_of_[index(part)])
      if (two_of(assembly_.joints[index(joint)].between, group))
        add(likely_.of_joint[index(joint)]);
  });
  for (std::size_t f = 0; f < assembly_.fittings.size(); ++f)
    if (!likely_.of_fitting[f].empty() && two_of(assembly_.fittings[f].parts, group))
      add(likely_.of_fitting[f]);
  return found;
}

const std::vector<bool>& Blocking::slid(std::size_t way) {
  std::vector<bool>& slid = slides_[way];
  if (slid.size() != joints_.size())
    for (const parts::Joint& joint : assembly_.joints)
      slid.push_back(only_slid(joint, ways()[way]));
  return slid;
}

void Blocking::tie(const PartSet& together) {
  PartSet all = together;
  together.each([&](int part) { all |= tied_[index(part)]; });
  all.each([&](int part) { tied_[index(part)] = all; });
}

Blocking::Run& Blocking::run(std::size_t way, int part) {
  std::vector<std::unique_ptr<Run>>& runs = runs_[way];
  if (runs.empty()) runs.resize(parts());
  if (runs[index(part)]) return *runs[index(part)];
  runs[index(part)] = std::make_unique<Run>();
  Run& mine = *runs[index(part)];
  mine.held = PartSet(parts());
  for (const int g : guides_of_[index(part)])
    if (!parallel(guides_[index(g)].axis, ways()[way])) mine.held |= guides_[index(g)].parts;
  mine.asked = mine.held;
  mine.asked.add(part);
  return mine;
}

// Along the way in question, and along all that are expected with it.
void Blocking::find_run(std::size_t way, int part, int other) {
  PartSet asked = expected_;
  asked.add(static_cast<int>(way));
  const PartSet closed = closed_ways(solids_[index(part)], solids_[index(other)], ways(), asked);
  asked.each([&](int each) {
    const bool held = closed.has(each);
    Run& mine = run(index(each), part);
    mine.asked.add(other);
    if (held) mine.held.add(other);
    // The other way round it is the same run.
    Run& theirs = run(index(opposite(index(each))), other);
    theirs.asked.add(part);
    if (held) theirs.held.add(part);
  });
}

bool Blocking::waits(std::size_t way, int part, int other) {
  if (!run(way, part).asked.has(other)) find_run(way, part, other);
  return run(way, part).held.has(other);
}

PartSet Blocking::held_by(std::size_t way, int part, const PartSet& others) {
  (others - run(way, part).asked).each([&](int other) { find_run(way, part, other); });
  return run(way, part).held & others;
}

bool Blocking::free(std::size_t way, const PartSet& off, const PartSet& rest) {
  bool clear = true;
  off.each([&](int part) {
    if (!clear) return;
    clear = !run(way, part).held.meets(rest);
    rest.each([&](int other) { clear = clear && !waits(way, part, other); });
  });
  return clear;
}

PartSet Blocking::wiped(std::size_t way, int part) {
  PartSet wiped(parts());
  const std::vector<bool>& wipes = slid(way);
  for (const int joint : joints_of_[index(part)])
    if (wipes[index(joint)]) wiped |= joints_[index(joint)];
  return wiped;
}

std::vector<PartSet> Blocking::with(std::size_t way, const PartSet& whole, bool gently) {
  // What holds each part directly, then what hangs on that; groups found before are taken over.
  std::vector<PartSet> groups;
  std::vector<int> place(parts(), -1);
  whole.each([&](int part) {
    PartSet group(parts()), fresh = tied(part);
    while (!fresh.empty()) {
      group |= fresh;
      PartSet more(parts());
      fresh.each([&](int p) {
        if (place[index(p)] >= 0) {
          more |= groups[index(place[index(p)])];
          return;
        }
        more |= held_by(way, p, whole);
        if (gently) more |= wiped(way, p) & whole;
      });
      PartSet tied_too(parts());
      (more - group).each([&](int p) { tied_too |= tied(p); });
      fresh = (more | tied_too) - group;
    }
    place[index(part)] = static_cast<int>(groups.size());
    groups.push_back(std::move(group));
  });
  return groups;
}

}  // namespace splay::fabrication
