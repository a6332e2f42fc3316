#include "sheets/joint_words.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>

#include "base/quantity.h"
#include "base/small_length.h"
#include "sheets/joint_cut.h"
#include "sheets/part_view_facts.h"

namespace splay::sheets {

namespace {

using parts::Joint;
using parts::Operation;
using parts::OperationKind;
using parts::Part;

constexpr double least_lean = 2e-4;  // radians

const Part& part_at(const fabrication::Plan& plan, int index) {
  return plan.assembly.parts[static_cast<std::size_t>(index)];
}

// Figures that are equal for alike joints and for mirror images, in a text that can be compared.
// The steps' borders lie where no round figure does, so that noise tips none over.
std::string rounded(double value, double step) {
  constexpr double aside = 0.1379;
  return std::to_string(std::llround(value / step + aside)) + ",";
}

std::string signature(const Part& part, const Joint& joint) {
  constexpr double length = 0.01, angle = 1e-4;
  std::string words = rounded(std::min(part.size.y, part.size.z), length);
  std::vector<std::string> cuts;
  for (const Operation& operation : part.operations) {
    if (operation.joint != joint.name) continue;
    const Vec3 n = operation.cut.n;
    std::string cut = std::to_string(static_cast<int>(operation.kind)) + ",";
    if (operation.kind == OperationKind::end_cut || operation.kind == OperationKind::edge_cut ||
        operation.kind == OperationKind::shoulder)
      cut += rounded(std::abs(n.y), angle) + rounded(std::abs(n.z), angle);
    cut += rounded(operation.trench.shallow, length) + rounded(operation.trench.deep, length);
    cuts.push_back(std::move(cut));
  }
  std::ranges::sort(cuts);
  for (const std::string& cut : cuts) words += cut;
  return words;
}

std::string signature(const fabrication::Plan& plan, const Joint& joint) {
  std::string words =
      joint.kind + "," + rounded(std::min(joint.dihedral, std::numbers::pi - joint.dihedral), 1e-4);
  std::vector<std::string> each;
  for (const int index : joint.between) each.push_back(signature(part_at(plan, index), joint));
  std::ranges::sort(each);
  for (const std::string& one : each) words += one + ";";
  for (const parts::Fitting& fitting : plan.assembly.fittings)
    if (fitting.joint == joint.name) words += fitting.kind + fitting.size + ";";
  return words;
}

std::string marks_words(const fabrication::Plan& plan, const Joint& joint) {
  std::string words;
  for (std::size_t i = 0; i < joint.between.size(); ++i)
    words += (i == 0 ? "" : i == 1 ? " to " : ", ") + plan.mark_of(joint.between[i]);
  return words;
}

// "Stands for A to G (2), A to C."
std::string stands_for(const fabrication::Plan& plan, const JointGroup& group) {
  std::vector<std::pair<std::string, int>> counted;
  for (const Joint* joint : group.joints) {
    const std::string words = marks_words(plan, *joint);
    const auto known = std::ranges::find(counted, words, &std::pair<std::string, int>::first);
    if (known == counted.end())
      counted.emplace_back(words, 1);
    else
      ++known->second;
  }
  std::string words = group.joints.size() > 1 ? "Stands for " : "Joins ";
  for (std::size_t i = 0; i < counted.size(); ++i)
    words += (i == 0 ? "" : "; ") + counted[i].first +
             (counted[i].second > 1 ? " (" + std::to_string(counted[i].second) + ")" : "");
  return words + (group.joints.size() > 1
                      ? "; mirror images among them are cut the other way round."
                      : ".");
}

std::string angle_and_rise(const Context& context, double radians) {
  return angle_words(radians) + " (" + rise_words(context.kit, radians) + ")";
}

// "bevel 37.50° (...), face angle square" of the plane a cut leaves.
std::string plane_words(const Context& context, const Operation& operation) {
  const Vec3 n = operation.cut.n;
  const bool end = operation.kind != OperationKind::edge_cut;
  const double bevel = std::asin(std::clamp(std::abs(n.z), 0.0, 1.0));
  const double face =
      end ? std::atan2(std::abs(n.y), std::abs(n.x)) : std::atan2(std::abs(n.x), std::abs(n.y));
  const auto one = [&](const std::string& name, double radians) {
    return name + (radians < square_within ? " square" : " " + angle_and_rise(context, radians));
  };
  return one("bevel", bevel) + ", " + one("face angle", face);
}

std::string depth_words(const Context& context, const Operation& operation) {
  const FigureStyle& figures = context.kit.figures;
  const double shallow = operation.trench.shallow, deep = operation.trench.deep;
  if (deep <= 0) return {};
  if (deep - shallow < figures.step_mm() / 2) return figures.with_unit(deep) + " deep";
  return figures.text(shallow) + " to " + figures.with_unit(deep) + " deep";
}

std::string operation_words(const Context& context, const Operation& operation) {
  const bool cut = operation.kind == OperationKind::end_cut ||
                   operation.kind == OperationKind::edge_cut ||
                   operation.kind == OperationKind::shoulder;
  const std::string more = cut ? plane_words(context, operation) : depth_words(context, operation);
  return operation.name + (more.empty() ? "" : ": " + more);
}

std::string part_words(const Context& context, const Joint& joint, int index) {
  const Part& part = part_at(context.plan, index);
  std::vector<std::string> all;
  for (const Operation& operation : part.operations) {
    if (operation.joint != joint.name) continue;
    std::string words = operation_words(context, operation);
    if (std::ranges::find(all, words) == all.end()) all.push_back(std::move(words));
  }
  std::string words = context.plan.mark_of(index) + ", " + part.name + ", " +
                      context.kit.figures.with_unit(part.size.z) + " thick";
  // What it leans off plumb and level, where it does.
  const double rise = std::asin(std::clamp(std::abs(part.place.ex.z), 0.0, 1.0));
  const double lean = std::min(rise, std::numbers::pi / 2 - rise);
  if (lean > least_lean)
    words += ", leans " + angle_and_rise(context, lean) +
             (rise > std::numbers::pi / 4 ? " off plumb" : " off level");
  words += ". ";
  for (std::size_t i = 0; i < all.size(); ++i) words += (i == 0 ? "" : "; ") + capitalised(all[i]);
  return words + (all.empty() ? "Nothing cut." : ".");
}

// "With 2 of: dowel 8 x 40 mm."
std::string fitting_words(const fabrication::Plan& plan, const Joint& joint) {
  std::vector<std::pair<std::string, int>> counted;
  for (const parts::Fitting& fitting : plan.assembly.fittings) {
    if (fitting.joint != joint.name) continue;
    const std::string name = fitting.kind + " " + fitting.size;
    const auto known = std::ranges::find(counted, name, &std::pair<std::string, int>::first);
    if (known == counted.end())
      counted.emplace_back(name, 1);
    else
      ++known->second;
  }
  std::string words;
  for (const auto& [name, count] : counted)
    words += (words.empty() ? "Each with " : "; ") + std::to_string(count) + " of: " + name;
  return words.empty() ? words : words + ".";
}

std::string closing_words(const Context& context, const JointGroup& group) {
  double printed = -1;
  for (const fabrication::JointReport& report : context.plan.joints)
    for (const Joint* joint : group.joints)
      if (report.name == joint->name) printed = std::max(printed, report.gap_printed);
  if (printed < 0) return {};
  if (!std::isfinite(printed))
    return "Cut to the figures as printed its surfaces don't meet: mark it from the work.";
  const std::string length = small_length(printed, *context.job().units);
  return "Cut to the figures as printed " +
         std::string(group.joints.size() > 1 ? "they open" : "it opens") + " by " +
         (length.starts_with("under") ? "" : "at most ") + length + ".";
}

std::string chain_words(const Context& context, const Joint& joint) {
  for (const fabrication::ChainReport& chain : context.plan.chains) {
    const bool whole = std::ranges::all_of(joint.between, [&](int part) {
      return std::ranges::find(chain.parts, part) != chain.parts.end();
    });
    if (!whole) continue;
    return "Round the " + chain.name + " " + std::to_string(chain.cuts) +
           " cuts add up: each 0.1° off opens the last joint by " +
           small_length(chain.gap_per_tenth, *context.job().units) + "; each may be off by " +
           degrees_text(Angle{chain.tolerance}.degrees(), 3) + ".";
  }
  return {};
}

}  // namespace

JointGroups joint_groups(const fabrication::Plan& plan) {
  JointGroups groups;
  std::map<std::string, std::size_t> known;
  std::vector<std::pair<const Joint*, int>> plain;
  for (const Joint& joint : plan.assembly.joints) {
    if (!worked(plan.assembly, joint)) {
      const auto same = std::ranges::find_if(
          plain, [&](const auto& one) { return one.first->kind == joint.kind; });
      if (same == plain.end())
        plain.emplace_back(&joint, 0);
      else
        ++same->second;
      continue;
    }
    const auto [at, fresh] = known.try_emplace(signature(plan, joint), groups.drawn.size());
    if (fresh) groups.drawn.emplace_back();
    groups.drawn[at->second].joints.push_back(&joint);
  }
  for (const auto& [joint, more] : plain)
    groups.plain.push_back(joint->kind + ": " + joint->name +
                           (more > 0 ? " and " + std::to_string(more) + " more" : ""));
  return groups;
}

std::vector<std::string> joint_words(const Context& context, const JointGroup& group) {
  const Joint& joint = *group.joints.front();
  std::vector<std::string> lines{stands_for(context.plan, group)};
  if (joint.dihedral > square_within) {
    const double off = std::abs(joint.dihedral - std::numbers::pi / 2);
    lines.push_back(
        "The parts stand at " + angle_words(joint.dihedral) +
        (off < square_within ? "." : ", " + angle_and_rise(context, off) + " off square."));
  }
  for (const int index : joint.between) lines.push_back(part_words(context, joint, index));
  for (std::string words : {fitting_words(context.plan, joint), closing_words(context, group),
                            chain_words(context, joint)})
    if (!words.empty()) lines.push_back(std::move(words));
  return lines;
}

}  // namespace splay::sheets
