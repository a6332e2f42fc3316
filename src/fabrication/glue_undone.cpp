// Joints that come apart again: which they are, and the order of assembly in which everything else
// is made up before they are drawn home.
#include <algorithm>
#include <numeric>

#include "base/index.h"
#include "fabrication/glue_undone.h"
#include "fabrication/plan.h"

namespace splay::fabrication {

namespace {

bool listed(const std::vector<int>& list, int value) {
  return std::ranges::find(list, value) != list.end();
}

// All joints that a word of the author's list means: one by its name, those of two parts as "A to
// B", those that a part or an item has with anything else.
std::vector<int> joints_meant(const Plan& plan, const std::string& word) {
  const std::vector<parts::Joint>& joints = plan.assembly.joints;
  std::vector<int> found;
  const auto all_that = [&](auto meant) {
    for (std::size_t j = 0; j < joints.size(); ++j)
      if (meant(joints[j])) found.push_back(static_cast<int>(j));
    return !found.empty();
  };
  if (all_that([&](const parts::Joint& joint) { return joint.name == word; })) return found;
  if (const std::size_t to = word.find(" to "); to != std::string::npos) {
    const std::vector<int> one = parts_meant(plan, word.substr(0, to)),
                           other = parts_meant(plan, word.substr(to + 4));
    const auto among = [](const parts::Joint& joint, const std::vector<int>& parts) {
      return std::ranges::any_of(joint.between, [&](int part) { return listed(parts, part); });
    };
    all_that([&](const parts::Joint& joint) { return among(joint, one) && among(joint, other); });
    return found;
  }
  const std::vector<int> parts = parts_meant(plan, word);
  all_that([&](const parts::Joint& joint) {
    if (joint.made != parts::Made::in_turn) return false;
    const auto inside =
        std::ranges::count_if(joint.between, [&](int part) { return listed(parts, part); });
    return inside > 0 && inside < static_cast<long>(joint.between.size());
  });
  return found;
}

// What stays together when these joints are undone: parts by the joints that are left.
std::vector<std::vector<int>> pieces_without(const parts::Assembly& all,
                                             const std::vector<int>& undone) {
  std::vector<int> label(all.parts.size());
  std::iota(label.begin(), label.end(), 0);
  for (std::size_t j = 0; j < all.joints.size(); ++j) {
    if (listed(undone, static_cast<int>(j))) continue;
    const std::vector<int>& between = all.joints[j].between;
    for (const int part : between) {
      const int from = label[index(part)], to = label[index(between.front())];
      std::ranges::replace(label, from, to);
    }
  }
  std::vector<std::vector<int>> pieces;
  for (std::size_t p = 0; p < label.size(); ++p) {
    const auto same = std::ranges::find_if(
        pieces, [&](const auto& piece) { return label[index(piece.front())] == label[p]; });
    if (same == pieces.end())
      pieces.push_back({static_cast<int>(p)});
    else
      same->push_back(static_cast<int>(p));
  }
  return pieces;
}

// An assembly whose parts are groups of another's, each as one solid, with the joints and fittings
// between the groups.
struct Grouped {
  parts::Assembly assembly;
  std::vector<std::vector<int>> groups;  // of the other's parts, ascending
  std::vector<int> joints;               // of the other, in the order of this one's
};

Grouped grouped(const parts::Assembly& all, std::vector<std::vector<int>> groups) {
  Grouped result;
  std::vector<int> group_of(all.parts.size(), -1);
  for (std::size_t g = 0; g < groups.size(); ++g) {
    parts::Part whole = all.parts[index(groups[g].front())];
    for (std::size_t i = 1; i < groups[g].size(); ++i)
      whole.world.add_disjoint(all.parts[index(groups[g][i])].world);
    for (const int part : groups[g]) group_of[index(part)] = static_cast<int>(g);
    result.assembly.parts.push_back(std::move(whole));
  }
  const auto moved = [&](std::vector<int>& list) {
    std::vector<int> to;
    for (const int part : list)
      if (const int group = group_of[index(part)]; group >= 0 && !listed(to, group))
        to.push_back(group);
    list = std::move(to);
    return list.size() > 1;
  };
  for (std::size_t j = 0; j < all.joints.size(); ++j) {
    parts::Joint joint = all.joints[j];
    if (!moved(joint.between)) continue;
    std::erase_if(joint.mates, [&](parts::Mate& mate) {
      mate.a = group_of[index(mate.a)];
      mate.b = group_of[index(mate.b)];
      return mate.a < 0 || mate.b < 0 || mate.a == mate.b;
    });
    result.assembly.joints.push_back(std::move(joint));
    result.joints.push_back(static_cast<int>(j));
  }
  for (parts::Fitting fitting : all.fittings)
    if (moved(fitting.parts)) result.assembly.fittings.push_back(std::move(fitting));
  result.groups = std::move(groups);
  return result;
}

// The author's order in the indices of a grouped assembly, as far as its groups have to do with it.
std::vector<Pinned> pinned_in(const Grouped& of, std::span<const Pinned> pinned) {
  std::vector<Pinned> found;
  for (const Pinned& next : pinned) {
    Pinned own{next.name, {}};
    for (std::size_t g = 0; g < of.groups.size(); ++g)
      if (std::ranges::any_of(of.groups[g], [&](int part) { return listed(next.parts, part); }))
        own.parts.push_back(static_cast<int>(g));
    if (!own.parts.empty()) found.push_back(std::move(own));
  }
  return found;
}

// The joinings of a grouped assembly in the words of the whole one, put at the end of `order`.
bool add_order(const Grouped& of, std::span<const Pinned> pinned, AssemblyOrder& order) {
  const AssemblyOrder own = order_of_assembly(of.assembly, pinned_in(of, pinned));
  if (!own.findings.empty()) return false;
  const auto back = [&](const std::vector<int>& list) {
    std::vector<int> parts;
    for (const int group : list)
      parts.insert(parts.end(), of.groups[index(group)].begin(), of.groups[index(group)].end());
    std::ranges::sort(parts);
    return parts;
  };
  for (Joining joining : own.joinings) {
    joining.moving = back(joining.moving);
    joining.fixed = back(joining.fixed);
    for (int& joint : joining.joints) joint = of.joints[index(joint)];
    order.joinings.push_back(std::move(joining));
  }
  return own.complete();
}

}  // namespace

std::vector<int> undone_as_asked(const Plan& plan) {
  std::vector<int> undone;
  for (const std::string& word : *plan.project->glue_up.undone)
    for (const int joint : joints_meant(plan, word))
      if (!listed(undone, joint)) undone.push_back(joint);
  std::ranges::sort(undone);
  return undone;
}

std::vector<int> undone_joints(const Plan& plan) {
  std::vector<int> undone = undone_as_asked(plan);
  for (const DryJoint& dry : plan.soundness.knock_down.joints)
    if (plan.soundness.knock_down.found() && !listed(undone, dry.joint))
      undone.push_back(dry.joint);
  std::ranges::sort(undone);
  return undone;
}

std::vector<int> fitted_or_undone(const Plan& plan) {
  std::vector<int> found;
  for (std::size_t j = 0; j < plan.assembly.joints.size(); ++j)
    if (const Bond bond = bond_of(plan, static_cast<int>(j));
        bond == Bond::fitted || bond == Bond::undone)
      found.push_back(static_cast<int>(j));
  return found;
}

std::vector<int> moving_or_undone(const Plan& plan) {
  const parts::Assembly& all = plan.assembly;
  std::vector<int> found = plan.glue_up.undone;
  const auto add = [&](const std::vector<int>& moving) {
    for (std::size_t j = 0; j < all.joints.size(); ++j) {
      const auto inside = std::ranges::count_if(all.joints[j].between,
                                                [&](int part) { return listed(moving, part); });
      if (inside > 0 && inside < static_cast<long>(all.joints[j].between.size()) &&
          !listed(found, static_cast<int>(j)))
        found.push_back(static_cast<int>(j));
    }
  };
  for (const parts::Slide& slide : all.slides) add(slide.parts);
  for (const parts::Swing& swing : all.swings) add(swing.parts);
  std::ranges::sort(found);
  return found;
}

std::vector<int> all_but_edging(const parts::Assembly& all, std::span<const Pinned> pinned) {
  std::vector<int> others;
  bool any = false;
  for (std::size_t j = 0; j < all.joints.size(); ++j) {
    const parts::Joint& joint = all.joints[j];
    if (joint.made == parts::Made::before_cuts) continue;
    const bool edging = joint.made == parts::Made::before_assembly &&
                        std::ranges::find(pinned, all.parts[index(joint.between.front())].name,
                                          &Pinned::name) == pinned.end();
    any = any || edging;
    if (!edging) others.push_back(static_cast<int>(j));
  }
  return any ? others : std::vector<int>{};
}

void bring_the_lighter(const parts::Assembly& all, AssemblyOrder& order) {
  constexpr double heavier = 2, down = -0.7;
  const auto wood = [&](const std::vector<int>& parts) {
    double sum = 0;
    for (const int part : parts) sum += all.parts[index(part)].world.volume();
    return sum;
  };
  for (Joining& joining : order.joinings) {
    if (joining.way.z < down || wood(joining.moving) < heavier * wood(joining.fixed)) continue;
    std::swap(joining.moving, joining.fixed);
    joining.way = -joining.way;
  }
}

void judge_undone(Plan& plan) {
  const auto& asked = plan.project->glue_up.undone;
  for (const std::string& word : *asked)
    if (joints_meant(plan, word).empty())
      plan.findings.push_back(
          {Level::caution,
           "undone-unknown",
           {word},
           "[glue_up] undone names \"" + word + "\", and no joint of the piece is meant by it.",
           "A joint by its name, two parts as \"A to B\", or a part or item for all its joints to "
           "the rest.",
           asked.span});
}

std::optional<AssemblyOrder> order_in_pieces(const parts::Assembly& all,
                                             const std::vector<std::vector<int>>& left_out,
                                             std::span<const Pinned> pinned) {
  using Groups = std::vector<std::vector<int>>;
  Groups smaller;
  for (std::size_t p = 0; p < all.parts.size(); ++p) smaller.push_back({static_cast<int>(p)});
  AssemblyOrder order;
  for (const std::vector<int>& joints : left_out) {
    const Groups larger = pieces_without(all, joints);
    for (const std::vector<int>& piece : larger) {
      Groups in_it;
      for (const std::vector<int>& group : smaller)
        if (listed(piece, group.front())) in_it.push_back(group);
      if (in_it.size() > 1 && !add_order(grouped(all, std::move(in_it)), pinned, order))
        return std::nullopt;
    }
    smaller = larger;
  }
  if (smaller.size() > 1 && !add_order(grouped(all, smaller), pinned, order)) return std::nullopt;
  return order;
}

}  // namespace splay::fabrication
