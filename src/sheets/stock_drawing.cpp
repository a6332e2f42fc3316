#include "sheets/stock_drawing.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "drafting/conventions.h"
#include "drafting/hatch.h"
#include "drafting/room.h"
#include "drafting/text_block.h"

namespace splay::sheets {

namespace {

using drafting::Quad;
using fabrication::CutSheet;
using fabrication::StockLayout;
using ink::Rect;

constexpr double number_height = 2.5;
constexpr double narrowest_hatch = 0.9;  // mm on paper: a thinner strip of waste is left white

struct PieceLabel {
  std::string mark, size;
};

class SheetDrawing {
 public:
  SheetDrawing(const Context& context, const StockLayout& layout, const CutSheet& sheet,
               const StockScale& scale)
      : context_(context),
        kit_(context.kit),
        layout_(layout),
        sheet_(sheet),
        supply_(layout.supplies[sheet.supply]),
        scale_(scale),
        long_(scale.length(supply_.length)),
        wide_(scale.width(supply_.width)),
        size_(scale.upright ? Vec2{wide_, long_} : Vec2{long_, wide_}),
        room_({{0, -size_.y - 2 * stock_margin}, {size_.x + 2 * stock_margin, 0}}) {}

  StockDrawing draw() {
    leftovers();
    parts();
    cuts();
    grain();
    drafting::Picture picture;
    picture.width = size_.x + 2 * stock_margin;
    picture.height = size_.y + 2 * stock_margin + grain_strip;
    picture.items.emplace_back(std::move(lines_));
    drafting::append(picture.items, std::move(hatching_));
    drafting::append(picture.items, std::move(texts_));
    return {std::move(picture), std::move(unmarked_)};
  }

 private:
  // A point of the sheet in the picture: upright the sheet is turned, never mirrored.
  Vec2 at(double x, double y) const {
    const double along = scale_.length(x), across = scale_.width(y);
    const Vec2 low{stock_margin, -stock_margin - size_.y};
    return scale_.upright ? low + Vec2{wide_ - across, along} : low + Vec2{along, across};
  }
  Rect box(double x, double y, double length, double width) const {
    const Vec2 a = at(x, y), b = at(x + length, y + width);
    return {{std::min(a.x, b.x), std::min(a.y, b.y)}, {std::max(a.x, b.x), std::max(a.y, b.y)}};
  }
  Rect box(const packing::OffCut& o) const { return box(o.x, o.y, o.width, o.height); }
  Rect whole() const { return box(0, 0, supply_.length, supply_.width); }

  void line(ink::Stroke stroke) {
    room_.take(kit_, stroke);
    lines_.items.emplace_back(std::move(stroke));
  }
  void text(ink::Group group) {
    room_.take(kit_, group);
    texts_.push_back(std::move(group));
  }

  void hatched(const packing::OffCut& o) {
    const Rect r = box(o);
    if (std::min(r.width(), r.height()) < narrowest_hatch) return;
    const std::vector<Vec2> corners{r.low, {r.high.x, r.low.y}, r.high, {r.low.x, r.high.y}};
    ink::Group group = drafting::waste_area(kit_, {corners});
    room_.take(kit_, group);
    hatching_.push_back(std::move(group));
  }

  void leftovers() {
    for (const packing::OffCut& o : sheet_.waste) hatched(o);
    for (const packing::OffCut& o : sheet_.defects) hatched(o);
    for (const fabrication::Leftover& left : sheet_.off_cuts)
      label(box(left.place), {off_cut_words(left), size_words(left.place.width, left.place.height)},
            false);
  }

  std::string size_words(double length, double width) const {
    return kit_.figures.text(length) + " × " + kit_.figures.text(width);
  }

  void parts() {
    line({ink::Path{}.rect(whole()), {kit_.look.middle}});
    for (const packing::PlacedPart& part : sheet_.parts) {
      const auto& wanted = layout_.wanted[static_cast<std::size_t>(part.part)];
      const Rect r = box(part.x, part.y, part.width, part.height);
      line({ink::Path{}.rect(r), kit_.visible()});
      const std::string& mark = context_.plan.rows[static_cast<std::size_t>(wanted.row)].mark;
      std::string words = piece_words(context_, wanted);
      if (part.turned) words += ", turned";
      label(r, {words, size_words(part.width, part.height)}, true);
      texts_.push_back(
          {"note", {ink::PartClaim{mark, "layout"}, ink::Link{inset(r), part_anchor(mark)}}});
    }
  }

  // Links of neighbours must not lie over each other.
  static Rect inset(Rect r) {
    const double by = std::min({0.1, r.width() / 4, r.height() / 4});
    return drafting::grown(r, -by);
  }

  struct Line {
    std::string text;
    double height;
    ink::Face face;
  };

  // The lines along or up the box when they fit in it.
  bool write(const Rect& r, const std::vector<Line>& lines, bool up) {
    // Letters larger than the least keep more air to the lines round them; `below`: of tails.
    constexpr double inside = 0.24, pitch = 1.45, below = 0.3;
    const double along = up ? r.height() : r.width();
    const double across = (up ? r.width() : r.height()) - 2 * inside * lines.front().height;
    double height = 0, width = 0;
    for (const Line& each : lines) {
      width =
          std::max(width, kit_.width(each.text, each.height, each.face) + 2 * inside * each.height);
      height += &each == &lines.back() ? each.height : each.height * pitch;
    }
    height += below * lines.back().height;
    if (width > along || height > across) return false;
    const Vec2 centre = drafting::middle(r);
    double down = height / 2;
    ink::Group group{"note", {}};
    for (const Line& each : lines) {
      const double base = down - each.height;
      const Vec2 place = up ? centre + Vec2{-base, 0} : centre + Vec2{0, base};
      group.items.emplace_back(ink::Text{place, each.text, each.height,
                                         up ? std::numbers::pi / 2 : 0, ink::Align::centre,
                                         each.face});
      down -= each.height * pitch;
    }
    text(std::move(group));
    return true;
  }

  // As much as there is room for; what has no room at all is listed.
  void label(const Rect& r, const PieceLabel& words, bool bold) {
    const ink::Face face = bold ? ink::Face::bold : ink::Face::regular;
    const auto tried = [&](double height, bool with_size, bool broken, bool up) {
      std::vector<Line> lines;
      std::string first = words.mark;
      const std::size_t space = first.find(' ');
      if (broken && space != std::string::npos) {
        lines.push_back({first.substr(0, space), height, face});
        first.erase(0, space + 1);
      }
      lines.push_back({first, height, face});
      if (with_size) lines.push_back({words.size, 2.5, ink::Face::regular});
      return write(r, lines, up);
    };
    for (const bool with_size : {true, false})
      for (const bool up : {false, true})
        for (const double height : {5.0, 3.5, 2.5})
          if ((bold || height < 3) &&
              (tried(height, with_size, false, up) || tried(height, with_size, true, up)))
            return;
    unmarked_.push_back(words.mark + ", " + words.size);
  }

  void cuts() {
    for (const packing::SheetCut& cut : sheet_.cuts) {
      const auto [a, b] = ends(cut);
      line({ink::Path{}.move(a).line(b), kit_.thin()});
    }
    int number = 0;
    for (const packing::SheetCut& cut : sheet_.cuts) place_number(cut, ++number);
  }

  // The middle of the kerf.
  std::pair<Vec2, Vec2> ends(const packing::SheetCut& cut) const {
    const bool across = cut.axis == packing::Axis::x;
    const double limit = across ? supply_.length : supply_.width;
    const double middle = std::clamp(cut.at + layout_.task.kerf / 2, 0.0, limit);
    return across ? std::pair{at(middle, cut.from), at(middle, cut.to)}
                  : std::pair{at(cut.from, middle), at(cut.to, middle)};
  }

  // Of the ring round a number, so that it clears the figures.
  static double radius(int number) { return number < 10 ? 2.2 : 2.7; }
  static Rect around(Vec2 p, double r) { return {p - Vec2{r, r}, p + Vec2{r, r}}; }

  // Outside the sheet where the cut ends there, else on its line, where it hides the least.
  void place_number(const packing::SheetCut& cut, int number) {
    const auto [a, b] = ends(cut);
    const Vec2 along = unit(b - a);
    const double r = radius(number), out = r + 0.4;
    const Rect sheet = drafting::grown(whole(), -0.1);
    for (const auto& [end, way] : {std::pair{a, along * -1.0}, std::pair{b, along}}) {
      const Vec2 p = end + way * out;
      if (drafting::overlap(around(p, r), sheet)) continue;
      if (room_.free(around(p, r), 0.3)) return draw_number(p, number);
    }
    // On the line, from its middle outwards; else touching it.
    constexpr int steps = 24;
    const Vec2 aside = Vec2{-along.y, along.x} * (r + 0.2);
    int least = 1000;
    Vec2 best;
    for (const double side : {0.0, 1.0, -1.0}) {
      for (int i = 0; i <= steps && least > 1; ++i) {
        const double share = 0.5 + (i % 2 == 0 ? 0.5 : -0.5) * i / (steps + 2);
        const Vec2 p = a + (b - a) * share + aside * side;
        const Quad quad = drafting::quad(around(p, r));
        if (room_.over_text(quad, 0.3)) continue;
        const int lines = room_.lines_under(quad);
        if (lines >= least) continue;
        least = lines;
        best = p;
      }
      if (least < 1000) return draw_number(best, number);
    }
    unmarked_.push_back("cut " + std::to_string(number));
  }

  void draw_number(Vec2 p, int number) {
    const double r = radius(number);
    ink::Path ring;
    ring.arc(p, r, 0, 2 * std::numbers::pi).close();
    ink::Group group{"balloon", {}};
    group.items.emplace_back(ink::Fill{ring, 1.0});
    group.items.emplace_back(ink::Stroke{ring, kit_.thin()});
    group.items.emplace_back(ink::Text{p - Vec2{0, number_height / 2}, std::to_string(number),
                                       number_height, 0, ink::Align::centre});
    room_.take(drafting::quad(around(p, r)));
    texts_.push_back(std::move(group));
  }

  void grain() {
    const double y = -size_.y - 2 * stock_margin - grain_strip / 2 + 1;
    const bool has = *layout_.of(*context_.plan.project).grain;
    const double arrow = scale_.upright ? 4.5 : 14, x = stock_margin + (scale_.upright ? 1.5 : 7);
    if (has)
      texts_.push_back(
          drafting::grain_arrow(kit_, {x, y}, arrow, scale_.upright ? std::numbers::pi / 2 : 0));
    texts_.push_back({"note",
                      {ink::Text{{has ? x + (scale_.upright ? 4 : 9) : stock_margin, y - 1.2},
                                 has ? "grain" : "no grain",
                                 2.5}}});
  }

  const Context& context_;
  const drafting::Kit& kit_;
  const StockLayout& layout_;
  const CutSheet& sheet_;
  const fabrication::Supplied& supply_;
  StockScale scale_;
  double long_, wide_;
  Vec2 size_;
  drafting::Room room_;
  ink::Group lines_{"view", {}};
  std::vector<ink::Group> hatching_, texts_;
  std::vector<std::string> unmarked_;
};

}  // namespace

StockDrawing stock_drawing(const Context& context, const StockLayout& layout, const CutSheet& sheet,
                           const StockScale& scale) {
  return SheetDrawing(context, layout, sheet, scale).draw();
}

std::string off_cut_words(const fabrication::Leftover& left) {
  return left.name.substr(left.name.rfind("off-cut"));
}

std::string piece_words(const Context& context, const fabrication::Wanted& wanted) {
  std::string words = context.plan.rows[static_cast<std::size_t>(wanted.row)].mark;
  if (wanted.strips > 1) words += ", strip";
  if (wanted.layers > 1) words += ", resaw into " + std::to_string(wanted.layers);
  return words;
}

}  // namespace splay::sheets
