// Setting-out strips: full size, cut into lengths that stand side by side on the page, each with
// the marks at which it is laid over the next. All of a strip, its name too, is inside the line
// along which it is cut out; its left edge goes to the work.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "drafting/conventions.h"
#include "drafting/room.h"
#include "drafting/scale.h"
#include "drafting/sheetful.h"
#include "drafting/text_block.h"
#include "sheets/kinds.h"
#include "sheets/rods_marks.h"

namespace splay::sheets {

namespace {

// mm: of a mark's line, from there to its words, of the name along the edge.
constexpr double line_length = 11, lead = 5;
constexpr double words_wanted = 30;  // mm: of a label's words and figure
constexpr double overlap = 10;       // beyond either join line
constexpr Vec2 between{3, 6};        // strips

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
    // About equal lengths: none is a stub.
    const std::vector<double> joins = joins_of(rod, count, each);
    for (int i = 0; i < count; ++i) {
      const auto at = static_cast<std::size_t>(i);
      all.push_back({&rod, joins[at], joins[at + 1], i, count});
    }
  }
  return all;
}

// For the name up the right side, clear of the join's sign and of words.
double name_room(double letter) {
  constexpr double clear = 2.2;  // mm
  return 1.52 * letter + clear;
}

// Of labels, so that as many strips as can be stand side by side on a page, or one less, ...
std::vector<double> words_widths(double area, double letter) {
  const double others = line_length + lead + name_room(letter);
  std::vector<double> widths;
  const double most = (area + between.x) / (words_wanted + others + between.x);
  for (int count = std::max(1, static_cast<int>(most)); count > 0; --count)
    widths.push_back((area + between.x) / count - between.x - others - 1e-6);
  return widths;
}

// What stands at a mark: its figure, and beside that as many lines of words as they need.
struct RodLabel {
  const RodMark* mark = nullptr;
  std::string figure;
  double indent = 0;  // of the words, mm
  std::vector<std::string> words;
};

class LengthDrawing {
 public:
  LengthDrawing(const Context& context, const Length& length)
      : kit_(context.kit), length_(length), letter_(kit_.look.lettering) {
    for (const double words : words_widths(context.area().width(), letter_)) {
      labels(words);
      constexpr std::size_t most_lines = 3;  // more are hard to read off
      double taken = 0;
      for (const RodLabel& label : labels_) taken += room_of(label);
      if (taken <= height() && std::ranges::all_of(labels_, [](const RodLabel& label) {
            return label.words.size() <= most_lines;
          }))
        break;
    }
    double words = 0;
    for (const RodLabel& label : labels_)
      for (const std::string& line : label.words)
        words = std::max(words, label.indent + kit_.width(line, letter_));
    width_ = line_length + (words > 0 ? lead + words : 0) + name_room(letter_);
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
  double pitch() const { return letter_ * 1.5; }
  double room_of(const RodLabel& label) const {
    return pitch() * static_cast<double>(std::max<std::size_t>(label.words.size(), 1));
  }

  void labels(double width) {
    labels_.clear();
    for (const RodMark* mark : length_.marks()) {
      RodLabel label{mark, kit_.figures.text(mark->at) + "  ", 0, {}};
      label.indent = kit_.width(label.figure, letter_, ink::Face::bold);
      label.words =
          drafting::wrap(kit_, mark->text(length_.rod->of), width - label.indent, letter_);
      labels_.push_back(std::move(label));
    }
  }

  void outline() {
    ink::Path path;
    path.rect({{foot_.x, y(length_.low())}, {right(), y(length_.high())}});
    items_.emplace_back(ink::Group{"view", {ink::Stroke{std::move(path), kit_.thin()}}});
  }

  void marks() {
    std::vector<double> wanted, room;
    for (const RodLabel& label : labels_) {
      wanted.push_back(y(label.mark->at));
      room.push_back(room_of(label));
    }
    const std::vector<double> placed = drafting::spread(
        wanted, room, y(length_.low()) + letter_ * 0.15, y(length_.high()) - letter_ * 0.15);
    ink::Group group{"view", {}};
    ink::Path solid, centres, leaders;
    const double text_at = foot_.x + line_length + lead;
    for (std::size_t i = 0; i < labels_.size(); ++i) {
      const RodLabel& label = labels_[i];
      const Vec2 from{foot_.x, wanted[i]}, to{foot_.x + line_length, wanted[i]};
      (label.mark->centre ? centres : solid).move(from).line(to);
      double level = placed[i] + (room[i] - pitch()) / 2;
      leaders.move(to).line({text_at - 0.6, level});
      group.items.emplace_back(ink::Text{{text_at, level - letter_ / 2},
                                         label.figure,
                                         letter_,
                                         0,
                                         ink::Align::left,
                                         ink::Face::bold});
      for (const std::string& line : label.words) {
        group.items.emplace_back(
            ink::Text{{text_at + label.indent, level - letter_ / 2}, line, letter_});
        level -= pitch();
      }
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
    const std::string letter(1, static_cast<char>('A' + number % 26));
    const double half_wide = kit_.width(letter, letter_, ink::Face::bold) / 2 + 0.7;
    group.items.emplace_back(ink::Fill{
        ink::Path{}.rect({base + Vec2{-half_wide, -0.5}, base + Vec2{half_wide, letter_ + 0.5}}),
        1});
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
    const Vec2 at{right() - 0.52 * letter_, y(length_.low()) + margin};
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
  std::vector<RodLabel> labels_;
  double letter_, width_ = 0;
  Vec2 foot_;
  drafting::Items items_;
};

constexpr const char* strips_how_to =
    "Full size: print without scaling and hold a rule to both bars. Cut the strips out along "
    "their outlines, lay join letter over join letter with the lines in one, glue them down on a "
    "stick along its edge, and hold that edge to the work: datum to datum. Check each overall with "
    "a rule.";

ink::Page strips_page(const Context& context, const drafting::Picture& note) {
  const ink::Rect area = context.area();
  ink::Page page =
      start_page(context, "Setting-out strips", drafting::text({1, 1}, *context.job().units));
  drafting::append(page.items, drafting::moved(note.items, {area.low.x, area.high.y}));
  return page;
}

}  // namespace

std::vector<ink::Page> make_rods(const Context& context) {
  std::vector<Rod> rods;
  for (const fabrication::PartRow* row : rows_in_order(context.plan))
    if (Rod rod = rod_of(PartSheet(context, *row)); rod.needed) rods.push_back(std::move(rod));
  rods = shared(std::move(rods));
  if (Rod heights = heights_of(context); !heights.marks.empty())
    rods.insert(rods.begin(), std::move(heights));
  const ink::Rect area = context.area();
  const drafting::Picture note = page_note(context, strips_how_to);
  const Vec2 room{area.width(), area.height() - note.height};
  const std::vector<Length> lengths = lengths_of(rods, room.y);
  std::vector<LengthDrawing> drawings;
  std::vector<Vec2> sizes;
  for (const Length& length : lengths) {
    drawings.emplace_back(context, length);
    sizes.push_back({drawings.back().width(), drawings.back().height()});
  }
  std::vector<ink::Page> pages;
  const std::vector<drafting::Laid> laid = drafting::lay_out(sizes, room, between);
  for (std::size_t i = 0; i < laid.size(); ++i) {
    while (pages.size() <= laid[i].page) pages.push_back(strips_page(context, note));
    const Vec2 foot =
        Vec2{area.low.x, area.high.y - note.height} + laid[i].at - Vec2{0, drawings[i].height()};
    drafting::append(pages[laid[i].page].items, drawings[i].draw(foot));
  }
  return pages;
}

}  // namespace splay::sheets
