#include "furniture.h"

#include <algorithm>

namespace reading_test {

using model::choose;
using model::may;
using model::need;
using model::Range;
using model::Refers;

namespace {

constexpr std::array<std::string_view, 2> ends_words{"butt", "housed"};

template <class T>
std::unique_ptr<model::Item> make() {
  return std::make_unique<T>();
}

}  // namespace

void Ledge::fields(model::FieldVisitor& visit) {
  visit.length(need("top_at", "Height of its top face"), top_at, Range::size());
  choose(visit, may("ends", "How its ends are held"), ends, ends_words);
}

void Outline::fields(model::FieldVisitor& visit) {
  visit.length(need("bottom", "Outside width at the bottom"), bottom, Range::size());
  visit.length(may("top", "Outside width at the top"), top, Range::size());
  visit.angles(may("lean", "Lean of the left and right side"), lean, Range::degrees(-60, 60));
}

void Crate::fields(model::FieldVisitor& visit) {
  visit.table(need("outline", "The outline"), outline);
  visit.length(need("depth", "Front to back"), depth, Range::size());
  visit.angle(may("cant", "How far the whole leans"), cant, Range::degrees(0, 45));
  visit.number(may("load", "Load on a ledge"), load, Range::between(0, 10));
  visit.count(may("count", "How many"), count, Range::between(1, 20));
  visit.flag(may("lid", "It has a lid"), lid);
  visit.text(need("stock", "What it is made of"), stock, Refers::to_stock);
  visit.text(may("beside", "What it stands beside", "on its own"), beside, Refers::to_item);
  visit.text(may("remark", "For the cover"), remark);
  visit.date(may("bought", "When the stock was bought"), bought);
  visit.texts(may("through", "Panels that run through"), through);
  visit.lengths(may("sizes", "Any lengths"), sizes, Range::allowance());
  visit.points(may("plan", "Corners in plan"), plan);
  visit.tables(may("ledge", "A ledge"), ledges);
}

void Crate::check(model::Complaints& complaints) const {
  if (count.value == 13)
    complaints.complain({count.span, "unlucky-count", "thirteen crates", "any other number", ""});
}

void Stool::fields(model::FieldVisitor& visit) {
  visit.length(need("height", "Floor to seat"), height, Range::size());
}

const model::Registry& furniture() {
  static const model::Registry registry{{"crate", "A box with ledges", make<Crate>},
                                        {"stool", "A seat", make<Stool>}};
  return registry;
}

std::string file_with(const std::string& more, const std::string& sizes) {
  return "[job]\ntitle = \"A made-up crate\"\ndate = 2026-03-02\nunits = \"in\"\n[sizes]\n" +
         sizes + "\n[stock.panel]\nthickness = \"0.713\"\nsize = [96, 48]\n" + more;
}

std::string crate(const std::string& more) {
  return "[crate.body]\noutline = { bottom = 48 }\ndepth = 17\nstock = \"panel\"\n" + more + "\n";
}

reading::ProjectReading read(const std::string& text) {
  return reading::read_project(text, "made-up.toml", furniture());
}

std::string all_text(const reading::ProjectReading& reading, const std::string& source) {
  std::string text;
  for (const Diagnostic& d : reading.diagnostics) text += describe(d, "made-up.toml", source);
  return text;
}

bool has_code(const reading::ProjectReading& reading, std::string_view code) {
  return std::any_of(reading.diagnostics.begin(), reading.diagnostics.end(),
                     [&](const Diagnostic& d) { return d.code == code; });
}

const Crate& first_crate(const reading::ProjectReading& reading) {
  return dynamic_cast<const Crate&>(*reading.project->items.front());
}

}  // namespace reading_test
