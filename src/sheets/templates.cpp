// Templates: odd ends, laps and tapers full size, each small enough to glue on the work, and cards
// to set a bevel gauge by.
#include <algorithm>
#include <cmath>

#include "drafting/conventions.h"
#include "drafting/hatch.h"
#include "drafting/scale.h"
#include "drafting/text_block.h"
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

Picture template_picture(const Context& context, const Template& made) {
  const drafting::Kit& kit = context.kit;
  const double width = std::max(made.box.width() + 2 * (waste + 1), 50.0);
  Picture picture{{}, width, 0};
  const double head =
      words(context,
            {made.title, "glue on: " + made.side + (made.edge ? ", fold over the edge" : ""),
             made.caption},
            width, made.anchor, picture.items);
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
  Picture picture{{}, 60 + left + 2, 0};
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

// Pictures in rows from the top of the pages on, each row as high as its highest.
class Shelves {
 public:
  explicit Shelves(const Context& context, std::string note)
      : context_(context), note_(std::move(note)), area_(context.area()) {}

  void put(Picture picture) {
    if (x_ > 0 && x_ + picture.width > area_.width()) next_row();
    if (pages_.empty() || y_ + picture.height > area_.height()) next_page();
    const Vec2 corner{area_.low.x + x_, area_.high.y - y_};
    drafting::append(pages_.back().items, drafting::moved(std::move(picture.items), corner));
    x_ += picture.width + air;
    high_ = std::max(high_, picture.height);
  }
  // The last page keeps a record of what the bars measured on paper.
  std::vector<ink::Page> take() {
    constexpr double record = 14;
    if (!pages_.empty() && y_ + high_ + record + air < area_.height()) {
      const double letter = context_.kit.look.lettering;
      ink::Group group{"note", {}};
      group.items.emplace_back(ink::Text{
          {area_.low.x, area_.low.y + 2},
          "Print checked: bar across ________ mm, bar up ________ mm, by ____________, on "
          "____________",
          letter});
      pages_.back().items.emplace_back(std::move(group));
    }
    return std::move(pages_);
  }

 private:
  void next_row() {
    y_ += high_ + air;
    x_ = high_ = 0;
  }
  void next_page() {
    constexpr double note_height = 10;
    pages_.push_back(
        start_page(context_, "Templates", drafting::text({1, 1}, *context_.job().units)));
    pages_.back().items.emplace_back(drafting::fitted(
        context_.kit, note_, {{area_.low.x, area_.high.y - note_height}, area_.high},
        {context_.kit.look.lettering, ink::Face::regular, ink::Align::left}));
    x_ = high_ = 0;
    y_ = note_height + 2;
  }

  const Context& context_;
  std::string note_;
  ink::Rect area_;
  std::vector<ink::Page> pages_;
  double x_ = 0, y_ = 0, high_ = 0;
};

}  // namespace

std::vector<ink::Page> make_templates(const Context& context) {
  Shelves shelves(context,
                  "Full size. Print without scaling and hold a rule to both bars first. Hatched is "
                  "waste. Up the page is along the part; the loop marks the face, the V the front "
                  "edge. Measure the longest cut line before you glue it on.");
  for (const fabrication::PartRow* row : rows_in_order(context.plan))
    for (const Template& made : templates_of(PartSheet(context, *row)))
      shelves.put(template_picture(context, made));
  for (const GaugeAngle& angle : gauge_angles(context)) shelves.put(angle_card(context, angle));
  return shelves.take();
}

}  // namespace splay::sheets
