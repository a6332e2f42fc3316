#include "sheets/part_view_arrange.h"

#include <algorithm>
#include <numeric>
#include <random>

namespace splay::sheets {

namespace {
constexpr double slack = 1e-6;
}

std::optional<Vec2> Skyline::place_for(double width) const {
  std::optional<Vec2> best;
  for (const Step& start : steps_) {
    const double right = start.from + width;
    if (right > steps_.back().to + slack) break;
    double depth = 0;
    for (const Step& step : steps_)
      if (step.to > start.from + slack && step.from < right - slack)
        depth = std::max(depth, step.depth);
    if (!best || depth < best->y - slack) best = Vec2{start.from, depth};
  }
  return best;
}

void Skyline::fill(Vec2 place, double width, double height) {
  const double right = std::min(place.x + width, steps_.back().to);
  std::vector<Step> steps;
  steps.reserve(steps_.size() + 2);
  for (const Step& step : steps_)
    if (step.from < place.x - slack)
      steps.push_back({step.from, std::min(step.to, place.x), step.depth});
  steps.push_back({place.x, right, place.y + height});
  for (const Step& step : steps_)
    if (step.to > right + slack) steps.push_back({std::max(step.from, right), step.to, step.depth});
  steps_ = std::move(steps);
}

double Skyline::depth() const {
  double depth = 0;
  for (const Step& step : steps_) depth = std::max(depth, step.depth);
  return depth;
}

namespace {

using Order = std::vector<std::size_t>;

// Nothing as soon as it gets higher than `highest`.
std::optional<Arrangement> arrange(const std::vector<Size>& sizes, const Order& order, double width,
                                   double gap, double highest) {
  Skyline skyline(width + gap);
  Arrangement result{std::vector<Vec2>(sizes.size()), 0};
  for (const std::size_t i : order) {
    const std::optional<Vec2> place = skyline.place_for(sizes[i].width + gap);
    if (!place) return std::nullopt;
    skyline.fill(*place, sizes[i].width + gap, sizes[i].height + gap);
    result.places[i] = *place;
    result.height = std::max(result.height, place->y + sizes[i].height);
    if (result.height > highest) return std::nullopt;
  }
  return result;
}

// As given, highest first, widest first, lowest first, and some shuffles (the same each time); the
// first stays first.
std::vector<Order> orders(const std::vector<Size>& sizes) {
  Order given(sizes.size());
  std::iota(given.begin(), given.end(), std::size_t{0});
  if (given.size() < 2) return {given};
  std::vector<Order> all(4, given);
  const auto sort_rest = [](Order& order, auto before) {
    std::stable_sort(order.begin() + 1, order.end(), before);
  };
  sort_rest(all[1],
            [&](std::size_t a, std::size_t b) { return sizes[a].height > sizes[b].height; });
  sort_rest(all[2], [&](std::size_t a, std::size_t b) { return sizes[a].width > sizes[b].width; });
  sort_rest(all[3],
            [&](std::size_t a, std::size_t b) { return sizes[a].height < sizes[b].height; });
  constexpr int shuffles = 40;
  std::minstd_rand random(1);
  for (int i = 0; i < shuffles && given.size() > 3; ++i) {
    Order order = all.back();
    for (std::size_t k = order.size() - 1; k > 1; --k) std::swap(order[k], order[1 + random() % k]);
    all.push_back(std::move(order));
  }
  return all;
}

}  // namespace

std::optional<Arrangement> arranged(const std::vector<Size>& sizes, double width, double gap,
                                    double highest) {
  double area = 0, tallest = 0;
  for (const Size& size : sizes) {
    area += (size.width + gap) * (size.height + gap);
    tallest = std::max(tallest, size.height);
  }
  // No order gets lower than this.
  const double least = std::max(tallest, area / (width + gap) - gap);
  if (least > highest + slack) return std::nullopt;
  std::optional<Arrangement> best;
  for (const Order& order : orders(sizes)) {
    std::optional<Arrangement> one =
        arrange(sizes, order, width, gap, best ? best->height : highest);
    if (one && (!best || one->height < best->height - slack)) best = std::move(one);
    if (best && best->height < least + slack) break;
  }
  return best;
}

}  // namespace splay::sheets
