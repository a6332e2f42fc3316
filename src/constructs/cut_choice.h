// How an author says where a plane cuts a board or stick.
#pragma once

#include <optional>

#include "geometry/plane.h"
#include "model/field.h"

namespace splay::constructs {

enum class CutKind { square, level, plumb, slope, angles };

// square: across the length. level: parallel to the floor. plumb: upright and, seen from above,
// square to the length unless turned. slope: falls at `slope` from level towards `downhill`, a plan
// direction counted from the right, anticlockwise from above. angles: as a saw is set, with the
// board's show face up: `face_angle` off square on the face, `bevel` through the thickness.
struct CutChoice : model::Fields {
  model::Given<CutKind> cut{CutKind::square};
  model::Given<Angle> slope, downhill, turn, face_angle, bevel;
  void fields(model::FieldVisitor& visit) override;
  void check(model::Complaints& complaints) const override;

  // The plane through a point, normal on the side of `way`. Nothing when it runs along `way`.
  // `place`: the board's frame, x along its length and z towards the show face.
  std::optional<Plane> plane(const Rigid& place, Vec3 through, Vec3 way) const;
};

}  // namespace splay::constructs
