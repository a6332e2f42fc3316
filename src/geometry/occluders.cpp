#include "geometry/occluders.h"

#include <algorithm>
#include <cmath>

#include "base/index.h"
#include "base/tolerance.h"

namespace splay {
namespace {}  // namespace

Occluders::Occluders(std::span<const Solid> solids, const View& view) {
  for (std::size_t s = 0; s < solids.size(); ++s) {
    for (std::size_t c = 0; c < solids[s].cells().size(); ++c)
      add_cell(solids[s], static_cast<std::int32_t>(s), static_cast<std::int32_t>(c), view);
  }
  std::stable_sort(list_.begin(), list_.end(),
                   [](const Occluder& o, const Occluder& p) { return o.near > p.near; });
  fill_buckets();
}

void Occluders::add_cell(const Solid& solid, std::int32_t number, std::int32_t cell,
                         const View& view) {
  Occluder occluder;
  occluder.solid = number;
  occluder.cell = cell;
  occluder.first_bound = static_cast<std::int32_t>(bounds_.size());
  occluder.near = -1e300;
  std::vector<Vec2> image;
  for (const CellFace& face : solid.cells()[index(cell)].faces) {
    const Plane& plane = solid.planes()[index(face.plane)];
    const Vec3 n = plane.n * face.side;
    const double towards = dot(n, view.toward);
    for (const std::int32_t v : face.loop) {
      const Vec3 p = solid.vertices()[index(v)];
      image.push_back(view.project(p));
      occluder.near = std::max(occluder.near, dot(p, view.toward));
    }
    if (towards <= edge_on) continue;
    // Square to the face, a point must lie deeper than the sideways offset of the test lines can
    // carry it into the face it belongs to.
    bounds_.push_back({dot(n, view.right), dot(n, view.up), towards,
                       plane.d * face.side - 2 * tolerance::hidden_side});
  }
  const std::vector<Vec2> hull = convex_hull(std::move(image));
  if (hull.size() < 3) {
    bounds_.resize(index(occluder.first_bound));
    return;
  }
  occluder.low = occluder.high = hull[0];
  for (std::size_t i = 0; i < hull.size(); ++i) {
    const Vec2 p = hull[i], out = -left_of(unit(hull[(i + 1) % hull.size()] - p));
    bounds_.push_back({out.x, out.y, 0, dot(out, p)});
    occluder.low = {std::min(occluder.low.x, p.x), std::min(occluder.low.y, p.y)};
    occluder.high = {std::max(occluder.high.x, p.x), std::max(occluder.high.y, p.y)};
  }
  occluder.end_bound = static_cast<std::int32_t>(bounds_.size());
  list_.push_back(occluder);
}

std::int32_t Occluders::column(double x) const {
  const double c = std::floor((x - origin_.x) / pitch_x_);
  return static_cast<std::int32_t>(std::clamp(c, 0.0, static_cast<double>(columns_ - 1)));
}

std::int32_t Occluders::row(double y) const {
  const double r = std::floor((y - origin_.y) / pitch_y_);
  return static_cast<std::int32_t>(std::clamp(r, 0.0, static_cast<double>(rows_ - 1)));
}

void Occluders::fill_buckets() {
  first_in_bucket_.assign(2, 0);
  if (list_.empty()) return;
  Vec2 low = list_[0].low, high = list_[0].high;
  for (const Occluder& o : list_) {
    low = {std::min(low.x, o.low.x), std::min(low.y, o.low.y)};
    high = {std::max(high.x, o.high.x), std::max(high.y, o.high.y)};
  }
  const double across = std::sqrt(static_cast<double>(list_.size()));
  columns_ = rows_ = static_cast<std::int32_t>(std::clamp(across, 1.0, 256.0));
  origin_ = low;
  pitch_x_ = std::max((high.x - low.x) / columns_, 1e-3);
  pitch_y_ = std::max((high.y - low.y) / rows_, 1e-3);
  const auto for_each_bucket = [&](const Occluder& o, auto visit) {
    constexpr double margin = 4 * tolerance::hidden_side;
    const std::int32_t c_end = column(o.high.x + margin), r_end = row(o.high.y + margin);
    for (std::int32_t r = row(o.low.y - margin); r <= r_end; ++r) {
      for (std::int32_t c = column(o.low.x - margin); c <= c_end; ++c)
        visit(index(r * columns_ + c));
    }
  };
  std::vector<std::int32_t>& first = first_in_bucket_;
  first.assign(index(rows_ * columns_) + 1, 0);
  for (const Occluder& o : list_) for_each_bucket(o, [&](std::size_t b) { ++first[b + 1]; });
  for (std::size_t b = 1; b < first.size(); ++b) first[b] += first[b - 1];
  in_buckets_.resize(index(first.back()));
  std::vector<std::int32_t> next(first.begin(), first.end() - 1);
  for (std::size_t i = 0; i < list_.size(); ++i) {
    constexpr double margin = 4 * tolerance::hidden_side;
    list_[i].first_column = column(list_[i].low.x - margin);
    list_[i].first_row = row(list_[i].low.y - margin);
    for_each_bucket(list_[i], [&](std::size_t b) {
      in_buckets_[index(next[b]++)] = static_cast<std::int32_t>(i);
    });
  }
}

void Occluders::stations(Vec2 a, Vec2 b, std::vector<double>& result) const {
  result.assign({0.0, 1.0});
  const Vec2 along = b - a;
  const auto add = [&](double start, double rate, std::int32_t from, std::int32_t to, double origin,
                       double pitch) {
    for (std::int32_t k = std::min(from, to) + 1; k <= std::max(from, to); ++k) {
      const double t = (origin + k * pitch - start) / rate;
      if (t > 0 && t < 1) result.push_back(t);
    }
  };
  add(a.x, along.x, column(a.x), column(b.x), origin_.x, pitch_x_);
  add(a.y, along.y, row(a.y), row(b.y), origin_.y, pitch_y_);
  std::sort(result.begin(), result.end());
}

std::span<const std::int32_t> Occluders::about(Vec2 point) const {
  const auto bucket = index(row(point.y) * columns_ + column(point.x));
  return {in_buckets_.data() + first_in_bucket_[bucket],
          index(first_in_bucket_[bucket + 1] - first_in_bucket_[bucket])};
}

void Occluders::meeting(Vec2 low, Vec2 high, double depth,
                        std::vector<std::int32_t>& result) const {
  result.clear();
  for (std::int32_t r = row(low.y); r <= row(high.y); ++r) {
    for (std::int32_t c = column(low.x); c <= column(high.x); ++c) {
      const auto bucket = index(r * columns_ + c);
      for (std::int32_t k = first_in_bucket_[bucket]; k < first_in_bucket_[bucket + 1]; ++k) {
        const Occluder& o = (*this)[in_buckets_[index(k)]];
        if (o.near <= depth) break;
        if (!(o.low.x < high.x && low.x < o.high.x && o.low.y < high.y && low.y < o.high.y))
          continue;
        // In the first of the buckets that both are in.
        const bool first =
            r == std::max(row(low.y), o.first_row) && c == std::max(column(low.x), o.first_column);
        if (first) result.push_back(in_buckets_[index(k)]);
      }
    }
  }
  std::sort(result.begin(), result.end());
}

}  // namespace splay
