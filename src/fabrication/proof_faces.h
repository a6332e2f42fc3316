// How far the faces of a designed part are off the surfaces its steps make of it. Internal to
// src/fabrication.
#pragma once

#include <vector>

#include "geometry/solid.h"

namespace splay::fabrication {

// What a step sweeps, in a frame in which the part that is left at the end has its low corner at
// `low`.
struct Sweep {
  Region region;
  Vec3 low;
};

class DesignedFaces {
 public:
  explicit DesignedFaces(const Solid& body);
  // Of all corners of designed faces that lie on a plane of `exact`, the greatest distance to the
  // plane of the same place in `made`, mm. Faces are compared and not what lies between: a thin fin
  // that is high is as far off as it is thick.
  double off(const Sweep& exact, const Sweep& made) const;
  // The same for the faces that no step makes, which are the blank's own, when the finished part's
  // low corner comes to lie at `made` instead of `exact`.
  double blank_off(const std::vector<Region>& steps, Vec3 exact, Vec3 made) const;

 private:
  struct Corners {
    Plane plane;
    std::vector<Vec3> points;
    bool on(const Plane& wanted, Vec3 low) const;
  };
  std::vector<Corners> faces_;
};

}  // namespace splay::fabrication
