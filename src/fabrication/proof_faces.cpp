#include "fabrication/proof_faces.h"

#include <algorithm>
#include <cmath>

namespace splay::fabrication {

namespace {

constexpr double on_it = 1e-5;            // mm: corners nearer than this lie on a swept plane
constexpr double nearly_parallel = 1e-6;  // radians, a first sieve only

}  // namespace

DesignedFaces::DesignedFaces(const Solid& body) {
  for (const Face& face : body.boundary().faces) {
    Corners corners{face.plane, {}};
    for (const std::vector<Vec3>& loop : face.loops)
      corners.points.insert(corners.points.end(), loop.begin(), loop.end());
    faces_.push_back(std::move(corners));
  }
}

bool DesignedFaces::Corners::on(const Plane& wanted, Vec3 low) const {
  return norm(cross(plane.n, wanted.n)) < nearly_parallel &&
         std::all_of(points.begin(), points.end(),
                     [&](Vec3 p) { return std::abs(wanted.distance(p + low)) < on_it; });
}

double DesignedFaces::blank_off(const std::vector<Region>& steps, Vec3 exact, Vec3 made) const {
  double most = 0;
  for (const Corners& face : faces_) {
    const bool swept = std::any_of(steps.begin(), steps.end(), [&](const Region& region) {
      return std::any_of(region.begin(), region.end(),
                         [&](const Plane& plane) { return face.on(plane, exact); });
    });
    if (!swept) most = std::max(most, std::abs(dot(face.plane.n, made - exact)));
  }
  return most;
}

double DesignedFaces::off(const Sweep& exact, const Sweep& made) const {
  double most = 0;
  for (std::size_t i = 0; i < std::min(exact.region.size(), made.region.size()); ++i) {
    const Plane& wanted = exact.region[i];
    for (const Corners& face : faces_) {
      if (!face.on(wanted, exact.low)) continue;
      for (const Vec3& p : face.points)
        most = std::max(most, std::abs(made.region[i].distance(p + made.low)));
    }
  }
  return most;
}

}  // namespace splay::fabrication
