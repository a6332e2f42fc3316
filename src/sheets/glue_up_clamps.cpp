#include "sheets/glue_up_clamps.h"

#include <algorithm>
#include <cmath>

#include "base/index.h"

namespace splay::sheets {

namespace {

using fabrication::Clamping;
using fabrication::ClampWay;

// A block in front of a clamp's head and the wedge between it and the work.
struct Head {
  Solid block, wedge;
};

Head head_at(Vec3 at_face, Vec3 outwards, Vec3 face_normal, double size) {
  const Vec3 side = square_to(outwards);
  const Vec3 up = cross(outwards, side);
  const double half = size / 2;
  const double lean =
      norm(cross(outwards, face_normal)) / std::max(0.1, dot(outwards, face_normal));
  const Vec3 seat = at_face + outwards * (half * lean * 1.5);
  const auto sides = [&](Region& region) {
    for (const Vec3 way : {side, -side, up, -up})
      region.push_back(Plane::through(at_face + way * half, way));
  };
  Region block{Plane::through(seat, -outwards), Plane::through(seat + outwards * half, outwards)};
  sides(block);
  Head head;
  head.block = Solid::convex(block);
  if (lean > 0.03) {
    Region wedge{Plane::through(at_face, -face_normal), Plane::through(seat, outwards)};
    sides(wedge);
    head.wedge = Solid::convex(wedge);
  }
  return head;
}

// The plane in which a line along `outwards` leaves the part, at a point on its surface.
Vec3 normal_at(const parts::Assembly& all, const std::vector<int>& among, Vec3 point,
               Vec3 outwards) {
  Vec3 best = outwards;
  double nearest = 0.1;  // mm
  for (const int part : among) {
    for (const Face& face : all.parts[index(part)].world.boundary().faces) {
      if (dot(face.plane.n, outwards) < 0.1) continue;
      const double off = std::abs(face.plane.distance(point));
      if (off >= nearest) continue;
      nearest = off;
      best = face.plane.n;
    }
  }
  return best;
}

// A box round a point: half its sizes along three directions that are square to each other.
Solid box_round(Vec3 middle, const std::array<Vec3, 3>& ways, const std::array<double, 3>& half) {
  Region region;
  for (std::size_t k = 0; k < ways.size(); ++k)
    for (const double sense : {-1.0, 1.0})
      region.push_back(Plane::through(middle + ways[k] * (sense * half[k]), ways[k] * sense));
  return Solid::convex(region);
}

// The outline round the outside of what a plane cuts of some parts, as corners in order.
std::vector<Vec3> round_outside(const parts::Assembly& all, const std::vector<int>& among,
                                const Plane& plane) {
  const Vec3 right = square_to(plane.n), up = cross(plane.n, right);
  std::vector<Vec2> points;
  for (const int part : among)
    for (const Face& face : all.parts[index(part)].world.section(plane))
      for (const std::vector<Vec3>& loop : face.loops)
        for (const Vec3 p : loop) points.push_back({dot(p, right), dot(p, up)});
  std::vector<Vec3> corners;
  constexpr double one = 1;  // mm: nearer ones are one corner
  for (const Vec2 p : convex_hull(std::move(points), 1e-6)) {
    const Vec3 world = right * p.x + up * p.y + plane.n * plane.d;
    if (corners.empty() || norm(world - corners.back()) > one) corners.push_back(world);
  }
  if (corners.size() > 1 && norm(corners.front() - corners.back()) < one) corners.pop_back();
  return corners;
}

class Shapes {
 public:
  Shapes(const parts::Assembly& all, const fabrication::GlueStage& stage)
      : all_(all), stage_(stage) {
    Box box;
    for (const int part : stage.parts)
      for (const Vec3& p : all.parts[index(part)].world.vertices()) box.add(p);
    size_ = norm(box.size());
  }

  ClampShapes make() {
    for (const Clamping& row : stage_.clampings) {
      shapes_.tags.emplace_back();
      if (row.how == ClampWay::clamps) heads(row);
      if (row.how == ClampWay::band) round(row, false);
      if (row.how == ClampWay::tape && row.reach > 0) round(row, true);
      if (row.how == ClampWay::tape && row.reach <= 0) over_strip(row);
    }
    return std::move(shapes_);
  }

 private:
  void add(Solid solid) {
    if (!shapes_.tags.back()) shapes_.tags.back() = solid.centroid();
    shapes_.solids.push_back(std::move(solid));
  }

  void heads(const Clamping& row) {
    const double block = std::clamp(size_ * 0.035, 12.0, 50.0);
    for (const auto& ends : row.heads)
      for (const std::size_t end : {std::size_t{1}, std::size_t{0}}) {
        const Vec3 outwards = end == 0 ? -row.axis : row.axis;
        Head head =
            head_at(ends[end], outwards, normal_at(all_, stage_.parts, ends[end], outwards), block);
        add(std::move(head.block));
        if (!head.wedge.empty()) add(std::move(head.wedge));
      }
  }

  // Along every side of the ring, or across its corners only.
  void round(const Clamping& row, bool corners_only) {
    std::vector<int> parts;
    for (const int joint : row.joints)
      for (const int part : all_.joints[index(joint)].between)
        if (std::ranges::find(parts, part) == parts.end()) parts.push_back(part);
    double low = 1e300, high = -1e300;
    for (const int part : parts) {
      const auto reach = all_.parts[index(part)].world.extent(row.axis);
      low = std::min(low, reach[0]);
      high = std::max(high, reach[1]);
    }
    const double half = std::min(std::max(6.0, size_ * 0.012), (high - low) / (2.5 * row.count));
    for (int i = 0; i < row.count; ++i) {
      const double level = low + (high - low) * (i + 0.5) / row.count;
      const std::vector<Vec3> corners = round_outside(all_, parts, {row.axis, level});
      for (std::size_t k = 0; k < corners.size(); ++k)
        side(corners[k], corners[(k + 1) % corners.size()], row.axis, half, corners_only);
    }
  }

  void side(Vec3 from, Vec3 to, Vec3 axis, double half, bool corners_only) {
    const double thick = std::max(1.5, size_ * 0.003), run = norm(to - from);
    const Vec3 along = unit(to - from), out = cross(along, axis);
    const double piece = corners_only ? std::min(run / 3, 5 * half) : run;
    const std::array<Vec3, 3> ways{along, out, axis};
    const std::array<double, 3> halves{piece / 2, thick / 2, half};
    add(box_round(from + along * (piece / 2) + out * (thick / 2), ways, halves));
    if (corners_only) add(box_round(to - along * (piece / 2) + out * (thick / 2), ways, halves));
  }

  // Across a thin strip on an edge, along its length.
  void over_strip(const Clamping& row) {
    const std::vector<int>& between = all_.joints[index(row.joints.front())].between;
    const auto depth = [&](int part) {
      const auto reach = all_.parts[index(part)].world.extent(row.axis);
      return reach[1] - reach[0];
    };
    const int thin = *std::ranges::min_element(between, {}, depth);
    const int host = *std::ranges::max_element(between, {}, depth);
    const parts::Part& strip = all_.parts[index(thin)];
    const Vec3 middle = strip.world.centroid();
    const Vec3 out =
        dot(middle - all_.parts[index(host)].world.centroid(), row.axis) < 0 ? -row.axis : row.axis;
    const Vec3 along = unit(strip.place.ex - out * dot(strip.place.ex, out));
    const Vec3 across = cross(out, along);
    const auto wide = strip.world.extent(across), deep = strip.world.extent(out);
    const double thick = std::max(1.5, size_ * 0.003), half = std::max(6.0, size_ * 0.01);
    for (int i = 0; i < row.count; ++i) {
      const double share = (i + 0.5) / row.count - 0.5;
      const Vec3 place =
          middle + along * (share * strip.size.x) + out * (deep[1] + thick / 2 - dot(middle, out));
      add(box_round(place, {along, across, out}, {half, (wide[1] - wide[0]) / 2, thick / 2}));
    }
  }

  const parts::Assembly& all_;
  const fabrication::GlueStage& stage_;
  double size_ = 0;
  ClampShapes shapes_;
};

}  // namespace

ClampShapes clamp_shapes(const parts::Assembly& all, const fabrication::GlueStage& stage) {
  return Shapes(all, stage).make();
}

}  // namespace splay::sheets
