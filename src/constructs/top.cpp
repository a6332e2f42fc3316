#include "constructs/top.h"

#include <algorithm>
#include <cmath>

#include "base/tolerance.h"
#include "constructs/top_build.h"

namespace splay::constructs {

bool TopBuild::stop(std::string code, std::string text, std::string remedy, SourceSpan span) const {
  refuse(builder_, {std::move(code), spec_.name, std::move(text), std::move(remedy), span});
  return false;
}

// A board between two corners seen from above, its grain across the front or front to back.
int TopBuild::add_slab(const std::string& name, const std::string& stock, Vec2 low, Vec2 high,
                       bool across) {
  parts::Blank blank;
  blank.name = part_name(builder_, spec_, name);
  blank.stock = stock;
  blank.place = frame({0, 0, under_}, across ? Vec3{1, 0, 0} : Vec3{0, 1, 0}, {0, 0, 1});
  Box box;
  box.add(blank.place.local_point({low.x, low.y, under_}));
  box.add(blank.place.local_point({high.x, high.y, under_ + thick_}));
  blank.body = Solid::box(box.low, box.high);
  blank.side_names = across ? std::array<std::string, 6>{"left end",  "right end", "front edge",
                                                         "back edge", "underside", "top"}
                            : std::array<std::string, 6>{"front end", "back end",  "right edge",
                                                         "left edge", "underside", "top"};
  return builder_.add(std::move(blank));
}

Plane TopBuild::edge(const TopEdge& side) const {
  const Vec2 out = side.out();
  return {{out.x, out.y, 0}, dot(out, side.a)};
}

// Through the line that ends the plumb part of the edge, turned in below or above it.
Plane TopBuild::bevel(const TopEdge& side) const {
  const EdgeBevel& bevel = spec_.bevel;
  const bool below = bevel.at.value == BevelAt::underside;
  const double z = below ? under_ + bevel.height->mm : under_ + thick_ - bevel.height->mm;
  const double c = std::cos(bevel.angle->rad), s = std::sin(bevel.angle->rad);
  const Vec2 out = side.out();
  return Plane::through({side.a.x, side.a.y, z}, {out.x * c, out.y * c, below ? -s : s});
}

bool TopBuild::bevelled(const TopEdge& side) const {
  if (!spec_.bevel.given) return false;
  const std::vector<std::string>& sides = *spec_.bevel.sides;
  return sides.empty() || std::find(sides.begin(), sides.end(), side.name) != sides.end();
}

bool TopBuild::bites(int part, const Plane& plane) const {
  const Plane local = builder_.part(part).place.local_plane(plane);
  const Solid& body = builder_.part(part).body;
  return !body.empty() && body.extent(local.n)[1] > local.d + tolerance::on_plane;
}

// The facets of one curve: the plumb ones first, then the bevel's.
void TopBuild::trim_curve(int part, int curve) {
  for (const bool slanted : {false, true}) {
    std::vector<Plane> facets;
    std::string name;
    for (const TopEdge& side : edges_) {
      if (side.curve != curve || (slanted && !bevelled(side))) continue;
      const Plane plane = slanted ? bevel(side) : edge(side);
      if (!bites(part, plane)) continue;
      facets.push_back(plane);
      name = (slanted ? "bevel of " : "curve of ") + side.name;
    }
    for (const Plane& facet : facets)
      builder_.cut_region(part, parts::OperationKind::outline, {facet.flipped()}, name, "",
                          &facet == &facets.back() ? facets : std::vector<Plane>{});
  }
}

// The outline is convex, so that each of its sides may cut every part.
void TopBuild::trim(int part) {
  const auto cut = [&](const Plane& plane, const std::string& name) {
    if (!bites(part, plane)) return;
    const Vec3 local = builder_.part(part).place.local_direction(plane.n);
    if (std::abs(local.x) >= std::abs(local.y))
      builder_.cut_end(part, plane, name, "");
    else
      builder_.cut_edge(part, plane, name, "");
  };
  for (const TopEdge& side : edges_)
    if (side.curve < 0) cut(edge(side), side.name + " side");
  for (const TopEdge& side : edges_)
    if (side.curve < 0 && bevelled(side)) cut(bevel(side), "bevel of the " + side.name + " side");
  for (int curve = 0; curve < curves_; ++curve) trim_curve(part, curve);
}

void TopBuild::add_measures(int part) {
  const FigureStyle style = builder_.project().job.figures();
  if (spec_.diameter.given)
    builder_.measure(part, "diameter", high_.x - low_.x);
  else
    for (const TopEdge& side : edges_)
      if (side.curve < 0) builder_.measure(part, side.name + " side", norm(side.b - side.a));
  if (spec_.corner_radius.given)
    builder_.remark(part, "Corners to a radius of " + style.with_unit(spec_.corner_radius->mm));
  if (!spec_.diameter.given && !spec_.corner_radius.given) {
    parts::CheckLoop loop{"outline of " + spec_.name, {}};
    for (const TopEdge& side : edges_)
      loop.corners.push_back({side.a.x, side.a.y, under_ + thick_});
    builder_.add_loop(std::move(loop));
  }
  const double z = under_ + thick_;
  const Vec3 corner{low_.x, low_.y, z};
  const std::string width = spec_.name + " width", depth = spec_.name + " depth";
  builder_.add_length({width, corner, {high_.x, low_.y, z}, width, true});
  builder_.add_length({depth, corner, {low_.x, high_.y, z}, depth, true});
}

void TopBuild::run() {
  if (!lay_out()) return;
  int panel = builder_.count();
  if (spec_.breadboard.given) {
    if (!build_with_ends()) return;
  } else {
    const Vec2 room{10, 10};
    panel = add_slab("top", *spec_.stock, low_ - room, high_ + room,
                     spec_.grain.value == TopGrain::across);
    trim(panel);
  }
  add_measures(panel);
  add_fasteners(builder_, spec_.fasteners, {spec_.name, panel, under_});
}

void Top::build(parts::Builder& builder) const { TopBuild(*this, builder).run(); }

}  // namespace splay::constructs
