// Clamps of a stage: rows along the lines in which parts end, bands or tape round mitred rings.
#include <algorithm>
#include <cmath>

#include "base/index.h"
#include "fabrication/glue_clamping.h"
#include "fabrication/plan.h"

namespace splay::fabrication {

namespace {

// Common practice, no source: distances between clamps and from a joint's end, wedges.
constexpr double clamps_apart = 250, from_end = 45, short_joint = 120;
constexpr double caul_width = 50, caul_thin = 18;
constexpr double no_caul = 0.035, no_head = 1.15;  // radians: square enough, and too steep to bear

int places(double length) {
  if (length < short_joint) return 1;
  return 1 + static_cast<int>(std::ceil((length - 2 * from_end) / clamps_apart - 1e-9));
}

// Joints that one row of clamps presses together, and what they ask of it.
struct ClampLine {
  std::vector<int> joints;
  Vec3 middle;
  double length = 0, force = 0;
  int least = 1;
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
    for (const std::vector<int>& piece : stage_.pieces) {
      piece_ = piece;
      for (const int joint : stage_.joints)
        if (work_[index(joint)].bond == Bond::glued && work_[index(joint)].area > 0 &&
            within(joint))
          open_.push_back(joint);
      carried_along();
      screws();
      strips();
      rings();
      while (!open_.empty()) row();
    }
    for (const auto& [joint, by] : carried_)
      for (Clamping& row : rows_)
        if (std::ranges::find(row.joints, by) != row.joints.end()) row.joints.push_back(joint);
    return std::move(rows_);
  }

 private:
  bool within(int joint) const {
    return std::ranges::all_of(all_.joints[index(joint)].between,
                               [&](int part) { return std::ranges::binary_search(piece_, part); });
  }

  // The panel that an edging is one with since before the cuts; any other part itself.
  int core_of(int part) const {
    for (const parts::Joint& joint : all_.joints)
      if (joint.made == parts::Made::before_cuts && joint.between.front() == part)
        return joint.between.back();
    return part;
  }

  // Where edged panels meet their edgings meet too: what presses the panels presses these.
  void carried_along() {
    const std::vector<int> open = open_;
    std::erase_if(open_, [&](int joint) {
      const std::vector<int>& between = all_.joints[index(joint)].between;
      std::vector<int> cores;
      cores.reserve(between.size());
      for (const int part : between) cores.push_back(core_of(part));
      if (std::ranges::is_permutation(cores, between)) return false;
      const auto by = std::ranges::find_if(open, [&](int other) {
        return std::ranges::is_permutation(all_.joints[index(other)].between, cores);
      });
      if (by == open.end()) return false;
      carried_.emplace_back(joint, *by);
      return true;
    });
  }

  void screws() {
    Clamping held;
    held.how = ClampWay::screws;
    std::erase_if(open_, [&](int joint) {
      if (work_[index(joint)].self_held) held.joints.push_back(joint);
      return work_[index(joint)].self_held;
    });
    if (!held.joints.empty()) rows_.push_back(std::move(held));
  }

  // Tape over a strip, joint by joint.
  void strips() {
    std::erase_if(open_, [&](int joint) {
      const JointWork& work = work_[index(joint)];
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

  void rings() {
    for (const Ring& ring : rings_of(all_, work_, open_)) {
      std::optional<Clamping> row = clamp_round(all_, work_, ring, rack_);
      if (!row) continue;
      rows_.push_back(std::move(*row));
      std::erase_if(open_, [&](int joint) {
        return std::ranges::find(ring.joints, joint) != ring.joints.end();
      });
    }
  }

  ClampLine take_line();
  void row();
  static bool bears(const Clamping& row);
  void place_heads(Clamping& row, Vec3 middle, Vec3 along, double length);
  void add_caul(Clamping& row, const Hit& hit, Vec3 way, double length) const;

  const Plan& plan_;
  const parts::Assembly& all_;
  const std::vector<JointWork>& work_;
  const GlueStage& stage_;
  Rack rack_;
  std::vector<int> piece_;                    // the one that is clamped
  std::vector<int> open_;                     // its joints without clamps yet
  std::vector<std::pair<int, int>> carried_;  // joints, and those whose clamps press them too
  std::vector<Clamping> rows_;
};

void StageClamps::add_caul(Clamping& row, const Hit& hit, Vec3 way, double length) const {
  const double angle = angle_between(hit.normal, way);
  if (angle < no_caul) return;
  // On the free end of the part that the clamps draw along a notched block bears, not a wedge.
  const bool own_end = std::ranges::any_of(
      row.joints, [&](int joint) { return work_[index(joint)].ends == hit.part; });
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
    const std::optional<Heads> heads = heads_on(all_, piece_, through, row.axis);
    if (!heads) continue;
    const auto& [low, high] = *heads;
    row.heads.push_back({through - row.axis * low.at, through + row.axis * high.at});
    add_caul(row, high, row.axis, length);
    add_caul(row, low, -row.axis, length);
    row.reach = std::max(row.reach, high.at + low.at);
  }
}

bool StageClamps::bears(const Clamping& row) {
  return !row.heads.empty() &&
         std::ranges::none_of(row.cauls, [](const Caul& caul) { return caul.angle > no_head; });
}

// The joints in one line with the first one left.
ClampLine StageClamps::take_line() {
  ClampLine line;
  const JointWork& first = work_[index(open_.front())];
  double count = 0;
  std::erase_if(open_, [&](int joint) {
    const JointWork& work = work_[index(joint)];
    constexpr double same_line = 0.9994;  // cosine of 2 degrees
    const Vec3 apart_by = work.middle - first.middle;
    const Vec3 aside = apart_by - first.axis * dot(apart_by, first.axis);
    if (std::abs(dot(work.axis, first.axis)) < same_line ||
        norm(aside) > std::max(10.0, std::max(work.length, first.length) / 4))
      return false;
    line.joints.push_back(joint);
    line.length = std::max(line.length, work.length);
    line.least = std::max(line.least, places(work.length));
    line.middle = line.middle + work.middle;
    if (!work.seats) line.force = std::max(line.force, work.area * pressure_for(plan_, joint));
    count += 1;
    return true;
  });
  line.middle = line.middle * (1 / count);
  return line;
}

// One row of clamps that presses a line of joints together: along the part that ends there, or
// square to what is pressed where no head bears so.
void StageClamps::row() {
  const JointWork& first = work_[index(open_.front())];
  const ClampLine line = take_line();
  Clamping row;
  for (const Vec3 axis : {first.axis, first.pressed}) {
    row = {};
    row.joints = line.joints;
    row.axis = axis;
    row.count = 3;  // to learn how far apart the heads are
    place_heads(row, line.middle, first.along, line.length);
    if (bears(row)) break;
  }
  if (!bears(row)) {
    row = {};
    row.joints = line.joints;
    row.how = ClampWay::hands;
    row.axis = first.pressed;
    rows_.push_back(std::move(row));
    return;
  }
  for (const Caul& caul : row.cauls) row.reach += caul.thick / 2;
  row.force = line.force;
  rack_.choose(row, line.force, line.least);
  const double reach = row.reach;
  place_heads(row, line.middle, first.along, line.length);
  row.reach = reach;
  double steepest = 0, shear = 0;
  for (const Caul& caul : row.cauls) steepest = std::max(steepest, caul.angle);
  for (const int joint : row.joints)
    if (const JointWork& work = work_[index(joint)]; !work.seats)
      shear = std::max(shear, std::acos(std::min(1.0, std::abs(dot(row.axis, work.pressed)))));
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
