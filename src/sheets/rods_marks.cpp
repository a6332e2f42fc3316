#include "sheets/rods_marks.h"

#include <algorithm>
#include <cmath>

#include "sheets/part_view_shape.h"

namespace splay::sheets {

namespace {

using parts::Side;

constexpr double one_place = 0.05;  // mm: a pencil line is wider

double x_on(const Plane& plane, double y, double z) {
  return (plane.d - plane.n.y * y - plane.n.z * z) / plane.n.x;
}

class RodMaker {
 public:
  explicit RodMaker(const PartSheet& sheet) : sheet_(sheet), size_(sheet.part.size) {}

  Rod make() {
    ends();
    const std::size_t before = marks_.size();
    for (const Side side : {Side::z_high, Side::z_low, Side::y_low, Side::y_high}) openings(side);
    shoulders();
    Rod rod;
    if (marks_.size() == before) return rod;
    rod.title = sheet_.row.mark + " " + sheet_.row.name;
    rod.along = "from the " + sheet_.name(Side::x_low);
    rod.anchor = part_anchor(sheet_.row.mark);
    rod.length = size_.x;
    rod.marks = std::move(marks_);
    return rod;
  }

 private:
  // The side's name, left out for the show face.
  std::string on(Side side) const {
    return side == Side::z_high ? std::string() : ", " + sheet_.name(side);
  }

  void mark(double x, std::string name, bool centre = false) {
    if (x < -one_place || x > size_.x + one_place) return;
    marks_.push_back({std::clamp(x, 0.0, size_.x), std::move(name), centre});
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
        for (const Plane& plane : operation.removed)
          if (std::abs(plane.n.x) > 0.5) line(plane, side, name);
        continue;
      }
      for (const Plane& wall : trough_of(operation).walls()) line(wall, side, name);
    }
  }

  const PartSheet& sheet_;
  Vec3 size_;
  std::vector<RodMark> marks_;
};

// Ascending; names at one place joined.
void tidy(Rod& rod) {
  std::ranges::stable_sort(rod.marks, {}, &RodMark::at);
  std::vector<RodMark> joined;
  for (RodMark& mark : rod.marks) {
    if (joined.empty() || mark.at - joined.back().at > one_place ||
        mark.centre != joined.back().centre) {
      joined.push_back(std::move(mark));
      continue;
    }
    std::string& name = joined.back().name;
    if (name == "datum" || name == "overall")
      name = mark.name;
    else if (mark.name != "datum" && mark.name != "overall" &&
             name.find(mark.name) == std::string::npos)
      name += "; " + mark.name;
  }
  rod.marks = std::move(joined);
}

}  // namespace

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
  rod.title = "Heights";
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
    rod.marks.push_back({reach[0] - low, mark + " under", false});
    rod.marks.push_back({reach[1] - low, mark + " top", false});
  }
  if (rod.marks.empty()) return rod;
  rod.marks.push_back({0, "datum", false});
  rod.marks.push_back({rod.length, "overall", false});
  tidy(rod);
  return rod;
}

}  // namespace splay::sheets
