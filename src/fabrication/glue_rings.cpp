// Bands and tape round rings of corners: which joints make a ring, how long a band is, and how it
// is driven where the ring leans.
#include <algorithm>
#include <cmath>
#include <map>

#include "base/index.h"
#include "fabrication/glue_clamping.h"
#include "parts/part.h"

namespace splay::fabrication {

namespace {

// Common practice, no source.
constexpr double band_apart = 150, thin_wood = 13;  // mm

// The girth of what is seen along an axis: of the convex hull.
double girth(const parts::Assembly& all, const std::vector<int>& among, Vec3 axis) {
  const Vec3 right = square_to(axis);
  const Vec3 up = cross(axis, right);
  std::vector<Vec2> points;
  for (const int part : among)
    for (const Vec3& p : all.parts[index(part)].world.vertices())
      points.push_back({dot(p, right), dot(p, up)});
  const Polygon hull = convex_hull(std::move(points));
  double sum = 0;
  for (std::size_t i = 0; i < hull.size(); ++i) sum += norm(hull[(i + 1) % hull.size()] - hull[i]);
  return sum;
}

// By virtual work: the band's pull times how much its way round the ring grows along the axis. A
// side that leans by l moves out by tan l; a corner that turns by t lengthens the way by tan(t/2)
// times what its two sides move.
double band_slide(const parts::Assembly& all, const Ring& ring, const Clamping& band) {
  Vec3 centre;
  for (const int part : ring.parts)
    centre = centre + all.parts[index(part)].world.centroid() *
                          (1.0 / static_cast<double>(ring.parts.size()));
  // The face or edge that looks away from the ring's middle.
  const auto outwards = [&](int part) {
    const parts::Part& each = all.parts[index(part)];
    const Vec3 from = each.world.centroid() - centre;
    const Vec3 flat = from - band.axis * dot(from, band.axis);
    Vec3 best = each.place.ez;
    for (const Vec3 way : {each.place.ez, -each.place.ez, each.place.ey, -each.place.ey})
      if (dot(way, flat) > dot(best, flat)) best = way;
    return best;
  };
  double growth = 0;
  for (const int joint : ring.joints) {
    const std::vector<int>& between = all.joints[index(joint)].between;
    const Vec3 a = outwards(between[0]), b = outwards(between[1]);
    const Vec3 flat_a = a - band.axis * dot(a, band.axis),
               flat_b = b - band.axis * dot(b, band.axis);
    const double lean = dot(a, band.axis) / norm(flat_a) + dot(b, band.axis) / norm(flat_b);
    growth += std::tan(angle_between(flat_a, flat_b) / 2) * lean;
  }
  return std::abs(growth) * band.each;
}

}  // namespace

// What stays when corner joints with a free end are left out again and again, in connected pieces
// in which every part has two.
std::vector<Ring> rings_of(const parts::Assembly& all, const std::vector<JointWork>& work,
                           const std::vector<int>& joints) {
  std::vector<int> left;
  for (const int joint : joints)
    if (work[index(joint)].corner) left.push_back(joint);
  std::map<int, int> degree;
  const auto each_part = [&](int joint, auto visit) {
    for (const int part : all.joints[index(joint)].between) visit(part);
  };
  for (bool changed = true; changed;) {
    degree.clear();
    for (const int joint : left) each_part(joint, [&](int part) { ++degree[part]; });
    const std::size_t before = left.size();
    std::erase_if(left, [&](int joint) {
      bool end = false;
      each_part(joint, [&](int part) { end = end || degree[part] != 2; });
      return end;
    });
    changed = left.size() != before;
  }
  std::vector<Ring> found;
  while (!left.empty()) {
    Ring ring;
    std::vector<int> reached{all.joints[index(left.front())].between.front()};
    for (std::size_t i = 0; i < reached.size(); ++i) {
      ring.parts.push_back(reached[i]);
      std::erase_if(left, [&](int joint) {
        const std::vector<int>& between = all.joints[index(joint)].between;
        if (std::ranges::find(between, reached[i]) == between.end()) return false;
        ring.joints.push_back(joint);
        for (const int part : between)
          if (std::ranges::find(reached, part) == reached.end()) reached.push_back(part);
        return true;
      });
    }
    if (ring.parts.size() >= 3) found.push_back(std::move(ring));
  }
  return found;
}

std::optional<Clamping> clamp_round(const parts::Assembly& all, const std::vector<JointWork>& work,
                                    const Ring& ring, Rack& rack) {
  Vec3 axis;
  double length = 0, thick = 1e300;
  const Vec3 first = work[index(ring.joints.front())].pressed;
  for (const int joint : ring.joints) {
    const Vec3 turned = cross(first, work[index(joint)].pressed);
    if (norm(turned) > norm(axis)) axis = turned;
    length = std::max(length, work[index(joint)].length);
  }
  for (const int part : ring.parts) thick = std::min(thick, all.parts[index(part)].size.z);
  if (norm(axis) < 1e-6) return std::nullopt;
  Clamping band;
  band.how = ClampWay::band;
  band.joints = ring.joints;
  band.axis = unit(axis);
  band.reach = girth(all, ring.parts, band.axis);
  if (thick <= thin_wood || (!rack.has_band(band.reach) && thick <= 2 * thin_wood)) {
    band.how = ClampWay::tape;
    band.count = static_cast<int>(std::ceil(length / tape_apart)) + 1;
  } else if (rack.has_band(band.reach)) {
    rack.choose(band, 0, std::max(1, static_cast<int>(std::ceil(length / band_apart - 1e-9))));
    band.force = band.each * band.count;
    band.head_slide = band_slide(all, ring, band);
    if (band.head_slide < no_slide * band.each) band.head_slide = 0;
  } else {
    return std::nullopt;  // rows of clamps with cauls
  }
  return band;
}

}  // namespace splay::fabrication
