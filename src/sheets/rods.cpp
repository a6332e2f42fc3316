// Setting-out strips: full size, cut into lengths that stand side by side on the page, each with
// the marks at which it is laid over the next.
#include <algorithm>
#include <cmath>

#include "drafting/conventions.h"
#include "drafting/room.h"
#include "drafting/scale.h"
#include "drafting/text_block.h"
#include "sheets/kinds.h"
#include "sheets/rods_marks.h"

namespace splay::sheets {

namespace {

constexpr double band = 11, pitch = 54;  // mm: the strip, and from one to the next
constexpr double overlap = 10;           // beyond either join line
constexpr double head = 19, note = 12;   // over each length of strip; over all of them

// A length of a rod from `from` to `to`, on paper with `from` at its foot.
struct Length {
  const Rod* rod = nullptr;
  double from = 0, to = 0;
  int number = 0, count = 1;
};

std::vector<Length> lengths_of(const std::vector<Rod>& rods, double room) {
  std::vector<Length> all;
  for (const Rod& rod : rods) {
    const double each = room - 2 * overlap;
    const int count = std::max(1, static_cast<int>(std::ceil((rod.length - 1e-9) / each)));
    // Equal lengths: none is a stub.
    const double run = rod.length / count;
    for (int i = 0; i < count; ++i) all.push_back({&rod, run * i, run * (i + 1), i, count});
  }
  return all;
}

class LengthDrawing {
 public:
  LengthDrawing(const Context& context, const Length& length, Vec2 foot)
      : kit_(context.kit), length_(length), foot_(foot) {}

  drafting::Items draw(double top) {
    outline();
    marks();
    joins();
    title(top);
    return std::move(items_);
  }

 private:
  bool first() const { return length_.number == 0; }
  bool last() const { return length_.number + 1 == length_.count; }
  double low() const { return first() ? length_.from : length_.from - overlap; }
  double high() const { return last() ? length_.to : length_.to + overlap; }
  double y(double at) const { return foot_.y + overlap + at - length_.from; }

  void outline() {
    ink::Path path;
    path.rect({{foot_.x, y(low())}, {foot_.x + band, y(high())}});
    items_.emplace_back(ink::Group{"view", {ink::Stroke{std::move(path), kit_.thin()}}});
  }

  void marks() {
    std::vector<const RodMark*> seen;
    for (const RodMark& mark : length_.rod->marks)
      if (mark.at >= low() - 1e-9 && mark.at <= high() + 1e-9) seen.push_back(&mark);
    const double letter = kit_.look.lettering, line = letter * 1.5;
    std::vector<double> wanted, room(seen.size(), line);
    for (const RodMark* mark : seen) wanted.push_back(y(mark->at));
    const std::vector<double> placed =
        drafting::spread(wanted, room, foot_.y + letter, y(high()) + 2 * letter);
    ink::Group group{"view", {}};
    ink::Path solid, centres, leaders;
    const double text_at = foot_.x + band + 5, width = pitch - band - 6.5;
    for (std::size_t i = 0; i < seen.size(); ++i) {
      const double at = wanted[i];
      (seen[i]->centre ? centres : solid).move({foot_.x, at}).line({foot_.x + band, at});
      leaders.move({foot_.x + band, at}).line({text_at - 0.6, placed[i]});
      const std::string figure = kit_.figures.text(seen[i]->at) + "  ";
      const double taken = kit_.width(figure, letter, ink::Face::bold);
      const double base = placed[i] - letter / 2;
      group.items.emplace_back(
          ink::Text{{text_at, base}, figure, letter, 0, ink::Align::left, ink::Face::bold});
      group.items.emplace_back(
          ink::Text{{text_at + taken, base},
                    drafting::shortened(kit_, seen[i]->name, width - taken, letter),
                    letter});
    }
    stroke(group, std::move(solid), kit_.look.middle, ink::Dash::continuous);
    stroke(group, std::move(centres), kit_.look.middle, ink::Dash::chain);
    stroke(group, std::move(leaders), 0.13, ink::Dash::continuous);
    items_.emplace_back(std::move(group));
  }

  static void stroke(ink::Group& group, ink::Path path, double width, ink::Dash dash) {
    if (!path.verbs.empty()) group.items.emplace_back(ink::Stroke{std::move(path), {width, dash}});
  }

  // Where the next length lies over this one: a line through the strip with triangles at its ends.
  void joins() {
    const auto join = [&](double at, int number) {
      ink::Group group{"legend", {}};
      const double level = y(at), half = 1.6;
      ink::Path wedges;
      for (const double side : {-1.0, 1.0}) {
        const double x = side < 0 ? foot_.x : foot_.x + band;
        wedges.polygon(
            {{x, level}, {x - side * 2.6, level - half}, {x - side * 2.6, level + half}});
      }
      group.items.emplace_back(ink::Fill{std::move(wedges)});
      ink::Path line;
      line.move({foot_.x, level}).line({foot_.x + band, level});
      group.items.emplace_back(ink::Stroke{std::move(line), {0.13}});
      // The letter stands clear of marks behind it.
      const double height = kit_.look.lettering;
      const Vec2 base{foot_.x + band / 2, level + 0.8};
      group.items.emplace_back(ink::Fill{
          ink::Path{}.rect({base + Vec2{-1.6, -0.5}, base + Vec2{1.6, height + 0.5}}), 1});
      const std::string letter(1, static_cast<char>('A' + number % 26));
      group.items.emplace_back(ink::Text{{foot_.x + band / 2, level + 0.8},
                                         letter,
                                         kit_.look.lettering,
                                         0,
                                         ink::Align::centre,
                                         ink::Face::bold});
      items_.emplace_back(std::move(group));
    };
    if (!first()) join(length_.from, length_.number - 1);
    if (!last()) join(length_.to, length_.number);
  }

  void title(double top) {
    const double letter = kit_.look.lettering, width = pitch - 3;
    ink::Group group{"note", {}};
    const Rod& rod = *length_.rod;
    const std::string which = length_.count == 1 ? ""
                                                 : " " + std::to_string(length_.number + 1) +
                                                       " of " + std::to_string(length_.count);
    group.items.emplace_back(
        ink::Text{{foot_.x, top - letter},
                  drafting::shortened(kit_, rod.title, width, letter, ink::Face::bold),
                  letter,
                  0,
                  ink::Align::left,
                  ink::Face::bold});
    group.items.emplace_back(
        ink::Text{{foot_.x, top - 2.8 * letter},
                  drafting::shortened(kit_, "overall " + kit_.figures.text(rod.length) + which,
                                      width, letter),
                  letter});
    group.items.emplace_back(ink::Text{{foot_.x, top - 4.6 * letter},
                                       drafting::shortened(kit_, rod.along, width, letter),
                                       letter});
    if (!rod.anchor.empty())
      group.items.emplace_back(
          ink::Link{{{foot_.x, top - letter}, {foot_.x + width, top}}, rod.anchor});
    items_.emplace_back(std::move(group));
  }

  const drafting::Kit& kit_;
  const Length& length_;
  Vec2 foot_;
  drafting::Items items_;
};

constexpr const char* how_to =
    "Full size. Print without scaling and hold a rule to both bars first. Cut the strips out, lay "
    "join letter over join letter with the lines in one, glue them down on a stick, and hold the "
    "stick to the work: datum to datum. Check each overall with a rule.";

}  // namespace

std::vector<ink::Page> make_rods(const Context& context) {
  std::vector<Rod> rods;
  if (Rod heights = heights_of(context); !heights.marks.empty()) rods.push_back(std::move(heights));
  for (const fabrication::PartRow* row : rows_in_order(context.plan))
    if (Rod rod = rod_of(PartSheet(context, *row)); !rod.marks.empty())
      rods.push_back(std::move(rod));
  const ink::Rect area = context.area();
  const double most = area.height() - head - note;
  const std::vector<Length> lengths = lengths_of(rods, most);
  const auto columns = static_cast<std::size_t>(std::max(1.0, std::floor(area.width() / pitch)));
  std::vector<ink::Page> pages;
  for (std::size_t i = 0; i < lengths.size(); ++i) {
    if (i % columns == 0) {
      pages.push_back(
          start_page(context, "Setting-out strips", drafting::text({1, 1}, *context.job().units)));
      pages.back().items.emplace_back(
          drafting::fitted(context.kit, how_to, {{area.low.x, area.high.y - note}, area.high},
                           {context.kit.look.lettering, ink::Face::regular, ink::Align::left}));
    }
    const Vec2 foot{area.low.x + pitch * static_cast<double>(i % columns), area.low.y};
    LengthDrawing drawing(context, lengths[i], foot);
    drafting::append(pages.back().items, drawing.draw(area.high.y - note - 1));
  }
  return pages;
}

}  // namespace splay::sheets
