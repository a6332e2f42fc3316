// Materials and finish with places for samples, what is still to choose, what is agreed.
#include <algorithm>

#include "drafting/table.h"
#include "fabrication/finish.h"
#include "sheets/client_words.h"
#include "sheets/kinds.h"

namespace splay::sheets {

namespace {

using drafting::Cell;
using drafting::Story;

// Where a sample is stuck on, 55 × 30 mm.
drafting::Picture sample_place(const Context& context) {
  constexpr double width = 55, height = 30;
  drafting::Picture picture;
  picture.width = width;
  picture.height = height;
  picture.items.emplace_back(
      ink::Stroke{ink::Path{}.rect({{1, 1 - height}, {width - 1, -1}}), context.kit.hidden()});
  return picture;
}

const std::string& material_of(const fabrication::StockUse& stock) {
  return stock.material.empty() ? stock.name : stock.material;
}

// The parts of every stock of one material, whatever its thickness.
std::string parts_text(const Context& context, const std::string& material) {
  std::vector<std::string> names;
  for (const fabrication::StockUse& stock : context.plan.stock)
    for (const fabrication::PartRow& row : context.plan.rows)
      if (row.stock == stock.name && material_of(stock) == material) names.push_back(row.name);
  return joined(names);
}

Story materials(const Context& context, double width) {
  drafting::Table table;
  table.columns = {{.head = "Material"},
                   {.head = "Where", .share = 2},
                   {.head = "Sample", .share = 0, .wrap = false}};
  std::vector<std::string> named;
  for (const fabrication::StockUse& stock : context.plan.stock) {
    const std::string& material = material_of(stock);
    if (stock.pieces == 0 || std::ranges::find(named, material) != named.end()) continue;
    named.push_back(material);
    table.rows.push_back(
        {{Cell::bold(material), parts_text(context, material), Cell::drawn(sample_place(context))},
         {},
         false});
  }
  return drafting::table(context.kit, table, width);
}

std::string finished_text(const Context& context, const fabrication::FinishJob& job) {
  if (job.parts.size() == context.plan.assembly.parts.size()) return "the whole piece";
  std::vector<std::string> names;
  for (const int part : job.parts) {
    const int row = context.plan.row_of_part[static_cast<std::size_t>(part)];
    const std::string& name = context.plan.rows[static_cast<std::size_t>(row)].name;
    if (std::ranges::find(names, name) == names.end()) names.push_back(name);
  }
  return joined(names);
}

Story finishes(const Context& context, double width) {
  const std::vector<fabrication::FinishJob> jobs = fabrication::plan_finish(context.plan);
  if (jobs.empty())
    return {drafting::body_text(context.kit, "No finish is chosen yet.", width, ink::Face::bold)};
  drafting::Table table;
  table.columns = {{.head = "Finish"},
                   {.head = "On", .share = 2},
                   {.head = "Sample", .share = 0, .wrap = false}};
  for (const fabrication::FinishJob& job : jobs) {
    const model::Finish& finish = *job.finish;
    table.rows.push_back({{Cell::bold(finish.product.given ? *finish.product : finish.name),
                           finished_text(context, job), Cell::drawn(sample_place(context))},
                          {},
                          false});
  }
  return drafting::table(context.kit, table, width);
}

Story choices(const Context& context, double width) {
  drafting::Table table;
  table.columns = {{.head = "Still to choose", .share = 2}, {.head = "Chosen: what, name, day"}};
  for (const std::string& choice : *context.plan.project->client.choices)
    table.rows.push_back({{choice + "\n ", ""}, {}, false});
  if (table.rows.empty())
    return {drafting::body_text(context.kit, "Nothing is left to choose.", width)};
  return drafting::table(context.kit, table, width);
}

}  // namespace

std::vector<ink::Page> make_client_materials(const Context& given) {
  const Context context = for_reading(given);
  const double width = story_width(context);
  Story story;
  const auto chapter = [&](const char* title, Story more) {
    add_chapter(context, story, title, std::move(more), width);
  };
  chapter("Materials", materials(context, width));
  chapter("Finish", finishes(context, width));
  chapter("Open choices", choices(context, width));
  Story terms;
  for (const std::string& term : *context.plan.project->client.terms)
    terms.push_back(drafting::body_text(context.kit, term, width));
  if (!terms.empty()) chapter("Terms", std::move(terms));
  chapter("Mind", {drafting::body_text(
                      context.kit,
                      "Wood differs from board to board and changes colour in the light: a sample "
                      "shows the kind, not the very board. Judge finish and colour on the samples, "
                      "not on these pages.",
                      width)});
  return story_pages(context, "Materials and finish", story);
}

std::vector<ink::Page> make_client_price(const Context& context) {
  return *context.plan.project->client.prices ? make_quote(context) : std::vector<ink::Page>{};
}

}  // namespace splay::sheets
