// Templates: odd ends, laps and tapers full size, each small enough to glue on the work, and cards
// to set a bevel gauge by.
#include <algorithm>
#include <cmath>
#include <optional>

#include "drafting/conventions.h"
#include "drafting/hatch.h"
#include "drafting/scale.h"
#include "drafting/sheetful.h"
#include "drafting/text_block.h"
#include "fabrication/edging.h"
#include "sheets/kinds.h"
#include "sheets/templates_shape.h"

namespace splay::sheets {

namespace {

using drafting::Picture;

constexpr double air = 5, waste = 3, leg = 58;  // mm

void stroke(ink::Group& group, ink::Path path, ink::Pen pen) {
  if (!path.verbs.empty()) group.items.emplace_back(ink::Stroke{std::move(path), pen});
}

// Lines of text over a drawing `width` wide; how high they stand.
double words(const Context& context, const std::vector<std::string>& lines, double width,
             const std::string& anchor, drafting::Items& items) {
  const drafting::Kit& kit = context.kit;
  const double letter = kit.look.lettering, pitch = 1.75 * letter;
  ink::Group group{"note", {}};
  double y = 0;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const auto face = i == 0 ? ink::Face::bold : ink::Face::regular;
    for (const std::string& line : drafting::wrap(kit, lines[i], width, letter, face)) {
      group.items.emplace_back(ink::Text{{0, y - letter}, line, letter, 0, ink::Align::left, face});
      y -= pitch;
    }
    if (i == 0 && !anchor.empty())
      group.items.emplace_back(ink::Link{{{0, y + pitch - letter}, {width, 0}}, anchor});
  }
  items.emplace_back(std::move(group));
  return -y;
}

// No higher than the room; nothing where its cuts are higher.
std::optional<Picture> template_picture(const Context& context, Template made, double room) {
  const drafting::Kit& kit = context.kit;
  const double width = std::max(made.box.width() + 2 * (waste + 1), 50.0);
  Picture picture{{}, width, 0};
  const double head =
      words(context,
            {made.title, "glue on: " + made.side + (made.edge ? ", fold over the edge" : ""),
             made.caption},
            width, made.anchor, picture.items);
  if (!shorten(made, room - head - 2 * (waste + 1))) return std::nullopt;
  picture.height = head + made.box.height() + 2 * (waste + 1);
  const Vec2 by{width / 2 - drafting::middle(made.box).x, -head - waste - 1 - made.box.high.y};
  ink::Group group{"view", {}};
  ink::Path cuts, arrises, folds;
  for (const TemplateLine& line : made.lines)
    (line.fold ? folds : line.cut ? cuts : arrises).move(line.a + by).line(line.b + by);
  stroke(group, std::move(arrises), kit.thin());
  stroke(group, std::move(folds), kit.hidden());
  stroke(group, std::move(cuts), {kit.look.narrow});
  picture.items.emplace_back(std::move(group));
  for (const TemplateLine& line : made.lines)
    if (line.cut && !line.fold && norm(line.b - line.a) > 1)
      picture.items.emplace_back(
          drafting::waste_side(kit, line.a + by, line.b + by, -left_of(line.b - line.a), waste));
  picture.items.emplace_back(drafting::face_side_mark(kit, made.face_mark + by, 6));
  if (made.edge) picture.items.emplace_back(drafting::face_edge_mark(kit, made.edge_mark + by, 4));
  return picture;
}

Picture angle_card(const Context& context, const GaugeAngle& angle) {
  const drafting::Kit& kit = context.kit;
  const double up = leg * std::sin(angle.radians), side = leg * std::cos(angle.radians);
  const double left = std::max(0.0, -side);
  Picture picture{{}, leg + left + 2, 0};
  const std::string degrees = degrees_text(Angle{angle.radians}.degrees());
  const std::string other = degrees_text(90 - Angle{angle.radians}.degrees());
  const double head =
      words(context,
            {degrees + (angle.radians < 1.5707 ? "  (off square " + other + ")" : ""), angle.names},
            picture.width, "", picture.items);
  picture.height = head + up + 4;
  const Vec2 corner{left + 1, -head - up - 2};
  ink::Group group{"view", {}};
  stroke(group, ink::Path{}.move(corner + Vec2{leg, 0}).line(corner).line(corner + Vec2{side, up}),
         {kit.look.narrow});
  picture.items.emplace_back(std::move(group));
  return picture;
}

constexpr const char* templates_how_to =
    "Full size: print without scaling and hold a rule to both bars. Hatched is waste. Up the "
    "page is along the part; the loop marks the face, the V the front edge. Measure the longest "
    "cut line before you glue it on. An end whose face is tapered or curved away has none, nor "
    "has a cut longer than the page: mark them by their part views.";

ink::Page templates_page(const Context& context, const Picture& note) {
  const ink::Rect area = context.area();
  ink::Page page = start_page(context, "Templates", drafting::text({1, 1}, *context.job().units));
  drafting::append(page.items, drafting::moved(note.items, {area.low.x, area.high.y}));
  return page;
}

// What the bars measured on paper, to be filled in.
ink::Group record(const Context& context, Vec2 at) {
  constexpr const char* words =
      "Print checked: bar across ________ mm, bar up ________ mm, by ____________, on ____________";
  constexpr double least = 2.5;
  const double wanted = context.kit.look.lettering;
  const bool fits = context.kit.width(words, wanted) <= context.area().width();
  return {"note", {ink::Text{at, words, fits ? wanted : least}}};
}

// Templates first, no higher than the room, then the cards.
std::vector<Picture> pictures_of(const Context& context, double room) {
  std::vector<Picture> pictures;
  for (const fabrication::PartRow* row : rows_in_order(context.plan)) {
    // Edging that is on before the cuts gets its ends with its panel.
    if (fabrication::panel_of(context.plan.assembly, row->members.front()) >= 0) continue;
    for (const Template& made : templates_of(PartSheet(context, *row)))
      if (auto picture = template_picture(context, made, room))
        pictures.push_back(std::move(*picture));
  }
  std::ranges::transform(gauge_angles(context), std::back_inserter(pictures),
                         [&](const GaugeAngle& angle) { return angle_card(context, angle); });
  return pictures;
}

}  // namespace

std::vector<ink::Page> make_templates(const Context& context) {
  const ink::Rect area = context.area();
  const Picture note = page_note(context, templates_how_to);
  const double record_height = 3 * context.kit.look.lettering;
  const Vec2 room{area.width(), area.height() - note.height - record_height};
  std::vector<Picture> pictures = pictures_of(context, room.y);
  std::vector<Vec2> sizes;
  sizes.reserve(pictures.size());
  for (const Picture& picture : pictures) sizes.push_back({picture.width, picture.height});

  const std::vector<drafting::Laid> laid = drafting::lay_out(sizes, room, {air, air});
  std::vector<ink::Page> pages;
  for (std::size_t i = 0; i < laid.size(); ++i) {
    while (pages.size() <= laid[i].page) pages.push_back(templates_page(context, note));
    const Vec2 at = Vec2{area.low.x, area.high.y - note.height} + laid[i].at;
    drafting::append(pages[laid[i].page].items, drafting::moved(std::move(pictures[i].items), at));
  }
  if (!pages.empty())
    pages.back().items.emplace_back(
        record(context, area.low + Vec2{0, context.kit.look.lettering}));
  return pages;
}

}  // namespace splay::sheets
