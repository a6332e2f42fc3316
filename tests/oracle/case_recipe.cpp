// Assemblies: a case drawn as its front elevation, every part a prism through the depth.
#include <cmath>
#include <numbers>

#include "oracle/recipe.h"

namespace oracle {
namespace {

using splay::Polygon;
using splay::Rigid;
using splay::Vec2;
using splay::Vec3;

// Outline x, y is the elevation's x, z; the prism's z runs along -y.
const Rigid kElevation{{1, 0, 0}, {0, 0, 1}, {0, -1, 0}, {}};

PrismRecipe through(Polygon outline, double front, double back) {
  return {std::move(outline), -back, -front, kElevation};
}

struct CaseSizes {
  double width = 0, height = 0, depth = 0, thickness = 0, housing = 0;
  double lean_left = 0, lean_right = 0;  // tangents, outwards at the top

  // x of a wall's face at a height, `inside` mm in from the outside face.
  double left(double z, double inside) const {
    return -lean_left * z + inside * std::hypot(1, lean_left);
  }
  double right(double z, double inside) const {
    return width + lean_right * z - inside * std::hypot(1, lean_right);
  }
  // A level slab that reaches `housing` mm into the walls.
  Polygon slab(double low, double high, double into) const {
    const double inside = thickness - into;
    return {{left(low, inside), low},
            {right(low, inside), low},
            {right(high, inside), high},
            {left(high, inside), high}};
  }
};

CaseSizes random_sizes(Random& random) {
  CaseSizes s;
  s.width = random.real(400, 1200);
  s.height = random.real(300, 900);
  s.depth = random.real(150, 450);
  s.thickness = random.real(15, 25);
  s.housing = random.chance(0.3) ? 0 : random.real(4, 9);
  s.lean_left = random.chance(0.3) ? 0 : random.real(-0.1, 0.25);
  s.lean_right = random.chance(0.3) ? s.lean_left : random.real(-0.1, 0.25);
  return s;
}

PartRecipe wall(const CaseSizes& s, bool left) {
  const double top = s.height;
  Polygon outline = left ? Polygon{{s.left(0, 0), 0},
                                   {s.left(0, s.thickness), 0},
                                   {s.left(top, s.thickness), top},
                                   {s.left(top, 0), top}}
                         : Polygon{{s.right(0, s.thickness), 0},
                                   {s.right(0, 0), 0},
                                   {s.right(top, 0), top},
                                   {s.right(top, s.thickness), top}};
  return {through(std::move(outline), 0, s.depth), {}, {}, false, 1};
}

PartRecipe leg(const CaseSizes& s, Random& random, bool left) {
  // Splayed both ways and tapered; its top is cut level under the case.
  const double splay_x = random.real(0.05, 0.3) * (left ? -1 : 1), splay_y = random.real(-0.3, 0.3);
  const Vec3 down = splay::unit({splay_x, splay_y, -1});
  const double foot = random.real(20, 30), head = random.real(32, 45), length = 300;
  PartRecipe part;
  part.blank = box_recipe({-head / 2, -head / 2, -60}, {head / 2, head / 2, length});
  const Rigid place =
      splay::frame({left ? s.thickness / 2 : s.width - s.thickness / 2, s.depth / 2, 0},
                   cross(Vec3{0, 1, 0}, down), down);
  part.place = place;
  for (int k = 0; k < 2; ++k) {
    const double slope = (head - foot) / 2 / length;
    PrismRecipe cutter = box_recipe({-500, 0, -500}, {500, 500, 500});
    cutter.frame = splay::frame({k == 0 ? 0 : head / 2, k == 0 ? head / 2 : 0, 0},
                                k == 0 ? Vec3{1, 0, 0} : Vec3{0, -1, 0},
                                k == 0 ? Vec3{0, -slope, 1} : Vec3{-slope, 0, 1});
    part.cutters.push_back(cutter);
  }
  PrismRecipe level = box_recipe({-2000, -2000, 0}, {2000, 2000, 2000});
  level.frame = place.inverse();
  part.cutters.push_back(level);
  PrismRecipe floor = box_recipe({-2000, -2000, -2000}, {2000, 2000, -length * 0.8});
  floor.frame = place.inverse();
  part.cutters.push_back(floor);
  return part;
}

PrismRecipe round_hole(Vec2 centre, double radius, int facets, double front, double back) {
  PrismRecipe hole = through({}, front, back);
  for (int i = 0; i < facets; ++i) {
    const double t = 2 * std::numbers::pi * i / facets;
    hole.outline.push_back(centre + Vec2{std::cos(t), std::sin(t)} * radius);
  }
  return hole;
}

}  // namespace

std::vector<PartRecipe> random_case(std::uint64_t seed, int shelves) {
  Random random(seed);
  const CaseSizes s = random_sizes(random);
  std::vector<PartRecipe> parts = {wall(s, true), wall(s, false)};
  const double pitch = s.height / (shelves + 1);
  for (int i = 0; i < shelves; ++i) {
    const double z = pitch * (i + 1) + random.real(-0.2, 0.2) * pitch;
    const double front = random.chance(0.5) ? 0 : random.real(5, 30);
    const double back = s.depth - random.real(0, 12);
    PartRecipe shelf{through(s.slab(z, z + s.thickness, s.housing), front, back), {}, {}, false, 1};
    if (s.housing > 0) {
      for (PartRecipe* side : {&parts[0], &parts[1]}) side->cutters.push_back(shelf.blank);
    }
    if (random.chance(0.4)) {  // a notch in the front edge
      const double x = s.width * random.real(0.3, 0.6);
      shelf.cutters.push_back(through({{x, z - 1}, {x + 60, z - 1}, {x + 60, z + 60}, {x, z + 60}},
                                      front - 1, front + 25));
    }
    parts.push_back(std::move(shelf));
  }
  const double set_down = random.chance(0.5) ? 0 : 10;
  PartRecipe back{
      through(s.slab(set_down, s.height - 20, 0), s.depth, s.depth + 6), {}, {}, false, 1};
  back.cutters.push_back(
      round_hole({s.width / 2, s.height / 2}, 30, random.whole(6, 12), s.depth - 1, s.depth + 7));
  parts.push_back(std::move(back));
  parts.push_back(leg(s, random, random.chance(0.5)));
  return parts;
}

std::vector<PartRecipe> random_clashing_case(std::uint64_t seed) {
  std::vector<PartRecipe> parts = random_case(seed, 2);
  Random random(seed + 1000);
  for (PartRecipe& part : parts) {
    if (random.chance(0.5)) continue;
    const double size = std::pow(10, random.real(-3, 1));
    part.place.origin =
        part.place.origin + Vec3{random.real(-1, 1), random.real(-1, 1), random.real(-1, 1)} * size;
  }
  return parts;
}

std::vector<PartRecipe> many_parts(int count) {
  std::vector<PartRecipe> parts;
  for (std::uint64_t seed = 1; static_cast<int>(parts.size()) < count; ++seed) {
    const int columns = static_cast<int>(std::ceil(std::sqrt(count / 8.0)));
    const int bay = static_cast<int>(seed) - 1;
    const Vec3 shift{1700.0 * (bay % columns), 0, 1300.0 * (bay / columns)};
    for (PartRecipe part : random_case(seed, 5)) {
      if (static_cast<int>(parts.size()) == count) break;
      part.place.origin = part.place.origin + shift;
      parts.push_back(std::move(part));
    }
  }
  return parts;
}

}  // namespace oracle
