// What changed since an earlier revision: it goes in front of the new one.
#include <algorithm>
#include <string>

#include "drafting/table.h"
#include "sheets/comparison.h"

namespace splay::sheets {

namespace {

using drafting::Cell;
using drafting::Story;

std::string or_dash(const std::string& text) { return text.empty() ? "–" : text; }

// "case.body.shelf" as the way from the piece to the figure: "case › body › shelf".
std::string way_to(const std::string& field) {
  std::string words;
  for (const char c : field) {
    if (c == '.')
      words += " › ";
    else
      words += c == '_' ? ' ' : c;
  }
  return words;
}

std::string with_commas(const std::vector<std::string>& words) {
  std::string text;
  for (const std::string& word : words) text += (text.empty() ? "" : ", ") + word;
  return text;
}

// What a client may read: not the shop's machines, prices or records; of a stock what it is.
bool for_clients(const std::string& field) {
  for (const char* own : {"shop.", "buying.", "glue_up.", "approval.", "as_built."})
    if (field.starts_with(own)) return false;
  return !field.starts_with("stock.") || field.ends_with(".material") ||
         field.ends_with(".species");
}

Story said(const Context& context, const Comparison& comparison, bool shop, double width) {
  drafting::Table table;
  table.columns = {{.head = "What is wanted", .share = 2},
                   {.head = "Revision " + comparison.revision_before},
                   {.head = "Revision " + *context.job().revision}};
  for (const model::Changed& change : comparison.said)
    if (shop || for_clients(change.field))
      table.rows.push_back(
          {{way_to(change.field), or_dash(change.before), Cell::bold(or_dash(change.now))},
           {},
           false});
  if (table.rows.empty())
    return {drafting::body_text(context.kit, "Nothing: the piece is as it was.", width)};
  return drafting::table(context.kit, table, width);
}

std::string what_of(const fabrication::PartChange& change) {
  if (change.is_new) return "new";
  if (change.is_gone) return "gone: throw it out";
  return change.what.empty() ? "its steps only" : with_commas(change.what);
}

Story parts(const Context& context, const Comparison& comparison, double width) {
  drafting::Table table;
  table.columns = {{.head = "Mark", .share = 0, .wrap = false},
                   {.head = "Part"},
                   {.head = "What changed", .share = 2},
                   {.head = "Steps set anew"}};
  for (const fabrication::PartChange& change : comparison.parts)
    table.rows.push_back(
        {{Cell::bold(change.mark.empty() ? change.mark_before : change.mark), change.name,
          what_of(change), change.is_new ? "all" : or_dash(steps_words(change.steps))},
         {},
         false});
  if (table.rows.empty()) return {drafting::body_text(context.kit, "No part is touched.", width)};
  return drafting::table(context.kit, table, width);
}

// Pages of one title that follow each other in the list, as "17–19, 21".
struct Run {
  std::string title, labels, first;
  bool is_new = false;
};

std::vector<Run> runs_of(const std::vector<PageChange>& pages) {
  std::vector<Run> runs;
  for (std::size_t i = 0; i < pages.size();) {
    Run run{pages[i].title, "", pages[i].label, pages[i].is_new};
    const auto follows = [&](std::size_t at) {
      return at + 1 < pages.size() && pages[at + 1].title == run.title &&
             pages[at + 1].is_new == run.is_new;
    };
    const auto next_number = [&](std::size_t at) {
      return follows(at) && std::stoi(pages[at + 1].label) == std::stoi(pages[at].label) + 1;
    };
    for (bool more = true; more; ++i) {
      const std::size_t start = i;
      while (next_number(i)) ++i;
      run.labels += (run.labels.empty() ? "" : ", ") + pages[start].label +
                    (i > start ? "–" + pages[i].label : "");
      more = follows(i);
    }
    runs.push_back(std::move(run));
  }
  return runs;
}

Story pages(const Context& context, const Comparison& comparison, double width) {
  drafting::Table table;
  table.columns = {{.head = "Page"}, {.head = "Contents", .share = 2}, {.head = "", .share = 2}};
  for (const Run& run : runs_of(comparison.pages)) {
    const std::string target = "page " + run.first;
    table.rows.push_back({{Cell::linked(run.labels, target), Cell::linked(run.title, target),
                           run.is_new ? "new" : "changed where the bars are"},
                          {},
                          false});
  }
  for (const std::string& title : comparison.gone_pages)
    table.rows.push_back({{"–", title, "gone: throw it out"}, {}, false});
  if (table.rows.empty()) return {drafting::body_text(context.kit, "No page is touched.", width)};
  return drafting::table(context.kit, table, width);
}

}  // namespace

std::string steps_words(const std::vector<std::string>& ids) {
  const auto number = [](const std::string& id) { return std::stol(id.substr(id.rfind('.') + 1)); };
  std::vector<std::string> words;
  for (std::size_t from = 0; from < ids.size();) {
    std::size_t to = from + 1;
    while (to < ids.size() && number(ids[to]) == number(ids[to - 1]) + 1) ++to;
    constexpr std::size_t run = 3;
    if (to - from >= run)
      words.push_back(ids[from] + " to " + std::to_string(number(ids[to - 1])));
    else
      words.insert(words.end(), ids.begin() + static_cast<std::ptrdiff_t>(from),
                   ids.begin() + static_cast<std::ptrdiff_t>(to));
    from = to;
  }
  return with_commas(words);
}

std::vector<ink::Page> make_changes(const Context& given, const Comparison& comparison,
                                    ForWhom whom) {
  const Context context = for_reading(given);
  const double width = story_width(context);
  const bool shop = whom == ForWhom::shop;
  Story story;
  const auto chapter = [&](const char* title, Story more) {
    story.push_back(drafting::heading(context.kit, title, width));
    drafting::add(story, std::move(more));
    story.back().space_after = 6;
  };
  const std::string revision = *context.job().revision;
  drafting::Block words = drafting::body_text(
      context.kit,
      "Revision " + revision + " of " + model::iso_date(*context.job().date) +
          " replaces revision " + comparison.revision_before + " of " + comparison.date_before +
          ". " +
          (shop ? "Take the old pages out of the shop. What is not named here is as it was."
                : "What is not named here is as it was; the old drawings are void."),
      width);
  words.space_after = 4;
  story.push_back(std::move(words));
  chapter("What is wanted otherwise", said(context, comparison, shop, width));
  if (shop) chapter("Parts it touches", parts(context, comparison, width));
  chapter("Pages it touches", pages(context, comparison, width));
  return story_pages(context, "Changes since revision " + comparison.revision_before, story);
}

}  // namespace splay::sheets
