// The plain top of a table.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/tolerance.h"
#include "constructs/resting.h"
#include "constructs/table_build.h"

namespace splay::constructs {

// Seen from above, anticlockwise: past the legs' outermost corners at their head by the overhang.
std::vector<Vec2> TableBuild::top_outline() const {
  const TableTop& top = spec_.top;
  const double over = top.overhang->mm;
  std::vector<Vec2> points;
  for (const PlacedLeg& leg : legs_)
    for (const Vec3 p : corners(leg, head_)) points.push_back({p.x - middle_.x, p.y - middle_.y});
  const auto reach = [&](Vec2 way) {
    double most = 0;
    for (const Vec2 p : points) most = std::max(most, dot(p, way));
    return most + over;
  };
  const Vec2 centre{middle_.x, middle_.y};
  if (top.shape.value == TopShape::rectangle) {
    const double right = reach({1, 0}), left = reach({-1, 0});
    const double back = reach({0, 1}), front = reach({0, -1});
    return {centre + Vec2{-left, -front}, centre + Vec2{right, -front}, centre + Vec2{right, back},
            centre + Vec2{-left, back}};
  }
  const int sides = *top.sides;
  const double step = 2 * std::numbers::pi / sides;
  const auto way = [&](double i) {
    const double turn = -std::numbers::pi / 2 + step * i;
    return Vec2{std::cos(turn), std::sin(turn)};
  };
  double apothem = 0;
  for (int i = 0; i < sides; ++i) apothem = std::max(apothem, reach(way(i + 0.5)));
  std::vector<Vec2> outline;
  outline.reserve(static_cast<std::size_t>(sides));
  for (int i = 0; i < sides; ++i)
    outline.push_back(centre + way(i) * (apothem / std::cos(step / 2)));
  return outline;
}

namespace {

// Cuts every side of the outline that isn't one of the blank's own.
void cut_outline(parts::Builder& builder, int part, const std::vector<Vec2>& outline) {
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Vec2 a = outline[i], b = outline[(i + 1) % outline.size()];
    const Vec2 out = -left_of(unit(b - a));
    const Plane plane{{out.x, out.y, 0}, dot(out, a)};
    const Plane here = builder.part(part).place.local_plane(plane);
    if (builder.part(part).body.extent(here.n)[1] < here.d + tolerance::on_plane) continue;
    const std::string name = "side " + std::to_string(i + 1);
    if (std::abs(here.n.x) >= std::abs(here.n.y))
      builder.cut_end(part, plane, name, "");
    else
      builder.cut_edge(part, plane, name, "");
  }
}

}  // namespace

void TableBuild::add_top() {
  const std::vector<Vec2> outline = top_outline();
  Box box;
  for (const Vec2 p : outline) box.add({p.x, p.y, head_});
  parts::Blank blank;
  blank.name = part_name(builder_, spec_, "top");
  blank.stock = *spec_.top.stock;
  const bool across = box.size().y > box.size().x + tolerance::weld;
  blank.place = frame({0, 0, head_}, across ? Vec3{0, 1, 0} : Vec3{1, 0, 0}, {0, 0, 1});
  Box local;
  for (const Vec2 p : outline) local.add(blank.place.local_point({p.x, p.y, head_}));
  local.high.z = top_thickness_;
  blank.body = Solid::box(local.low, local.high);
  blank.side_names = across ? std::array<std::string, 6>{"front end", "back end",  "right edge",
                                                         "left edge", "underside", "top"}
                            : std::array<std::string, 6>{"left end",  "right end", "front edge",
                                                         "back edge", "underside", "top"};
  const int part = builder_.add(std::move(blank));
  cut_outline(builder_, part, outline);
  const std::vector<int> held =
      add_fasteners(builder_, spec_.top.fasteners, {spec_.name, part, head_});
  for (const PlacedLeg& leg : legs_) rest(builder_, leg.part, part, head_);
  for (const int apron : aprons_)
    if (std::ranges::find(held, apron) == held.end()) rest(builder_, apron, part, head_);
}

}  // namespace splay::constructs
