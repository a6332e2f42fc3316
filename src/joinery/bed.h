// The surface that two parts meet on, as a place for dowels, loose tenons, splines and screws; and
// the holes they need. Everything in the world, mm.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "joinery/bases.h"
#include "joinery/kinds.h"

namespace splay::joinery {

enum class BedOn { butt, mitre, touching };
enum class FastenerLine { square_to_joint, along_guest };

struct Bed {
  Plane plane;                    // out of the host, into the guest
  Vec3 row, across;               // in the plane; the row runs along the guest's longer side there
  std::array<double, 2> reach{};  // of the surface along the row
  double width = 0;               // across the row, at its middle
  std::vector<std::vector<Vec3>> pieces;

  // Least and greatest place of the surface across the row, at a place along it.
  std::optional<std::array<double, 2>> across_at(double along_row) const;
  Vec3 point(double along_row, double across_row) const;
};

// What all fasteners on a bed have in common.
struct FastenerKind : JointKind {
  explicit FastenerKind(BedOn usual) : on(usual) {}
  model::Given<BedOn> on;
  model::Given<FastenerLine> line{FastenerLine::square_to_joint};
  model::Given<int> count{2};
  model::Given<Length> end_margin;
  model::Given<Length> offset{Length{0}};

 protected:
  void bed_field(model::FieldVisitor& visit);
  void row_fields(model::FieldVisitor& visit);
  // Joins the two by their base on the draft and finds the surface. "" or why not.
  std::string lay_bed(const parts::Builder& builder, const Stick& host, const Stick& guest,
                      Draft& draft, Bed& bed) const;
  // Where they stand on the bed, in order. "" or why there is no room.
  std::string places(const parts::Builder& builder, const Bed& bed, double size,
                     std::vector<Vec3>& found) const;
  Vec3 axis(const Stick& guest, const Bed& bed) const;  // from host into guest
};

// A round hole about an axis: facets whose chords are at most 0.01 mm off the circle. Without ends.
std::vector<Plane> cylinder(Vec3 at, Vec3 axis, double radius);
// A cone that opens along the axis from its tip, half_angle in radians.
std::vector<Plane> cone(Vec3 tip, Vec3 axis, double half_angle, double radius_for_facets);

// The region beyond the bed on the guest's side (+1) or the host's (-1), down to `depth` along the
// axis from `at`.
Region pocket(const std::vector<Plane>& walls, const Bed& bed, Vec3 at, Vec3 axis, int side,
              double depth);
bool inside(const Region& region, const Solid& body);

}  // namespace splay::joinery
