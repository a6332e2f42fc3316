#include "fabrication/proof_faces.h"

#include <algorithm>
#include <cmath>

namespace splay::fabrication {

namespace {

constexpr double on_it = 1e-5;     // mm: corners nearer than this lie on a swept plane
constexpr double parallel = 1e-6;  // radians, a first sieve only

}  // namespace

DesignedFaces::DesignedFaces(const Solid& body) {
  for (const Face& face : body.boundary().faces) {
    Corners corners{face.plane, {}};
    for (const std::vector<Vec3>& loop : face.loops)
      corners.points.insert(corners.points.end(), loop.begin(), loop.end());
    faces_.push_back(std::move(corners));
  }
}

double DesignedFaces::off(const Sweep& exact, const Sweep& made) const {
  double most = 0;
  for (std::size_t i = 0; i < std::min(exact.region.size(), made.region.size()); ++i) {
    const Plane& wanted = exact.region[i];
    for (const Corners& face : faces_) {
      if (norm(cross(face.plane.n, wanted.n)) > parallel) continue;
      const bool on = std::all_of(face.points.begin(), face.points.end(), [&](Vec3 p) {
        return std::abs(wanted.distance(p + exact.low)) < on_it;
      });
      if (!on) continue;
      for (const Vec3& p : face.points)
        most = std::max(most, std::abs(made.region[i].distance(p + made.low)));
    }
  }
  return most;
}

}  // namespace splay::fabrication
