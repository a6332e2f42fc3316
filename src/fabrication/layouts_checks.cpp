#include "fabrication/layouts_checks.h"

#include <algorithm>
#include <map>

#include "fabrication/trade_sizes.h"

namespace splay::fabrication {

namespace {

std::string with_unit(const Plan& plan, double mm) {
  return plan.project->job.figures().with_unit(mm);
}

constexpr double calliper =
    0.02;  // mm: standards and callipers are read to a thousandth of an inch

std::string list_of(const std::vector<std::string>& words) {
  std::string text;
  for (const std::string& word : words) text += (text.empty() ? "" : ", ") + word;
  return text;
}

const PartRow& row_of(const Plan& plan, const Wanted& wanted) {
  return plan.rows[static_cast<std::size_t>(wanted.row)];
}

std::string sizes_text(const Plan& plan, const StockLayout& layout) {
  std::vector<std::string> sizes;
  for (const Supplied& supply : layout.supplies)
    sizes.push_back(plan.project->job.figures().text(supply.length) + " by " +
                    with_unit(plan, supply.width));
  sizes.erase(std::unique(sizes.begin(), sizes.end()), sizes.end());
  return sizes.empty() ? "nothing" : list_of(sizes);
}

void check_unplaced(Plan& plan, const StockLayout& layout) {
  std::map<int, int> copies;  // by part of the task
  for (const int part : layout.plan.unplaced) ++copies[part];
  const bool sheet = layout.kind == model::StockKind::sheet;
  for (const auto& [index, count] : copies) {
    const Wanted& wanted = layout.wanted[static_cast<std::size_t>(index)];
    const packing::SheetPart& part = layout.task.parts[static_cast<std::size_t>(index)];
    const PartRow& row = row_of(plan, wanted);
    plan.findings.push_back(
        {Level::stop,
         "fits-no-stock",
         {row.mark},
         std::to_string(count) + (count == 1 ? " blank of " : " blanks of ") + row.mark + " (" +
             row.name + ", " + plan.project->job.figures().text(part.width) +
             " along the grain by " + with_unit(plan, part.height) + ") can be cut from no " +
             (sheet ? "sheet" : "board") + " of " + layout.stock + ": " + sizes_text(plan, layout) +
             ", less the trims.",
         sheet
             ? "Make the part smaller or in two, name a larger sheet, lessen the trim or the "
               "blank allowance, or let its grain turn (may_turn) where that may be seen."
             : "Name longer or wider boards (lengths, widths, rack), lessen the end trim, or make "
               "the part in two.",
         layout.of(*plan.project).span});
  }
}

// Names in may_turn and match that are no part of this stock.
void check_names(Plan& plan, const model::Stock& stock) {
  std::vector<std::string_view> names;
  for (const parts::Part& part : plan.assembly.parts)
    if (part.stock == stock.name) names.emplace_back(part.name);
  const auto check = [&](const std::vector<std::string>& list, const SourceSpan& span) {
    for (const std::string& name : list) {
      if (std::find(names.begin(), names.end(), name) != names.end()) continue;
      const std::string_view near = nearest_word(name, names);
      std::string remedy =
          near.empty() ? "Parts of this stock: " + list_of({names.begin(), names.end()}) + "."
                       : "Did you mean \"" + std::string(near) + "\"?";
      plan.findings.push_back({Level::stop,
                               "unknown-part",
                               {name},
                               "[stock." + stock.name + "] speaks of a part \"" + name +
                                   "\", and no part of this stock has that name.",
                               std::move(remedy),
                               span});
    }
  };
  check(*stock.supply.may_turn, stock.supply.may_turn.span);
  for (std::size_t m = 0; m < stock.supply.matches.size(); ++m)
    check(*stock.supply.matches[m].parts, stock.supply.matches[m].parts.span);
}

void check_matches(Plan& plan, const model::Stock& stock, const StockLayout& layout) {
  if (layout.task.sequences.size() == stock.supply.matches.size()) return;
  plan.findings.push_back(
      {Level::caution,
       "match-broken",
       {stock.name},
       "A match of [stock." + stock.name +
           "] names a part that is glued up, resawn, or named twice; it is laid "
           "out without that match.",
       "Match the strips by eye when the panel is glued up, or name each part "
       "in one match only.",
       stock.span});
}

void check_rough(Plan& plan, const model::Stock& stock, const StockLayout& layout) {
  if (!stock.supply.rough.given) return;
  const double rough = stock.supply.rough->mm, planing = stock.supply.planing->mm;
  for (const Wanted& wanted : layout.wanted) {
    const PartRow& row = row_of(plan, wanted);
    if (row.finished.z + planing <= rough + 1e-6) continue;
    plan.findings.push_back(
        {Level::caution,
         "thin-rough-stock",
         {row.mark},
         row.mark + " finishes " + with_unit(plan, row.finished.z) + " thick; with " +
             with_unit(plan, planing) + " for planing it wants " +
             with_unit(plan, row.finished.z + planing) + ", and " + stock.name + " measures " +
             with_unit(plan, rough) + " rough.",
         "Pick the flattest boards and plane one as a trial, buy the next thickness, or make the "
         "part thinner.",
         stock.supply.rough.span});
  }
}

// The measured thickness against what the name promises.
void check_name_of_thickness(Plan& plan, const model::Stock& stock) {
  if (!stock.supply.sold_as.given) return;
  const double named = stock.supply.sold_as->mm;
  const auto say = [&](double measured, const std::string& promised) {
    plan.findings.push_back({Level::caution,
                             "off-its-name",
                             {stock.name},
                             stock.name + " measures " + with_unit(plan, measured) +
                                 " and is sold as " + with_unit(plan, named) + ", which " +
                                 promised + ".",
                             "Measure again, at several places. Every size here follows the "
                             "measured thickness.",
                             stock.supply.sold_as.span});
  };
  if (*stock.kind == model::StockKind::sheet) {
    const ThicknessBand band = panel(named);
    const double measured = stock.thickness->mm;
    if (measured < band.least - calliper || measured > band.most + calliper)
      say(measured, "the panel standards let be " + plan.project->job.figures().text(band.least) +
                        " to " + with_unit(plan, band.most));
  } else if (stock.supply.rough.given &&
             stock.supply.rough->mm < least_dry_rough(named) - calliper) {
    say(stock.supply.rough->mm, "the grading rules let be no less than " +
                                    with_unit(plan, least_dry_rough(named)) + " rough and dry");
  }
}

void tell_grain_cost(Plan& plan, const StockLayout& layout) {
  const int more = layout.bought - layout.bought_if_free;
  if (more <= 0) return;
  plan.findings.push_back({Level::note,
                           "grain-costs",
                           {layout.stock},
                           "Keeping the grain of every part takes " +
                               std::to_string(layout.bought) + " sheets of " + layout.stock +
                               "; with the grain free it would be " +
                               std::to_string(layout.bought_if_free) + ".",
                           "Name hidden parts whose grain may turn in may_turn of [stock." +
                               layout.stock + "], and tell the client where it shows.",
                           layout.of(*plan.project).span});
}

// Parts glued up from as many strips, in one note.
void tell_glue_ups(Plan& plan, const StockLayout& layout) {
  std::map<int, std::vector<std::string>> marks;
  for (const Wanted& wanted : layout.wanted)
    if (wanted.strips >= 2) marks[wanted.strips].push_back(row_of(plan, wanted).mark);
  for (const auto& [strips, about] : marks) {
    std::string all;
    for (const std::string& mark : about) all += (all.empty() ? "" : ", ") + mark;
    const bool one = about.size() == 1;
    plan.findings.push_back(
        {Level::note, "glued-up", about,
         all + (one ? " is" : " are") + " wider than the boards of " + layout.stock +
             (one ? " and" : "; each") + " is glued up from " + std::to_string(strips) + " strips.",
         "Lay the strips out dry and mark a triangle across them before gluing.",
         layout.of(*plan.project).span});
  }
}

}  // namespace

void check_layouts(Plan& plan) {
  for (const StockLayout& layout : plan.layouts) {
    const model::Stock& stock = layout.of(*plan.project);
    check_unplaced(plan, layout);
    check_names(plan, stock);
    check_matches(plan, stock, layout);
    check_rough(plan, stock, layout);
    check_name_of_thickness(plan, stock);
    tell_grain_cost(plan, layout);
    tell_glue_ups(plan, layout);
  }
}

}  // namespace splay::fabrication
