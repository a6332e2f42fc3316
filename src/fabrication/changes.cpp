#include "fabrication/changes.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "base/figure.h"
#include "fabrication/row_order.h"

namespace splay::fabrication {

namespace {

constexpr double same_length = 1e-6;  // mm
constexpr double same_volume = 1e-3;  // mm3

const parts::Part& first_part(const Plan& plan, const PartRow& row) {
  return plan.assembly.parts[static_cast<std::size_t>(row.members.front())];
}

std::string names_of(const Plan& plan, const PartRow& row) {
  std::string text;
  for (const int part : row.members)
    text += (text.empty() ? "" : ", ") + plan.assembly.parts[static_cast<std::size_t>(part)].name;
  return text;
}

// "length 48 to 50 in"; a change too small to print says by how much.
std::string length_change(const std::string& name, double was, double is,
                          const FigureStyle& figures) {
  if (figures.round(was) == figures.round(is)) {
    const bool inch = figures.unit == Unit::inch;
    const double by = std::abs(inch ? (is - was) / Length::mm_per_inch : is - was);
    constexpr double least = 0.001;
    const std::string much =
        by < least / 2 ? "under " + plain_number(least, 3) : plain_number(by, 3);
    return name + " " + much + (inch ? " in " : " mm ") + (is > was ? "more" : "less");
  }
  return name + " " + figures.text(was) + " to " + figures.with_unit(is);
}

void compare_sizes(const PartRow& was, const PartRow& is, const FigureStyle& figures,
                   std::vector<std::string>& what) {
  const auto compare = [&](const char* name, double a, double b) {
    if (std::abs(a - b) > same_length) what.push_back(length_change(name, a, b, figures));
    return std::abs(a - b) > same_length;
  };
  bool other = compare("length", was.finished.x, is.finished.x);
  other |= compare("width", was.finished.y, is.finished.y);
  other |= compare("thickness", was.finished.z, is.finished.z);
  if (other) return;  // the blank goes with the part
  compare("blank length", was.blank.x, is.blank.x);
  compare("blank width", was.blank.y, is.blank.y);
  compare("blank thickness", was.blank.z, is.blank.z);
}

void compare_cuts(const PartRow& was, const PartRow& is, std::vector<std::string>& what) {
  constexpr double same_angle = 1e-9;
  const auto angle = [&](const std::string& name, double a, double b) {
    if (std::abs(a - b) < same_angle) return;
    const std::string old = degrees_text(Angle{a}.degrees()),
                      now = degrees_text(Angle{b}.degrees());
    what.push_back(old == now ? name + " by under " + degrees_text(0.01)
                              : name + " " + old + " to " + now);
  };
  for (const CutReport& cut : is.cuts) {
    const auto old = std::ranges::find_if(
        was.cuts, [&](const CutReport& c) { return c.name == cut.name && c.side == cut.side; });
    if (old == was.cuts.end()) {
      what.push_back("new: " + cut.name);
      continue;
    }
    angle(cut.name + ", face angle", old->face_angle, cut.face_angle);
    angle(cut.name + ", bevel", old->bevel, cut.bevel);
  }
}

bool same_setting(const Setting& a, const Setting& b) {
  const auto same = [](double x, double y) { return std::abs(x - y) < 1e-9; };
  const auto same_mark = [&](const Mark& x, const Mark& y) {
    return same(x.along, y.along) && same(x.across, y.across);
  };
  return same(a.tilt, b.tilt) && same(a.gauge, b.gauge) && same(a.distance, b.distance) &&
         same(a.height, b.height) && same(a.width, b.width) && same(a.jig_offset, b.jig_offset) &&
         std::ranges::equal(a.marks, b.marks, same_mark) &&
         std::ranges::equal(a.lines, b.lines,
                            [&](const Line& x, const Line& y) {
                              return same_mark(x.a, y.a) && same_mark(x.b, y.b) &&
                                     same(x.lean, y.lean);
                            }) &&
         std::ranges::equal(a.depths, b.depths, [&](const DepthMark& x, const DepthMark& y) {
           return same_mark(x.at, y.at) && same(x.depth, y.depth);
         });
}

bool same_step(const Step& a, const Step& b) {
  return a.name == b.name && a.machine == b.machine && a.tool == b.tool && a.guide == b.guide &&
         a.face == b.face && a.against == b.against && a.leads == b.leads &&
         same_setting(a.printed, b.printed);
}

std::vector<const Step*> steps_of(const Plan& plan, const PartRow& row) {
  const auto index = static_cast<int>(&row - plan.rows.data());
  std::vector<const Step*> steps;
  for (const Step& step : plan.steps)
    if (step.row == index) steps.push_back(&step);
  return steps;
}

std::vector<std::string> changed_steps(const Plan& before, const PartRow& was, const Plan& now,
                                       const PartRow& is) {
  const std::vector<const Step*> old = steps_of(before, was);
  std::vector<std::string> ids;
  for (const Step* step : steps_of(now, is))
    if (std::ranges::none_of(old, [&](const Step* o) { return same_step(*o, *step); }))
      ids.push_back(step->id);
  return ids;
}

using Rows = std::map<std::string, const PartRow*>;  // by the names of parts

Rows rows_by_part(const Plan& plan) {
  Rows rows;
  for (const PartRow& row : plan.rows)
    for (const int part : row.members)
      rows[plan.assembly.parts[static_cast<std::size_t>(part)].name] = &row;
  return rows;
}

PartChange change_of(const Plan& before, const PartRow& was, const Plan& now, const PartRow& is) {
  const FigureStyle figures = now.project->job.figures();
  PartChange change;
  change.mark = is.mark;
  change.mark_before = was.mark;
  change.name = names_of(now, is);
  if (was.mark != is.mark) change.what.push_back("mark " + was.mark + " to " + is.mark);
  if (was.quantity() != is.quantity())
    change.what.push_back(std::to_string(was.quantity()) + " off to " +
                          std::to_string(is.quantity()));
  if (was.stock != is.stock) change.what.push_back("stock " + was.stock + " to " + is.stock);
  compare_sizes(was, is, figures, change.what);
  compare_cuts(was, is, change.what);
  const bool other_shape =
      difference_volume(first_part(before, was).body, first_part(now, is).body) > same_volume;
  if (other_shape && change.what.empty()) change.what.emplace_back("shape");
  change.steps = changed_steps(before, was, now, is);
  return change;
}

}  // namespace

std::vector<PartChange> part_changes(const Plan& before, const Plan& now) {
  const Rows old = rows_by_part(before), fresh = rows_by_part(now);
  std::vector<PartChange> all;
  std::set<const PartRow*> met;
  for (const PartRow* each : rows_in_order(now)) {
    const PartRow& row = *each;
    const PartRow* was = nullptr;
    for (const int part : row.members) {
      const auto found = old.find(now.assembly.parts[static_cast<std::size_t>(part)].name);
      if (found != old.end() && was == nullptr) was = found->second;
    }
    if (was == nullptr) {
      PartChange change;
      change.mark = row.mark;
      change.name = names_of(now, row);
      change.is_new = true;
      all.push_back(std::move(change));
      continue;
    }
    met.insert(was);
    PartChange change = change_of(before, *was, now, row);
    if (!change.what.empty() || !change.steps.empty()) all.push_back(std::move(change));
  }
  for (const PartRow& row : before.rows) {
    const bool stays = std::ranges::any_of(row.members, [&](int part) {
      return fresh.contains(before.assembly.parts[static_cast<std::size_t>(part)].name);
    });
    if (met.contains(&row) || stays) continue;
    PartChange change;
    change.mark_before = row.mark;
    change.name = names_of(before, row);
    change.is_gone = true;
    all.push_back(std::move(change));
  }
  return all;
}

}  // namespace splay::fabrication
