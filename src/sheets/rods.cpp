// Setting-out strips: full size, cut into lengths that stand side by side on the page, each with
// the marks at which it is laid over the next. All of a strip, its name too, is inside the line
// along which it is cut out; its left edge goes to the work.
#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

#include "drafting/conventions.h"
#include "drafting/room.h"
#include "drafting/scale.h"
#include "drafting/text_block.h"
#include "sheets/kinds.h"
#include "sheets/rods_marks.h"

namespace splay::sheets {

namespace {

// mm: of a mark's line, from there to its words, of the longest words, of the name along the edge.
constexpr double line_length = 11, lead = 5, most_words = 42, name_room = 4.5;
constexpr double overlap = 10;            // beyond either join line
constexpr double note = 12;               // over all of them
constexpr double beside = 4, above = 10;  // between strips

// A length of a rod from `from` to `to`, on paper with `from` at its foot.
struct Length {
  const Rod* rod = nullptr;
  double from = 0, to = 0;
  int number = 0, count = 1;

  bool first() const { return number == 0; }
  bool last() const { return number + 1 == count; }
  double low() const { return first() ? from : from - overlap; }
  double high() const { return last() ? to : to + overlap; }
  std::vector<const RodMark*> marks() const {
    std::vector<const RodMark*> seen;
    for (const RodMark& mark : rod->marks)
      if (mark.at >= low() - 1e-9 && mark.at <= high() + 1e-9) seen.push_back(&mark);
    return seen;
  }
};

std::vector<Length> lengths_of(const std::vector<Rod>& rods, double room) {
  std::vector<Length> all;
  for (const Rod& rod : rods) {
    const double each = room - 2 * overlap;
    const int count = rod.length <= room
                          ? 1
                          : std::max(2, static_cast<int>(std::ceil((rod.length - 1e-9) / each)));
    // Equal lengths: none is a stub.
    const double run = rod.length / count;
    for (int i = 0; i < count; ++i) all.push_back({&rod, run * i, run * (i + 1), i, count});
  }
  return all;
}

class LengthDrawing {
 public:
  LengthDrawing(const Context& context, const Length& length)
      : kit_(context.kit), length_(length), letter_(kit_.look.lettering) {
    double words = 0;
    for (const RodMark* mark : length.marks())
      words = std::max(words, kit_.width(figure(*mark), letter_, ink::Face::bold) +
                                  kit_.width(mark->text(length.rod->of), letter_));
    words = std::min(words, most_words);
    width_ = line_length + (words > 0 ? lead + words + 1 : 0) + name_room;
  }
  double width() const { return width_; }
  double height() const { return length_.high() - length_.low(); }

  drafting::Items draw(Vec2 foot) {
    foot_ = foot;
    outline();
    marks();
    joins();
    name();
    return std::move(items_);
  }

 private:
  double y(double at) const { return foot_.y + at - length_.low(); }
  double right() const { return foot_.x + width_; }
  std::string figure(const RodMark& mark) const { return kit_.figures.text(mark.at) + "  "; }

  void outline() {
    ink::Path path;
    path.rect({{foot_.x, y(length_.low())}, {right(), y(length_.high())}});
    items_.emplace_back(ink::Group{"view", {ink::Stroke{std::move(path), kit_.thin()}}});
  }

  void marks() {
    const std::vector<const RodMark*> seen = length_.marks();
    const double line = letter_ * 1.5;
    std::vector<double> wanted, room(seen.size(), line);
    for (const RodMark* mark : seen) wanted.push_back(y(mark->at));
    const std::vector<double> placed = drafting::spread(
        wanted, room, y(length_.low()) + letter_ * 0.9, y(length_.high()) - letter_ * 0.9);
    ink::Group group{"view", {}};
    ink::Path solid, centres, leaders;
    const double text_at = foot_.x + line_length + lead;
    for (std::size_t i = 0; i < seen.size(); ++i) {
      const double at = wanted[i];
      const Vec2 from{foot_.x, at}, to{foot_.x + line_length, at};
      (seen[i]->centre ? centres : solid).move(from).line(to);
      leaders.move(to).line({text_at - 0.6, placed[i]});
      const std::string figure_text = figure(*seen[i]);
      const double taken = kit_.width(figure_text, letter_, ink::Face::bold);
      const double base = placed[i] - letter_ / 2;
      group.items.emplace_back(
          ink::Text{{text_at, base}, figure_text, letter_, 0, ink::Align::left, ink::Face::bold});
      group.items.emplace_back(
          ink::Text{{text_at + taken, base},
                    drafting::shortened(kit_, seen[i]->text(length_.rod->of),
                                        right() - name_room - text_at - taken, letter_),
                    letter_});
    }
    stroke(group, std::move(solid), kit_.look.middle, ink::Dash::continuous);
    stroke(group, std::move(centres), kit_.look.middle, ink::Dash::chain);
    stroke(group, std::move(leaders), 0.13, ink::Dash::continuous);
    items_.emplace_back(std::move(group));
  }

  static void stroke(ink::Group& group, ink::Path path, double width, ink::Dash dash) {
    if (!path.verbs.empty()) group.items.emplace_back(ink::Stroke{std::move(path), {width, dash}});
  }

  // Where the next length lies over this one: a line at the strip's working edge with triangles at
  // its ends.
  void joins() {
    if (!length_.first()) join(length_.from, length_.number - 1);
    if (!length_.last()) join(length_.to, length_.number);
  }

  void join(double at, int number) {
    ink::Group group{"legend", {}};
    const double level = y(at), half = 1.6;
    ink::Path wedges;
    for (const double side : {-1.0, 1.0}) {
      const double x = side < 0 ? foot_.x : foot_.x + line_length;
      wedges.polygon({{x, level}, {x - side * 2.6, level - half}, {x - side * 2.6, level + half}});
    }
    group.items.emplace_back(ink::Fill{std::move(wedges)});
    ink::Path line;
    line.move({foot_.x, level}).line({foot_.x + line_length, level});
    group.items.emplace_back(ink::Stroke{std::move(line), {0.13}});
    // The letter stands clear of marks behind it.
    const Vec2 base{foot_.x + line_length / 2, level + 0.8};
    group.items.emplace_back(
        ink::Fill{ink::Path{}.rect({base + Vec2{-1.6, -0.5}, base + Vec2{1.6, letter_ + 0.5}}), 1});
    const std::string letter(1, static_cast<char>('A' + number % 26));
    group.items.emplace_back(
        ink::Text{base, letter, letter_, 0, ink::Align::centre, ink::Face::bold});
    items_.emplace_back(std::move(group));
  }

  // Up along the right edge: what it is for, then how it is laid to the work.
  void name() {
    constexpr double upright = std::numbers::pi / 2, margin = 2;
    const Rod& rod = *length_.rod;
    std::string title = joined(rod.of);
    if (rod.of.size() < 2) title += (title.empty() ? "" : " ") + rod.name;
    const std::string rest = (length_.count == 1 ? ""
                                                 : std::to_string(length_.number + 1) + " of " +
                                                       std::to_string(length_.count) + ", ") +
                             rod.along + (rod.on.empty() ? "" : ", on the " + rod.on) +
                             ", overall " + kit_.figures.text(rod.length);
    const double room = height() - 2 * margin;
    title = drafting::shortened(kit_, title, room, letter_, ink::Face::bold);
    const double taken = kit_.width(title + "  ", letter_, ink::Face::bold);
    const Vec2 at{right() - 1.3, y(length_.low()) + margin};
    ink::Group group{"note", {}};
    group.items.emplace_back(
        ink::Text{at, title, letter_, upright, ink::Align::left, ink::Face::bold});
    if (room - taken > 12)
      group.items.emplace_back(ink::Text{at + Vec2{0, taken},
                                         drafting::shortened(kit_, rest, room - taken, letter_),
                                         letter_, upright});
    for (std::size_t i = 0; i < std::min<std::size_t>(1, rod.of.size()); ++i)
      group.items.emplace_back(ink::Link{
          {at - Vec2{letter_, 0}, at + Vec2{0, std::min(room, taken)}}, part_anchor(rod.of[i])});
    items_.emplace_back(std::move(group));
  }

  const drafting::Kit& kit_;
  const Length& length_;
  double letter_, width_ = 0;
  Vec2 foot_;
  drafting::Items items_;
};

constexpr const char* how_to =
    "Full size. Print without scaling and hold a rule to both bars first. Cut the strips out along "
    "their outlines, lay join letter over join letter with the lines in one, glue them down on a "
    "stick along its edge, and hold that edge to the work: datum to datum. Check each overall with "
    "a rule.";

// Strips from left to right, short ones over each other, each on the first of the last pages that
// has room.
class Pages {
 public:
  explicit Pages(const Context& context) : context_(context), area_(context.area()) {}
  double room() const { return area_.height() - note; }

  void put(const Length& length) {
    LengthDrawing drawing(context_, length);
    constexpr std::size_t near = 3;
    for (std::size_t p = pages_.size() > near ? pages_.size() - near : 0; p < pages_.size(); ++p)
      if (const auto foot = place(columns_[p], drawing)) return draw(p, drawing, *foot);
    start();
    draw(pages_.size() - 1, drawing, place(columns_.back(), drawing).value_or(area_.low));
  }
  std::vector<ink::Page> take() { return std::move(pages_); }

 private:
  struct Column {
    double x = 0, width = 0, taken = 0;
  };

  std::optional<Vec2> place(std::vector<Column>& columns, const LengthDrawing& drawing) const {
    for (Column& column : columns) {
      if (drawing.width() > column.width || column.taken + above + drawing.height() > room())
        continue;
      const Vec2 foot{column.x, area_.low.y + column.taken + above};
      column.taken += above + drawing.height();
      return foot;
    }
    const double x =
        columns.empty() ? area_.low.x : columns.back().x + columns.back().width + beside;
    if (x + drawing.width() > area_.high.x && !columns.empty()) return std::nullopt;
    columns.push_back({x, drawing.width(), drawing.height()});
    return Vec2{x, area_.low.y};
  }

  void draw(std::size_t page, LengthDrawing& drawing, Vec2 foot) {
    drafting::append(pages_[page].items, drawing.draw(foot));
  }

  void start() {
    pages_.push_back(
        start_page(context_, "Setting-out strips", drafting::text({1, 1}, *context_.job().units)));
    pages_.back().items.emplace_back(
        drafting::fitted(context_.kit, how_to, {{area_.low.x, area_.high.y - note}, area_.high},
                         {context_.kit.look.lettering, ink::Face::regular, ink::Align::left}));
    columns_.emplace_back();
  }

  const Context& context_;
  ink::Rect area_;
  std::vector<ink::Page> pages_;
  std::vector<std::vector<Column>> columns_;  // of each page
};

}  // namespace

std::vector<ink::Page> make_rods(const Context& context) {
  std::vector<Rod> rods;
  for (const fabrication::PartRow* row : rows_in_order(context.plan))
    if (Rod rod = rod_of(PartSheet(context, *row)); rod.needed) rods.push_back(std::move(rod));
  rods = shared(std::move(rods));
  if (Rod heights = heights_of(context); !heights.marks.empty())
    rods.insert(rods.begin(), std::move(heights));
  Pages pages(context);
  for (const Length& length : lengths_of(rods, pages.room())) pages.put(length);
  return pages.take();
}

}  // namespace splay::sheets
