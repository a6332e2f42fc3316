#include "sheets/part_view_set.h"

#include <cmath>
#include <span>

namespace splay::sheets {

namespace {

using parts::Side;

class SetMaker {
 public:
  SetMaker(const PartSheet& sheet, bool lying)
      : sheet_(sheet),
        scene_(std::span(&sheet.part.body, 1)),
        third_angle_(*sheet.context.job().units == Unit::inch) {
    set_.lying = lying;
  }

  ViewSet make() {
    const Side face = worked_face(sheet_);
    const Vec3 toward = parts::outward(face);
    const Vec3 front = parts::outward(worked_edge(sheet_));
    View main;
    main.toward = toward;
    // Lying, the edge that is shown is below; standing, the head is up.
    main.up = set_.lying ? -front : Vec3{head_up() ? 1.0 : -1.0, 0, 0};
    main.right = cross(main.up, toward);
    set_.face = seen(main);
    const double front_right = (dot(front, main.right) > 0) == third_angle_ ? 1 : -1;
    set_.to_edge = set_.lying ? Vec2{0, third_angle_ ? -1.0 : 1.0} : Vec2{front_right, 0};
    set_.to_end = set_.lying ? Vec2{1, 0} : Vec2{0, -1};
    const View edge = adjoining(main, set_.to_edge);
    set_.edge = seen(edge);
    set_.end = seen(adjoining(main, set_.to_end));
    if (!openings_on(sheet_, parts::opposite(face)).empty())
      set_.other = seen(adjoining(edge, set_.to_edge));
    const View far_edge = adjoining(main, -set_.to_edge);
    if (!openings_on(sheet_, side_seen(far_edge.toward)).empty()) set_.far_edge = seen(far_edge);
    return std::move(set_);
  }

 private:
  bool head_up() const { return parts::local_up(sheet_.part).x >= -1e-9; }

  SideView seen(const View& view) const {
    SideView side{side_seen(view.toward), view, scene_.lines(view), {}};
    side.box = drafting::view_box(side.lines);
    return side;
  }

  // The view that stands in direction `to` from `main` on paper.
  View adjoining(const View& main, Vec2 to) const {
    const Vec2 from = third_angle_ ? to : -to;
    View view;
    view.toward = main.right * from.x + main.up * from.y;
    const bool beside = std::abs(to.x) > 0.5;
    view.up = beside ? main.up : cross(view.toward, main.right);
    view.right = beside ? cross(main.up, view.toward) : main.right;
    return view;
  }

  const PartSheet& sheet_;
  Scene scene_;
  bool third_angle_;
  ViewSet set_;
};

}  // namespace

Side worked_face(const PartSheet& sheet) {
  return openings_on(sheet, Side::z_low).size() > openings_on(sheet, Side::z_high).size()
             ? Side::z_low
             : Side::z_high;
}

Side worked_edge(const PartSheet& sheet) {
  const Side front = front_edge(sheet.part), back = parts::opposite(front);
  return openings_on(sheet, back).size() > openings_on(sheet, front).size() ? back : front;
}

ViewSet view_set(const PartSheet& sheet, bool lying) { return SetMaker(sheet, lying).make(); }

}  // namespace splay::sheets
