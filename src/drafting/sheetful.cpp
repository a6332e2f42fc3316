#include "drafting/sheetful.h"

#include <algorithm>
#include <numeric>
#include <optional>

namespace splay::drafting {

namespace {

constexpr double slack = 1e-6;  // mm

// Rectangles from the top left corner of an area, x to the right and y down.
class Sheetful {
 public:
  Sheetful(Vec2 area, Vec2 gap) : area_(area), gap_(gap) {}

  bool empty() const { return taken_.empty(); }

  // The highest free place, then the one furthest left, or the other way round; corners of what
  // stands there already are all that need be tried.
  std::optional<Vec2> place(Vec2 size, bool rows) const {
    std::vector<double> xs{0}, ys{0};
    for (const ink::Rect& r : taken_) {
      xs.push_back(r.high.x + gap_.x);
      ys.push_back(r.high.y + gap_.y);
    }
    std::ranges::sort(xs);
    std::ranges::sort(ys);
    for (const double first : rows ? ys : xs)
      for (const double second : rows ? xs : ys) {
        const Vec2 at = rows ? Vec2{second, first} : Vec2{first, second};
        if (free({at, at + size})) return at;
      }
    return std::nullopt;
  }
  void take(Vec2 at, Vec2 size) {
    const bool larger = size.x > area_.x + slack || size.y > area_.y + slack;
    taken_.push_back(larger ? ink::Rect{{0, 0}, area_} : ink::Rect{at, at + size});
  }

 private:
  bool free(ink::Rect r) const {
    if (r.high.x > area_.x + slack || r.high.y > area_.y + slack) return false;
    return std::ranges::none_of(taken_, [&](const ink::Rect& other) {
      return r.low.x < other.high.x + gap_.x - slack && other.low.x < r.high.x + gap_.x - slack &&
             r.low.y < other.high.y + gap_.y - slack && other.low.y < r.high.y + gap_.y - slack;
    });
  }

  Vec2 area_, gap_;
  std::vector<ink::Rect> taken_;
};

std::vector<Laid> lay(const std::vector<Vec2>& sizes, const std::vector<std::size_t>& order,
                      bool rows, Vec2 area, Vec2 gap) {
  std::vector<Sheetful> pages;
  std::vector<Laid> all(sizes.size());
  for (const std::size_t i : order) {
    std::optional<Vec2> at;
    std::size_t page = 0;
    for (; page < pages.size() && !at; ++page) at = pages[page].place(sizes[i], rows);
    if (at) {
      --page;
    } else {
      pages.emplace_back(area, gap);
      at = Vec2{};
    }
    pages[page].take(*at, sizes[i]);
    all[i] = {page, {at->x, -at->y}};
  }
  return all;
}

std::size_t pages_of(const std::vector<Laid>& all) {
  std::size_t count = 0;
  for (const Laid& laid : all) count = std::max(count, laid.page + 1);
  return count;
}

// The page with the first of those given is the first.
void number(std::vector<Laid>& all) {
  constexpr std::size_t none = static_cast<std::size_t>(-1);
  std::vector<std::size_t> numbers(pages_of(all), none);
  std::size_t next = 0;
  for (Laid& laid : all) {
    if (numbers[laid.page] == none) numbers[laid.page] = next++;
    laid.page = numbers[laid.page];
  }
}

}  // namespace

std::vector<Laid> lay_out(const std::vector<Vec2>& sizes, Vec2 area, Vec2 gap) {
  std::vector<std::size_t> order(sizes.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::vector<Laid> best = lay(sizes, order, true, area, gap);
  const auto better = [&] {
    for (const bool rows : {true, false}) {
      std::vector<Laid> other = lay(sizes, order, rows, area, gap);
      if (pages_of(other) < pages_of(best)) best = std::move(other);
    }
  };
  better();
  const auto largest_first = [&](auto measure) {
    std::ranges::stable_sort(order, std::greater<>{},
                             [&](std::size_t i) { return measure(sizes[i]); });
    better();
  };
  largest_first([](Vec2 size) { return size.y; });
  largest_first([](Vec2 size) { return size.x; });
  largest_first([](Vec2 size) { return size.x * size.y; });
  number(best);
  return best;
}

}  // namespace splay::drafting
