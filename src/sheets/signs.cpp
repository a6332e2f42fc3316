#include "drafting/conventions.h"
#include "drafting/dimension.h"
#include "drafting/hatch.h"
#include "drafting/table.h"
#include "sheets/elevation_moving.h"
#include "sheets/kinds.h"
#include "sheets/saw_steps_draw.h"

namespace splay::sheets {

namespace {

using drafting::Items;
using drafting::Kit;
using drafting::Picture;

constexpr double sign_width = 26, sign_height = 12;

// A sign's picture from what is drawn around the middle of its place.
Picture framed(Items items, double height = sign_height) {
  return {drafting::moved(std::move(items), {sign_width / 2, -height / 2}), sign_width, height};
}

Picture line_sample(ink::Pen pen) {
  return framed({ink::Stroke{ink::Path{}.move({-12, 0}).line({12, 0}), pen}}, 5);
}

Picture section_sample(const Kit& kit) {
  const drafting::Loops cut{{{-12, -4}, {0, -4}, {0, 4}, {-12, 4}}};
  const drafting::Loops next{{{0, -4}, {12, -4}, {12, 4}, {0, 4}}};
  return framed({ink::Stroke{drafting::hatch(cut, {45, 1.6}), {0.18}},
                 ink::Stroke{drafting::hatch(next, {135, 1.6}), {0.18}},
                 ink::Stroke{ink::Path{}.polygon(cut[0]).polygon(next[0]), kit.visible()}},
                10);
}

Picture waste_sample(const Kit& kit) {
  return framed({drafting::waste_side(kit, {-12, 2}, {12, 2}, {0, -1}, 4),
                 ink::Stroke{ink::Path{}.move({-12, 2}).line({12, 2}), kit.visible()}},
                7);
}

Picture machine_sign(const Kit& kit, const char* word) {
  constexpr double long_side = 20;
  const double thick = machine_part(kit);
  return framed({named_part(kit, {-long_side / 2, -thick / 2}, {long_side, 0}, {0, thick}, word)},
                thick + 2.4);
}

// The table seen on edge, with the blade or the dado stack through it.
Picture table_sample(const Kit& kit, double tool) {
  constexpr double half = 11, thick = 3, over = 3, under = 2;
  ink::Path table, blade;
  table.rect({{-half, -thick}, {half, 0}});
  blade.rect({{-tool / 2, -thick - under}, {tool / 2, over}});
  return framed({ink::Group{
      "view",
      {ink::Fill{table, kit.look.tone_mid}, ink::Stroke{table, {kit.look.middle}},
       ink::Fill{blade, tool > thick ? 1.0 : 0.0}, ink::Stroke{blade, {kit.look.middle}}}}});
}

Picture feed_sample(const Kit& kit) {
  const Vec2 tip{0, 3.5};
  return framed({ink::Stroke{ink::Path{}.move({0, -3.5}).line(tip), kit.thin()},
                 drafting::arrow_head(tip, {0, 1}, 2.5)},
                9);
}

struct Sign {
  Picture picture;
  const char* meaning;
};

std::vector<Sign> drawing_signs(const Kit& kit) {
  std::vector<Sign> signs;
  const auto row = [&](Picture picture, const char* meaning) {
    signs.push_back({std::move(picture), meaning});
  };
  row(line_sample(kit.visible()), "Visible edge");
  row(line_sample(kit.hidden()), "Edge hidden behind wood");
  row(line_sample(kit.centre()), "Centre line; plane of a section; diagonal to be measured");
  row(line_sample(kit.thin()), "Dimension, extension line, leader");
  row(section_sample(kit),
      "Wood cut by a section. Parts that touch are hatched in different directions");
  row(waste_sample(kit), "A cut: the hatched side is waste");
  const std::vector<Vec2> leaf{{-6, -5}, {6, -5}, {6, 5}, {-6, 5}};
  const ink::Stroke edges{ink::Path{}.polygon(leaf), kit.visible()};
  row(framed({edges, door_sign(kit, {-6, 0}, {6, 5}, {6, -5})}),
      "A door in an elevation: the lines meet at the side it hangs on. In the plan an arc is the "
      "way of its edge, and chain lines the door stood open");
  row(framed({edges, drawer_sign({0, 0}, 3)}), "A drawer in an elevation: its front pulls out");
  row(framed({drafting::face_side_mark(kit, {0, 0}, 9)}),
      "Face side, the show face; the tail runs to the face edge");
  row(framed({drafting::face_edge_mark(kit, {0, 0}, 6)}, 9),
      "Face edge; the point touches the face side");
  row(framed({drafting::cabinetmaker_triangle(kit, {0, 0}, 9)}, 10),
      "Cabinetmaker's triangle across parts that lie together: it points up, or away from you when "
      "they lie flat");
  row(framed({drafting::grain_arrow(kit, {0, 0}, 20)}, 6), "Direction of the grain");
  row(framed({drafting::hand_mark(kit, {-7, 0}, 7.5, true),
              drafting::hand_mark(kit, {7, 0}, 7.5, false)}),
      "Left and right, mirror images: each is drawn and cut by itself");
  return signs;
}

std::vector<Sign> machine_signs(const Kit& kit) {
  std::vector<Sign> signs;
  const auto row = [&](Picture picture, const char* meaning) {
    signs.push_back({std::move(picture), meaning});
  };
  constexpr double kerf = 1.4, stack = 6;  // mm on paper
  row(table_sample(kit, kerf),
      "Saw steps: the table, grey, with the blade, black, seen along the cut");
  row(table_sample(kit, stack),
      "The same with a dado stack; tools led over the work have their shoe above");
  row(machine_sign(kit, "fence"), "The rip fence; the work runs along it");
  row(machine_sign(kit, "gauge"), "The mitre gauge, turned by its angle; the work lies against it");
  row(machine_sign(kit, "stop"), "A stop on the gauge: the end of the work touches it");
  row(feed_sample(kit), "Beside the blade: the way the work, or a tool that is led, moves");
  return signs;
}

// In two columns, each read downwards, so that all stand on one page.
drafting::Story sign_table(const Kit& kit, double width) {
  std::vector<Sign> signs = drawing_signs(kit);
  for (Sign& sign : machine_signs(kit)) signs.push_back(std::move(sign));
  drafting::Table table;
  for (int i = 0; i < 2; ++i) {
    table.columns.push_back({.head = "Sign", .share = 0, .least = sign_width});
    table.columns.push_back({.head = "Meaning"});
  }
  const std::size_t half = (signs.size() + 1) / 2;
  for (std::size_t i = 0; i < half; ++i) {
    std::vector<drafting::Cell> cells;
    for (const std::size_t k : {i, i + half}) {
      const bool there = k < signs.size();
      cells.push_back(there ? drafting::Cell::drawn(std::move(signs[k].picture)) : "");
      cells.emplace_back(there ? signs[k].meaning : "");
    }
    table.rows.push_back({std::move(cells), {}, false});
  }
  return drafting::table(kit, table, width);
}

drafting::Story word_table(const Kit& kit, double width) {
  drafting::Table table;
  table.columns = {{.head = "Word", .share = 0, .wrap = false}, {.head = "What it says here"}};
  const auto row = [&](const char* word, const char* meaning) {
    table.rows.push_back({{drafting::Cell::bold(word), meaning}, {}, false});
  };
  row("Lean", "How far a part is off plumb");
  row("Corner", "The angle between two parts, measured inside");
  row("Rise", "The same angle as so much in a set run: set a bevel from a square with it");
  row("Face angle", "How far the line of a cut on the face is off square: the mitre gauge");
  row("Bevel", "How far the cut surface is off square to the face: the tilt of the blade");
  row("Long point", "The length from end to end along the longest line; short point the least");
  row("Running figure",
      "A distance from one datum, marked 0. Each is rounded once, none is added to another");
  row("Chain", "Distances in a row: they print the differences of running figures, and add up");
  return drafting::table(kit, table, width);
}

}  // namespace

std::vector<ink::Page> make_signs(const Context& given) {
  const Context context = for_reading(given);
  const double width = story_width(context);
  drafting::Story story = sign_table(context.kit, width);
  drafting::add(story, word_table(context.kit, width));
  return story_pages(context, "Signs and words", story);
}

}  // namespace splay::sheets
