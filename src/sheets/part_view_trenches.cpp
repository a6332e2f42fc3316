#include <algorithm>
#include <cmath>

#include "geometry/polygon.h"
#include "sheets/part_view_wants.h"

namespace splay::sheets {

namespace {

using parts::Operation;
using parts::Side;
using parts::Trench;

constexpr double same_reach = 1e-6, one_direction = 1e-9;

// The middle of the largest piece of a trench's floor that is still there.
Vec3 floor_middle(const PartSheet& sheet, const Trench& trench) {
  const Face* face = floor_of(sheet.boundary, trench);
  if (face == nullptr) return sheet.part.size * 0.5;
  const Box box = box_of(*face);
  return (box.low + box.high) * 0.5;
}

// A trench's outline in the plane square to its run.
struct Profile {
  Vec3 axis;          // across the trench, in the face: x of a housing, y of a groove
  Vec3 out;           // out of the open face
  Vec3 middle;        // of the floor
  double face = 0;    // dot(out, p) of the open face
  double back = 0;    // and of the face opposite, or as far towards it as is worth showing
  bool whole = true;  // the opposite face is shown

  Vec3 point(double across, double up) const {
    return middle + axis * (across - dot(axis, middle)) + out * (up - dot(out, middle));
  }
  // Where a wall meets the open face, and the floor.
  Vec3 arris(const Plane& wall) const {
    const Vec3 on_face = point(0, face);
    return point((wall.d - dot(wall.n, on_face)) / dot(wall.n, axis), face);
  }
  Vec3 corner(const Plane& wall, const Plane& floor) const {
    const Vec2 w{dot(wall.n, axis), dot(wall.n, out)}, f{dot(floor.n, axis), dot(floor.n, out)};
    const Vec3 zero = point(0, 0);
    const double wd = wall.d - dot(wall.n, zero), fd = floor.d - dot(floor.n, zero);
    const double det = cross(w, f);
    return point((wd * f.y - fd * w.y) / det, (w.x * fd - f.x * wd) / det);
  }
};

Profile profile_of(const PartSheet& sheet, const Operation& operation) {
  Profile profile;
  const Trench& trench = operation.trench;
  profile.axis = trough_of(operation).axis;
  profile.out = parts::outward(trench.open);
  profile.middle = floor_middle(sheet, trench);
  profile.face = std::max(0.0, dot(profile.out, sheet.part.size));
  profile.back = std::min(0.0, dot(profile.out, sheet.part.size));
  // A recess in the edge of a broad part: what lies far behind it is broken off.
  constexpr double behind = 30;  // mm
  const double shown = dot(profile.out, profile.middle) - behind;
  profile.whole = shown <= profile.back;
  profile.back = std::max(profile.back, shown);
  return profile;
}

bool alike(const Operation& a, const Operation& b) {
  const auto parallel = [](Vec3 p, Vec3 q) { return norm(p - q) < one_direction; };
  const auto near = [](double x, double y) { return std::abs(x - y) < same_reach; };
  const Trough one = trough_of(a), other = trough_of(b);
  const bool housings = one.low && one.high && other.low && other.high && !one.along_length() &&
                        !other.along_length();
  if (a.kind != b.kind || a.trench.open != b.trench.open || !housings) return false;
  // One caption says where they stop.
  const auto same_stop = [&](const Plane& p, const Plane& q) {
    return parallel(p.n, q.n) && near(p.d, q.d);
  };
  if (!std::ranges::equal(a.trench.stops, b.trench.stops, same_stop)) return false;
  const auto breadth = [](const Trough& t) { return t.low->d + t.high->d; };
  return parallel(one.low->n, other.low->n) && parallel(one.high->n, other.high->n) &&
         parallel(a.trench.floor.n, b.trench.floor.n) && near(a.trench.shallow, b.trench.shallow) &&
         near(a.trench.deep, b.trench.deep) && near(breadth(one), breadth(other));
}

using TrenchGroup = std::vector<const Operation*>;

std::string title_of(const PartSheet& sheet, const TrenchGroup& group) {
  std::string title;
  for (const Operation* operation : group) {
    const std::string mark = neighbour_mark(sheet, *operation);
    title += (title.empty() ? "" : "; ") + operation_words(sheet, *operation);
    if (!mark.empty()) title += " (" + mark + ")";
  }
  return capitalised(title) + ", " + sheet.name(group.front()->trench.open);
}

Side side_along(Vec3 axis, bool low) { return side_seen(low ? -axis : axis); }

// "Stopped 13.1 from the front edge." or that it runs out.
std::string stop_words(const PartSheet& sheet, const Operation& operation) {
  const Profile profile = profile_of(sheet, operation);
  const Vec3 run = cross(profile.out, profile.axis);
  const Vec3 axis{std::abs(run.x), std::abs(run.y), std::abs(run.z)};
  if (operation.trench.stops.empty())
    return trough_of(operation).along_length() ? "Runs out at both ends."
                                               : "Runs out at both sides.";
  std::string words;
  for (const Plane& stop : operation.trench.stops) {
    const Vec3 base = profile.middle - axis * dot(axis, profile.middle);
    const double at = (stop.d - dot(stop.n, base)) / dot(stop.n, axis);
    const double whole = dot(axis, sheet.part.size);
    const bool from_low = at < whole / 2;
    words += (words.empty() ? "Stopped " : ", ") +
             sheet.kit().figures.text(from_low ? at : whole - at) + " from the " +
             sheet.name(side_along(axis, from_low));
  }
  return words + ".";
}

class HousingDetail {
 public:
  HousingDetail(const PartSheet& sheet, const TrenchGroup& group)
      : sheet_(sheet),
        operation_(*group.front()),
        trench_(operation_.trench),
        profile_(profile_of(sheet, operation_)),
        low_(*trough_of(operation_).low),
        high_(*trough_of(operation_).high) {
    detail_.title = title_of(sheet, group);
  }

  Detail make() {
    const Vec3 a = profile_.arris(low_), b = profile_.arris(high_);
    const Vec3 a_foot = profile_.corner(low_, trench_.floor);
    const Vec3 b_foot = profile_.corner(high_, trench_.floor);
    detail_.view.up = profile_.out;
    detail_.view.right = profile_.axis;
    detail_.view.toward = cross(detail_.view.right, detail_.view.up);
    detail_.cut_at = dot(detail_.view.toward, profile_.middle);
    for (const Vec3 p : {a, b, a_foot, b_foot}) detail_.of.add(p);
    detail_.of.add(profile_.point(at(a), profile_.back));
    detail_.of.add(profile_.point(at(a), profile_.face));
    const Vec3 up = profile_.out;
    const double clear = tilted() ? 8 : 0;
    detail_.rows.push_back({drafting::RowKind::overall, {a, b}, profile_.axis, up, {}, clear});
    depth_row(a_foot, -profile_.axis);
    if (std::abs(depth(a_foot) - depth(b_foot)) > same_reach) depth_row(b_foot, profile_.axis);
    if (tilted()) tilt(a, b);
    detail_.caption = caption(depth(a_foot), depth(b_foot));
    if (profile_.whole) detail_.below = {sheet_.name(parts::opposite(trench_.open))};
    return std::move(detail_);
  }

 private:
  double at(Vec3 p) const { return dot(profile_.axis, p); }
  double depth(Vec3 foot) const { return profile_.face - dot(profile_.out, foot); }
  bool tilted() const { return std::abs(dot(low_.n, profile_.out)) > one_direction; }

  void depth_row(Vec3 foot, Vec3 out) {
    const Vec3 above = profile_.point(at(foot), profile_.face);
    detail_.rows.push_back({drafting::RowKind::overall, {foot, above}, profile_.out, out, {}});
  }

  // The walls drawn on above the face, where there is no wood, at the arris they lean out over.
  void tilt(Vec3 a, Vec3 b) {
    Vec3 wall =
        profile_.axis * -dot(low_.n, profile_.out) + profile_.out * dot(low_.n, profile_.axis);
    if (dot(wall, profile_.out) < 0) wall = -wall;
    const bool to_low = dot(wall, profile_.axis) < 0;
    tilt_ = angle_between(wall, profile_.out);
    detail_.angles.push_back({to_low ? a : b, profile_.out, wall, tilt_, "tilt"});
  }

  std::string floor_words() const {
    const double lean = angle_between(trench_.floor.n, profile_.out);
    if (lean < one_direction) return "parallel to the face";
    if (std::abs(dot(trench_.floor.n, low_.n)) < one_direction) return "square to the walls";
    return angle_words(lean) + " off the face";
  }

  std::string caption(double at_low, double at_high) const {
    const FigureStyle& figures = sheet_.kit().figures;
    std::string words;
    if (tilted()) {
      words = "Walls tilt " + angle_words(tilt_) + " (" + rise_words(sheet_.kit(), tilt_) +
              ") from square, floor ";
      words += floor_words() + ". ";
    }
    if (std::abs(at_low - at_high) > same_reach)
      words += "Depth square to the face: " + figures.text(at_low) + " at the wall towards the " +
               sheet_.name(Side::x_low) + ", " + figures.text(at_high) + " at the other. ";
    if (tilted()) {
      const double breadth = std::abs(low_.d + high_.d);
      const bool parallel = norm(low_.n + high_.n) < one_direction;
      if (parallel) words += figures.text(breadth) + " between the walls, square to them. ";
    }
    return words + stop_words(sheet_, operation_);
  }

  const PartSheet& sheet_;
  const Operation& operation_;
  const Trench& trench_;
  Profile profile_;
  Plane low_, high_;
  double tilt_ = 0;
  Detail detail_;
};

// A groove or rabbet beside an edge or end, which stands at the left.
class EdgeTrenchDetail {
 public:
  EdgeTrenchDetail(const PartSheet& sheet, const Operation& operation)
      : sheet_(sheet),
        operation_(operation),
        trench_(operation.trench),
        profile_(profile_of(sheet, operation)),
        walls_(trough_of(operation).walls()) {
    double sum = 0;
    for (const Plane& wall : walls_) sum += at(profile_.arris(wall));
    const double breadth = dot(profile_.axis, sheet.part.size);
    by_low_ = 2 * sum < breadth * static_cast<double>(walls_.size());
    edge_ = by_low_ ? 0 : breadth;
  }

  Detail make() {
    detail_.view.up = profile_.out;
    detail_.view.right = by_low_ ? profile_.axis : -profile_.axis;
    detail_.view.toward = cross(detail_.view.right, detail_.view.up);
    detail_.cut_at = dot(detail_.view.toward, profile_.middle);
    const auto farthest = std::ranges::max_element(
        walls_, {}, [&](const Plane& wall) { return std::abs(at(profile_.arris(wall)) - edge_); });
    const Vec3 foot = profile_.corner(*farthest, trench_.floor);
    across(foot);
    detail_.of.add(foot);
    detail_.of.add(profile_.point(at(foot), profile_.back));
    detail_.of.add(profile_.point(at(foot), profile_.face));
    detail_.rows.push_back({drafting::RowKind::overall,
                            {foot, profile_.point(at(foot), profile_.face)},
                            profile_.out,
                            detail_.view.right,
                            {}});
    const Side side = side_along(profile_.axis, by_low_);
    detail_.title = title_of(sheet_, {&operation_}) + ", " + sheet_.name(side);
    detail_.caption = stop_words(sheet_, operation_);
    if (profile_.whole) detail_.below = {sheet_.name(parts::opposite(trench_.open))};
    return std::move(detail_);
  }

 private:
  double at(Vec3 p) const { return dot(profile_.axis, p); }

  void across(Vec3 foot) {
    const bool rabbet = walls_.size() == 1;
    DetailRow row;
    row.kind = rabbet ? drafting::RowKind::overall : drafting::RowKind::running;
    row.along = detail_.view.right;
    row.out = profile_.out;
    row.stations.push_back(profile_.point(edge_, rabbet ? dot(profile_.out, foot) : profile_.face));
    for (const Plane& wall : walls_) row.stations.push_back(profile_.arris(wall));
    for (const Vec3 p : row.stations) detail_.of.add(p);
    detail_.rows.push_back(row);
  }

  const PartSheet& sheet_;
  const Operation& operation_;
  const Trench& trench_;
  Profile profile_;
  std::vector<Plane> walls_;
  bool by_low_ = true;
  double edge_ = 0;
  Detail detail_;
};

}  // namespace

std::vector<Detail> trench_details(const PartSheet& sheet) {
  std::vector<TrenchGroup> groups;
  for (const Side face : {Side::z_low, Side::z_high, Side::y_low, Side::y_high})
    for (const Operation* operation : trenches_on(sheet, face)) {
      const auto group = std::ranges::find_if(
          groups, [&](const TrenchGroup& g) { return alike(*g.front(), *operation); });
      if (group == groups.end())
        groups.push_back({operation});
      else
        group->push_back(operation);
    }
  std::vector<Detail> details;
  for (const TrenchGroup& group : groups) {
    const Trough trough = trough_of(*group.front());
    if (trough.along_length() || !trough.low || !trough.high)
      details.push_back(EdgeTrenchDetail(sheet, *group.front()).make());
    else
      details.push_back(HousingDetail(sheet, group).make());
  }
  return details;
}

}  // namespace splay::sheets
