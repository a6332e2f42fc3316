#include "sheets/sheet.h"

#include <algorithm>

#include "drafting/flow.h"
#include "drafting/text_block.h"
#include "sheets/symbols.h"

namespace splay::sheets {

namespace {

int story_columns(const Context& context) { return context.wide() ? 2 : 1; }

}  // namespace

drafting::Look look_of(const model::Style& style) {
  drafting::Look look;
  look.wide = style.wide->mm;
  look.narrow = style.narrow->mm;
  look.frame = style.frame->mm;
  look.middle = (look.wide + look.narrow) / 2;
  look.lettering = style.lettering->mm;
  look.figures = style.figures->mm;
  look.heading = style.heading->mm;
  look.title = style.title->mm;
  look.tone_light = *style.tone_light;
  look.tone_mid = *style.tone_mid;
  look.tone_dark = *style.tone_dark;
  look.symbols = symbols_of(style.symbols);
  return look;
}

ink::Page start_page(const Context& context, const std::string& sheet_title,
                     const std::string& scale, bool projection) {
  const model::Job& job = context.job();
  const bool inches = *job.units == Unit::inch;
  drafting::TitleFields fields;
  fields.job = *job.title;
  fields.client = *job.client;
  fields.number = *job.number;
  fields.revision = *job.revision;
  fields.date = model::iso_date(*job.date);
  fields.maker = *job.maker;
  fields.sheet = sheet_title;
  fields.scale = scale;
  fields.units = inches ? "Lengths in inches" : "Lengths in millimetres";
  fields.projection = projection;
  fields.third_angle = inches;
  return drafting::start_page(context.kit, context.paper, fields);
}

Context for_reading(const Context& context) {
  constexpr double least_on_large = 3;  // mm, ASME Y14.2 (from memory)
  Context larger = context;
  double& lettering = larger.kit.look.lettering;
  if (context.wide()) lettering = std::max(lettering, least_on_large);
  return larger;
}

double story_width(const Context& context) {
  return drafting::columns(context.area(), story_columns(context)).front().width();
}

double story_height(const Context& context) {
  return drafting::columns(context.area(), story_columns(context)).front().height();
}

std::vector<ink::Page> story_pages(const Context& context, const std::string& sheet_title,
                                   const drafting::Story& story) {
  const std::vector<ink::Rect> columns = drafting::columns(context.area(), story_columns(context));
  std::vector<ink::Page> pages;
  for (drafting::Items& items : drafting::flow(story, columns, columns)) {
    pages.push_back(start_page(context, sheet_title));
    drafting::append(pages.back().items, std::move(items));
  }
  return pages;
}

drafting::Picture page_note(const Context& context, std::string_view words) {
  constexpr double least = 2.5, air = 3;
  const double width = context.area().width(), wanted = context.kit.look.lettering;
  const bool fits = context.kit.width(words, wanted) <= width;
  drafting::Picture note =
      drafting::paragraph(context.kit, words, width, {.height = fits ? wanted : least});
  note.height += air;
  return note;
}

std::vector<Solid> placed_solids(const parts::Assembly& assembly) {
  std::vector<Solid> solids;
  for (const parts::Part& part : assembly.parts) solids.push_back(part.world);
  return solids;
}

std::string overall_text(const Context& context) {
  const Box box = parts::bounds(context.plan.assembly);
  if (box.empty()) return {};
  const Vec3 size = box.size();
  const FigureStyle& figures = context.kit.figures;
  return figures.text(size.x) + " × " + figures.text(size.z) + " × " + figures.with_unit(size.y);
}

std::string joined(const std::vector<std::string>& texts, const std::string& between) {
  std::string all;
  for (std::size_t i = 0; i < texts.size(); ++i) all += (i == 0 ? "" : between) + texts[i];
  return all;
}

std::string area_words(const Context& context, double mm2) {
  constexpr double foot = 304.8;
  const bool inch = *context.job().units == Unit::inch;
  return plain_number(inch ? mm2 / (foot * foot) : mm2 / 1e6, 2) + (inch ? " sq ft" : " m²");
}

std::string thickness_words(const Context& context, double mm) {
  if (*context.job().units == Unit::inch) return plain_number(mm / Length::mm_per_inch, 3) + " in";
  return plain_number(mm, 2) + " mm";
}

std::string length_words(const Context& context, double mm) {
  constexpr double foot = 304.8;
  const bool inch = *context.job().units == Unit::inch;
  return plain_number(inch ? mm / foot : mm / 1000, 2) + (inch ? " ft" : " m");
}

void add_chapter(const Context& context, drafting::Story& story, const char* title,
                 drafting::Story more, double width) {
  story.push_back(drafting::heading(context.kit, title, width));
  drafting::add(story, std::move(more));
  story.back().space_after = 6;
}

std::string part_anchor(const std::string& mark) { return "part " + mark; }

}  // namespace splay::sheets
