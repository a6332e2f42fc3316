// The cells of placed solids as what may hide a point in one view. Internal to src/geometry.
//
// In view coordinates a point is (x, y on paper, depth w towards the eye). A convex cell hides it
// when its image lies in the cell's silhouette and it lies behind all of the cell's front faces.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "geometry/hidden_lines.h"

namespace splay {

inline constexpr double edge_on = 1e-9;  // a face turned to the eye by less is seen edge-on

// The side a*x + b*y + c*w < d.
struct ViewBound {
  double a = 0, b = 0, c = 0, d = 0;
};

struct Occluder {
  std::int32_t first_bound = 0, end_bound = 0;
  Vec2 low, high;   // of the image
  double near = 0;  // greatest depth w
  std::int32_t solid = 0, cell = 0;
  std::int32_t first_column = 0, first_row = 0;  // of the buckets it is in
};

class Occluders {
 public:
  Occluders(std::span<const Solid> solids, const View& view);

  std::span<const ViewBound> bounds(const Occluder& occluder) const {
    return {bounds_.data() + occluder.first_bound,
            static_cast<std::size_t>(occluder.end_bound - occluder.first_bound)};
  }
  const Occluder& operator[](std::int32_t i) const { return list_[static_cast<std::size_t>(i)]; }

  // Parameters of a segment in the image, from 0 to 1, where it passes from bucket to bucket.
  void stations(Vec2 a, Vec2 b, std::vector<double>& result) const;
  // The occluders about a point of the image, nearest to the eye first.
  std::span<const std::int32_t> about(Vec2 point) const;
  // Those that reach nearer to the eye than a depth and whose image may meet a rectangle, nearest
  // first, each once.
  void meeting(Vec2 low, Vec2 high, double depth, std::vector<std::int32_t>& result) const;

 private:
  void add_cell(const Solid& solid, std::int32_t number, std::int32_t cell, const View& view);
  void fill_buckets();
  std::int32_t column(double x) const;
  std::int32_t row(double y) const;

  std::vector<Occluder> list_;  // nearest first
  std::vector<ViewBound> bounds_;
  Vec2 origin_;
  double pitch_x_ = 1, pitch_y_ = 1;
  std::int32_t columns_ = 1, rows_ = 1;
  std::vector<std::int32_t> first_in_bucket_, in_buckets_;
};

}  // namespace splay
