// The box of a drawer: sides that run through, front and back between them, bottom in a groove.
#include "constructs/drawer_build.h"
#include "joinery/joint.h"

namespace splay::constructs {

namespace {

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

void DrawerBuild::join_corner(int side, int cross, bool right, bool back) {
  const Vec3 in{right ? -1.0 : 1.0, 0, 0};  // out of the side, into the box
  const double inside = right ? x_[1] - thick_ : x_[0] + thick_;
  const Plane face = plane(in, inside * in.x);
  if (spec_.box.corners.value == BoxCorner::butt) {
    joinery::butt(builder_, {side, cross, face, std::numbers::pi / 2});
    return;
  }
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

void DrawerBuild::add_bottom() {
  const DrawerBox& box = spec_.box;
  const double t = stock_thickness(builder_, *box.bottom);
  const double low = z_[0] + box.bottom_up->mm, high = low + t;
  const double grow = box.into->mm - box.clearance->mm;
  if (box.into->mm > thick_ - 3 || grow <= 0 || high > z_[1] - 3) {
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
  hold(crosses_[0], front, {});
  hold(crosses_[1], back, {});
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
