#include "fabrication/sound_slabs.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "base/index.h"
#include "fabrication/glue_undone.h"
#include "fabrication/plan.h"
#include "fabrication/sound_shared.h"

namespace splay::fabrication {

namespace {

// Shear modulus to E along the grain: 0.05 to 0.1 for most woods (Wood Handbook, Table 5-1) and
// plywoods, more for boards of chips and fibres; and E across the grain, 0.04 to 0.1. From memory.
constexpr double shear_part = 0.06, across_part = 0.05;
constexpr double whole_length = 0.9;  // of the span: joined over less counts for nothing
constexpr double whole_width = 0.9;
constexpr double lengthwise = 0.5;      // of the part's length: a rail, no crosswise support
constexpr double broad = 0.5;           // of its width between the outermost rails under it
constexpr double screws_within = 0.25;  // of the span; our own line, common practice, no source
constexpr double along_length = 0.999;  // cosine: the grains run the same way

// One surface that a part shares with another, in the part's own frame.
struct Touch {
  int joint = 0, other = 0;
  Vec3 out;             // of the part, world
  Interval run, width;  // how far it reaches along and across the part
  double length() const { return run.to - run.from; }
};

std::vector<Touch> touches(const Plan& plan, int number) {
  const parts::Assembly& all = plan.assembly;
  std::vector<Touch> found;
  for (std::size_t j = 0; j < all.joints.size(); ++j) {
    for (const parts::Mate& mate : all.joints[j].mates) {
      if (mate.a != number && mate.b != number) continue;
      const auto run = shared_reach(mate, number, {1, 0, 0}, all);
      const auto width = shared_reach(mate, number, {0, 1, 0}, all);
      if (!run || !width) continue;
      const bool first = mate.a == number;
      found.push_back({static_cast<int>(j), first ? mate.b : mate.a,
                       mate.plane.n * (first ? 1.0 : -1.0), *run, *width});
    }
  }
  return found;
}

bool from_below(const Touch& touch) { return touch.out.z < -0.7; }

// Does it stand on the floor, or is it joined to anything but this part?
bool is_held(const Plan& plan, int other, int number) {
  double floor = 1e300;
  for (const parts::Part& part : plan.assembly.parts)
    floor = std::min(floor, part.world.bounds().low.z);
  if (plan.assembly.parts[index(other)].world.bounds().low.z < floor + sole) return true;
  return std::ranges::any_of(plan.assembly.joints, [&](const parts::Joint& joint) {
    return std::ranges::find(joint.between, other) != joint.between.end() &&
           std::ranges::any_of(joint.between,
                               [&](int each) { return each != other && each != number; });
  });
}

// What a part lies on along its length; these are no supports but where they stand broad enough.
bool is_rail_under(const parts::Part& part, const Touch& touch) {
  return from_below(touch) && touch.length() > lengthwise * part.size.x;
}

std::vector<Interval> supports(const Plan& plan, int number) {
  const parts::Part& part = plan.assembly.parts[index(number)];
  std::vector<Interval> found, rails;
  Interval spread{1e300, -1e300};
  for (const Touch& touch : touches(plan, number)) {
    const bool end = std::abs(part.place.local_direction(touch.out).x) >= 0.7;
    if (!end && !from_below(touch)) continue;
    if (!is_rail_under(part, touch)) {
      found.push_back(touch.run);
    } else if (is_held(plan, touch.other, number)) {
      rails.push_back(touch.run);
      spread = {std::min(spread.from, touch.width.from), std::max(spread.to, touch.width.to)};
    }
  }
  if (spread.to - spread.from > broad * part.size.y)
    found.insert(found.end(), rails.begin(), rails.end());
  std::ranges::sort(found, {}, &Interval::from);
  return found;
}

// Screws of a joint stand close enough to carry one part by the other over the whole span.
bool screwed_closely(const Plan& plan, int joint, const parts::Part& part, double span) {
  const parts::Joint& of = plan.assembly.joints[index(joint)];
  if (of.kind == "screwed") return true;  // without places: one every 150 mm
  std::vector<double> places{0, part.size.x};
  for (const parts::Fitting& fitting : plan.assembly.fittings)
    if (fitting.joint == of.name) places.push_back(part.place.local_point(fitting.at).x);
  std::ranges::sort(places);
  double widest = 0;
  for (std::size_t i = 1; i < places.size(); ++i)
    widest = std::max(widest, places[i] - places[i - 1]);
  return places.size() > 2 && widest <= screws_within * span;
}

class Section {
 public:
  Section(const Plan& plan, int number, double span)
      : plan_(plan),
        index_(number),
        span_(span),
        part_(plan.assembly.parts[index(number)]),
        undone_(undone_joints(plan)) {}

  ShelfSection reckon() {
    const double modulus = modulus_of(plan_, part_);
    ShelfSection found;
    found.known = modulus > 0;
    if (!found.known) return found;
    std::vector<Touch> counted;
    for (const Touch& touch : touches(plan_, index_))
      if (goes_down_with_it(touch)) counted.push_back(touch);
    double thick = part_.size.z;
    std::vector<int> done;
    for (const Touch& touch : counted) {
      if (std::ranges::find(done, touch.other) != done.end() || !one_with_it(touch)) continue;
      done.push_back(touch.other);
      thick += plan_.assembly.parts[index(touch.other)].size.z;
    }
    found.slab.width = part_.size.y;
    found.slab.stiffness = modulus * second_moment(part_.size.y, thick);
    found.slab.torsion = 4 * shear_part * found.slab.stiffness;
    for (const Touch& touch : counted) {
      if (std::ranges::find(done, touch.other) != done.end()) continue;
      done.push_back(touch.other);
      if (modulus_of(plan_, plan_.assembly.parts[index(touch.other)]) <= 0)
        note(touch.other, found.uncounted);
      else
        found.slab.beams.push_back(beam_of(touch));
    }
    for (const int other : done)
      if (modulus_of(plan_, plan_.assembly.parts[index(other)]) > 0) note(other, found.joined);
    return found;
  }

 private:
  void note(int other, std::vector<std::string>& marks) const {
    const std::string& mark = plan_.mark_of(other);
    if (std::ranges::find(marks, mark) == marks.end()) marks.push_back(mark);
  }

  bool goes_down_with_it(const Touch& touch) const {
    if (touch.length() < whole_length * span_) return false;
    if (is_rail_under(part_, touch) && is_held(plan_, touch.other, index_)) return true;
    if (std::ranges::binary_search(undone_, touch.joint)) return false;
    const std::string& kind = plan_.assembly.joints[index(touch.joint)].kind;
    if (kind == "screw" || kind == "screwed")
      return screwed_closely(plan_, touch.joint, part_, span_);
    return bond_of(plan_, touch.joint) == Bond::glued;
  }

  // A board glued on its whole face, of a stock as stiff and its grain the same way: one board.
  bool one_with_it(const Touch& touch) const {
    const parts::Part& other = plan_.assembly.parts[index(touch.other)];
    const std::string& kind = plan_.assembly.joints[index(touch.joint)].kind;
    return std::abs(part_.place.local_direction(touch.out).z) > along_length &&
           touch.width.to - touch.width.from > whole_width * part_.size.y && kind == "glued" &&
           std::abs(dot(other.place.ex, part_.place.ex)) > along_length &&
           modulus_of(plan_, other) >= modulus_of(plan_, part_);
  }

  EdgeBeam beam_of(const Touch& touch) const {
    const parts::Part& other = plan_.assembly.parts[index(touch.other)];
    const auto high = other.world.extent({0, 0, 1});
    const auto far = other.world.extent(part_.place.ex);
    const double depth = high[1] - high[0], length = far[1] - far[0];
    double modulus = modulus_of(plan_, other);
    const double shear = shear_part * modulus;
    if (std::abs(dot(other.place.ex, part_.place.ex)) < along_length) modulus *= across_part;
    return {(touch.width.from + touch.width.to) / 2,
            beam_stiffness(modulus, shear, other.body.volume() / length / depth, depth, span_)};
  }

  const Plan& plan_;
  int index_;
  double span_;
  const parts::Part& part_;
  std::vector<int> undone_;
};

}  // namespace

double clear_span(const Plan& plan, int part) {
  const std::vector<Interval> found = supports(plan, part);
  double span = 0, reached = found.empty() ? 0 : found.front().to;
  for (const Interval& support : found) {
    span = std::max(span, support.from - reached);
    reached = std::max(reached, support.to);
  }
  return span;
}

ShelfSection shelf_section(const Plan& plan, int part, double span) {
  return Section(plan, part, span).reckon();
}

}  // namespace splay::fabrication
