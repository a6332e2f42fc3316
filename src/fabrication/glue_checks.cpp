// What is measured while the glue is wet, and what has to be finished before a stage closes it in.
#include <algorithm>
#include <cmath>

#include "base/index.h"
#include "fabrication/glue_up.h"
#include "fabrication/plan.h"

namespace splay::fabrication {

namespace {

bool has(const std::vector<int>& sorted, int part) {
  return std::binary_search(sorted.begin(), sorted.end(), part);
}

// The first stage after which all of these parts are one; -1 when none.
int first_with(const std::vector<GlueStage>& stages, const std::vector<int>& parts) {
  for (std::size_t s = 0; s < stages.size(); ++s)
    if (std::ranges::any_of(stages[s].pieces, [&](const std::vector<int>& piece) {
          return std::ranges::all_of(parts, [&](int part) { return has(piece, part); });
        }))
      return static_cast<int>(s);
  return -1;
}

// How far along a ray the first wood of these parts begins; 1e300 when none does.
double first_wood(const parts::Assembly& all, const std::vector<int>& among, Vec3 from, Vec3 way,
                  int* hit = nullptr) {
  double nearest = 1e300;
  for (const int part : among) {
    const Solid& solid = all.parts[index(part)].world;
    for (std::size_t c = 0; c < solid.cells().size(); ++c) {
      double low = 0, high = 1e300;
      for (const Plane& plane : solid.cell_region(c)) {
        const double climb = dot(plane.n, way), away = plane.distance(from);
        if (std::abs(climb) < 1e-12) {
          if (away > 1e-6) high = -1;
        } else if (climb > 0) {
          high = std::min(high, -away / climb);
        } else {
          low = std::max(low, -away / climb);
        }
        if (high <= low) break;
      }
      if (high <= low + 1e-6 || low >= nearest) continue;
      nearest = low;
      if (hit != nullptr) *hit = part;
    }
  }
  return nearest;
}

class WetChecks {
 public:
  WetChecks(const Plan& plan, const std::vector<JointWork>& work, std::vector<GlueStage>& stages)
      : plan_(plan),
        all_(plan.assembly),
        work_(work),
        stages_(stages),
        tolerance_(2 * plan.project->job.figures().step_mm()) {}

  void loops() {
    for (std::size_t i = 0; i < all_.loops.size(); ++i) {
      const std::vector<Vec3>& corners = all_.loops[i].corners;
      const int stage = first_with(stages_, round(corners));
      if (corners.size() < 3 || stage < 0) continue;
      const auto add = [&](MeasureKind kind, const std::string& what, double value) {
        stages_[index(stage)].checks.push_back(
            {kind, all_.loops[i].name + ": " + what, value, tolerance_, static_cast<int>(i)});
      };
      for (std::size_t a = 0; a < corners.size(); ++a)
        for (std::size_t b = a + 2; b < corners.size(); ++b)
          if (!(a == 0 && b + 1 == corners.size()) && b - a == corners.size() / 2)
            add(MeasureKind::diagonal,
                "corner " + std::to_string(a + 1) + " to " + std::to_string(b + 1),
                norm(corners[b] - corners[a]));
      if (i < plan_.loops.size())
        add(MeasureKind::height, "height over side 1 to 2", plan_.loops[i].check);
    }
  }

  // Between the faces on both sides of a part that ends on both: just over its show face, where a
  // rule can lie.
  void insides() {
    for (std::size_t p = 0; p < all_.parts.size(); ++p) {
      const std::vector<int> hosts = hosts_of(static_cast<int>(p));
      if (hosts.size() != 2) continue;
      const int stage = first_with(stages_, {hosts[0], hosts[1], static_cast<int>(p)});
      if (stage < 0) continue;
      const parts::Part& part = all_.parts[p];
      constexpr double over = 1;  // mm
      const Vec3 from = part.place.point({part.size.x / 2, part.size.y / 2, part.size.z + over});
      const double low = first_wood(all_, hosts, from, -part.place.ex);
      const double high = first_wood(all_, hosts, from, part.place.ex);
      if (low > 1e200 || high > 1e200 || low <= 0 || high <= 0) continue;
      stages_[index(stage)].checks.push_back(
          {MeasureKind::inside, "inside, on " + part.name, low + high, tolerance_, -1});
    }
  }

  // A part that one joint alone holds, at one end, and nothing else when the stage's glue sets.
  void one_end() {
    for (GlueStage& stage : stages_) {
      if (!stage.glued) continue;
      for (const std::vector<int>& piece : stage.pieces)
        for (const int part : piece) held_at_one_end(stage, piece, part);
    }
  }

 private:
  void held_at_one_end(GlueStage& stage, const std::vector<int>& piece, int part) {
    int held = 0, last = -1;
    for (std::size_t j = 0; j < all_.joints.size(); ++j) {
      const std::vector<int>& between = all_.joints[j].between;
      if (std::ranges::find(between, part) == between.end()) continue;
      if (!std::ranges::all_of(between, [&](int p) { return has(piece, p); })) continue;
      ++held;
      last = static_cast<int>(j);
    }
    const bool now = last >= 0 && std::ranges::find(stage.joints, last) != stage.joints.end();
    if (held == 1 && now) hangs(stage, part, last);
  }

  void hangs(GlueStage& stage, int part, int joint) {
    const JointWork& work = work_[index(joint)];
    if (all_.joints[index(joint)].made != parts::Made::in_turn) return;  // edging
    const parts::Part& hung = all_.parts[index(part)];
    const bool shortish = work.length > 0.5 * std::max(hung.size.x, hung.size.y);
    const bool ends = work.ends == part || work.corner;
    if (!ends || work.bond != Bond::glued || (shortish && hung.size.x < 3 * hung.size.z)) return;
    stage.one_end.push_back(part);
    const std::vector<int>& between = all_.joints[index(joint)].between;
    const int other = between[0] == part ? between[1] : between[0];
    const double bent = angle_between(work.corner ? hung.place.ex : work.axis,
                                      along_host(all_.parts[index(other)], work));
    constexpr double to = 0.1 * 3.14159265358979323846 / 180;  // what a bevel gauge shows
    stage.checks.push_back({MeasureKind::angle,
                            "between " + hung.name + " and " + all_.parts[index(other)].name,
                            std::min(bent, 3.14159265358979323846 - bent), to, -1});
  }

  // The direction of the part that takes the end to which a bevel gauge is laid: its length, or of
  // a panel that the joint runs along the length of its width.
  static Vec3 along_host(const parts::Part& host, const JointWork& work) {
    constexpr double same = 0.9, panel = 3;
    const bool runs = std::abs(dot(host.place.ex, work.along)) > same;
    return runs && host.size.y > panel * host.size.z ? host.place.ey : host.place.ex;
  }

  // The parts with an arris that runs to one of the corners.
  std::vector<int> round(const std::vector<Vec3>& corners) const {
    constexpr double near = 0.01;  // mm
    std::vector<int> found;
    for (std::size_t p = 0; p < all_.parts.size(); ++p) {
      const bool at_corner = std::ranges::any_of(all_.parts[p].world.vertices(), [&](Vec3 v) {
        return std::ranges::any_of(corners, [&](Vec3 c) { return norm(v - c) < near; });
      });
      if (at_corner) found.push_back(static_cast<int>(p));
    }
    return found;
  }

  std::vector<int> hosts_of(int part) const {
    std::vector<int> hosts;
    double low = 1e300, high = -1e300;
    for (std::size_t j = 0; j < all_.joints.size(); ++j) {
      if (work_[j].ends != part || work_[j].bond == Bond::fitted) continue;
      if (norm(cross(work_[j].axis, all_.parts[index(part)].place.ex)) > 1e-6) continue;
      for (const int other : all_.joints[j].between)
        if (other != part && std::ranges::find(hosts, other) == hosts.end()) hosts.push_back(other);
      const double x = all_.parts[index(part)].place.local_point(work_[j].middle).x;
      low = std::min(low, x);
      high = std::max(high, x);
    }
    if (high - low < 0.6 * all_.parts[index(part)].size.x) hosts.clear();
    return hosts;
  }

  const Plan& plan_;
  const parts::Assembly& all_;
  const std::vector<JointWork>& work_;
  std::vector<GlueStage>& stages_;
  double tolerance_;
};

// Parts that come out again: their surfaces can be reached later.
std::vector<int> removable(const parts::Assembly& all) {
  std::vector<int> parts;
  for (const parts::Slide& slide : all.slides)
    parts.insert(parts.end(), slide.parts.begin(), slide.parts.end());
  for (const parts::Swing& swing : all.swings)
    parts.insert(parts.end(), swing.parts.begin(), swing.parts.end());
  std::ranges::sort(parts);
  return parts;
}

Vec3 middle_of(const std::vector<Vec3>& loop) {
  Vec3 sum;
  for (const Vec3& p : loop) sum = sum + p;
  return sum * (1.0 / static_cast<double>(loop.size()));
}

struct Hidden {
  int part = -1;
  double gap = 0;
};

// The part that stands within `reach` before most of a face, looked for from its middle and from
// half way to its corners.
Hidden hidden_by(const parts::Assembly& all, const std::vector<int>& others, const Face& face,
                 Vec3 outward, double reach) {
  constexpr double most = 0.75;
  const std::vector<Vec3>& corners = face.loops.front();
  const Vec3 middle = middle_of(corners);
  std::vector<Vec3> from{middle};
  for (const Vec3& corner : corners) from.push_back((middle + corner) * 0.5);
  std::vector<double> gaps;
  std::vector<int> hits;
  for (const Vec3& point : from) {
    int hit = -1;
    const double gap = first_wood(all, others, point, outward, &hit);
    if (gap > reach) continue;
    gaps.push_back(gap);
    hits.push_back(hit);
  }
  if (static_cast<double>(gaps.size()) < most * static_cast<double>(from.size())) return {};
  const auto nearest = std::ranges::min_element(gaps) - gaps.begin();
  return {hits[static_cast<std::size_t>(nearest)], *std::ranges::min_element(gaps)};
}

}  // namespace

void find_wet_checks(const Plan& plan, const std::vector<JointWork>& work,
                     std::vector<GlueStage>& stages) {
  WetChecks checks(plan, work, stages);
  checks.loops();
  checks.insides();
  checks.one_end();
}

// A face with other wood before it, nearer than a hand with a pad needs.
void find_out_of_reach(const Plan& plan, std::vector<GlueStage>& stages) {
  // A hand with a pad, and the play of a joint, mm; common practice, no source.
  constexpr double hand = 60, play = 3;
  constexpr double least_area = 4000;  // mm2: an edge gets its finish from a brush's tip
  const parts::Assembly& all = plan.assembly;
  const std::vector<int> out = removable(all);
  std::vector<Box> boxes;
  for (const parts::Part& part : all.parts) boxes.push_back(part.world.bounds());
  std::vector<int> fixed;
  for (std::size_t p = 0; p < all.parts.size(); ++p)
    if (!has(out, static_cast<int>(p))) fixed.push_back(static_cast<int>(p));
  for (const int p : fixed) {
    const parts::Part& part = all.parts[index(p)];
    std::vector<int> others;
    for (const int other : fixed)
      if (other != p && near(boxes[index(p)], boxes[index(other)], hand)) others.push_back(other);
    for (const parts::Side side : {parts::Side::z_low, parts::Side::z_high}) {
      for (const Face& face : part.world.boundary().faces) {
        const Vec3 outward = part.place.direction(parts::outward(side));
        if (dot(face.plane.n, outward) < 0.999 || face.area < least_area) continue;
        const Hidden hidden = hidden_by(all, others, face, outward, hand);
        const int hit = hidden.part;
        if (hit < 0 || hidden.gap < play) continue;
        const int stage = first_with(stages, {std::min(p, hit), std::max(p, hit)});
        if (stage >= 0)
          stages[index(stage)].finish_first.push_back(
              {p, parts::side_name(part, side), hidden.gap, hit});
      }
    }
  }
}

}  // namespace splay::fabrication
