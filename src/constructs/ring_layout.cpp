#include "constructs/ring_layout.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace splay::constructs {

namespace {

Line2 line_at(Vec2 point, Vec2 normal) { return {normal, dot(normal, point)}; }

}  // namespace

std::optional<Ring> lay_ring(const Polygon& outer, const std::vector<double>& breadths) {
  const std::optional<Polygon> inner = offset_edges(outer, breadths);
  if (!inner) return std::nullopt;
  Ring ring{{}, outer, *inner};
  const std::size_t n = outer.size();
  for (std::size_t i = 0; i < n; ++i) {
    const std::size_t next = (i + 1) % n, after = (i + 2) % n;
    RingMember m;
    m.outer_1 = outer[i];
    m.outer_2 = outer[next];
    m.inner_1 = (*inner)[i];
    m.inner_2 = (*inner)[next];
    m.direction = unit(m.outer_2 - m.outer_1);
    m.out = -left_of(m.direction);
    m.outside = line_at(m.outer_1, m.out);
    m.inside = line_at(m.inner_1, -m.out);
    // A butted end reaches at most to the neighbour's outside line, carried to the inside face.
    const double along[] = {0, dot(m.direction, m.outer_2 - m.outer_1),
                            dot(m.direction, m.inner_1 - m.outer_1),
                            dot(m.direction, m.inner_2 - m.outer_1)};
    const double room = 2 * breadths[i] + *std::max_element(breadths.begin(), breadths.end());
    m.from = *std::min_element(std::begin(along), std::end(along)) - room;
    m.to = *std::max_element(std::begin(along), std::end(along)) + room;
    const Vec2 onward = unit(outer[after] - outer[next]);
    m.corner_angle =
        std::numbers::pi - std::atan2(cross(m.direction, onward), dot(m.direction, onward));
    ring.members.push_back(m);
  }
  return ring;
}

Line2 mitre_line(const Ring& ring, std::size_t corner) {
  const std::size_t n = ring.members.size();
  const RingMember& before = ring.members[(corner + n - 1) % n];
  const Vec2 out = ring.outer[corner], in = ring.inner[corner];
  Vec2 normal = unit(left_of(in - out));
  if (dot(normal, before.direction) < 0) normal = -normal;
  return line_at(out, normal);
}

}  // namespace splay::constructs
