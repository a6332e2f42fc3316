#include "sheets/rods_marks.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "sheets/part_view_shape.h"

namespace splay::sheets {

namespace {

using parts::Side;

constexpr double one_place = 0.05;  // mm: a pencil line is wider
// What stands nearer to an end is gauged from there (common practice, no source); what a label
// takes along the strip. mm.
constexpr double gauged = 60, label = 4;

double x_on(const Plane& plane, double y, double z) {
  return (plane.d - plane.n.y * y - plane.n.z * z) / plane.n.x;
}

class RodMaker {
 public:
  explicit RodMaker(const PartSheet& sheet) : sheet_(sheet), size_(sheet.part.size) {}

  Rod make() {
    constexpr std::array sides{Side::z_high, Side::z_low, Side::y_low, Side::y_high};
    for (const Side side : sides)
      if (!openings_on(sheet_, side).empty()) worked_.push_back(side);
    ends();
    const std::size_t before = marks_.size();
    once_ = worked_.size() == 1;
    for (const Side side : worked_) openings(side);
    once_ = false;
    shoulders();
    Rod rod;
    if (marks_.size() == before) return rod;
    rod.name = sheet_.row.name;
    rod.of = {sheet_.row.mark};
    rod.along = "from the " + sheet_.name(Side::x_low);
    if (worked_.size() == 1 && worked_.front() != Side::z_high)
      rod.on = sheet_.name(worked_.front());
    rod.length = size_.x;
    rod.needed = shoulder_ || std::ranges::any_of(marks_, [&](const RodMark& mark) {
                   return mark.at > gauged && mark.at < size_.x - gauged;
                 });
    rod.marks = std::move(marks_);
    return rod;
  }

 private:
  // The side's name, left out for the show face, and where the strip says it once for all.
  std::string on(Side side) const {
    return once_ || side == Side::z_high ? std::string() : ", " + sheet_.name(side);
  }

  void mark(double x, std::string name, bool centre = false) {
    if (x < -one_place || x > size_.x + one_place) return;
    marks_.push_back({std::clamp(x, 0.0, size_.x), {{std::move(name), {sheet_.row.mark}}}, centre});
  }

  // Where a plane across the part meets both edges of a side.
  void line(const Plane& plane, Side side, const std::string& name) {
    if (std::abs(plane.n.x) < 0.2) return;
    const bool face = side == Side::z_high || side == Side::z_low;
    const double y = side == Side::y_high ? size_.y : 0, z = side == Side::z_high ? size_.z : 0;
    const double low = face ? x_on(plane, 0, z) : x_on(plane, y, 0);
    const double high = face ? x_on(plane, size_.y, z) : x_on(plane, y, size_.z);
    if (std::abs(high - low) < one_place) {
      mark((low + high) / 2, name + on(side));
      return;
    }
    const std::array<Side, 2> edges =
        face ? std::array{Side::y_low, Side::y_high} : std::array{Side::z_low, Side::z_high};
    mark(low, name + on(side) + ", " + sheet_.name(edges[0]));
    mark(high, name + on(side) + ", " + sheet_.name(edges[1]));
  }

  void ends() {
    for (const Cut& cut : standing_cuts(sheet_)) {
      if (!cut.end || cut.operation->kind == parts::OperationKind::shoulder) continue;
      line(cut.plane, Side::z_high, "end");
      if (cut.bevelled) line(cut.plane, Side::z_low, "end");
    }
    mark(0, "datum");
    mark(size_.x, "overall");
  }

  void shoulders() {
    for (const Cut& cut : standing_cuts(sheet_)) {
      if (cut.operation->kind != parts::OperationKind::shoulder) continue;
      shoulder_ = true;
      line(cut.plane, Side::z_high, "shoulder");
      if (cut.bevelled) line(cut.plane, Side::z_low, "shoulder");
    }
  }

  void openings(Side side) {
    for (const Opening& opening : openings_on(sheet_, side)) {
      const parts::Operation& operation = *opening.operation;
      const std::string neighbour = neighbour_mark(sheet_, operation);
      const std::string name =
          plain_words(sheet_, operation) + (neighbour.empty() ? "" : " " + neighbour);
      if (operation.kind == parts::OperationKind::hole) {
        mark(opening.at.x, name + on(side), true);
        continue;
      }
      if (operation.kind == parts::OperationKind::mortise) {
        mortise(operation, side, neighbour);
        continue;
      }
      for (const Plane& wall : trough_of(operation).walls()) line(wall, side, name);
    }
  }

  // Both its ends; of a rounded one where it is longest.
  void mortise(const parts::Operation& operation, Side side, const std::string& neighbour) {
    const std::string name = "mortise" + (neighbour.empty() ? "" : " " + neighbour);
    std::vector<const Plane*> ends;
    for (const Plane& plane : operation.removed)
      if (std::abs(plane.n.x) > 0.5) ends.push_back(&plane);
    if (ends.size() <= 2) {
      for (const Plane* plane : ends) line(*plane, side, name);
      return;
    }
    const Box box = Solid::convex(operation.removed, 1e4).bounds();
    mark(box.low.x, name + on(side));
    mark(box.high.x, name + on(side));
  }

  const PartSheet& sheet_;
  Vec3 size_;
  std::vector<RodMark> marks_;
  std::vector<Side> worked_;  // sides with something in them
  bool once_ = false, shoulder_ = false;
};

bool bare(const RodName& name) { return name.what == "datum" || name.what == "overall"; }

// Names at one place: each word once, with all the parts it is said of; a bare end only where
// nothing else is.
void add_names(std::vector<RodName>& names, const std::vector<RodName>& more) {
  for (const RodName& name : more) {
    auto known = std::ranges::find(names, name.what, &RodName::what);
    if (known == names.end()) {
      names.push_back(name);
      continue;
    }
    for (const std::string& mark : name.of)
      if (std::ranges::find(known->of, mark) == known->of.end()) known->of.push_back(mark);
  }
  if (!std::ranges::all_of(names, bare)) std::erase_if(names, bare);
}

// Ascending; names at one place joined.
void tidy(Rod& rod) {
  std::ranges::stable_sort(rod.marks, {}, &RodMark::at);
  std::vector<RodMark> together;
  for (RodMark& mark : rod.marks) {
    if (together.empty() || mark.at - together.back().at > one_place ||
        mark.centre != together.back().centre)
      together.push_back(std::move(mark));
    else
      add_names(together.back().names, mark.names);
  }
  rod.marks = std::move(together);
}

// Both on one strip, if their marks still have room.
bool joins(Rod& rod, const Rod& more) {
  if (rod.of.empty() || more.of.empty() || rod.along != more.along || rod.on != more.on ||
      std::abs(rod.length - more.length) > one_place)
    return false;
  Rod both = rod;
  both.of.insert(both.of.end(), more.of.begin(), more.of.end());
  both.marks.insert(both.marks.end(), more.marks.begin(), more.marks.end());
  tidy(both);
  const bool crowded = label * static_cast<double>(both.marks.size()) > rod.length;
  if (crowded && both.marks.size() > rod.marks.size()) return false;
  rod = std::move(both);
  return true;
}

// As many marks as stand beside a strip: what lies at one height is seen on the work.
std::string a_few(std::vector<std::string> marks) {
  constexpr std::size_t most = 12;
  if (marks.size() <= most) return joined(marks);
  const std::string more = std::to_string(marks.size() - most);
  marks.resize(most);
  return joined(marks) + " and " + more + " more";
}

}  // namespace

std::string RodMark::text(const std::vector<std::string>& all) const {
  std::string text;
  for (const RodName& name : names) {
    text += text.empty() ? "" : "; ";
    if (name.of.size() != all.size()) {
      const std::string of = a_few(name.of);
      text += all.empty() ? name.what + " " + of : of + " " + name.what;
    } else {
      text += name.what;
    }
  }
  return text;
}

Rod rod_of(const PartSheet& sheet) {
  Rod rod = RodMaker(sheet).make();
  tidy(rod);
  return rod;
}

Rod heights_of(const Context& context) {
  const parts::Assembly& all = context.plan.assembly;
  double low = 1e300;
  for (const parts::Part& part : all.parts) low = std::min(low, part.world.extent({0, 0, 1})[0]);
  Rod rod;
  rod.name = "Heights";
  rod.needed = true;
  rod.along = "plumb, from the lowest point";
  for (std::size_t p = 0; p < all.parts.size(); ++p) {
    const parts::Part& part = all.parts[p];
    // Level: one of the part's own sides looks straight up.
    const double level =
        std::max({std::abs(part.place.ex.z), std::abs(part.place.ey.z), std::abs(part.place.ez.z)});
    constexpr double straight = 1 - 1e-9;
    const auto reach = part.world.extent({0, 0, 1});
    rod.length = std::max(rod.length, reach[1] - low);
    if (level < straight) continue;
    const std::string& mark = context.plan.mark_of(static_cast<int>(p));
    rod.marks.push_back({reach[0] - low, {{"under", {mark}}}, false});
    rod.marks.push_back({reach[1] - low, {{"top", {mark}}}, false});
  }
  if (rod.marks.empty()) return rod;
  rod.marks.push_back({0, {{"datum", {}}}, false});
  rod.marks.push_back({rod.length, {{"overall", {}}}, false});
  tidy(rod);
  return rod;
}

std::vector<Rod> shared(std::vector<Rod> rods) {
  std::vector<Rod> strips;
  for (Rod& rod : rods) {
    const bool taken = std::ranges::any_of(strips, [&](Rod& strip) { return joins(strip, rod); });
    if (!taken) strips.push_back(std::move(rod));
  }
  return strips;
}

std::vector<double> joins_of(const Rod& rod, int count, double each) {
  constexpr double clear = 3.5;  // mm
  constexpr int most_off = 6;
  const double run = rod.length / count;
  std::vector<double> places{0};
  for (int i = 1; i < count; ++i) {
    const double last = places.back(), wanted = std::min(run * i, last + each);
    const auto good = [&](double at) {
      return at <= last + each && rod.length - at <= each * (count - i) &&
             std::ranges::none_of(
                 rod.marks, [&](const RodMark& mark) { return std::abs(mark.at - at) < clear; });
    };
    double at = wanted;
    for (int off = 2 * most_off; off > 0; --off) {
      const double other = wanted + (off % 2 == 0 ? 0.5 : -0.5) * (off + off % 2);
      if (good(other)) at = other;
    }
    places.push_back(good(wanted) ? wanted : at);
  }
  places.push_back(rod.length);
  return places;
}

}  // namespace splay::sheets
