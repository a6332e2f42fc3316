// The box of a drawer: sides that run through, front and back between them, bottom in a groove.
#include "constructs/drawer_build.h"
#include "joinery/box_joint.h"
#include "joinery/dovetail.h"
#include "joinery/dowel.h"
#include "joinery/joint.h"
#include "joinery/trench.h"

namespace splay::constructs {

namespace {

constexpr double wood_outside = 3;  // mm outside of a groove or a dowel

std::array<std::string, 6> box_names(const Rigid& place, const char* first, const char* second) {
  const bool up_high = place.ey.z > 0;
  return {first,
          second,
          up_high ? "lower edge" : "upper edge",
          up_high ? "upper edge" : "lower edge",
          "inside",
          "outside"};
}

Solid box_between(const Rigid& place, Vec3 a, Vec3 b) {
  Box box;
  box.add(place.local_point(a));
  box.add(place.local_point(b));
  return Solid::box(box.low, box.high);
}

}  // namespace

int DrawerBuild::add_side(bool right) {
  const double outer = x_[right ? 1 : 0], inner = right ? outer - thick_ : outer + thick_;
  parts::Blank blank;
  blank.name = part_name(builder_, spec_, right ? "right side" : "left side");
  blank.stock = *spec_.box.stock;
  blank.place = frame(place_.origin, {0, 1, 0}, {right ? 1.0 : -1.0, 0, 0});
  blank.body = box_between(blank.place, place_.point({outer, y_[0], z_[0]}),
                           place_.point({inner, y_[1], z_[1]}));
  blank.side_names = box_names(blank.place, "front end", "back end");
  return builder_.add(std::move(blank));
}

int DrawerBuild::add_cross(bool back) {
  const double outer = y_[back ? 1 : 0], inner = back ? outer - thick_ : outer + thick_;
  parts::Blank blank;
  blank.name = part_name(builder_, spec_, back ? "box back" : "box front");
  blank.stock = *spec_.box.stock;
  blank.place = frame(place_.origin, {1, 0, 0}, {0, back ? 1.0 : -1.0, 0});
  blank.body = box_between(blank.place, place_.point({x_[0], outer, z_[0]}),
                           place_.point({x_[1], inner, z_[1]}));
  blank.side_names = box_names(blank.place, "left end", "right end");
  return builder_.add(std::move(blank));
}

void DrawerBuild::join_rabbet(int side, int cross, const Plane& face, bool back) {
  joinery::Seat seat;
  seat.host = side;
  seat.guest = cross;
  seat.depth = thick_ / 2;
  seat.floor = {face.n, face.d - seat.depth};
  const double shoulder = back ? y_[1] - thick_ : y_[0] + thick_;
  seat.seat = plane({0, back ? 1.0 : -1.0, 0}, back ? shoulder : -shoulder);
  builder_.cut_end(cross, seat.floor.flipped(), "end in " + builder_.part(side).name, "");
  joinery::seat(builder_, seat);
}

// The tongue is the inner half of the front's or back's thickness, its outer half stops at the
// side.
std::string DrawerBuild::join_tongue(int side, int cross, const Plane& face, bool back) {
  const double out = back ? 1 : -1;  // along y
  const double outer = y_[back ? 1 : 0];
  const Plane inside = plane({0, -out, 0}, thick_ - out * outer);
  const Plane cheek = plane({0, out, 0}, out * outer - thick_ / 2);
  joinery::TrenchCut trench;
  trench.name = "groove for " + builder_.part(cross).name;
  trench.kind = parts::OperationKind::housing;
  trench.face = face;
  trench.floor = {face.n, face.d - thick_ / 2};
  trench.walls = {inside.flipped(), cheek.flipped()};
  joinery::Draft draft(builder_, "tongue and groove", side, cross);
  draft.dihedral(std::numbers::pi / 2);
  draft.cut_end(cross, trench.floor.flipped(), "end in " + builder_.part(side).name);
  joinery::cut_trench(builder_, side, trench, draft);
  draft.shoulder(cross, {cheek.flipped()}, face.flipped(),
                 "shoulder at " + builder_.part(side).name);
  draft.must_meet(side, cross, face, "shoulder");
  draft.must_meet(side, cross, trench.floor, "floor");
  draft.must_meet(side, cross, cheek.flipped(), "tongue");
  draft.must_meet(side, cross, inside.flipped(), "tongue");
  return draft.carry_out(builder_);
}

void DrawerBuild::join_corner(int side, int cross, bool right, bool back) {
  const Vec3 in{right ? -1.0 : 1.0, 0, 0};  // out of the side, into the box
  const double inside = right ? x_[1] - thick_ : x_[0] + thick_;
  const Plane face = plane(in, inside * in.x);
  std::string fault;
  switch (spec_.box.corners.value) {
    case BoxCorner::butt:
      joinery::butt(builder_, {side, cross, face, std::numbers::pi / 2});
      break;
    case BoxCorner::rabbet:
      join_rabbet(side, cross, face, back);
      break;
    case BoxCorner::tongue:
      fault = join_tongue(side, cross, face, back);
      break;
    case BoxCorner::dowel: {
      joinery::DowelKind dowel;
      dowel.embed.value.mm = thick_ - dowel.bottom_gap->mm - wood_outside;
      dowel.embed.given = true;
      fault = dowel.make(builder_, side, cross);
      break;
    }
    case BoxCorner::box_joint:
      fault = joinery::BoxJointKind().make(builder_, side, cross);
      break;
    case BoxCorner::dovetail: {
      joinery::DovetailKind dovetail;
      if (!back) dovetail.lap = spec_.box.lap;
      fault = dovetail.make(builder_, side, cross);
    }
  }
  if (!fault.empty())
    stop("no-joint", fault, "Other corners, another thickness or height of the box.",
         spec_.box.corners.given ? spec_.box.corners.span : spec_.box.span);
}

void DrawerBuild::add_bottom() {
  const DrawerBox& box = spec_.box;
  const double t = stock_thickness(builder_, *box.bottom);
  const double low = z_[0] + box.bottom_up->mm, high = low + t;
  const double grow = box.into->mm - box.clearance->mm;
  if (box.into->mm > thick_ - wood_outside || grow <= 0 || high > z_[1] - 3) {
    stop("no-bottom", "The bottom of " + spec_.name + " can't be held in its grooves.",
         "Grooves 3 mm less deep than the sides are thick, deeper than the clearance, and below "
         "their upper edge.",
         box.span);
    return;
  }
  const double in = thick_ - grow;
  parts::Blank blank;
  blank.name = part_name(builder_, spec_, "bottom");
  blank.stock = *box.bottom;
  blank.place = frame(place_.origin, {1, 0, 0}, {0, 0, 1});
  blank.body = box_between(blank.place, place_.point({x_[0] + in, y_[0] + in, low}),
                           place_.point({x_[1] - in, y_[1] - in, high}));
  blank.side_names = {"left end", "right end", "front edge", "back edge", "underside", "top"};
  const int part = builder_.add(std::move(blank));

  const auto floor = [&](Vec3 n, double inside) {  // `inside`: the face, along n
    return plane(n, inside - box.into->mm);
  };
  const Plane left = floor({1, 0, 0}, x_[0] + thick_), right = floor({-1, 0, 0}, thick_ - x_[1]);
  const Plane front = floor({0, 1, 0}, y_[0] + thick_), back = floor({0, -1, 0}, thick_ - y_[1]);
  const auto hold = [&](int host, const Plane& bottom_of, std::vector<Plane> stops) {
    joinery::Seat seat;
    seat.host = host;
    seat.guest = part;
    seat.floor = bottom_of;
    seat.seat = plane({0, 0, 1}, low);
    seat.groove = true;
    seat.other_wall = plane({0, 0, -1}, -high);
    seat.stops = std::move(stops);
    seat.depth = box.into->mm;
    joinery::seat(builder_, seat);
  };
  hold(sides_[0], left, {front, back});
  hold(sides_[1], right, {front, back});
  const std::vector<Plane> short_of_ends =
      box.ends_in_sight() ? std::vector<Plane>{left, right} : std::vector<Plane>{};
  hold(crosses_[0], front, short_of_ends);
  hold(crosses_[1], back, short_of_ends);
}

void DrawerBuild::add_box() {
  for (const bool far : {false, true}) {
    sides_[far ? 1 : 0] = add_side(far);
    crosses_[far ? 1 : 0] = add_cross(far);
  }
  for (const bool right : {false, true})
    for (const bool back : {false, true})
      join_corner(sides_[right ? 1 : 0], crosses_[back ? 1 : 0], right, back);
  add_bottom();
}

}  // namespace splay::constructs
