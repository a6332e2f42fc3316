#include "joinery/bed.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/tolerance.h"
#include "parts/audit.h"

namespace splay::joinery {

using model::may;
using model::Range;

namespace {

constexpr double chord_error = 0.01;  // mm

void set_row(const Stick& guest, Bed& bed) {
  double longest = -1;
  for (const Vec3 side : {guest.place.ey, guest.place.ez, guest.place.ex}) {
    const Vec3 flat = side - bed.plane.n * dot(side, bed.plane.n);
    if (norm(flat) < 0.5) continue;
    const Vec3 row = unit(flat);
    std::array<double, 2> reach = {1e300, -1e300};
    for (const std::vector<Vec3>& piece : bed.pieces)
      for (const Vec3 p : piece)
        reach = {std::min(reach[0], dot(row, p)), std::max(reach[1], dot(row, p))};
    if (reach[1] - reach[0] < longest + tolerance::weld) continue;
    longest = reach[1] - reach[0];
    bed.row = row;
    bed.reach = reach;
  }
  bed.across = cross(bed.plane.n, bed.row);
  // In the middle, or beside it where the surface has a gap there.
  for (const double share : {0.5, 0.25, 0.75}) {
    const auto range = bed.across_at(bed.reach[0] + share * (bed.reach[1] - bed.reach[0]));
    if (range && bed.width == 0) bed.width = (*range)[1] - (*range)[0];
  }
}

int facet_count(double radius) {
  const double error = std::min(chord_error, radius / 4);
  const int least = static_cast<int>(std::ceil(std::numbers::pi / std::acos(1 - error / radius)));
  return std::max(8, (least + 3) / 4 * 4);
}

}  // namespace

std::optional<std::array<double, 2>> Bed::across_at(double along_row) const {
  std::array<double, 2> range = {1e300, -1e300};
  for (const std::vector<Vec3>& piece : pieces) {
    for (std::size_t i = 0; i < piece.size(); ++i) {
      const Vec3 p = piece[i], q = piece[(i + 1) % piece.size()];
      const double dp = dot(row, p) - along_row, dq = dot(row, q) - along_row;
      if ((dp > 0) == (dq > 0) || dp == dq) continue;
      const double at = dot(across, p + (q - p) * (dp / (dp - dq)));
      range = {std::min(range[0], at), std::max(range[1], at)};
    }
  }
  if (range[0] > range[1]) return std::nullopt;
  return range;
}

Vec3 Bed::point(double along_row, double across_row) const {
  return row * along_row + across * across_row + plane.n * plane.d;
}

void FastenerKind::bed_field(model::FieldVisitor& visit) {
  model::choose<BedOn, 3>(
      visit, may("on", "what it holds together: a butt, a mitre, or parts that touch as they are"),
      on, {"butt", "mitre", "touching"});
  visit.length(may("offset", "how far out of the middle of the joint's width"), offset,
               Range::place());
}

void FastenerKind::row_fields(model::FieldVisitor& visit) {
  visit.count(may("count", "how many, in a row along the joint"), count, Range::between(1, 50));
  visit.length(may("end_margin", "from the joint's end to the middle of the first",
                   "half of the distance between two"),
               end_margin, Range::size());
  model::choose<FastenerLine, 2>(visit, may("line", "which way they point"), line,
                                 {"square to the joint", "along the part"});
}

std::string FastenerKind::lay_bed(const parts::Builder& builder, const Stick& host,
                                  const Stick& guest, Draft& draft, Bed& bed) const {
  const auto lay = on.value == BedOn::butt    ? lay_butt
                   : on.value == BedOn::mitre ? lay_mitre
                                              : lay_contact;
  if (std::string fault = lay(host, guest, draft, bed.plane); !fault.empty()) return fault;
  if (on.value == BedOn::touching) draft.distinguish(draft.kind());
  if (std::string fault = draft.try_cuts(builder); !fault.empty()) return fault;
  const parts::Contact contact = parts::contact({host.index, guest.index, bed.plane},
                                                draft.body(host.index), draft.body(guest.index));
  if (contact.pieces.empty())
    return guest.name + " and " + host.name + " would have no surface in common.";
  for (const Polygon& piece : contact.pieces) {
    bed.pieces.emplace_back();
    for (const Vec2 p : piece) bed.pieces.back().push_back(contact.frame.point({p.x, p.y, 0}));
  }
  set_row(guest, bed);
  return "";
}

std::string FastenerKind::places(const parts::Builder& builder, const Bed& bed, double size,
                                 std::vector<Vec3>& found) const {
  const double length = bed.reach[1] - bed.reach[0];
  const int n = count.value;
  const double margin = end_margin.given ? end_margin->mm : length / (2 * n);
  const double step = n > 1 ? (length - 2 * margin) / (n - 1) : 0;
  const double first = n > 1 ? bed.reach[0] + margin : (bed.reach[0] + bed.reach[1]) / 2;
  if (n > 1 && step < size)
    return "There is no room for " + std::to_string(n) + " of " + figure(builder, size) +
           " along " + figure(builder, length) + ".";
  for (int i = 0; i < n; ++i) {
    const auto range = bed.across_at(first + i * step);
    if (!range) return "The joint's surface has no middle where one of them would stand.";
    found.push_back(bed.point(first + i * step, ((*range)[0] + (*range)[1]) / 2 + offset.value.mm));
  }
  return "";
}

Vec3 FastenerKind::axis(const Stick& guest, const Bed& bed) const {
  if (line.value == FastenerLine::square_to_joint) return bed.plane.n;
  return dot(guest.along, bed.plane.n) > 0 ? guest.along : -guest.along;
}

std::vector<Plane> cylinder(Vec3 at, Vec3 axis, double radius) { return cone(at, axis, 0, radius); }

std::vector<Plane> cone(Vec3 tip, Vec3 axis, double half_angle, double radius_for_facets) {
  const Rigid place = frame(tip, square_to(axis), axis);
  const int n = facet_count(radius_for_facets);
  // The corners lie on the surface, so that a facet's middle is nearer to the axis by the cosine.
  const double inner = std::cos(std::numbers::pi / n);
  std::vector<Plane> facets;
  for (int i = 0; i < n; ++i) {
    const double turn = 2 * std::numbers::pi * i / n;
    const Vec3 out = place.ex * std::cos(turn) + place.ey * std::sin(turn);
    if (half_angle == 0) {
      facets.push_back(Plane::through(tip + out * (radius_for_facets * inner), out));
    } else {
      const double slope = std::tan(half_angle) * inner;
      facets.push_back(Plane::through(tip, out - axis * slope));
    }
  }
  return facets;
}

Region pocket(const std::vector<Plane>& walls, const Bed& bed, Vec3 at, Vec3 axis, int side,
              double depth) {
  Region region = walls;
  region.push_back(side > 0 ? bed.plane.flipped() : bed.plane);
  const Vec3 way = axis * side;
  region.push_back(Plane::through(at + way * depth, way));
  return region;
}

bool inside(const Region& region, const Solid& body) {
  Solid rest = Solid::convex(region);
  const double whole = rest.volume();
  rest.subtract(body);
  return rest.volume() <= whole * 1e-9 + tolerance::weld;
}

}  // namespace splay::joinery
