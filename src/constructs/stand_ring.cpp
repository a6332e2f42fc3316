// Legs of a stand on a ring, and braces between legs by their names.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "constructs/lap_angles.h"
#include "constructs/stand_build.h"
#include "joinery/half_lap.h"

namespace splay::constructs {

// Leg i, counted anticlockwise from the front: the broad faces look along the ring. The show faces
// of legs on the left are mirror images of those on the right.
StandLegSetting StandBuild::ring_leg(std::size_t i) const {
  const double step = 2 * std::numbers::pi / *spec_.count;
  const double turn = -std::numbers::pi / 2 + step * static_cast<double>(i);
  const bool mirrored = 2 * static_cast<int>(i) > *spec_.count;
  const Vec3 out{std::cos(turn), std::sin(turn), 0};
  const Vec3 side = cross(mirrored ? -out : out, {0, 0, -1});
  const auto edge = [&](double z) {
    return Vec3{body_.middle.x, body_.middle.y, z} + out * body_.radius_at(z) +
           side * (leg_thickness() / 2);
  };
  const Vec3 foot = edge(body_.foot);
  return {spec_.leg_names()[i],
          foot,
          edge(body_.top),
          -out,
          Plane::through(foot, side),
          mirrored ? "left face" : "right face",
          mirrored ? "right face" : "left face"};
}

void StandBuild::add_ring_measures() {
  Box over_all;
  for (const bool top : {false, true}) {
    const double z = top ? body_.top : body_.foot;
    const std::string where = top ? "top" : "foot";
    parts::CheckLoop loop{where + " of " + spec_.name + ", outer edges of the legs", {}};
    Box box;
    for (std::size_t i = 0; i < legs_.size(); ++i) {
      const StandLegSetting leg = ring_leg(i);
      const Vec3 corner = top ? leg.top : leg.foot;
      loop.corners.push_back(corner - leg.face.n * (leg_thickness() / 2));
      for (const Vec3 p : {corner, corner - leg.face.n * leg_thickness()}) box.add(p);
    }
    builder_.add_loop(std::move(loop));
    const Vec3 right{box.high.x, box.low.y, z};
    builder_.add_length({spec_.name + ", width over the legs, " + where, box.low, right,
                         "width over the legs, " + where, true});
    builder_.add_length({spec_.name + ", depth over the legs, " + where, right, box.high,
                         "depth over the legs, " + where, true});
    over_all.add(box.low);
    over_all.add(box.high);
  }
  const Vec3 low{over_all.high.x, over_all.low.y, body_.foot};
  builder_.add_length({spec_.name + ", height", low, {low.x, low.y, body_.top}, "height", true});
}

const NamedBrace* StandBuild::find_brace(const std::string& name) const {
  const auto found = std::find_if(between_.begin(), between_.end(),
                                  [&](const NamedBrace& each) { return each.name == name; });
  return found == between_.end() ? nullptr : &*found;
}

// The part of the brace that another one ends in.
int StandBuild::host_brace(const StandBrace& choice, std::size_t end) const {
  const NamedBrace* host = find_brace((*choice.between)[end]);
  return host == nullptr ? -1 : host->brace.part;
}

// The end of a brace's centre line: the middle of a leg, or of a brace before it.
Vec3 StandBuild::brace_end(const StandBrace& choice, std::size_t end) {
  const std::string& name = (*choice.between)[end];
  if (const NamedBrace* host = find_brace(name)) return (host->brace.from + host->brace.to) * 0.5;
  const std::vector<std::string> names = spec_.leg_names();
  const auto leg =
      static_cast<std::size_t>(std::find(names.begin(), names.end(), name) - names.begin());
  return leg_middle(leg, end == 0 ? choice.at->mm : choice.second_height());
}

void StandBuild::add_between(const StandBrace& choice) {
  const std::vector<std::string> names = spec_.leg_names();
  PlacedBrace brace;
  std::size_t* const legs[] = {&brace.first, &brace.second};
  for (std::size_t end = 0; end < 2; ++end) {
    const auto found = std::find(names.begin(), names.end(), (*choice.between)[end]);
    *legs[end] = static_cast<std::size_t>(found - names.begin());
    if (found == names.end() && find_brace((*choice.between)[end]) == nullptr) {
      stop("no-joint",
           choice.name + " would end in " + (*choice.between)[end] + ", which could not be built.",
           "Mend that brace first.", choice.between.span);
      return;
    }
  }
  brace.from = brace_end(choice, 0);
  brace.to = brace_end(choice, 1);
  const bool flat = choice.lies.value == BraceLies::flat;
  const Vec3 level = cross(brace.to - brace.from, {0, 0, 1});
  brace = add_brace(choice, choice.name, brace, flat ? Vec3{0, 0, 1} : level);
  between_.push_back({choice.name, brace});
  for (const std::string& other : *choice.crosses)
    if (const NamedBrace* crossed = find_brace(other)) lap_crossing(choice, crossed->brace, brace);
  for (const std::size_t leg : {brace.first, brace.second})
    if (leg < legs_.size()) lap_leg(choice, brace, leg);
  if (const NamedBrace* host = find_brace(choice.between->back()))
    lap_into(choice, brace, host->brace);
}

// A brace that ends in the middle of another: flush with its far face.
void StandBuild::lap_into(const StandBrace& choice, const PlacedBrace& brace,
                          const PlacedBrace& other) {
  joinery::HalfLapKind lap;
  lap.form.value = joinery::LapForm::tee;
  lap.share.value = *choice.share;
  const std::string fault = lap.make(builder_, other.part, brace.part);
  if (!fault.empty()) {
    stop("no-joint", fault, "Bring both braces to one height.", choice.span);
    return;
  }
  state_lap(builder_, other.part, brace.part);
  state_lap(builder_, brace.part, other.part);
}

}  // namespace splay::constructs
