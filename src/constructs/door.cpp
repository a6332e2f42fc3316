#include "constructs/door.h"

#include <algorithm>
#include <cmath>

#include "constructs/door_build.h"
#include "constructs/play.h"
#include "constructs/section.h"
#include "joinery/draft.h"

namespace splay::constructs {

Vec2 edge_direction(const Polygon& polygon, std::size_t i) {
  return unit(polygon[(i + 1) % polygon.size()] - polygon[i]);
}

Vec2 edge_out(const Polygon& polygon, std::size_t i) {
  return -left_of(edge_direction(polygon, i));
}

std::vector<std::string> edge_words(const Polygon& polygon) {
  std::vector<std::string> words;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Vec2 out = edge_out(polygon, i);
    const bool sideways = std::abs(out.x) >= std::abs(out.y);
    words.emplace_back(sideways ? (out.x < 0 ? "left" : "right") : (out.y < 0 ? "bottom" : "top"));
  }
  const std::vector<std::string> plain = words;
  for (std::size_t i = 0; i < words.size(); ++i)
    if (std::count(plain.begin(), plain.end(), plain[i]) > 1)
      words[i] += " " + std::to_string(std::count(
                            plain.begin(), plain.begin() + static_cast<long>(i) + 1, plain[i]));
  return words;
}

bool DoorBuild::stop(std::string code, std::string text, std::string remedy,
                     SourceSpan span) const {
  refuse(builder_, {std::move(code), spec_.name, std::move(text), std::move(remedy),
                    span.line > 0 ? span : spec_.span});
  return false;
}

std::string DoorBuild::figure(double mm) const { return joinery::figure(builder_, mm); }

std::string DoorBuild::words(const DoorLeaf& leaf) const {
  return leaf.word.empty() ? spec_.name : "the " + leaf.word + "leaf of " + spec_.name;
}

Plane DoorBuild::plane(Vec3 n, Vec3 through) const {
  return opening_.place.plane(Plane::through(through, n));
}

// A leaf no larger than its share of the opening. Across the grain of its stiles or rails, or of
// all of a slab; a solid panel swells in its own groove or rebate.
double DoorBuild::swells(bool across) const {
  const model::Project& project = builder_.project();
  if (spec_.slab.given) {
    const bool up = spec_.slab.grain.value == SlabGrain::up;
    if (up != across) return 0;
    double low = 1e300, high = -1e300;
    for (const Vec2 p : opening_.shape) {
      low = std::min(low, across ? p.x : p.y);
      high = std::max(high, across ? p.x : p.y);
    }
    return swelling(project, *spec_.slab.stock, (high - low) / (across ? spec_.leaves.value : 1));
  }
  double widest = spec_.frame.width->mm;
  for (std::size_t i = 0; i < spec_.frame.members.size(); ++i)
    if (spec_.frame.members[i].width.given)
      widest = std::max(widest, spec_.frame.members[i].width->mm);
  return swelling(project, *spec_.frame.stock, 2 * widest);
}

double DoorBuild::gap_at(Vec2 out) const {
  const model::Given<Length>& gap = spec_.gap.given_for(out);
  const bool sideways = std::abs(out.x) >= std::abs(out.y);
  return gap.given ? gap->mm : std::max(gap->mm, one_gap(builder_.project(), swells(sideways)));
}

bool DoorBuild::lay_leaves(const Polygon& whole) {
  if (spec_.leaves.value == 1) {
    leaves_.push_back({"", spec_.hung.value == HungOn::left, whole, {}, {}, {}, {}});
    return true;
  }
  const model::Given<Length>& asked = spec_.meeting_gap;
  const double meeting =
      asked.given ? asked->mm : std::max(asked->mm, both_gaps(builder_.project(), swells(true)));
  const auto [low, high] =
      std::minmax_element(whole.begin(), whole.end(), [](Vec2 a, Vec2 b) { return a.x < b.x; });
  const double middle = (low->x + high->x) / 2, half = meeting / 2;
  for (const bool left : {true, false}) {
    const double sense = left ? 1 : -1;
    Polygon shape = clipped(whole, {-sense, 0}, half - sense * middle);
    if (shape.size() < 3)
      return stop("no-door", "No leaf of " + spec_.name + " is left beside the meeting gap.",
                  "A smaller gap, or a single door.", spec_.meeting_gap.span);
    leaves_.push_back({left ? "left " : "right ", left, std::move(shape), {}, {}, {}, {}});
  }
  return true;
}

bool DoorBuild::lay_out() {
  const auto opening = find_opening(builder_, spec_, spec_);
  if (!opening) return false;
  opening_ = *opening;
  thick_ = stock_thickness(builder_, spec_.slab.given ? *spec_.slab.stock : *spec_.frame.stock);
  const double face = over() ? -thick_ : spec_.set_back->mm;
  y_ = {face, face + thick_};
  std::vector<double> inwards;
  for (std::size_t i = 0; i < opening_.shape.size(); ++i) {
    const Vec2 out = edge_out(opening_.shape, i);
    inwards.push_back(over() ? -spec_.overlap.for_edge(out) : gap_at(out));
  }
  const auto whole = offset_edges(opening_.shape, inwards);
  if (!whole)
    return stop("no-door", "The gaps of " + spec_.name + " leave no door in its opening.",
                "Smaller gaps.", spec_.gap.span);
  return lay_leaves(*whole);
}

void DoorBuild::add_measures(const DoorLeaf& leaf) {
  const Polygon& shape = leaf.shape;
  Vec2 low = shape.front(), high = low;
  for (const Vec2 p : shape) {
    low = {std::min(low.x, p.x), std::min(low.y, p.y)};
    high = {std::max(high.x, p.x), std::max(high.y, p.y)};
  }
  const auto at = [&](double x, double z) { return opening_.place.point({x, y_[0], z}); };
  if (spec_.slab.given) {  // a frame states its own
    parts::CheckLoop loop{"outside of " + words(leaf), {}};
    for (const Vec2 p : shape) loop.corners.push_back(opening_.place.point(lift(p, y_[0])));
    if (!spec_.corner_radius.given) builder_.add_loop(std::move(loop));
    const std::string name = spec_.name + " " + leaf.word;
    builder_.add_length(
        {name + "width", at(low.x, low.y), at(high.x, low.y), name + "width", true});
    builder_.add_length(
        {name + "height", at(low.x, low.y), at(low.x, high.y), name + "height", true});
  }
  const int part = leaf.parts.front();
  builder_.measure(part, "door, outside width", high.x - low.x);
  builder_.measure(part, "door, outside height", high.y - low.y);
}

void DoorBuild::run() {
  if (!lay_out()) return;
  for (DoorLeaf& leaf : leaves_)
    if (!lay_hinges(leaf) || !lay_line(leaf) || !check_line(leaf)) return;
  for (DoorLeaf& leaf : leaves_)
    if (!add_leaf(leaf)) return;
  for (DoorLeaf& leaf : leaves_) {
    if (!hang(leaf)) return;
    add_measures(leaf);
  }
  if (leaves_.size() == 2 && opening_.item < 0)
    builder_.add_joint({spec_.name + " leaves",
                        "meeting leaves",
                        {leaves_[0].parts.front(), leaves_[1].parts.front()},
                        0,
                        {}});
  for (const DoorLeaf& leaf : leaves_) {
    parts::Swing swing;
    swing.name = words(leaf);
    swing.parts = leaf.parts;
    swing.at = opening_.place.point(leaf.line_at);
    swing.axis = opening_.place.direction(leaf.line_along);
    swing.clockwise = leaf.left;
    swing.opens = spec_.opens->rad;
    swing.span = spec_.opens.given ? spec_.opens.span : spec_.span;
    builder_.add_swing(std::move(swing));
  }
}

void Door::build(parts::Builder& builder) const { DoorBuild(*this, builder).run(); }

}  // namespace splay::constructs
