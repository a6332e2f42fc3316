// Making the loops of neighbouring cells meet vertex to vertex. Internal to src/geometry.
#pragma once

#include <array>
#include <cstdint>
#include <span>
#include <utility>
#include <vector>

#include "geometry/vec.h"

namespace splay {

// For each vertex the first one (by position) within the distance, often itself.
std::vector<std::int32_t> weld(std::span<const Vec3> vertices, double distance);

// Undirected edges cut at every vertex that lies within a distance of them.
class EdgeSplitter {
 public:
  // `used`: the vertices to consider, in any order, none twice.
  EdgeSplitter(std::span<const Vec3> vertices, const std::vector<std::int32_t>& used,
               double distance);

  void split(
      std::vector<std::pair<std::int32_t, std::int32_t>> edges);  // in any order, repeats allowed

  // The vertices strictly between a and b, from a to b, appended to `chain` after a.
  void append_chain(std::int32_t a, std::int32_t b, std::vector<std::int32_t>& chain) const;

 private:
  void find_on_edge(std::int32_t a, std::int32_t b);
  std::span<const std::int32_t> near(Vec3 low, Vec3 high) const;

  std::span<const Vec3> vertices_;
  double distance_;
  std::array<std::vector<std::int32_t>, 3> sorted_;  // by x, y, z
  std::vector<std::pair<std::int32_t, std::int32_t>> edges_;
  std::vector<std::int32_t> first_;  // of each edge in between_, and the end
  std::vector<std::int32_t> between_;
  std::vector<std::pair<double, std::int32_t>> found_;
};

}  // namespace splay
