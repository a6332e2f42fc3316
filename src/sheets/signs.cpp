#include "drafting/conventions.h"
#include "drafting/hatch.h"
#include "drafting/table.h"
#include "sheets/kinds.h"

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

struct Entry {
  Picture picture;
  const char* text;
};

std::vector<Entry> line_entries(const Kit& kit) {
  return {{line_sample(kit.visible()), "Visible edge."},
          {line_sample(kit.hidden()), "Edge hidden behind wood."},
          {line_sample(kit.centre()), "Centre line, or the plane of a section."},
          {line_sample(kit.thin()), "Dimension, extension line, leader."}};
}

}  // namespace

std::vector<ink::Page> make_signs(const Context& context) {
  const Kit& kit = context.kit;
  std::vector<Entry> entries = line_entries(kit);
  const drafting::Loops cut{{{-12, -4}, {0, -4}, {0, 4}, {-12, 4}}};
  const drafting::Loops next{{{0, -4}, {12, -4}, {12, 4}, {0, 4}}};
  entries.push_back(
      {framed({ink::Stroke{drafting::hatch(cut, {45, 1.6}), {0.18}},
               ink::Stroke{drafting::hatch(next, {135, 1.6}), {0.18}},
               ink::Stroke{ink::Path{}.polygon(cut[0]).polygon(next[0]), kit.visible()}}),
       "Wood cut by a section. Parts that touch are hatched in different directions."});
  entries.push_back({framed({drafting::waste_side(kit, {-12, 1}, {12, 1}, {0, -1}, 4),
                             ink::Stroke{ink::Path{}.move({-12, 1}).line({12, 1}), kit.visible()}}),
                     "A cut: the hatched side is waste. Saw on that side of the line."});
  entries.push_back({framed({drafting::face_side_mark(kit, {0, 0}, 9)}),
                     "Face side: the show face. Its tail runs to the face edge. Lengths and gauge "
                     "lines are taken from this side."});
  entries.push_back({framed({drafting::face_edge_mark(kit, {0, 0}, 6)}),
                     "Face edge: the point touches the face side."});
  entries.push_back({framed({drafting::cabinetmaker_triangle(kit, {0, 0}, 9)}),
                     "Cabinetmaker's triangle across parts that lie together: it points up, or "
                     "away from you when they lie flat."});
  entries.push_back({framed({drafting::grain_arrow(kit, {0, 0}, 20)}), "Direction of the grain."});
  entries.push_back({framed({drafting::hand_mark(kit, {-7, 0}, 7.5, true),
                             drafting::hand_mark(kit, {7, 0}, 7.5, false)}),
                     "Left and right: mirror images. Each is drawn and cut by itself."});
  entries.push_back({framed({drafting::datum_mark(kit, {0, 0}, 5)}),
                     "Datum. Running figures are measured from here, never from each other."});
  drafting::Table table;
  table.columns = {{.head = "Sign", .share = 0, .least = sign_width}, {.head = "Meaning"}};
  for (Entry& entry : entries)
    table.rows.push_back(
        {{drafting::Cell::drawn(std::move(entry.picture)), entry.text}, {}, false});
  return story_pages(context, "Signs used in this binder",
                     drafting::table(kit, table, story_width(context)));
}

}  // namespace splay::sheets
