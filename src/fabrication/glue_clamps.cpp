// Clamps of a stage: rows along the lines in which parts end, bands or tape round mitred rings.
#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>

#include "fabrication/glue_up.h"
#include "fabrication/plan.h"

namespace splay::fabrication {

namespace {

std::size_t at(int i) { return static_cast<std::size_t>(i); }

// Common practice, no source: distances between clamps and from a joint's end, wedges.
constexpr double apart = 250, from_end = 45, short_joint = 120;
constexpr double band_apart = 150, tape_apart = 100;
constexpr double caul_width = 50, caul_thin = 18;
constexpr double thin_wood = 13, short_reach = 200;
constexpr double no_caul = 0.035, no_slide = 0.02;  // radians

int places(double length) {
  if (length < short_joint) return 1;
  return 1 + static_cast<int>(std::ceil((length - 2 * from_end) / apart - 1e-9));
}

struct Hit {
  double at = -1e300;
  Vec3 normal;
  int part = -1;
};

// Where a line through the stage's parts leaves the last of them.
Hit leaves(const parts::Assembly& all, const std::vector<int>& among, Vec3 from, Vec3 way) {
  Hit last;
  for (const int part : among) {
    const Solid& solid = all.parts[at(part)].world;
    for (std::size_t c = 0; c < solid.cells().size(); ++c) {
      double low = -1e300, high = 1e300;
      Vec3 normal;
      for (const Plane& plane : solid.cell_region(c)) {
        const double climb = dot(plane.n, way), away = plane.distance(from);
        if (std::abs(climb) < 1e-12) {
          if (away > 1e-6) high = -1e300;
        } else if (climb > 0) {
          if (-away / climb < high) {
            high = -away / climb;
            normal = plane.n;
          }
        } else {
          low = std::max(low, -away / climb);
        }
      }
      if (high > low && high > last.at) last = {high, normal, part};
    }
  }
  return last;
}

// What is left of the author's clamps as rows of a stage take them.
class Rack {
 public:
  explicit Rack(const model::GlueUp& glue_up) : clamps_(glue_up.clamps) {
    for (std::size_t i = 0; i < clamps_.size(); ++i) left_.push_back(*clamps_[i].count);
  }
  bool listed() const { return !clamps_.empty(); }

  // The shortest that reaches and of which there are enough; for a band the shortest round it.
  void choose(Clamping& row, double pressure_area_force, int least) {
    const bool band = row.how == ClampWay::band;
    std::size_t best = clamps_.size();
    bool best_enough = false;
    for (std::size_t i = 0; i < clamps_.size(); ++i) {
      const model::Clamp& clamp = clamps_[i];
      if ((*clamp.kind == model::ClampKind::band) != band || clamp.reach->mm < row.reach) continue;
      const bool enough = left_[i] >= needed(clamp.newtons(), pressure_area_force, least);
      const bool better = best == clamps_.size() || (enough && !best_enough) ||
                          (enough == best_enough && clamp.reach->mm < clamps_[best].reach->mm);
      if (!better) continue;
      best = i;
      best_enough = enough;
    }
    if (best < clamps_.size()) {
      row.clamp = clamps_[best].name;
      row.kind = *clamps_[best].kind;
      row.each = clamps_[best].newtons();
    } else {
      row.kind = band                       ? model::ClampKind::band
                 : row.reach <= short_reach ? model::ClampKind::screw
                                            : model::ClampKind::parallel;
      row.each = model::usual_force(row.kind);
    }
    row.count = needed(row.each, pressure_area_force, least);
    row.enough = best_enough || !listed();
    if (best < clamps_.size()) left_[best] -= row.count;
  }
  bool has_band(double girth) const {
    for (std::size_t i = 0; i < clamps_.size(); ++i)
      if (*clamps_[i].kind == model::ClampKind::band && clamps_[i].reach->mm >= girth &&
          *clamps_[i].count > 0)
        return true;
    return !listed();
  }

 private:
  static int needed(double each, double force, int least) {
    return std::max(least, clamps_for(force, 1, each));
  }
  const model::Tables<model::Clamp>& clamps_;
  std::vector<int> left_;
};

// A closed ring of corner joints.
struct Ring {
  std::vector<int> joints, parts;
};

class StageClamps {
 public:
  StageClamps(const Plan& plan, const std::vector<JointWork>& work, const GlueStage& stage)
      : plan_(plan),
        all_(plan.assembly),
        work_(work),
        stage_(stage),
        rack_(plan.project->glue_up) {}

  std::vector<Clamping> all() {
    for (const int joint : stage_.joints)
      if (work_[at(joint)].bond == Bond::glued && work_[at(joint)].area > 0) open_.push_back(joint);
    screws();
    strips();
    for (const Ring& ring : rings()) round(ring);
    while (!open_.empty()) row();
    return std::move(rows_);
  }

 private:
  void screws() {
    Clamping held;
    held.how = ClampWay::screws;
    std::erase_if(open_, [&](int joint) {
      if (work_[at(joint)].self_held) held.joints.push_back(joint);
      return work_[at(joint)].self_held;
    });
    if (!held.joints.empty()) rows_.push_back(std::move(held));
  }

  // Tape over a strip, joint by joint.
  void strips() {
    std::erase_if(open_, [&](int joint) {
      const JointWork& work = work_[at(joint)];
      if (!work.strip) return false;
      Clamping row;
      row.how = ClampWay::tape;
      row.joints = {joint};
      row.axis = work.axis;
      row.count = static_cast<int>(std::ceil(work.length / tape_apart)) + 1;
      rows_.push_back(std::move(row));
      return true;
    });
  }

  std::vector<Ring> rings() const;
  void round(const Ring& ring);
  double band_slide(const Ring& ring, const Clamping& band) const;
  void row();
  void place_heads(Clamping& row, Vec3 middle, Vec3 along, double length);
  void add_caul(Clamping& row, const Hit& hit, Vec3 way, double length) const;

  const Plan& plan_;
  const parts::Assembly& all_;
  const std::vector<JointWork>& work_;
  const GlueStage& stage_;
  Rack rack_;
  std::vector<int> open_;  // joints without clamps yet
  std::vector<Clamping> rows_;
};

// What stays when corner joints with a free end are left out again and again, in connected pieces
// in which every part has two.
std::vector<Ring> StageClamps::rings() const {
  std::vector<int> left;
  for (const int joint : open_)
    if (work_[at(joint)].corner) left.push_back(joint);
  std::map<int, int> degree;
  const auto each_part = [&](int joint, auto visit) {
    for (const int part : all_.joints[at(joint)].between) visit(part);
  };
  for (bool changed = true; changed;) {
    degree.clear();
    for (const int joint : left) each_part(joint, [&](int part) { ++degree[part]; });
    const std::size_t before = left.size();
    std::erase_if(left, [&](int joint) {
      bool end = false;
      each_part(joint, [&](int part) { end = end || degree[part] != 2; });
      return end;
    });
    changed = left.size() != before;
  }
  std::vector<Ring> found;
  while (!left.empty()) {
    Ring ring;
    std::vector<int> reached{all_.joints[at(left.front())].between.front()};
    for (std::size_t i = 0; i < reached.size(); ++i) {
      ring.parts.push_back(reached[i]);
      std::erase_if(left, [&](int joint) {
        const std::vector<int>& between = all_.joints[at(joint)].between;
        if (std::ranges::find(between, reached[i]) == between.end()) return false;
        ring.joints.push_back(joint);
        for (const int part : between)
          if (std::ranges::find(reached, part) == reached.end()) reached.push_back(part);
        return true;
      });
    }
    if (ring.parts.size() >= 3) found.push_back(std::move(ring));
  }
  return found;
}

// The girth of what is seen along an axis: of the convex hull (Andrew's monotone chain).
double girth(const parts::Assembly& all, const std::vector<int>& among, Vec3 axis) {
  const Vec3 right = unit(cross(axis, std::abs(axis.x) < 0.7 ? Vec3{1, 0, 0} : Vec3{0, 1, 0}));
  const Vec3 up = cross(axis, right);
  std::vector<Vec2> points;
  for (const int part : among)
    for (const Vec3& p : all.parts[at(part)].world.vertices())
      points.push_back({dot(p, right), dot(p, up)});
  std::ranges::sort(points, [](Vec2 a, Vec2 b) { return a.x != b.x ? a.x < b.x : a.y < b.y; });
  double sum = 0;
  for (const bool lower : {true, false}) {
    std::vector<Vec2> chain;
    for (const Vec2 p : points) {
      while (chain.size() > 1) {
        const double turn = cross(chain.back() - chain[chain.size() - 2], p - chain.back());
        if (lower ? turn > 0 : turn < 0) break;
        chain.pop_back();
      }
      chain.push_back(p);
    }
    for (std::size_t i = 1; i < chain.size(); ++i) sum += norm(chain[i] - chain[i - 1]);
  }
  return sum;
}

// By virtual work: the band's pull times how much its way round the ring grows along the axis. A
// side that leans by l moves out by tan l; a corner that turns by t lengthens the way by tan(t/2)
// times what its two sides move.
double StageClamps::band_slide(const Ring& ring, const Clamping& band) const {
  Vec3 centre;
  for (const int part : ring.parts)
    centre = centre +
             all_.parts[at(part)].world.centroid() * (1.0 / static_cast<double>(ring.parts.size()));
  // The face or edge that looks away from the ring's middle.
  const auto outwards = [&](int part) {
    const parts::Part& each = all_.parts[at(part)];
    const Vec3 from = each.world.centroid() - centre;
    const Vec3 flat = from - band.axis * dot(from, band.axis);
    Vec3 best = each.place.ez;
    for (const Vec3 way : {each.place.ez, -each.place.ez, each.place.ey, -each.place.ey})
      if (dot(way, flat) > dot(best, flat)) best = way;
    return best;
  };
  double growth = 0;
  for (const int joint : ring.joints) {
    const std::vector<int>& between = all_.joints[at(joint)].between;
    const Vec3 a = outwards(between[0]), b = outwards(between[1]);
    const Vec3 flat_a = a - band.axis * dot(a, band.axis),
               flat_b = b - band.axis * dot(b, band.axis);
    const double lean = dot(a, band.axis) / norm(flat_a) + dot(b, band.axis) / norm(flat_b);
    growth += std::tan(angle_between(flat_a, flat_b) / 2) * lean;
  }
  return std::abs(growth) * band.each;
}

void StageClamps::round(const Ring& ring) {
  Vec3 axis;
  double length = 0, area = 0, thick = 1e300;
  const Vec3 first = work_[at(ring.joints.front())].pressed;
  for (const int joint : ring.joints) {
    const Vec3 turned = cross(first, work_[at(joint)].pressed);
    if (norm(turned) > norm(axis)) axis = turned;
    length = std::max(length, work_[at(joint)].length);
    area = std::max(area, work_[at(joint)].area);
  }
  for (const int part : ring.parts) thick = std::min(thick, all_.parts[at(part)].size.z);
  if (norm(axis) < 1e-6) return;
  Clamping band;
  band.how = ClampWay::band;
  band.joints = ring.joints;
  band.axis = unit(axis);
  band.reach = girth(all_, ring.parts, band.axis);
  if (thick <= thin_wood || (!rack_.has_band(band.reach) && thick <= 2 * thin_wood)) {
    band.how = ClampWay::tape;
    band.count = static_cast<int>(std::ceil(length / tape_apart)) + 1;
  } else if (rack_.has_band(band.reach)) {
    rack_.choose(band, 0, std::max(1, static_cast<int>(std::ceil(length / band_apart - 1e-9))));
    band.force = band.each * band.count;
    band.head_slide = band_slide(ring, band);
    if (band.head_slide < no_slide * band.each) band.head_slide = 0;
  } else {
    return;  // rows of clamps with cauls
  }
  rows_.push_back(std::move(band));
  std::erase_if(
      open_, [&](int joint) { return std::ranges::find(ring.joints, joint) != ring.joints.end(); });
}

void StageClamps::add_caul(Clamping& row, const Hit& hit, Vec3 way, double length) const {
  const double angle = angle_between(hit.normal, way);
  if (angle < no_caul) return;
  // On the free end of the part that the clamps draw along a notched block bears, not a wedge.
  const bool own_end =
      std::ranges::any_of(row.joints, [&](int joint) { return work_[at(joint)].ends == hit.part; });
  if (own_end) return;
  for (const Caul& known : row.cauls)
    if (known.part == hit.part && std::abs(known.angle - angle) < 1e-6) return;
  row.cauls.push_back(
      {hit.part, angle, length, caul_width, caul_thin + caul_width * std::tan(angle)});
}

// Every clamp of the row on its own line: the heads stand where that line leaves the work.
void StageClamps::place_heads(Clamping& row, Vec3 middle, Vec3 along, double length) {
  row.heads.clear();
  row.cauls.clear();
  const double run = std::max(0.0, length - 2 * from_end);
  for (int i = 0; i < row.count; ++i) {
    const double share = row.count == 1 ? 0 : static_cast<double>(i) / (row.count - 1) - 0.5;
    const Vec3 through = middle + along * (run * share);
    const Hit high = leaves(all_, stage_.parts, through, row.axis);
    const Hit low = leaves(all_, stage_.parts, through, -row.axis);
    if (high.part < 0 || low.part < 0) continue;
    row.heads.push_back({through - row.axis * low.at, through + row.axis * high.at});
    add_caul(row, high, row.axis, length);
    add_caul(row, low, -row.axis, length);
    row.reach = std::max(row.reach, high.at + low.at);
  }
}

// The joints that one row of clamps presses together: those in one line with the first one left.
void StageClamps::row() {
  const JointWork& first = work_[at(open_.front())];
  Clamping row;
  row.axis = first.axis;
  double length = 0, force = 0, area = 0, shear = 0;
  Vec3 middle;
  int least = 1;
  std::erase_if(open_, [&](int joint) {
    const JointWork& work = work_[at(joint)];
    constexpr double same_line = 0.9994;  // cosine of 2 degrees
    const Vec3 apart_by = work.middle - first.middle;
    const Vec3 aside = apart_by - first.axis * dot(apart_by, first.axis);
    if (std::abs(dot(work.axis, first.axis)) < same_line ||
        norm(aside) > std::max(10.0, std::max(work.length, first.length) / 4))
      return false;
    row.joints.push_back(joint);
    length = std::max(length, work.length);
    least = std::max(least, places(work.length));
    middle = middle + work.middle;
    if (!work.seats) {
      force = std::max(force, work.area * pressure_for(plan_, joint));
      shear = std::max(shear, std::acos(std::min(1.0, std::abs(dot(work.axis, work.pressed)))));
    }
    area += work.area;
    return true;
  });
  middle = middle * (1.0 / static_cast<double>(row.joints.size()));
  row.count = 3;  // to learn how far apart the heads are
  place_heads(row, middle, first.along, length);
  for (const Caul& caul : row.cauls) row.reach += caul.thick / 2;
  row.force = force;
  rack_.choose(row, force, least);
  const double reach = row.reach;
  place_heads(row, middle, first.along, length);
  row.reach = reach;
  double steepest = 0;
  for (const Caul& caul : row.cauls) steepest = std::max(steepest, caul.angle);
  row.head_slide = row.each * std::sin(steepest);
  if (shear > no_slide) row.joint_slide = row.each * std::sin(shear);
  rows_.push_back(std::move(row));
}

}  // namespace

std::vector<Clamping> clamp(const Plan& plan, const std::vector<JointWork>& work,
                            const GlueStage& stage) {
  return StageClamps(plan, work, stage).all();
}

std::vector<Caul> GlueUpPlan::cauls() const {
  std::vector<Caul> all;
  for (const GlueStage& stage : stages)
    for (const Clamping& row : stage.clampings)
      all.insert(all.end(), row.cauls.begin(), row.cauls.end());
  return all;
}

}  // namespace splay::fabrication
