#include "joinery/mitre.h"

#include <cmath>
#include <numbers>

#include "base/tolerance.h"
#include "joinery/bases.h"
#include "joinery/joint.h"

namespace splay::joinery {

namespace {

constexpr double least_corner = std::numbers::pi / 36;  // 5 degrees

// The point on all three planes, whose normals must not lie in one plane (Cramer's rule).
Vec3 meet(const Plane& a, const Plane& b, const Plane& c) {
  const Vec3 bc = cross(b.n, c.n), ca = cross(c.n, a.n), ab = cross(a.n, b.n);
  return (bc * a.d + ca * b.d + ab * c.d) * (1 / dot(a.n, bc));
}

// Of the two centre lines, the point of `a` nearest to `b`.
Vec3 nearest_point(const Stick& a, const Stick& b, Vec3 normal) {
  const Vec3 across = cross(b.along, normal);
  return a.centre + a.along * (dot(across, b.centre - a.centre) / dot(across, a.along));
}

}  // namespace

void mitre(parts::Builder& builder, const Mitre& joint) {
  const std::string name = joint_name(builder, joint.a, joint.b);
  builder.cut_end(joint.a, joint.plane, "mitre to " + builder.part(joint.b).name, name);
  builder.cut_end(joint.b, joint.plane.flipped(), "mitre to " + builder.part(joint.a).name, name);
  builder.add_joint(
      {name, "mitre", {joint.a, joint.b}, joint.dihedral, {{joint.a, joint.b, joint.plane}}});
}

std::string lay_mitre(const Stick& host, const Stick& guest, Draft& draft, Plane& plane) {
  if (host.body.empty() || guest.body.empty())
    return "Nothing is left of " + (host.body.empty() ? host.name : guest.name) + ".";
  if (crossing_angle(host.along, guest.along) < least_corner)
    return guest.name + " lies along " + host.name + ": a mitre needs a corner.";
  const Vec3 normal = unit(cross(host.along, guest.along));
  const Vec3 at = nearest_point(host, guest, normal);
  const auto away = [&](const Stick& stick) {
    return dot(stick.centre - at, stick.along) > 0 ? stick.along : -stick.along;
  };
  const Vec3 host_way = away(host), guest_way = away(guest);
  const Plane level = Plane::through(at, normal);
  const Plane host_outer = side_at(host, at, -guest_way),
              guest_outer = side_at(guest, at, -host_way);
  const Plane host_inner = side_at(host, at, guest_way), guest_inner = side_at(guest, at, host_way);
  const Vec3 outer = meet(host_outer, guest_outer, level);
  const Vec3 inner = meet(host_inner, guest_inner, level);
  // The corner lines; rolled members of unlike section have two that are not parallel.
  const auto upright = [&](Vec3 line) { return unit(dot(line, normal) > 0 ? line : -line); };
  const Vec3 line =
      upright(cross(host_outer.n, guest_outer.n)) + upright(cross(host_inner.n, guest_inner.n));
  plane = Plane::through(outer, cross(line, inner - outer));
  if (dot(plane.n, host_way) > 0) plane = plane.flipped();
  for (const Stick* each : {&host, &guest})
    if (!whole_behind(*each, each == &host ? plane : plane.flipped(), each->along))
      return each->name + " does not reach the corner with " + (each == &host ? guest : host).name +
             " with its whole section.";
  draft.cut_end(host.index, plane, "mitre to " + guest.name);
  draft.cut_end(guest.index, plane.flipped(), "mitre to " + host.name);
  draft.must_meet(host.index, guest.index, plane, "mitres");
  draft.dihedral(std::numbers::pi - angle_between(host_outer.n, guest_outer.n));
  return "";
}

void MitreKind::fields(model::FieldVisitor&) {}

std::string MitreKind::shape(parts::Builder& builder, int host, int guest) const {
  Draft draft(builder, "mitre", host, guest);
  Plane plane;
  const std::string fault = lay_mitre(stick(builder, host), stick(builder, guest), draft, plane);
  return fault.empty() ? draft.carry_out(builder) : fault;
}

}  // namespace splay::joinery
