// The back of a case: in a rabbet, in a groove or applied.
#include "constructs/case_build.h"

namespace splay::constructs {

double CaseBuild::inside_back() const {
  const double depth = case_.depth->mm;
  if (!case_.back.given || case_.back.fit.value == BackFit::applied) return depth;
  const double t = thickness(*case_.back.stock);
  return case_.back.fit.value == BackFit::groove ? depth - case_.back.set_in->mm - t : depth - t;
}

std::vector<Plane> CaseBuild::seat_stops(std::size_t side, double into) const {
  const std::size_t n = sides_.size();
  std::vector<Plane> stops;
  const auto stop_at = [&](std::size_t corner, bool side_is_before, std::size_t neighbour) {
    const RingCorner& choice = corners_[corner];
    if (choice.kind != CornerKind::butt || choice.before_through != side_is_before) return;
    Line2 floor = ring_.members[neighbour].inside;
    floor.d -= into;
    stops.push_back(lift(floor));
  };
  stop_at(side, false, (side + n - 1) % n);
  stop_at((side + 1) % n, true, (side + 1) % n);
  return stops;
}

void CaseBuild::build_back() {
  const Back& back = case_.back;
  if (!back.given) return;
  const double t = thickness(*back.stock);
  const bool applied = back.fit.value == BackFit::applied;
  const double front = inside_back();
  const double grow = applied ? -back.set_in->mm : back.into->mm - back.clearance->mm;
  const std::vector<double> distances(sides_.size(), -grow);
  const std::optional<Polygon> shape = offset_edges(applied ? ring_.outer : ring_.inner, distances);
  if (!shape) {
    stop("no-back", case_.name, "The back of " + case_.name + " has no shape at these sizes.",
         "Make set_in or clearance smaller.", back.span);
    return;
  }
  const model::Stock* stock = builder_.project().stocks.find(*back.stock);
  const bool either = stock != nullptr && stock->two_good_faces.value;
  back_part_ = add_plate(builder_, {part_name("back"),
                                    *back.stock,
                                    *shape,
                                    front,
                                    front + t,
                                    {0, 1},
                                    either ? parts::ShowFace::either : parts::ShowFace::high_z});
  for (std::size_t i = 0; i < sides_.size(); ++i) {
    const int panel = panel_parts_[i].front();
    if (applied) {
      joinery::glued(builder_, panel, back_part_, {{0, 1, 0}, front}, "glued");
      continue;
    }
    Line2 floor = ring_.members[i].inside;
    floor.d -= back.into->mm;
    joinery::Seat seat;
    seat.host = panel;
    seat.guest = back_part_;
    seat.floor = lift(floor);
    seat.seat = {{0, 1, 0}, front};
    seat.groove = back.fit.value == BackFit::groove;
    seat.other_wall = {{0, -1, 0}, -(front + t)};
    seat.stops = seat_stops(i, back.into->mm);
    seat.depth = back.into->mm;
    joinery::seat(builder_, seat);
  }
}

}  // namespace splay::constructs
