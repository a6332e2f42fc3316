// Ear clipping, then the removal of needless diagonals: S. Hertel, K. Mehlhorn, "Fast triangulation
// of simple polygons", Foundations of Computation Theory, LNCS 158 (1983); at most four times the
// fewest pieces.
#include <algorithm>
#include <cmath>
#include <cstddef>
#include <stdexcept>

#include "base/tolerance.h"
#include "geometry/polygon.h"

namespace splay {
namespace {

using Loop = std::vector<std::size_t>;

// How far corner b stands out of the line from a to c; positive when the turn is to the left.
double corner_height(Vec2 a, Vec2 b, Vec2 c) {
  const double base = std::max(norm(b - a), norm(c - b));
  return base == 0 ? 0 : cross(b - a, c - b) / base;
}

// Is p in the triangle or no further than `beside` from it (negative: as far inside it)?
bool in_triangle(Vec2 p, Vec2 a, Vec2 b, Vec2 c, double beside) {
  const auto side = [&](Vec2 from, Vec2 to) { return cross(unit(to - from), p - from); };
  return side(a, b) >= -beside && side(b, c) >= -beside && side(c, a) >= -beside;
}

class EarClipper {
 public:
  explicit EarClipper(std::span<const Vec2> polygon) : polygon_(polygon) {
    for (std::size_t i = 0; i < polygon.size(); ++i) rest_.push_back(i);
  }

  std::vector<Loop> triangles() {
    std::vector<Loop> result;
    while (rest_.size() > 3) {
      // Where the polygon all but touches itself no corner may be clear of the others.
      std::size_t ear = best_ear(tolerance::weld);
      if (ear == rest_.size()) ear = best_ear(-tolerance::weld);
      if (ear == rest_.size()) {
        ear = flattest_corner();
      } else {
        result.push_back({rest_[before(ear)], rest_[ear], rest_[after(ear)]});
      }
      rest_.erase(rest_.begin() + static_cast<std::ptrdiff_t>(ear));
    }
    if (corner_height(at(0), at(1), at(2)) > 0) result.push_back(rest_);
    return result;
  }

 private:
  std::size_t before(std::size_t i) const { return (i + rest_.size() - 1) % rest_.size(); }
  std::size_t after(std::size_t i) const { return (i + 1) % rest_.size(); }
  Vec2 at(std::size_t i) const { return polygon_[rest_[i]]; }

  bool is_ear(std::size_t i, double beside) const {
    const std::size_t b = before(i), a = after(i);
    for (std::size_t k = 0; k < rest_.size(); ++k) {
      if (k == i || k == b || k == a) continue;
      if (in_triangle(at(k), at(b), at(i), at(a), beside)) return false;
    }
    return true;
  }

  // The roundest ear, so that the pieces are no thinner than they must be; rest_.size(): none.
  std::size_t best_ear(double beside) const {
    std::size_t best = rest_.size();
    double best_shape = 0;
    for (std::size_t i = 0; i < rest_.size(); ++i) {
      const Vec2 a = at(before(i)), b = at(i), c = at(after(i));
      if (corner_height(a, b, c) <= std::abs(beside)) continue;
      const double longest = std::max({norm(b - a), norm(c - b), norm(a - c)});
      const double shape = cross(b - a, c - b) / (longest * longest);
      if (shape > best_shape && is_ear(i, beside)) {
        best = i;
        best_shape = shape;
      }
    }
    return best;
  }

  // The corner that least stands out, to be left out: it must be all but straight.
  std::size_t flattest_corner() const {
    std::size_t best = 0;
    double least = 1e300;
    for (std::size_t i = 0; i < rest_.size(); ++i) {
      const double height = std::abs(corner_height(at(before(i)), at(i), at(after(i))));
      if (height < least) {
        best = i;
        least = height;
      }
    }
    if (least > 100 * tolerance::weld) {
      throw std::logic_error("convex_pieces: the polygon is not simple");
    }
    return best;
  }

  std::span<const Vec2> polygon_;
  Loop rest_;
};

bool is_convex(std::span<const Vec2> polygon, const Loop& loop) {
  const std::size_t n = loop.size();
  for (std::size_t i = 0; i < n; ++i) {
    const Vec2 a = polygon[loop[i]], b = polygon[loop[(i + 1) % n]], c = polygon[loop[(i + 2) % n]];
    if (corner_height(a, b, c) < -1e-9) return false;
  }
  return true;
}

// The two loops as one over a common edge, when they have one and the result is convex.
bool join(std::span<const Vec2> polygon, Loop& into, const Loop& other) {
  const std::size_t n = into.size(), m = other.size();
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t j = 0; j < m; ++j) {
      if (into[i] != other[(j + 1) % m] || into[(i + 1) % n] != other[j]) continue;
      Loop joined;
      for (std::size_t k = 0; k < n; ++k) joined.push_back(into[(i + 1 + k) % n]);
      for (std::size_t k = 2; k < m; ++k) joined.push_back(other[(j + k) % m]);
      if (!is_convex(polygon, joined)) return false;
      into = joined;
      return true;
    }
  }
  return false;
}

}  // namespace

std::vector<Polygon> convex_pieces(std::span<const Vec2> polygon) {
  if (polygon.size() < 3) return {};
  Loop all;
  for (std::size_t i = 0; i < polygon.size(); ++i) all.push_back(i);
  if (is_convex(polygon, all)) return {Polygon(polygon.begin(), polygon.end())};
  std::vector<Loop> pieces = EarClipper(polygon).triangles();
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    for (std::size_t j = i + 1; j < pieces.size();) {
      if (join(polygon, pieces[i], pieces[j])) {
        pieces.erase(pieces.begin() + static_cast<std::ptrdiff_t>(j));
        j = i + 1;
      } else {
        ++j;
      }
    }
  }
  std::vector<Polygon> result;
  for (const Loop& piece : pieces) {
    Polygon corners;
    for (const std::size_t index : piece) corners.push_back(polygon[index]);
    result.push_back(std::move(corners));
  }
  return result;
}

}  // namespace splay
