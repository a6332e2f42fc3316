#include "base/quantity.h"
#include "drafting/sheet_frame.h"

namespace splay::drafting {

namespace {

constexpr double half_depth = 1.1;  // of the bar itself, on either side of its middle
constexpr double figure = 2.5, gap = 0.8;

// Along the bar and to its left, on paper.
struct BarFrame {
  Vec2 at;
  bool upright;
  Vec2 point(double along, double left) const {
    return upright ? at + Vec2{-left, along} : at + Vec2{along, left};
  }
};

void box(const BarFrame& frame, double from, double to, double low, double high, ink::Path& path) {
  path.move(frame.point(from, low))
      .line(frame.point(to, low))
      .line(frame.point(to, high))
      .line(frame.point(from, high))
      .close();
}

void text(const BarFrame& frame, double along, double left, std::string words, ink::Align align,
          Items& items) {
  constexpr double quarter_turn = 1.5707963267948966;
  items.emplace_back(ink::Text{frame.point(along, left), std::move(words), figure,
                               frame.upright ? quarter_turn : 0.0, align});
}

}  // namespace

ink::Group scale_bar(const Kit& kit, Vec2 at, bool upright) {
  const BarFrame frame{at, upright};
  constexpr int centimetres = 10, half_inches = 8;
  constexpr double half_inch = Length::mm_per_inch / 2;
  ink::Path black, outline;
  for (int i = 0; i < centimetres; i += 2) box(frame, 10 * i, 10 * (i + 1), 0, half_depth, black);
  for (int i = 1; i < half_inches; i += 2)
    box(frame, half_inch * i, half_inch * (i + 1), -half_depth, 0, black);
  box(frame, 0, 10 * centimetres, 0, half_depth, outline);
  box(frame, 0, half_inch * half_inches, -half_depth, 0, outline);
  ink::Group group{"legend", {}};
  group.items.emplace_back(ink::Fill{std::move(black)});
  group.items.emplace_back(ink::Stroke{std::move(outline), kit.thin()});
  for (int i = 0; i <= centimetres; i += 2) {
    const bool last = i == centimetres;
    text(frame, 10 * i, half_depth + gap, std::to_string(10 * i) + (last ? " mm" : ""),
         ink::Align::centre, group.items);
  }
  for (int i = 0; i <= half_inches; i += 2) {
    const bool last = i == half_inches;
    text(frame, half_inch * i, -half_depth - gap - figure,
         std::to_string(i / 2) + (last ? " in" : ""), ink::Align::centre, group.items);
  }
  return group;
}

}  // namespace splay::drafting
