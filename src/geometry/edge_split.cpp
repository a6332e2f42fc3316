#include "geometry/edge_split.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "base/index.h"

namespace splay {
namespace {

double coordinate(Vec3 p, std::size_t axis) { return axis == 0 ? p.x : (axis == 1 ? p.y : p.z); }

}  // namespace

std::vector<std::int32_t> weld(std::span<const Vec3> vertices, double distance) {
  std::vector<std::int32_t> order(vertices.size()), same(vertices.size());
  std::iota(order.begin(), order.end(), 0);
  std::iota(same.begin(), same.end(), 0);
  std::sort(order.begin(), order.end(), [&](std::int32_t i, std::int32_t j) {
    const Vec3 &p = vertices[index(i)], &q = vertices[index(j)];
    return p.x != q.x ? p.x < q.x : i < j;
  });
  for (std::size_t i = 1; i < order.size(); ++i) {
    const Vec3 here = vertices[index(order[i])];
    for (std::size_t j = i; j-- > 0;) {
      const Vec3 there = vertices[index(order[j])];
      if (here.x - there.x > distance) break;
      if (same[index(order[j])] != order[j]) continue;
      const Vec3 apart = here - there;
      if (dot(apart, apart) <= distance * distance) {
        same[index(order[i])] = order[j];
        break;
      }
    }
  }
  return same;
}

EdgeSplitter::EdgeSplitter(std::span<const Vec3> vertices, const std::vector<std::int32_t>& used,
                           double distance)
    : vertices_(vertices), distance_(distance) {
  for (std::size_t axis = 0; axis < 3; ++axis) {
    sorted_[axis] = used;
    std::sort(sorted_[axis].begin(), sorted_[axis].end(), [&](std::int32_t i, std::int32_t j) {
      const double p = coordinate(vertices_[index(i)], axis);
      const double q = coordinate(vertices_[index(j)], axis);
      return p != q ? p < q : i < j;
    });
  }
}

// The vertices of the slab, across whichever axis holds the fewest.
std::span<const std::int32_t> EdgeSplitter::near(Vec3 low, Vec3 high) const {
  std::span<const std::int32_t> fewest = sorted_[0];
  for (std::size_t axis = 0; axis < 3; ++axis) {
    const auto& order = sorted_[axis];
    const double least = coordinate(low, axis) - distance_;
    const double most = coordinate(high, axis) + distance_;
    const auto from =
        std::lower_bound(order.begin(), order.end(), least, [&](std::int32_t v, double limit) {
          return coordinate(vertices_[index(v)], axis) < limit;
        });
    const auto to = std::upper_bound(from, order.end(), most, [&](double limit, std::int32_t v) {
      return limit < coordinate(vertices_[index(v)], axis);
    });
    if (static_cast<std::size_t>(to - from) <= fewest.size()) fewest = {from, to};
  }
  return fewest;
}

void EdgeSplitter::find_on_edge(std::int32_t a, std::int32_t b) {
  const Vec3 from = vertices_[index(a)], to = vertices_[index(b)];
  const Vec3 low{std::min(from.x, to.x), std::min(from.y, to.y), std::min(from.z, to.z)};
  const Vec3 high{std::max(from.x, to.x), std::max(from.y, to.y), std::max(from.z, to.z)};
  const Vec3 along = to - from;
  const double length_squared = dot(along, along);
  if (length_squared == 0) return;
  found_.clear();
  for (const std::int32_t v : near(low, high)) {
    if (v == a || v == b) continue;
    const Vec3 here = vertices_[index(v)] - from;
    const double t = dot(here, along) / length_squared;
    if (t <= 0 || t >= 1) continue;
    const Vec3 off = here - along * t;
    if (dot(off, off) <= distance_ * distance_) found_.emplace_back(t, v);
  }
  std::sort(found_.begin(), found_.end());
  for (const auto& [t, v] : found_) between_.push_back(v);
}

void EdgeSplitter::split(std::vector<std::pair<std::int32_t, std::int32_t>> edges) {
  for (auto& [a, b] : edges) {
    if (a > b) std::swap(a, b);
  }
  std::sort(edges.begin(), edges.end());
  edges.erase(std::unique(edges.begin(), edges.end()), edges.end());
  edges_ = std::move(edges);
  for (const auto& [a, b] : edges_) {
    first_.push_back(static_cast<std::int32_t>(between_.size()));
    find_on_edge(a, b);
  }
  first_.push_back(static_cast<std::int32_t>(between_.size()));
}

void EdgeSplitter::append_chain(std::int32_t a, std::int32_t b,
                                std::vector<std::int32_t>& chain) const {
  const std::pair<std::int32_t, std::int32_t> edge = std::minmax(a, b);
  const auto place = std::lower_bound(edges_.begin(), edges_.end(), edge) - edges_.begin();
  const auto i = static_cast<std::size_t>(place);
  const auto from = between_.begin() + first_[i], to = between_.begin() + first_[i + 1];
  if (a < b) {
    chain.insert(chain.end(), from, to);
  } else {
    chain.insert(chain.end(), std::make_reverse_iterator(to), std::make_reverse_iterator(from));
  }
}

}  // namespace splay
