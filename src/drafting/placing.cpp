#include "drafting/placing.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "drafting/text_block.h"

namespace splay::drafting {

namespace {

constexpr int directions = 16;
constexpr double leader_clear = 2.5;  // a label nearer than this needs no leader

ink::Rect place_at(const Sought& sought, Vec2 direction, double distance) {
  const Vec2 half{sought.width / 2, sought.height / 2};
  const Vec2 centre =
      sought.tip + direction * distance + Vec2{direction.x * half.x, direction.y * half.y};
  return {centre - half, centre + half};
}

std::optional<double> cost_of(const Room& room, const Sought& sought, ink::Rect place,
                              double distance) {
  const Vec2 end = leader_end(place, sought.tip);
  const Vec2 away = middle(place) - sought.tip;
  const double turned = norm(away) > 0 ? 1 - dot(unit(away), unit(sought.prefer)) : 0;
  double cost = distance + 5 * turned;
  if (norm(end - sought.tip) > leader_clear) {
    if (room.over_text(sought.tip, end)) return std::nullopt;
    cost += 3 * room.lines_crossed(sought.tip + unit(end - sought.tip) * 0.3, end);
  }
  return cost;
}

std::optional<ink::Rect> anywhere(const Room& room, const Sought& sought) {
  constexpr double raster = 3;
  std::optional<ink::Rect> best;
  double best_cost = 1e300;
  const Vec2 size{sought.width, sought.height};
  const auto rows = static_cast<int>((room.area().height() - size.y) / raster);
  const auto columns = static_cast<int>((room.area().width() - size.x) / raster);
  for (int row = 0; row <= rows; ++row) {
    for (int column = 0; column <= columns; ++column) {
      const Vec2 low = room.area().low + Vec2{raster * column, raster * row};
      const ink::Rect place{low, low + size};
      const double cost = norm(middle(place) - sought.tip);
      if (cost >= best_cost || !room.free(place)) continue;
      if (room.over_text(sought.tip, leader_end(place, sought.tip))) continue;
      best = place;
      best_cost = cost;
    }
  }
  return best;
}

}  // namespace

std::optional<ink::Rect> find_place(const Room& room, const Sought& sought) {
  std::optional<ink::Rect> best;
  double best_cost = 1e300;
  constexpr double step = 2.5;
  const auto rings = static_cast<int>((sought.far - sought.near) / step);
  for (int ring = 0; ring <= rings; ++ring) {
    const double distance = sought.near + step * ring;
    if (distance > best_cost) break;
    for (int i = 0; i < directions; ++i) {
      const double angle = 2 * std::numbers::pi * i / directions;
      const ink::Rect place = place_at(sought, {std::cos(angle), std::sin(angle)}, distance);
      if (!room.free(place)) continue;
      const std::optional<double> cost = cost_of(room, sought, place, distance);
      if (!cost || *cost >= best_cost) continue;
      best = place;
      best_cost = *cost;
    }
  }
  return best ? best : anywhere(room, sought);
}

Vec2 leader_end(ink::Rect label, Vec2 tip) {
  const ink::Rect box = grown(label, 0.8);
  return {std::clamp(tip.x, box.low.x, box.high.x), std::clamp(tip.y, box.low.y, box.high.y)};
}

Vec2 label_size(const Kit& kit, const LabelText& text) {
  double width = 0;
  for (std::size_t i = 0; i < text.lines.size(); ++i)
    width = std::max(
        width, kit.width(text.lines[i], text.height, i == 0 ? text.first : ink::Face::regular));
  const auto more = static_cast<double>(text.lines.size() - 1);
  return {width, text.height * (1 + 0.3 + line_pitch * more)};
}

void write_label(const LabelText& text, ink::Rect place, Vec2 tip, Items& items) {
  const bool right_of_tip = place.low.x > tip.x, left_of_tip = place.high.x < tip.x;
  const ink::Align align = right_of_tip  ? ink::Align::left
                           : left_of_tip ? ink::Align::right
                                         : ink::Align::centre;
  const double x = right_of_tip ? place.low.x : left_of_tip ? place.high.x : middle(place).x;
  double base = place.high.y - text.height;
  for (std::size_t i = 0; i < text.lines.size(); ++i, base -= line_pitch * text.height)
    items.emplace_back(ink::Text{
        {x, base}, text.lines[i], text.height, 0, align, i == 0 ? text.first : ink::Face::regular});
}

}  // namespace splay::drafting
