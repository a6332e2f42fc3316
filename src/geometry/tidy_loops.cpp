#include "geometry/tidy_loops.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <utility>

namespace splay {
namespace {

Polygon without_specks(Polygon loop, double speck) {
  for (std::size_t i = 0; i < loop.size() && loop.size() > 2;) {
    const std::size_t n = loop.size();
    const Vec2 before = loop[(i + n - 1) % n], here = loop[i], after = loop[(i + 1) % n];
    const Vec2 base = after - before;
    const double height = norm(base) > speck ? std::abs(cross(unit(base), here - before)) : 0;
    if (norm(here - before) > speck && height > speck) {
      ++i;
      continue;
    }
    loop.erase(loop.begin() + static_cast<std::ptrdiff_t>(i));
    i = i > 1 ? i - 2 : 0;
  }
  return loop;
}

// Two corners, the first before the second, that lie within `speck` of one another but not next to
// one another; a corner is put in where another one touches an edge.
std::optional<std::pair<std::size_t, std::size_t>> touching_corners(Polygon& loop, double speck) {
  for (std::size_t i = 0; i < loop.size(); ++i) {
    for (std::size_t j = 0; j < loop.size(); ++j) {
      const std::size_t n = loop.size(), next = (j + 1) % n;
      if (i == j || i == next) continue;
      const Vec2 along = loop[next] - loop[j], here = loop[i] - loop[j];
      const double length = norm(along);
      if (length == 0) continue;
      const double t = dot(here, along) / length;
      const auto apart = [&](std::size_t k) { return (k + 1) % n != i && (i + 1) % n != k; };
      if (norm(here) <= speck && apart(j)) return std::minmax(i, j);
      if (t <= speck || t >= length - speck) continue;
      if (std::abs(cross(along, here)) > speck * length) continue;
      loop.insert(loop.begin() + static_cast<std::ptrdiff_t>(j + 1), loop[i]);
      return std::minmax(i > j ? i + 1 : i, j + 1);
    }
  }
  return std::nullopt;
}

}  // namespace

std::vector<Polygon> parted_at_touches(Polygon loop, double speck) {
  std::vector<Polygon> waiting = {std::move(loop)}, result;
  while (!waiting.empty()) {
    Polygon part = without_specks(std::move(waiting.back()), speck);
    waiting.pop_back();
    if (part.size() < 3) continue;
    const auto touch = touching_corners(part, speck);
    if (!touch) {
      result.push_back(std::move(part));
      continue;
    }
    const auto first = part.begin() + static_cast<std::ptrdiff_t>(touch->first);
    const auto second = part.begin() + static_cast<std::ptrdiff_t>(touch->second);
    Polygon rest(part.begin(), first);
    rest.insert(rest.end(), second, part.end());
    waiting.push_back(std::move(rest));
    waiting.push_back({first, second});
  }
  return result;
}

}  // namespace splay
