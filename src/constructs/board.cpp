#include "constructs/board.h"

#include <cmath>

#include "base/tolerance.h"
#include "constructs/curve.h"
#include "constructs/orientation.h"

namespace splay::constructs {

using model::choose;
using model::may;
using model::need;
using model::Range;

namespace {

Vec3 way_to(BoardSide side, const Rigid& place) {
  switch (side) {
    case BoardSide::second_end:
      return place.ex;
    case BoardSide::first_end:
      return -place.ex;
    case BoardSide::left_edge:
      return place.ey;
    case BoardSide::right_edge:
      return -place.ey;
    case BoardSide::face:
      return place.ez;
    default:
      return -place.ez;
  }
}

// "front", "upper", ...: the direction of the room nearest to `v`.
std::string nearest_direction(Vec3 v) {
  struct Row {
    double size;
    const char* low;
    const char* high;
  };
  const Row rows[] = {{v.z, "lower", "upper"}, {v.y, "front", "back"}, {v.x, "left", "right"}};
  const Row* best = &rows[0];
  for (const Row& row : rows)
    if (std::abs(row.size) > std::abs(best->size) + 1e-9) best = &row;
  return best->size < 0 ? best->low : best->high;
}

std::array<std::string, 6> side_names(const Rigid& place) {
  const std::array<std::string, 2> ends = end_names(place.ex);
  return {ends[0],
          ends[1],
          nearest_direction(-place.ey) + " edge",
          nearest_direction(place.ey) + " edge",
          nearest_direction(-place.ez) + " face",
          nearest_direction(place.ez) + " face"};
}

}  // namespace

void BoardCut::fields(model::FieldVisitor& visit) {
  CutChoice::fields(visit);
  visit.lengths(may("through", "a point of the plane in the room, [x, y, z]"), through,
                Range::place());
  visit.length(may("along", "a point of the plane on the face: so far from the first end"), along,
               Range::place());
  visit.length(may("across",
                   "and so far from the right edge, as seen with the face in front and the "
                   "first end down"),
               across, Range::place());
  choose<BoardSide, 6>(visit, may("waste", "what is cut off"), waste,
                       {"second end", "first end", "left edge", "right edge", "face", "back"});
}

void BoardCut::check(model::Complaints& complaints) const {
  CutChoice::check(complaints);
  check_point(through, complaints);
  if (through.given == (along.given || across.given))
    complaints.complain({span, "wrong-count",
                         through.given ? "two points for one cut" : "a cut without a point",
                         "either through = [x, y, z] or along and across, from the board's corner",
                         "say where the cut runs"});
}

void Board::fields(model::FieldVisitor& visit) {
  visit.lengths(need("at", "where it starts, [x, y, z]: to the right, to the back, up"), at,
                Range::place());
  choose<Anchor, 3>(visit,
                    may("anchor",
                        "what of the board stands there: the corner of its back and "
                        "right edge at the first end, the middle of that end, or "
                        "the middle of the board"),
                    anchor, {"corner", "end", "middle"});
  visit.text(need("stock", "what it is made of"), stock, model::Refers::to_stock);
  visit.length(may("length", "before its cuts", "as far as `towards`"), length, Range::size());
  visit.length(need("width", "before its cuts"), width, Range::size());
  visit.length(may("thickness", "from face to back", "the stock's thickness"), thickness,
               Range::size());
  visit.lengths(may("towards", "a second point of its length: takes the place of turn and rise",
                    "turn and rise say it"),
                towards, Range::place());
  visit.angle(may("turn", "plan direction of its length, from the right, anticlockwise from above"),
              turn, Range::degrees(-360, 360));
  visit.angle(may("rise", "how its length rises from level"), rise, Range::degrees(-90, 90));
  visit.angle(may("roll",
                  "turn about its length: at 0 the face looks up, at 90 degrees a board that "
                  "runs to the right shows its face to the front"),
              roll, Range::degrees(-360, 360));
  visit.length(
      may("corner_radius", "its four corners on the face rounded, before its cuts", "sharp"),
      corner_radius, Range::size());
  visit.tables(may("cut", "a cut along a plane"), cuts);
}

void Board::check(model::Complaints& complaints) const {
  check_point(at, complaints);
  check_point(towards, complaints);
  if (towards.given && (turn.given || rise.given))
    complaints.complain({towards.span, "not-together", "a second point beside turn or rise",
                         "either towards or turn and rise", "keep one"});
  if (!towards.given && !length.given)
    complaints.complain({span, "missing-field", "a board without a length",
                         "length = its length, or towards = a second point", "give one of them"});
  if (towards.given && towards->size() == 3 && norm(point_of(towards) - point_of(at)) < 1)
    complaints.complain({towards.span, "no-length", "both points are in the same place",
                         "two points at least 1 mm apart", "move one of them"});
}

// The board's directions, its origin still in the world's.
Rigid Board::axes() const {
  double t = turn->rad, r = rise->rad;
  if (towards.given) {
    const Vec3 v = point_of(towards) - point_of(at);
    const double run = std::hypot(v.x, v.y);
    t = run > 1e-9 ? std::atan2(v.y, v.x) : 0;
    r = std::atan2(v.z, run);
  }
  const double c = std::cos(roll->rad), s = std::sin(roll->rad);
  const Vec3 level{-std::sin(t), std::cos(t), 0};
  const Vec3 along{std::cos(r) * std::cos(t), std::cos(r) * std::sin(t), std::sin(r)};
  const Vec3 up = cross(along, level);
  return {along, level * c + up * s, up * c - level * s, {}};
}

void Board::build(parts::Builder& builder) const {
  const double long_way = length.given ? length->mm : norm(point_of(towards) - point_of(at));
  const double thick = thickness.given ? thickness->mm : stock_thickness(builder, *stock);
  const Vec3 size{long_way, width->mm, thick};
  parts::Blank blank;
  blank.name = name;
  blank.stock = *stock;
  blank.place = axes();
  const Vec3 back = anchor.value == Anchor::corner ? Vec3{}
                    : anchor.value == Anchor::end  ? Vec3{0, size.y / 2, size.z / 2}
                                                   : size * 0.5;
  blank.place.origin = point_of(at) - blank.place.direction(back);
  blank.body = Solid::box({0, 0, 0}, size);
  blank.side_names = side_names(blank.place);
  const Rigid corner = blank.place;
  const int part = builder.add(std::move(blank));
  if (corner_radius.given) round_face(builder, part, corner, size);
  for (std::size_t i = 0; i < cuts.size(); ++i) cut(builder, part, corner, cuts[i]);
  // Of a level board it is nothing, of a plumb one its length.
  const double rises = std::abs(corner.ex.z) * long_way;
  if (rises > tolerance::on_plane && long_way - rises > tolerance::on_plane)
    builder.measure(part, "height between the ends of its length", rises);
}

void Board::round_face(parts::Builder& builder, int part, const Rigid& corner, Vec3 size) const {
  const auto corners =
      round_corners({{0, 0}, {size.x, 0}, {size.x, size.y}, {0, size.y}}, corner_radius->mm);
  if (corners.empty()) {
    refuse(builder, {"radius-too-large", name,
                     "Corners of " + builder.project().job.figures().with_unit(corner_radius->mm) +
                         " radius have no room on " + name + ".",
                     "A smaller radius: less than half of its width and of its length.",
                     corner_radius.span});
    return;
  }
  // The section's plane has its second axis up: here the board's width.
  const Rigid plane{corner.ex, -corner.ez, corner.ey, corner.origin};
  cut_roundings(builder, {part}, corners, plane);
}

void Board::cut(parts::Builder& builder, int part, const Rigid& corner,
                const BoardCut& choice) const {
  const double face = builder.part(part).body.bounds().high.z;
  const Vec3 through = choice.through.given
                           ? point_of(choice.through)
                           : corner.point({choice.along->mm, choice.across->mm, face});
  const auto plane = choice.plane(corner, through, way_to(choice.waste.value, corner));
  if (!plane) {
    refuse(builder, {"no-cut", name,
                     "The cut " + choice.name + " of " + name +
                         " has no side towards its waste: it runs that way.",
                     "Choose another `waste`, another kind of cut or another angle.", choice.span});
    return;
  }
  const Plane local = corner.local_plane(*plane);
  const Solid& body = builder.part(part).body;
  if (!body.empty() && body.extent(local.n)[1] < local.d + tolerance::on_plane) {
    refuse(builder,
           {"cut-misses", name, "The cut " + choice.name + " of " + name + " takes nothing off.",
            "Move its point into the board, or leave the cut out.", choice.span});
    return;
  }
  if (std::abs(local.n.x) >= std::abs(local.n.y))
    builder.cut_end(part, *plane, choice.name, "");
  else
    builder.cut_edge(part, *plane, choice.name, "");
}

}  // namespace splay::constructs
