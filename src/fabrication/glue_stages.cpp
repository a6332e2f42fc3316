// The order of assembly cut into stages: as many joints at once as the glue's times and the clamps
// there are allow, and a timeline of them.
#include <algorithm>
#include <cmath>
#include <map>

#include "base/index.h"
#include "fabrication/glue_up.h"
#include "fabrication/plan.h"

namespace splay::fabrication {

namespace {

double hands_of(const Clamping& row) {
  switch (row.how) {
    case ClampWay::clamps:
      return setting_clamp * row.count;
    case ClampWay::band:
      return setting_band * row.count;
    case ClampWay::tape:
      return closing_tape * std::max(1.0, 0.3 * row.count) * static_cast<double>(row.joints.size());
    case ClampWay::screws:
    case ClampWay::hands:
      break;
  }
  return 0;
}

// All that are one when the joining is done, ascending.
std::vector<int> together_of(const Joining& joining) {
  std::vector<int> both;
  std::ranges::merge(joining.moving, joining.fixed, std::back_inserter(both));
  return both;
}

class Staging {
 public:
  Staging(const Plan& plan, const AssemblyOrder& order, const std::vector<JointWork>& work)
      : plan_(plan), order_(order), work_(work), times_(plan.project->glue_up.times()) {}

  std::vector<GlueStage> all() {
    for (std::size_t i = 0; i < order_.joinings.size(); ++i) add(static_cast<int>(i));
    std::vector<GlueStage> stages;
    std::vector<int> number(stages_.size(), -1);
    for (std::size_t s = 0; s < stages_.size(); ++s) {
      if (stages_[s].joinings.empty()) continue;
      number[s] = static_cast<int>(stages.size());
      stages.push_back(std::move(stages_[s]));
      for (int& need : stages.back().needs) need = number[index(need)];
    }
    for (GlueStage& stage : stages) run(stage, stages);
    return stages;
  }

 private:
  // The stage that left these parts as one, -1 for a single part.
  int maker(const std::vector<int>& parts) const {
    const auto found = made_.find(parts);
    return found == made_.end() ? -1 : found->second;
  }

  Bond bond(const Joining& joining) const {
    // What asks most of the stage: glue, then what goes with glue, then what is drawn home dry.
    Bond most = Bond::fitted;
    for (const int joint : joining.joints) most = std::min(most, work_[index(joint)].bond);
    return most;
  }

  bool edging(const Joining& joining) const {
    return std::ranges::any_of(joining.joints, [&](int joint) {
      return plan_.assembly.joints[index(joint)].made == parts::Made::before_assembly;
    });
  }

  // May a joining's work go on while a stage is wet, while it is drawn home dry, or fitted?
  static bool akin(Bond joining, Bond stage) {
    const auto wet = [](Bond bond) { return bond == Bond::glued || bond == Bond::dry; };
    return joining == stage || (wet(joining) && wet(stage));
  }

  void measure(GlueStage& stage) const {
    const double pace = *plan_.project->glue_up.pace;
    double hands = 0;
    stage.glued = false;
    stage.undone = !stage.joints.empty();
    stage.spreading = 0;
    for (const int joint : stage.joints) {
      const JointWork& work = work_[index(joint)];
      stage.glued = stage.glued || work.bond == Bond::glued;
      stage.spreading += pace * work.spreading;
      stage.undone = stage.undone && work.bond == Bond::undone;
      if (work.bond == Bond::fitted || work.bond == Bond::undone) hands += fitting_dry;
    }
    stage.clampings = clamp(plan_, work_, stage);
    for (const Clamping& row : stage.clampings) hands += hands_of(row);
    hands += bringing_together * static_cast<double>(stage.joinings.size());
    stage.minutes = stage.spreading + pace * hands;
    stage.cure = stage.glued ? times_.cure : 0;
  }

  // With the glue's times, the clamps there are, and what one picture shows.
  bool fits(const GlueStage& stage) const {
    constexpr std::size_t seen_at_once = 24;
    const bool clamps = std::ranges::all_of(stage.clampings, &Clamping::enough);
    return clamps && stage.joinings.size() <= seen_at_once &&
           (!stage.glued ||
            (stage.spreading <= times_.open && stage.minutes <= times_.open + times_.closed));
  }

  // `joining` done together with the joinings of the stages `with`, which then are no more.
  GlueStage together(int joining, const std::vector<int>& with) const {
    GlueStage stage;
    const auto take = [](std::vector<int>& all, const std::vector<int>& more) {
      all.insert(all.end(), more.begin(), more.end());
      std::ranges::sort(all);
      all.erase(std::unique(all.begin(), all.end()), all.end());
    };
    const Joining& last = order_.joinings[index(joining)];
    for (const int s : with) {
      take(stage.joinings, stages_[index(s)].joinings);
      take(stage.joints, stages_[index(s)].joints);
      take(stage.needs, stages_[index(s)].needs);
      take(stage.parts, stages_[index(s)].parts);
      stage.pieces.insert(stage.pieces.end(), stages_[index(s)].pieces.begin(),
                          stages_[index(s)].pieces.end());
    }
    take(stage.joinings, {joining});
    take(stage.joints, last.joints);
    take(stage.parts, last.moving);
    take(stage.parts, last.fixed);
    std::erase_if(stage.pieces, [&](const std::vector<int>& piece) {
      return piece == last.moving || piece == last.fixed;
    });
    stage.pieces.push_back(together_of(last));
    for (const std::vector<int>* side : {&last.moving, &last.fixed})
      if (const int s = maker(*side); s >= 0 && std::ranges::find(with, s) == with.end())
        take(stage.needs, {s});
    measure(stage);
    return stage;
  }

  void add(int next) {
    const Joining& joining = order_.joinings[index(next)];
    std::vector<std::vector<int>> choices;
    const int moving = maker(joining.moving), fixed = maker(joining.fixed);
    const bool edges = edging(joining);
    // Edging dries and is trimmed before its panel goes anywhere; panels are edged side by side.
    const auto open = [&](int s) {
      return s >= 0 && !edges && !edging_[index(s)] && akin(bond(joining), bonds_[index(s)]);
    };
    if (edges && !edging_.empty() && edging_.back())
      choices.push_back({static_cast<int>(edging_.size()) - 1});
    if (open(moving) && open(fixed)) choices.push_back({fixed, moving});
    if (open(fixed)) choices.push_back({fixed});
    if (open(moving)) choices.push_back({moving});
    GlueStage stage;
    std::vector<int> used;
    for (const std::vector<int>& with : choices) {
      stage = together(next, with);
      if (!fits(stage)) continue;
      used = with;
      break;
    }
    if (used.empty()) stage = together(next, {});
    const int number = static_cast<int>(stages_.size());
    for (const int s : used) stages_[index(s)] = {};
    for (auto& [piece, stage_of] : made_)
      if (std::ranges::find(used, stage_of) != used.end()) stage_of = number;
    made_[together_of(joining)] = number;
    stages_.push_back(std::move(stage));
    bonds_.push_back(bond(joining));
    edging_.push_back(edges);
  }

  // One pair of hands; a stage waits for those it needs to come out of the clamps, and for its own
  // clamps to be free.
  void run(GlueStage& stage, const std::vector<GlueStage>& stages) {
    double start = hands_free_;
    for (const int need : stage.needs) start = std::max(start, stages[index(need)].frees);
    for (bool wait = true; wait;) {
      wait = false;
      for (const Clamping& row : stage.clampings)
        if (const double later = free_at(row.clamp, stage, start, stages); later > start) {
          start = later;
          wait = true;
        }
    }
    stage.starts = start;
    stage.frees = start + stage.minutes + stage.cure;
    hands_free_ = start + stage.minutes;
  }

  // When the stage may have its clamps of a name, at `start` or when others come off.
  double free_at(const std::string& clamp, const GlueStage& stage, double start,
                 const std::vector<GlueStage>& stages) const {
    const model::Clamp* owned = plan_.project->glue_up.clamps.find(clamp);
    if (owned == nullptr) return start;
    int busy = 0;
    for (const Clamping& row : stage.clampings)
      if (row.clamp == clamp) busy += row.count;
    double next = start;
    for (const GlueStage& other : stages) {
      if (other.frees <= start || other.frees <= other.starts) continue;
      for (const Clamping& taken : other.clampings) {
        if (taken.clamp != clamp) continue;
        busy += taken.count;
        if (next <= start || other.frees < next) next = other.frees;
      }
    }
    return busy > *owned->count ? next : start;
  }

  const Plan& plan_;
  const AssemblyOrder& order_;
  const std::vector<JointWork>& work_;
  model::GlueTimes times_;
  std::vector<GlueStage> stages_;  // those taken into a later one are empty
  std::vector<Bond> bonds_;
  std::vector<bool> edging_;  // by stage: panels are edged in it
  std::map<std::vector<int>, int> made_;
  double hands_free_ = 0;
};

}  // namespace

std::vector<GlueStage> stages_of(const Plan& plan, const AssemblyOrder& order,
                                 const std::vector<JointWork>& work) {
  return Staging(plan, order, work).all();
}

double GlueUpPlan::ends() const {
  double last = 0;
  for (const GlueStage& stage : stages) last = std::max(last, stage.frees);
  return last;
}

}  // namespace splay::fabrication
