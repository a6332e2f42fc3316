#include "sheets/part_view_arrange.h"

#include <algorithm>
#include <numeric>

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
  std::vector<Step> steps{{place.x, right, place.y + height}};
  for (const Step& step : steps_) {
    if (step.from < place.x - slack)
      steps.push_back({step.from, std::min(step.to, place.x), step.depth});
    if (step.to > right + slack) steps.push_back({std::max(step.from, right), step.to, step.depth});
  }
  std::ranges::sort(steps, {}, &Step::from);
  steps_ = std::move(steps);
}

double Skyline::depth() const {
  double depth = 0;
  for (const Step& step : steps_) depth = std::max(depth, step.depth);
  return depth;
}

namespace {

using Order = std::vector<std::size_t>;

struct Arrangement {
  std::vector<Vec2> places;  // by picture
  double height = 0;
};

std::optional<Arrangement> arrange(const std::vector<drafting::Picture>& pictures,
                                   const Order& order, double width, double gap) {
  Skyline skyline(width + gap);
  Arrangement result{std::vector<Vec2>(pictures.size()), 0};
  for (const std::size_t i : order) {
    const drafting::Picture& picture = pictures[i];
    const std::optional<Vec2> place = skyline.place_for(picture.width + gap);
    if (!place) return std::nullopt;
    skyline.fill(*place, picture.width + gap, picture.height + gap);
    result.places[i] = *place;
    result.height = std::max(result.height, place->y + picture.height);
  }
  return result;
}

// As given, highest first, widest first, lowest first; all after the first picture.
std::vector<Order> orders(const std::vector<drafting::Picture>& pictures) {
  Order given(pictures.size());
  std::iota(given.begin(), given.end(), std::size_t{0});
  std::vector<Order> all(4, given);
  const auto rest = [](Order& order) { return std::ranges::subrange(order.begin() + 1, order.end()); };
  if (given.size() < 2) return {given};
  std::ranges::stable_sort(rest(all[1]), std::ranges::greater{},
                           [&](std::size_t i) { return pictures[i].height; });
  std::ranges::stable_sort(rest(all[2]), std::ranges::greater{},
                           [&](std::size_t i) { return pictures[i].width; });
  std::ranges::stable_sort(rest(all[3]), std::ranges::less{},
                           [&](std::size_t i) { return pictures[i].height; });
  return all;
}

}  // namespace

std::optional<drafting::Picture> arranged(std::vector<drafting::Picture> pictures, double width,
                                          double gap) {
  std::optional<Arrangement> best;
  for (const Order& order : orders(pictures)) {
    std::optional<Arrangement> one = arrange(pictures, order, width, gap);
    if (one && (!best || one->height < best->height - slack)) best = std::move(one);
  }
  if (!best) return std::nullopt;
  drafting::Picture whole{{}, width, best->height};
  for (std::size_t i = 0; i < pictures.size(); ++i) {
    const Vec2 place = best->places[i];
    drafting::append(whole.items, drafting::moved(std::move(pictures[i].items), {place.x, -place.y}));
  }
  return whole;
}

}  // namespace splay::sheets
