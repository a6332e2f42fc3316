#include "parts/audit.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "base/figure.h"
#include "base/tolerance.h"

namespace splay::parts {

namespace {

std::string volume_words(double mm3) {
  return mm3 < 100 ? plain_number(mm3, 2) + " mm3" : plain_number(mm3 / 1000, 1) + " cm3";
}

std::string figure(const model::Project& project, double mm) {
  return project.job.figures().with_unit(mm);
}

void find_empty(const Assembly& assembly, std::vector<Finding>& found) {
  for (const Part& part : assembly.parts)
    if (part.body.empty())
      found.push_back({Level::stop,
                       "nothing-left",
                       {part.name},
                       "Nothing is left of " + part.name + " after its cuts.",
                       "Check the sizes around it: it lies outside what it should fit into."});
}

bool left_apart(const Assembly& assembly, int part) {
  return std::ranges::find(assembly.left_apart, part) != assembly.left_apart.end();
}

void find_overlaps(const Assembly& assembly, std::vector<Finding>& found) {
  std::vector<Solid> solids;
  for (const Part& part : assembly.parts) solids.push_back(part.world);
  for (const Clash& clash : find_clashes(solids)) {
    if (left_apart(assembly, clash.a) && left_apart(assembly, clash.b)) continue;
    const std::string& a = assembly.parts[static_cast<std::size_t>(clash.a)].name;
    const std::string& b = assembly.parts[static_cast<std::size_t>(clash.b)].name;
    found.push_back(
        {Level::stop,
         "overlap",
         {a, b},
         a + " and " + b + " are in the same place: " + volume_words(clash.volume) + " of both.",
         "Move one of them, or give them a joint."});
  }
}

// Parts of one item that no joint, made or asked for, ties, directly or through others, to the
// item's first part.
void find_floating(const Assembly& assembly, std::vector<Finding>& found) {
  std::vector<int> root(assembly.parts.size());
  std::iota(root.begin(), root.end(), 0);
  const auto top = [&root](int i) {
    while (root[static_cast<std::size_t>(i)] != i) i = root[static_cast<std::size_t>(i)];
    return i;
  };
  for (const Joint& joint : assembly.joints)
    for (const int part : joint.between)
      root[static_cast<std::size_t>(top(part))] = top(joint.between.front());
  for (const int part : assembly.left_apart)
    root[static_cast<std::size_t>(top(part))] = top(assembly.left_apart.front());
  std::vector<std::pair<int, int>> first;  // item, part
  for (std::size_t i = 0; i < assembly.parts.size(); ++i) {
    const int item = assembly.parts[i].item;
    const auto seen = std::find_if(first.begin(), first.end(),
                                   [item](const auto& pair) { return pair.first == item; });
    if (seen == first.end())
      first.emplace_back(item, static_cast<int>(i));
    else if (top(static_cast<int>(i)) != top(seen->second))
      found.push_back({Level::stop,
                       "floating",
                       {assembly.parts[i].name},
                       assembly.parts[i].name + " is joined to nothing.",
                       "Let it reach a part it can be fixed to."});
  }
}

void find_open_joints(const Assembly& assembly, const model::Project& project,
                      std::vector<Finding>& found) {
  for (const Joint& joint : assembly.joints) {
    const double gap = joint_gap(joint, assembly);
    if (gap <= tolerance::gap * 10) continue;
    const std::string size = std::isfinite(gap) ? "stay " + figure(project, gap) + " apart"
                                                : "have no surface in common";
    found.push_back({Level::stop,
                     "open-joint",
                     {joint.name},
                     "The parts of " + joint.name + " (" + joint.kind + ") " + size + ".",
                     "Check the sizes of both parts at this joint."});
  }
}

bool fits(const Part& part, const std::vector<Length>& sheet, bool may_turn) {
  const double along = sheet[0].mm, across = sheet[1].mm;
  const double slack = tolerance::weld;
  const bool straight = part.size.x <= along + slack && part.size.y <= across + slack;
  const bool turned = part.size.y <= along + slack && part.size.x <= across + slack;
  return straight || (may_turn && turned);
}

void find_stock_faults(const Assembly& assembly, const model::Project& project,
                       std::vector<Finding>& found) {
  for (const Part& part : assembly.parts) {
    const model::Stock* stock = project.stocks.find(part.stock);
    if (stock == nullptr || part.body.empty()) continue;
    const std::string size = figure(project, part.size.x) + " by " + figure(project, part.size.y);
    // Wide panels are glued up from boards: how boards are used is for the layouts to say.
    const bool sheet = *stock->kind == model::StockKind::sheet;
    if (sheet && stock->size->size() == 2 && !fits(part, *stock->size, !stock->grain.value))
      found.push_back({Level::stop,
                       "too-large-for-stock",
                       {part.name},
                       part.name + " is " + size + ", larger than a sheet of " + part.stock + " (" +
                           figure(project, (*stock->size)[0].mm) + " along the grain by " +
                           figure(project, (*stock->size)[1].mm) + ").",
                       "Use a larger sheet, or split the part."});
    const double over = part.size.z - stock->thickness->mm;
    if (stock->thickness.given && over > 1e-6)
      found.push_back({Level::stop,
                       "thickness",
                       {part.name},
                       part.name + " is " + figure(project, over) + " thicker than its stock " +
                           part.stock + ".",
                       "Choose a thicker stock or a smaller thickness."});
  }
}

}  // namespace

std::vector<Finding> audit(const Assembly& assembly, const model::Project& project) {
  std::vector<Finding> found;
  find_empty(assembly, found);
  find_overlaps(assembly, found);
  find_floating(assembly, found);
  find_open_joints(assembly, project, found);
  find_stock_faults(assembly, project, found);
  return found;
}

}  // namespace splay::parts
