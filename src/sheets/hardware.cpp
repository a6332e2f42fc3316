// The hardware list: what to have ready, where each goes, what is drilled for it.
#include "fabrication/hardware.h"

#include <algorithm>
#include <cmath>

#include "drafting/table.h"
#include "fabrication/buying.h"
#include "sheets/hold_stories.h"
#include "sheets/part_view_wants.h"

namespace splay::sheets {

namespace {

using drafting::Cell;
using drafting::Story;
using fabrication::HardwareLine;
using fabrication::HardwareList;

// "4.50" or "4.50 for 50".
std::string price_words(const HardwareLine& line) {
  if (!line.priced) return {};
  const std::string price = fabrication::money_text(std::llround(line.price * 100));
  return line.pack > 1 ? price + " for " + std::to_string(line.pack) : price;
}

Story list_table(const Context& context, const HardwareList& list, double width) {
  drafting::Table table;
  const bool money = std::ranges::any_of(list.lines, &HardwareLine::priced);
  table.columns = {words("What"),          words("Size"),     figures("Needed"), figures("Spare"),
                   figures("Have\nready"), words("On parts"), words("Counted")};
  if (money) table.columns.push_back(figures("Price"));
  for (const HardwareLine& line : list.lines) {
    table.rows.push_back(
        {{Cell::bold(capitalised(line.what)), line.size, std::to_string(line.count),
          line.spare > 0 ? std::to_string(line.spare) : "",
          Cell::bold(std::to_string(line.count + line.spare)), joined(line.on), line.why},
         {},
         false});
    if (money) table.rows.back().cells.emplace_back(price_words(line));
  }
  return drafting::table(context.kit, table, width);
}

void add_paragraph(const Context& context, Story& story, const std::string& text, double width,
                   ink::Face face = ink::Face::regular) {
  story.push_back(drafting::body_text(context.kit, text, width, face));
}

void add_band_and_glue(const Context& context, const HardwareList& list, Story& story,
                       double width) {
  std::string text;
  for (const fabrication::EdgeBand& band : list.bands)
    text += "Edge band " + band.stock + ", " + band.material + ": " +
            length_words(context, band.length) + " in " + std::to_string(band.strips) +
            " finished strips; buy more for their ends. ";
  if (list.glue_area > 0)
    text += "Glue: " + area_words(context, list.glue_area) + " of surfaces meet in glued joints, " +
            plain_number(1000 * list.glue_kg, 0) + " g at " +
            plain_number(*context.plan.project->buying.glue.spread, 0) +
            " g on a square metre. Its data sheet wins.";
  if (text.empty()) return;
  story.push_back(drafting::heading(context.kit, "Edge band and glue", width));
  add_paragraph(context, story, text, width);
  story.back().space_after = 6;
}

void add_places(const Context& context, Story& story, double width) {
  Story places;
  for (const fabrication::PartRow* row : rows_in_order(context.plan)) {
    const std::vector<std::string> lines = fitting_lines(PartSheet(context, *row));
    if (lines.empty()) continue;
    add_paragraph(context, places,
                  row->mark + "  " + row_name(context, *row) +
                      (row->quantity() > 1 ? " (" + std::to_string(row->quantity()) + ")" : ""),
                  width, ink::Face::bold);
    places.back().keep_with_next = true;
    for (const std::string& line : lines) add_paragraph(context, places, line, width);
    places.back().space_after = 3;
  }
  if (places.empty()) return;
  story.push_back(drafting::heading(context.kit, "Where each goes", width));
  add_paragraph(context, story,
                "Running figures from the datums of the part views, to the middle of each. Measure "
                "the hardware in hand before drilling for it.",
                width);
  story.back().keep_with_next = true;
  drafting::add(story, std::move(places));
}

// What the table of fastenings means, of the kinds that are in it.
std::string fastening_words(const Context& context,
                            const std::vector<fabrication::TopFastening>& all) {
  std::string text =
      "The top held in its middle; at the fastener furthest from there, from where it is made to "
      "the driest and the dampest.";
  double swings = -1;
  bool off_rail = false, clip = false;
  for (const fabrication::TopFastening& each : all) {
    const bool eight = each.kind == "figure-8 fastener";
    if (eight && each.along_rail) swings = std::max({swings, each.shrinks, each.swells});
    off_rail = off_rail || each.set_back > 0;
    clip = clip || each.kind == "table clip";
  }
  constexpr double holes = 25.4 * 5 / 8, thirty_second = 25.4 / 32;
  const FigureStyle& style = context.kit.figures;
  if (swings >= 0)
    text += " A figure-8 stands square to its rail and swings along it: " +
            degrees_text(Angle{std::asin(std::min(1.0, swings / holes))}.degrees(), 1) +
            " to one side with " + style.with_unit(holes) +
            " between its holes. Drive both screws so that it can, and cut its recess open far "
            "enough.";
  if (off_rail)
    text += " Off the rail: the room left between the rail and the shoulder of a clip or block, " +
            style.with_unit(thirty_second) + " more than the top pushes it in (common practice).";
  if (clip)
    text += " Set a clip's slot " + style.with_unit(thirty_second) +
            " further down than its tongue, so that it draws the top down.";
  return text;
}

// What a top does over each rail that holds it.
void add_fastenings(const Context& context, Story& story, double width) {
  const std::vector<fabrication::TopFastening> all = fabrication::top_fastenings(context.plan);
  if (all.empty()) return;
  const FigureStyle& style = context.kit.figures;
  const bool inch = *context.job().units == Unit::inch;
  const auto small = [&](double mm) {
    return inch ? plain_number(mm / 25.4, 3) : plain_number(mm, 2);
  };
  drafting::Table table;
  table.columns = {words("Rail, fastener"),    figures("How\nmany"),    words("Top moves"),
                   figures("Shrinks"),         figures("Swells"),       figures("Slot\nlong"),
                   figures("Needs\nat least"), figures("Off the\nrail")};
  for (const fabrication::TopFastening& each : all)
    table.rows.push_back(
        {{Cell::bold(context.plan.mark_of(each.rail) + ", " + each.kind),
          std::to_string(each.count), each.along_rail ? "along the rail" : "square to it",
          small(each.shrinks), small(each.swells), each.slot > 0 ? style.text(each.slot) : "",
          each.needs > 0 ? style.text(each.needs) : "",
          each.set_back > 0 ? small(each.set_back) : ""},
         {},
         false});
  add_chapter(context, story, "What holds the top", drafting::table(context.kit, table, width),
              width);
  add_paragraph(context, story, fastening_words(context, all), width);
  story.back().space_after = 6;
}

std::string hole_words(double mm) {
  const FigureStyle sixty_fourths{Unit::inch, 64, 1};
  return plain_number(mm, 1) + " mm, " + sixty_fourths.with_unit(mm);
}

void add_screws(const Context& context, Story& story, double width) {
  const std::vector<int> gauges = fabrication::screw_gauges(context.plan);
  if (gauges.empty()) return;
  drafting::Table table;
  table.columns = {figures("Screw"),
                   {.head = "Shank", .share = 1},
                   {.head = "Clearance", .share = 1},
                   {.head = "Pilot, softwood", .share = 1},
                   {.head = "Pilot, hardwood", .share = 1}};
  for (const int gauge : gauges) {
    const fabrication::ScrewHoles holes = fabrication::screw_holes(gauge);
    table.rows.push_back(
        {{Cell::bold("#" + std::to_string(gauge)), hole_words(holes.shank),
          hole_words(holes.clearance), hole_words(holes.pilot_soft), hole_words(holes.pilot_hard)},
         {},
         false});
  }
  story.push_back(drafting::heading(context.kit, "Drilling for wood screws", width));
  drafting::add(story, drafting::table(context.kit, table, width));
  add_paragraph(context, story,
                "Root of the thread two thirds of the shank (Wood Handbook, chapter 8); pilot 70 % "
                "of the root in softwood, 90 % in hardwood. Drive a steel screw first where one of "
                "brass is to go.",
                width);
  story.back().space_after = 6;
}

}  // namespace

Story hardware_story(const Context& context, double width) {
  const HardwareList list = fabrication::list_hardware(context.plan);
  Story story;
  if (list.empty()) return story;
  if (!list.lines.empty()) {
    story.push_back(drafting::heading(context.kit, "Hardware list: what to have ready", width));
    drafting::add(story, list_table(context, list, width));
    story.back().space_after = 6;
  }
  add_band_and_glue(context, list, story, width);
  add_screws(context, story, width);
  add_fastenings(context, story, width);
  add_places(context, story, width);
  return story;
}

}  // namespace splay::sheets
