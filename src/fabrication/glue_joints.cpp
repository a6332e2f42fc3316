// What each joint asks of hands and clamps.
#include <algorithm>
#include <cmath>
#include <optional>

#include "base/index.h"
#include "fabrication/glue_up.h"
#include "fabrication/plan.h"
#include "parts/audit.h"

namespace splay::fabrication {

namespace {

// Minutes to spread glue on both surfaces: for each joint, for each metre of it and for each dowel
// or loose tenon. `seats`: its walls carry it. Common practice, no source.
struct Hands {
  std::string_view kind;
  Bond bond = Bond::glued;
  double once = 0.3, metre = 0.8, fitting = 0;
  bool seats = false;
  bool cheeks = false;  // clamps press its largest surfaces, not those that come home
};
constexpr std::array<Hands, 21> hands{{
    {"butt"},
    {"mitre"},
    {"glued"},
    {"rabbet", Bond::glued, 0.3, 0.5, 0, true},
    {"spline", Bond::glued, 0.4, 1.6, 0},
    {"dowel", Bond::glued, 0.3, 0.8, 0.3},
    {"loose tenon", Bond::glued, 0.3, 0.8, 0.5},
    {"screw", Bond::glued, 0.3, 0.8, 0.3},
    {"half lap", Bond::glued, 0.4, 1.0, 0},
    {"housing", Bond::glued, 0.4, 1.0, 0, true},
    {"mortise and tenon", Bond::glued, 0.9, 1.0, 0, true},
    {"bridle", Bond::glued, 0.8, 1.0, 0, true, true},
    {"stick", Bond::glued, 0.6, 0, 0, true},
    {"box joint", Bond::glued, 0.5, 4.0, 0, true},
    {"dovetail", Bond::glued, 0.5, 4.0, 0, true},
    {"groove", Bond::dry, 0, 0, 0, true},
    {"tongue and groove", Bond::dry, 0, 0, 0, true},
    {"hinges", Bond::fitted},
    {"fasteners", Bond::fitted},
    {"screwed", Bond::fitted},
    {"resting", Bond::fitted},  // it stands there; what holds it is a joint of its own
}};

const Hands& hands_of(const parts::Joint& joint) {
  static constexpr Hands other{""};
  static constexpr Hands hung{"", Bond::fitted};
  const auto found = std::ranges::find(hands, joint.kind, &Hands::kind);
  if (found != hands.end()) return *found;
  // Without surfaces that must meet there is nothing to glue: runners, pins, catches.
  return joint.mates.empty() ? hung : other;
}

Vec3 unit_or(Vec3 v, Vec3 otherwise) { return norm(v) > 1e-9 ? unit(v) : otherwise; }

// Square to the largest of a joint's surfaces.
Vec3 across_cheeks(const parts::Assembly& all, const parts::Joint& joint, Vec3 otherwise) {
  std::vector<std::pair<Vec3, double>> facing;
  for (const parts::Mate& mate : joint.mates) {
    constexpr double same = 1e-6;
    const Vec3 n = mate.plane.n;
    auto known = std::ranges::find_if(
        facing, [&](const auto& each) { return norm(cross(each.first, n)) < same; });
    if (known == facing.end()) known = facing.insert(facing.end(), {n, 0.0});
    known->second +=
        parts::measure(mate, all.parts[index(mate.a)].world, all.parts[index(mate.b)].world).area;
  }
  if (facing.empty()) return otherwise;
  return std::ranges::max_element(facing, {}, &std::pair<Vec3, double>::second)->first;
}

// The surfaces of a joint that a run along `way` presses together; all where none is.
class Surfaces {
 public:
  Surfaces(const parts::Assembly& all, const parts::Joint& joint, Vec3 way) {
    const bool slid = only_slid(joint, way);
    constexpr double pressed = 0.1;  // as in only_slid
    for (const parts::Mate& mate : joint.mates) {
      const double into = dot(mate.plane.n, way);
      const parts::Contact contact =
          parts::contact(mate, all.parts[index(mate.a)].world, all.parts[index(mate.b)].world);
      const bool counts = slid || std::abs(into) > pressed;
      for (const Polygon& piece : contact.pieces) {
        if (piece.size() < 3) continue;
        const double area = signed_area(piece);
        total_ += area;
        Vec3 sum;
        for (const Vec2 p : piece) {
          points_.push_back(contact.frame.point({p.x, p.y, 0}));
          sum = sum + points_.back();
        }
        if (!counts) continue;
        pressed_ += area;
        middle_ = middle_ + sum * (area / static_cast<double>(piece.size()));
        normal_ = normal_ + mate.plane.n * (into < 0 ? -area : area);
      }
    }
  }
  void measure(JointWork& work, Vec3 way) const {
    work.glued = total_;
    if (pressed_ <= 0) return;
    work.middle = middle_ * (1 / pressed_);
    work.pressed = unit_or(normal_, way);
    work.area = pressed_;
    // The long direction: of all pairs of points the furthest apart.
    double longest = 0;
    for (std::size_t i = 0; i < points_.size(); ++i) {
      for (std::size_t j = i + 1; j < points_.size(); ++j) {
        const Vec3 run = points_[j] - points_[i];
        const double squared = dot(run, run);
        if (squared <= longest || std::sqrt(squared) <= work.length) continue;
        longest = squared;
        work.length = std::sqrt(squared);
        work.along = run;
      }
    }
    // Square to the pressure: a row of clamps runs along the joint, not across it.
    const Vec3 flat = work.along - work.pressed * dot(work.along, work.pressed);
    work.along = unit_or(flat, square_to(work.pressed));
  }

 private:
  double pressed_ = 0, total_ = 0;
  Vec3 middle_, normal_;
  std::vector<Vec3> points_;
};

// Does a part end at the joint in a direction of its own, pressed along that with the joint at its
// end, or does it run past?
bool ends_along(const parts::Part& part, const JointWork& work, bool by_length) {
  constexpr double near_end = 0.2, along = 0.45;
  const Vec3 local = part.place.local_point(work.middle);
  const Vec3 axis = by_length ? part.place.ex : part.place.ey;
  const double reached = by_length ? local.x / part.size.x : local.y / part.size.y;
  return std::abs(dot(axis, work.pressed)) > along &&
         (reached < near_end || reached > 1 - near_end);
}

// Clamps draw along the one part that ends here: its far end takes their other heads.
void choose_axis(const parts::Assembly& all, const parts::Joint& joint, JointWork& work) {
  work.axis = work.pressed;
  std::vector<Vec3> ways;
  // A leg's edge beside a rail's end is no end of the leg: widths count where no length ends.
  for (const bool by_length : {true, false}) {
    if (!ways.empty()) break;
    for (const int part : joint.between) {
      const parts::Part& each = all.parts[index(part)];
      if (!ends_along(each, work, by_length)) continue;
      ways.push_back(by_length ? each.place.ex : each.place.ey);
      work.ends = part;
    }
  }
  constexpr double bent = 0.09;  // sine of some 5 degrees
  work.corner = ways.size() == 2 && norm(cross(ways[0], ways[1])) > bent;
  if (ways.size() != 1)
    work.ends = -1;
  else
    work.axis = dot(ways[0], work.pressed) < 0 ? -ways[0] : ways[0];
}

// Thin in the direction it is pressed, and narrow.
bool is_strip(const parts::Assembly& all, const parts::Joint& joint, const JointWork& work) {
  constexpr double thin = 8, narrow = 60;  // mm; common practice, no source
  return std::ranges::any_of(joint.between, [&](int part) {
    const parts::Part& each = all.parts[index(part)];
    const auto reach = each.world.extent(work.pressed);
    return reach[1] - reach[0] <= thin && std::min(each.size.y, each.size.z) <= thin &&
           std::max(each.size.y, each.size.z) <= narrow;
  });
}

}  // namespace

Bond bond_of(const Plan& plan, int joint) {
  const Bond usual = hands_of(plan.assembly.joints[index(joint)]).bond;
  const bool undone = std::ranges::binary_search(plan.glue_up.undone, joint);
  return undone && usual != Bond::fitted ? Bond::undone : usual;
}

std::vector<JointWork> work_of_joints(const Plan& plan, const AssemblyOrder& order) {
  const parts::Assembly& all = plan.assembly;
  std::vector<Vec3> ways(all.joints.size(), Vec3{0, 0, 1});
  for (const Joining& joining : order.joinings)
    for (const int joint : joining.joints) ways[index(joint)] = joining.way;
  std::vector<JointWork> works;
  for (std::size_t j = 0; j < all.joints.size(); ++j) {
    const parts::Joint& joint = all.joints[j];
    const Hands& how = hands_of(joint);
    JointWork work;
    work.bond = bond_of(plan, static_cast<int>(j));
    work.seats = how.seats;
    work.self_held = joint.kind == "screw";
    if (how.cheeks) ways[j] = across_cheeks(all, joint, ways[j]);
    Surfaces(all, joint, ways[j]).measure(work, ways[j]);
    const auto fittings = std::ranges::count(all.fittings, joint.name, &parts::Fitting::joint);
    if (work.bond == Bond::glued)
      work.spreading =
          how.once + how.metre * work.length / 1000 + how.fitting * static_cast<double>(fittings);
    work.axis = work.pressed;
    if (!how.cheeks) choose_axis(all, joint, work);
    work.strip = is_strip(all, joint, work);
    works.push_back(work);
  }
  return works;
}

double pressure_for(const Plan& plan, int joint) {
  if (*plan.project->glue_up.pressure > 0) return *plan.project->glue_up.pressure;
  constexpr double psi = 0.006894757;         // MPa
  constexpr double soft = 520, medium = 640;  // kg/m3: up to poplar, up to soft maple
  double heaviest = 0;
  for (const int part : plan.assembly.joints[index(joint)].between) {
    const model::Stock* stock = plan.project->stocks.find(plan.assembly.parts[index(part)].stock);
    if (stock != nullptr) heaviest = std::max(heaviest, stock->weight());
  }
  return (heaviest < soft ? 100 : heaviest < medium ? 150 : 200) * psi;
}

int clamps_for(double area, double pressure, double force) {
  constexpr double noise = 1e-9;
  if (force <= 0) return 1;
  return std::max(1, static_cast<int>(std::ceil(area * pressure / force - noise)));
}

}  // namespace splay::fabrication
