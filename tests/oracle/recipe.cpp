#include "oracle/recipe.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace oracle {

using splay::Polygon;
using splay::Rigid;
using splay::Solid;
using splay::Vec2;
using splay::Vec3;

PrismRecipe box_recipe(Vec3 low, Vec3 high) {
  return {{{low.x, low.y}, {high.x, low.y}, {high.x, high.y}, {low.x, high.y}}, low.z, high.z, {}};
}

namespace {

Solid prism(const PrismRecipe& recipe) {
  return Solid::prism(recipe.outline, recipe.low, recipe.high).transformed(recipe.frame);
}

// Parts in their own frame: 0..length along x, 0..width along y, 0..thickness along z.
class PartMaker {
 public:
  PartMaker(Random& random, Fence fence) : random_(random), fence_(fence) {
    length_ = random_.real(250, 1400);
    width_ = random_.real(40, 500);
    thickness_ = random_.real(12, 45);
  }

  PartRecipe make() {
    part_.blank = random_.chance(0.7) ? box_recipe({0, 0, 0}, {length_, width_, thickness_})
                                      : notched_blank();
    const int cutters = random_.whole(2, 6);
    for (int i = 0; i < cutters; ++i) add_cutter();
    const Vec3 origin{random_.real(-500, 500), random_.real(-500, 500), 0};
    const Vec3 along{1, random_.real(-1, 1), random_.real(-1, 1)};
    const Vec3 up{random_.real(-0.5, 0.5), 0.1, 1};
    part_.place = splay::frame(origin, along, up);
    return part_;
  }

 private:
  PrismRecipe notched_blank() {
    const double a = length_ * random_.real(0.2, 0.4), b = length_ * random_.real(0.6, 0.8);
    const double c = width_ * random_.real(0.3, 0.7);
    return {{{0, 0},
             {length_, 0},
             {length_, width_},
             {b, width_},
             {b, c},
             {a, c},
             {a, width_},
             {0, width_}},
            0,
            thickness_,
            {}};
  }

  // The value, or one a little beside it, as a badly zeroed fence leaves it.
  double near(double value) {
    const double pick = random_.real(0, 1), small = random_.real(1e-8, 2e-7);
    const double sign = random_.chance(0.5) ? 1 : -1;
    // Doublings, so that no two of them differ by less than the least.
    const double large = 4e-6 * std::pow(2, random_.whole(0, 7));
    const double middling = random_.real(4e-7, 4e-6);
    if (pick < 0.4) return value;
    if (pick < 0.6) {
      part_.doubtful = true;
      return fence_ == Fence::exact ? value : value + sign * small;
    }
    if (pick < 0.8 && fence_ == Fence::doubtful) return value + sign * middling;
    return value + sign * large;
  }

  void add_cutter() {
    switch (random_.whole(0, 5)) {
      case 0:
        return housing();
      case 1:
        return rabbet();
      case 2:
        return skew_end();
      case 3:
        return hole();
      case 4:
        return mortise();
      default:
        return taper();
    }
  }

  void add(PrismRecipe cutter) { part_.cutters.push_back(std::move(cutter)); }

  void housing() {
    const double at = random_.chance(0.3) ? near(last_station_) : random_.real(0, length_);
    const double broad = random_.real(6, 30), floor = near(thickness_ * 0.5);
    last_station_ = at + broad;
    const double from = random_.chance(0.5) ? -5 : width_ * random_.real(0.1, 0.5);
    add(box_recipe({at, from, floor}, {at + broad, width_ + 5, near(thickness_) + 3}));
  }

  void rabbet() {
    const double floor = near(thickness_ * 0.5), wall = near(width_ * 0.8);
    const double top = random_.chance(0.5) ? near(thickness_) : thickness_ + 4;
    add(box_recipe({-5, wall, floor}, {length_ + 5, near(width_), top}));
  }

  void skew_end() {
    const double lean = random_.real(-0.6, 0.6), twist = random_.real(-0.4, 0.4);
    const Vec3 normal = splay::unit({1, lean, twist});
    PrismRecipe cutter = box_recipe({-2000, -2000, 0}, {2000, 2000, 2000});
    cutter.frame =
        splay::frame({length_ * random_.real(0.85, 0.98), width_ / 2, 0}, {0, 1, -lean}, normal);
    add(std::move(cutter));
  }

  void hole() {
    const int facets = random_.whole(5, 16);
    const double radius = width_ * random_.real(0.05, 0.3);
    const Vec2 centre{random_.real(0, length_), random_.real(0, width_)};
    PrismRecipe cutter{{}, random_.chance(0.5) ? -2 : near(thickness_ * 0.5), thickness_ + 2, {}};
    for (int i = 0; i < facets; ++i) {
      const double t = 2 * std::numbers::pi * i / facets;
      cutter.outline.push_back(centre + Vec2{std::cos(t), std::sin(t)} * radius);
    }
    add(std::move(cutter));
  }

  void mortise() {
    const double at = length_ * random_.real(0.1, 0.7), slope = random_.real(-0.3, 0.3);
    PrismRecipe cutter = box_recipe({0, thickness_ * 0.25, -1}, {50, thickness_ * 0.75, 30});
    cutter.frame = splay::frame({at, 0, 0}, {1, slope, 0}, {-slope, 1, 0});
    cutter.frame.origin = {at, 0, thickness_};
    add(std::move(cutter));
  }

  void taper() {
    // Slighter ones than 1e-5 (0.01 mm in a metre) OpenCASCADE sometimes cuts wrongly.
    const double least = fence_ == Fence::doubtful ? -7 : -5;
    const double slope =
        random_.chance(0.3) ? std::pow(10, random_.real(least, -3)) : random_.real(0.01, 0.1);
    part_.slight_angle = std::min(part_.slight_angle, slope);
    PrismRecipe cutter = box_recipe({-3000, 0, -3000}, {3000, 3000, 3000});
    cutter.frame = splay::frame({random_.chance(0.5) ? 0 : length_ * 0.3, width_, 0},
                                {1, -slope, 0}, {0, 0, 1});
    add(std::move(cutter));
  }

  Random& random_;
  Fence fence_;
  PartRecipe part_;
  double length_ = 0, width_ = 0, thickness_ = 0, last_station_ = 100;
};

}  // namespace

std::vector<PartRecipe> random_parts(std::uint64_t seed, Fence fence) {
  Random random(seed);
  std::vector<PartRecipe> parts;
  const int count = random.whole(2, 4);
  for (int i = 0; i < count; ++i) parts.push_back(PartMaker(random, fence).make());
  return parts;
}

Solid make_solid(const PartRecipe& recipe) {
  Solid solid = prism(recipe.blank);
  for (const PrismRecipe& cutter : recipe.cutters) solid.subtract(prism(cutter));
  return solid.transformed(recipe.place);
}

std::vector<Solid> make_solids(const std::vector<PartRecipe>& recipes) {
  std::vector<Solid> solids;
  for (const PartRecipe& recipe : recipes) solids.push_back(make_solid(recipe));
  return solids;
}

}  // namespace oracle
