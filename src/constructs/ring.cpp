#include "constructs/ring.h"

#include <algorithm>
#include <cmath>

#include "constructs/corners.h"
#include "joinery/joint.h"

namespace splay::constructs {

namespace {

using model::choose;
using model::may;
using model::need;
using model::Range;

Vec3 level(Vec2 p, double z) { return {p.x, p.y, z}; }

struct Side {
  std::string name, stock;
  double thick = 0, lean = 0;
  Vec2 along, out;        // in plan, unit
  Plane outside, inside;  // outwards; inwards
  Vec3 up;                // along the slope
  int part = -1;
};

// Builds one ring. Corner i stands at the start of side i, as in ring_layout.h.
class RingBuild {
 public:
  RingBuild(const RingOfSides& spec, parts::Builder& builder) : spec_(spec), builder_(builder) {}
  void run();

 private:
  bool lay_out();
  void stop(std::string code, std::string text, std::string remedy) const;
  Polygon outline(bool inside, double z) const;
  void add_side(std::size_t i);
  void trim_edges(std::size_t i);
  Plane rim(const Side& side, bool top) const;
  void join_corner(std::size_t corner);
  void measure(std::size_t i);
  void add_floor();
  void add_measures();
  std::size_t count() const { return sides_.size(); }

  const RingOfSides& spec_;
  parts::Builder& builder_;
  Polygon plan_;
  std::vector<Side> sides_;
  std::vector<RingCorner> corners_;
};

void RingBuild::stop(std::string code, std::string text, std::string remedy) const {
  builder_.report(
      {Level::stop, std::move(code), {spec_.name}, std::move(text), std::move(remedy), spec_.span});
}

bool RingBuild::lay_out() {
  plan_ = spec_.plan.polygon();
  const std::vector<std::string> names = spec_.plan.edge_names();
  for (std::size_t i = 0; i < plan_.size(); ++i) {
    const RingSide* choice = spec_.sides.find(names[i]);
    Side side;
    side.name = names[i];
    side.stock = choice != nullptr && choice->stock.given ? *choice->stock : *spec_.stock;
    side.thick = builder_.project().stocks.find(side.stock)->thickness->mm;
    side.lean =
        choice != nullptr && choice->lean_out.given ? choice->lean_out->rad : spec_.lean_out->rad;
    const Vec2 from = plan_[i], to = plan_[(i + 1) % plan_.size()];
    side.along = unit(to - from);
    side.out = -left_of(side.along);
    const double c = std::cos(side.lean), s = std::sin(side.lean);
    const double z = spec_.stated_at.value == StatedAt::top ? spec_.height->mm : 0;
    side.outside = Plane::through(level(from, z), {side.out.x * c, side.out.y * c, -s});
    if (spec_.plan.measured.value == Measured::inside) side.outside.d += side.thick;
    side.inside = {-side.outside.n, -(side.outside.d - side.thick)};
    side.up = {side.out.x * s, side.out.y * s, c};
    sides_.push_back(side);
  }
  std::string fault;
  corners_ = resolve_corners(names, spec_.corners.value, *spec_.through, nullptr, fault);
  if (!fault.empty()) {
    stop("unclear-corner", fault, "Name in `through` one of the two sides of every butted corner.");
    return false;
  }
  for (const double z : {0.0, spec_.height->mm}) {
    if (!outline(true, z).empty() && !outline(false, z).empty()) continue;
    stop("no-inside", "The sides of " + spec_.name + " meet before they reach their full height.",
         "Less lean, less height or a larger plan.");
    return false;
  }
  return true;
}

// The outside or inside faces' outline at a height; empty when sides meet.
Polygon RingBuild::outline(bool inside, double z) const {
  std::vector<double> distances;
  for (std::size_t i = 0; i < count(); ++i) {
    const Side& side = sides_[i];
    const Plane face = inside ? side.inside.flipped() : side.outside;
    // Where the face stands at height z, outwards from the stated edge.
    const double at = (face.d - face.n.z * z) / std::cos(side.lean);
    distances.push_back(-(at - dot(side.out, plan_[i])));
  }
  const std::optional<Polygon> shape = offset_edges(plan_, distances);
  return shape ? *shape : Polygon{};
}

void RingBuild::add_side(std::size_t i) {
  Side& side = sides_[i];
  parts::Blank blank;
  blank.name = part_name(builder_, spec_, side.name);
  blank.stock = side.stock;
  const Vec3 along{side.along.x, side.along.y, 0};
  blank.place = frame(side.outside.n * side.outside.d, along, side.outside.n);
  Box box;
  for (const double z : {0.0, spec_.height->mm})
    for (const bool inside : {false, true}) {
      const Polygon shape = outline(inside, z);
      box.add(blank.place.local_point(level(shape[i], z)));
      box.add(blank.place.local_point(level(shape[(i + 1) % count()], z)));
    }
  double room = 0;
  for (const Side& each : sides_) room = std::max(room, 6 * each.thick);
  blank.body = Solid::box({box.low.x - room, box.low.y - room, -side.thick},
                          {box.high.x + room, box.high.y + room, 0});
  blank.side_names = {"left end", "right end", "foot edge", "top edge", "inside", "outside"};
  side.part = builder_.add(std::move(blank));
  trim_edges(i);
}

// A level rim lies in the plane of the foot or top; a square one is cut through that arris which
// leaves nothing past it.
Plane RingBuild::rim(const Side& side, bool top) const {
  const double z = top ? spec_.height->mm : 0;
  const Vec3 n = top ? Vec3{0, 0, 1} : Vec3{0, 0, -1};
  const RimEdges kind = top ? spec_.top_edge.value : spec_.foot_edge.value;
  if (kind == RimEdges::level) return {n, dot(n, Vec3{0, 0, z})};
  const Vec3 up = top ? side.up : -side.up;
  const auto arris = [&](const Plane& face) {  // a point of the face at height z
    return Vec3{side.out.x, side.out.y, 0} *
               ((face.d - face.n.z * z) / dot(face.n, Vec3{side.out.x, side.out.y, 0})) +
           Vec3{0, 0, z};
  };
  return {up, std::min(dot(up, arris(side.outside)), dot(up, arris(side.inside)))};
}

void RingBuild::trim_edges(std::size_t i) {
  const Side& side = sides_[i];
  builder_.cut_edge(side.part, rim(side, false), "foot edge", "");
  builder_.cut_edge(side.part, rim(side, true), "top edge", "");
}

void RingBuild::join_corner(std::size_t corner) {
  const std::size_t before = (corner + count() - 1) % count(), after = corner;
  const Side& a = sides_[before];
  const Side& b = sides_[after];
  const double dihedral = std::numbers::pi - angle_between(a.outside.n, b.outside.n);
  if (corners_[corner].kind == CornerKind::butt) {
    const Side& host = corners_[corner].before_through ? a : b;
    const Side& guest = corners_[corner].before_through ? b : a;
    builder_.cut_end(host.part, guest.outside, "end past " + guest.name, "");
    joinery::butt(builder_, {host.part, guest.part, host.inside, dihedral});
    return;
  }
  // Through the outside arris and the inside arris, which are parallel.
  const Vec3 arris = unit(cross(a.outside.n, b.outside.n));
  const Vec3 outer = level(outline(false, 0)[corner], 0),
             inner = level(outline(true, 0)[corner], 0);
  Vec3 n = unit(cross(arris, inner - outer));
  if (dot(n, Vec3{a.along.x, a.along.y, 0}) < 0) n = -n;
  joinery::mitre(builder_, {a.part, b.part, Plane::through(outer, n), dihedral});
}

void RingBuild::measure(std::size_t i) {
  const std::size_t next = (i + 1) % count();
  const char* names[2][2] = {{"outside, foot", "outside, top"}, {"inside, foot", "inside, top"}};
  for (const bool inside : {false, true})
    for (const bool top : {false, true}) {
      const Polygon shape = outline(inside, top ? spec_.height->mm : 0);
      builder_.measure(sides_[i].part, names[inside][top], norm(shape[next] - shape[i]));
    }
  builder_.measure(sides_[i].part, "height, plumb", spec_.height->mm);
  builder_.measure(sides_[i].part, "height, along the slope",
                   spec_.height->mm / std::cos(sides_[i].lean));
}

void RingBuild::add_floor() {
  const RingFloor& floor = spec_.floor;
  if (!floor.given) return;
  const double t = builder_.project().stocks.find(*floor.stock)->thickness->mm;
  const double low = floor.underside_at->mm, high = low + t;
  if (high > spec_.height->mm) {
    stop("floor-too-high", "The floor of " + spec_.name + " stands above its sides.",
         "Lower underside_at.");
    return;
  }
  Box box;
  for (const Vec2 p : outline(false, spec_.height->mm)) box.add(level(p, low));
  for (const Vec2 p : outline(false, 0)) box.add(level(p, high));
  parts::Blank blank;
  blank.name = part_name(builder_, spec_, "floor");
  blank.stock = *floor.stock;
  blank.body = Solid::box(box.low, box.high);
  blank.side_names = {"left end", "right end", "front edge", "back edge", "underside", "top"};
  const int part = builder_.add(std::move(blank));
  for (const Side& side : sides_) {
    Plane edge = side.inside.flipped();
    if (floor.into.given) edge.d += floor.into->mm - floor.clearance->mm;
    if (std::abs(side.out.x) > std::abs(side.out.y))
      builder_.cut_end(part, edge, "edge to " + side.name, "");
    else
      builder_.cut_edge(part, edge, "edge to " + side.name, "");
    if (!floor.into.given) {
      joinery::glued(builder_, side.part, part, side.inside, "butt");
      continue;
    }
    joinery::Seat seat;
    seat.host = side.part;
    seat.guest = part;
    seat.floor = {side.inside.n, side.inside.d - floor.into->mm};
    seat.seat = {{0, 0, 1}, low};
    seat.groove = true;
    seat.other_wall = {{0, 0, -1}, -high};
    seat.depth = floor.into->mm;
    joinery::seat(builder_, seat);
  }
}

void RingBuild::add_measures() {
  for (const bool top : {false, true}) {
    const double z = top ? spec_.height->mm : 0;
    parts::CheckLoop loop{std::string(top ? "top" : "foot") + " of " + spec_.name + ", outside",
                          {}};
    for (const Vec2 p : outline(false, z)) loop.corners.push_back(level(p, z));
    builder_.add_loop(std::move(loop));
  }
  for (const Side& side : sides_)
    if (std::abs(side.lean) > 1e-9)
      builder_.add_angle({"lean of " + side.name,
                          side.outside.n * side.outside.d,
                          {0, 0, 1},
                          side.up,
                          std::abs(side.lean)});
  Box box;
  for (const Side& side : sides_) {
    const Solid& body = builder_.part(side.part).body;
    const Rigid& place = builder_.part(side.part).place;
    for (const Vec3& v : body.vertices()) box.add(place.point(v));
  }
  builder_.add_length(
      {"width overall", box.low, {box.high.x, box.low.y, box.low.z}, "width", true});
  builder_.add_length(
      {"depth overall", box.low, {box.low.x, box.high.y, box.low.z}, "depth", true});
  builder_.add_length(
      {"height overall", box.low, {box.low.x, box.low.y, box.high.z}, "height", true});
}

void RingBuild::run() {
  if (!lay_out()) return;
  for (std::size_t i = 0; i < count(); ++i) add_side(i);
  for (std::size_t i = 0; i < count(); ++i) join_corner(i);
  for (std::size_t i = 0; i < count(); ++i) measure(i);
  add_floor();
  add_measures();
}

}  // namespace

void RingSide::fields(model::FieldVisitor& visit) {
  visit.text(may("stock", "stock of this side", "the ring's stock"), stock,
             model::Refers::to_stock);
  visit.angle(may("lean_out", "lean of this side from plumb", "the ring's lean"), lean_out,
              Range::degrees(-80, 80));
}

void RingFloor::fields(model::FieldVisitor& visit) {
  visit.text(may("stock", "what it is made of"), stock, model::Refers::to_stock);
  visit.length(may("underside_at", "height of its underside above the foot"), underside_at,
               Range::allowance());
  visit.length(
      may("into", "how deep it goes into grooves in the sides", "it ends against the sides"), into,
      Range::size());
  visit.length(may("clearance", "room left in the grooves, each side"), clearance,
               Range::allowance());
}

void RingFloor::check(model::Complaints& complaints) const {
  if (given && !stock.given)
    complaints.complain({span, "missing-field", "a floor without a stock",
                         "stock = the name of a [stock.NAME] table", "say what it is made of"});
}

void RingOfSides::fields(model::FieldVisitor& visit) {
  visit.table(need("plan", "the outline seen from above, its first side to the front"), plan);
  choose<StatedAt, 2>(visit, may("stated_at", "where the plan's sizes hold"), stated_at,
                      {"foot", "top"});
  visit.length(need("height", "plumb height"), height, Range::size());
  visit.angle(may("lean_out", "how far the sides lean out from plumb, going up; negative leans in"),
              lean_out, Range::degrees(-80, 80));
  visit.text(need("stock", "stock of every side that has none of its own"), stock,
             model::Refers::to_stock);
  choose<CornerKind, 2>(visit, may("corners", "joint of the corners"), corners, {"mitre", "butt"});
  visit.texts(may("through", "butted corners: the sides that run through"), through);
  choose<RimEdges, 2>(visit, may("foot_edge", "lower edges level, or square to each side"),
                      foot_edge, {"level", "square"});
  choose<RimEdges, 2>(visit, may("top_edge", "upper edges level, or square to each side"), top_edge,
                      {"level", "square"});
  visit.tables(may("side", "a side that differs, by its name"), sides);
  visit.table(may("floor", "a level floor between the sides"), floor);
}

void RingOfSides::check(model::Complaints& complaints) const {
  const std::vector<std::string> names = plan.edge_names();
  for (std::size_t i = 0; i < sides.size(); ++i)
    check_side(names, sides[i].name, sides[i].span, complaints);
  if (through.given)
    for (const std::string& side : *through) check_side(names, side, through.span, complaints);
}

void RingOfSides::build(parts::Builder& builder) const { RingBuild(*this, builder).run(); }

}  // namespace splay::constructs
