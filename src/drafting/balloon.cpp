#include <algorithm>
#include <cmath>
#include <numeric>

#include "drafting/callout.h"
#include "drafting/dimension.h"

namespace splay::drafting {

namespace {

constexpr double pad = 1.3, apart = 1.6;  // round the mark; between balloons
constexpr double off_view = 6;            // from the view to the nearest balloon

double text_height(const Kit& kit, const Callout& callout) {
  return callout.height > 0 ? callout.height : kit.look.figures;
}

Vec2 size_of(const Kit& kit, const Callout& callout) {
  const double h = text_height(kit, callout);
  const double high = h + 2 * pad;
  return {std::max(high, kit.width(callout.lines.front(), h, ink::Face::bold) + 2 * pad + 0.6),
          high};
}

// A frame with round ends.
ink::Path frame_path(ink::Rect box) {
  constexpr double half_turn = 3.141592653589793;
  const double r = box.height() / 2, y = middle(box).y;
  ink::Path path;
  path.arc({box.low.x + r, y}, r, half_turn / 2, half_turn);
  path.arc({box.high.x - r, y}, r, -half_turn / 2, half_turn);
  path.close();
  return path;
}

// How many stand in a column.
std::size_t column_room(const Kit& kit, ink::Rect area, std::span<const Callout> callouts) {
  double tallest = 1;
  for (const Callout& callout : callouts)
    tallest = std::max(tallest, size_of(kit, callout).y + apart);
  return static_cast<std::size_t>(area.height() / tallest);
}

// One side of the view. Indices into the callouts, top down, and where their balloons stand.
struct Side {
  std::vector<std::size_t> order;
  std::vector<double> y;  // of order[i]
  double x = 0;           // of the inner end of every balloon
  bool left = false;
};

// Two leaders that cross change places; every change makes the sum of their lengths smaller.
void uncross(std::span<const Callout> callouts, Side& side) {
  const auto crossed = [&](std::size_t i, std::size_t j) {
    return crossing({side.x, side.y[i]}, callouts[side.order[i]].tip, {side.x, side.y[j]},
                    callouts[side.order[j]].tip);
  };
  for (std::size_t rounds = side.order.size() * side.order.size(); rounds > 0; --rounds) {
    bool changed = false;
    for (std::size_t i = 0; i < side.order.size(); ++i) {
      for (std::size_t j = i + 1; j < side.order.size(); ++j) {
        if (!crossed(i, j)) continue;
        std::swap(side.order[i], side.order[j]);
        changed = true;
      }
    }
    if (!changed) return;
  }
}

void settle(const Kit& kit, std::span<const Callout> callouts, ink::Rect area, Side& side) {
  std::ranges::stable_sort(side.order, [&](std::size_t a, std::size_t b) {
    return callouts[a].tip.y > callouts[b].tip.y;
  });
  std::vector<double> wanted, heights;
  for (const std::size_t i : side.order) {
    wanted.push_back(-callouts[i].tip.y);
    heights.push_back(size_of(kit, callouts[i]).y + apart);
  }
  side.y = spread(wanted, heights, -area.high.y, -area.low.y);
  for (double& y : side.y) y = -y;
  uncross(callouts, side);
}

void draw_side(const Kit& kit, std::span<const Callout> callouts, const Side& side,
               std::vector<ink::Group>& groups) {
  for (std::size_t i = 0; i < side.order.size(); ++i) {
    const Callout& callout = callouts[side.order[i]];
    const double half = size_of(kit, callout).x / 2;
    const Vec2 inner{side.x, side.y[i]};
    ink::Group group = balloon(kit, inner + Vec2{side.left ? -half : half, 0}, callout);
    append(group.items, leader(kit, inner, callout.tip, true).items);
    groups.push_back(std::move(group));
  }
}

}  // namespace

ink::Group balloon(const Kit& kit, Vec2 at, const Callout& callout) {
  const Vec2 size = size_of(kit, callout);
  const double h = text_height(kit, callout);
  const ink::Rect box{at - size * 0.5, at + size * 0.5};
  ink::Group group{"balloon", {}};
  group.items.emplace_back(ink::Fill{frame_path(box), 1.0});
  group.items.emplace_back(ink::Stroke{frame_path(box), {kit.look.middle}});
  group.items.emplace_back(ink::Text{at - Vec2{0, h / 2}, callout.lines.front(), h, 0,
                                     ink::Align::centre, ink::Face::bold});
  if (!callout.link.empty()) group.items.emplace_back(ink::Link{box, callout.link});
  if (!callout.mark.empty()) group.items.emplace_back(ink::PartClaim{callout.mark, callout.claim});
  return group;
}

std::size_t balloons_in(const Kit& kit, ink::Rect area, std::span<const Callout> callouts) {
  return 2 * column_room(kit, area, callouts);
}

double balloon_column_width(const Kit& kit, std::span<const Callout> callouts) {
  double width = 0;
  for (const Callout& callout : callouts) width = std::max(width, size_of(kit, callout).x);
  return width + off_view;
}

std::vector<ink::Group> place_balloons(const Kit& kit, ink::Rect view, ink::Rect area,
                                       std::span<const Callout> callouts) {
  std::vector<std::size_t> by_x(callouts.size());
  std::iota(by_x.begin(), by_x.end(), std::size_t{0});
  std::ranges::stable_sort(by_x, {}, [&](std::size_t i) { return callouts[i].tip.x; });
  // Each to the side it is nearer to, as long as both columns have room.
  const std::size_t room = column_room(kit, area, callouts);
  const auto nearer_left = static_cast<std::size_t>(
      std::ranges::count_if(callouts, [&](const Callout& c) { return c.tip.x < middle(view).x; }));
  const std::size_t least = callouts.size() > room ? callouts.size() - room : 0;
  const std::size_t count = std::clamp(nearer_left, std::min(least, room), std::max(least, room));
  Side left{{}, {}, view.low.x - off_view, true}, right{{}, {}, view.high.x + off_view, false};
  for (std::size_t k = 0; k < by_x.size(); ++k) (k < count ? left : right).order.push_back(by_x[k]);
  std::vector<ink::Group> groups;
  for (Side* side : {&left, &right}) {
    settle(kit, callouts, area, *side);
    draw_side(kit, callouts, *side, groups);
  }
  return groups;
}

}  // namespace splay::drafting
