#include "fabrication/proof.h"

#include <algorithm>
#include <cmath>

#include "base/parallel.h"
#include "fabrication/derive.h"
#include "fabrication/edging.h"
#include "fabrication/hands.h"
#include "fabrication/proof_faces.h"
#include "fabrication/simulate.h"
#include "parts/audit.h"

namespace splay::fabrication {

namespace {

// How far a point is outside of a solid, at least.
double outside(const Solid& solid, Vec3 p) {
  double nearest = 1e300;
  for (const Cell& cell : solid.cells()) {
    double out = 0;
    for (const CellFace& face : cell.faces) {
      const Plane& plane = solid.planes()[static_cast<std::size_t>(face.plane)];
      out = std::max(out, plane.distance(p) * face.side);
      if (out >= nearest) break;
    }
    nearest = std::min(nearest, out);
    if (nearest <= 0) break;
  }
  return nearest;
}

void add_surplus(const Solid& more, const Solid& less, Comparison& result) {
  Solid rest = more;
  rest.subtract(less);
  if (rest.empty()) return;
  result.volume += rest.volume();
  for (const Vec3& p : rest.vertices())
    result.deviation = std::max(result.deviation, outside(less, p));
}

double box_area(Vec3 size) { return size.x * size.y + size.y * size.z + size.z * size.x; }

Solid to_low_corner(const Solid& work) {
  return work.empty() ? work
                      : work.transformed({{1, 0, 0}, {0, 1, 0}, {0, 0, 1}, -work.bounds().low});
}

struct CutParts {
  std::vector<Solid> exact, printed;  // by row
  // All its steps could be carried out: exactly, and with the printed settings.
  std::vector<char> sound, sound_printed;
};

std::span<Step> steps_of(Plan& plan, int row) {
  const auto first = std::find_if(plan.steps.begin(), plan.steps.end(),
                                  [&](const Step& step) { return step.row == row; });
  const auto last =
      std::find_if(first, plan.steps.end(), [&](const Step& step) { return step.row != row; });
  return {first, last};
}

// A row's part cut by its steps, exactly and as printed, with what each step sweeps.
struct Cutting {
  Solid exact, printed;
  std::string exact_why, printed_why;              // why a step can't be carried out
  std::vector<Region> wanted, alone, all_printed;  // exact; printed after exact ones; all printed

  void step(const Step& step) {
    Region region;
    if (exact_why.empty()) {
      const std::string alone_why = sweep(step, step.printed, exact, region);
      alone.push_back(alone_why.empty() ? region : Region{});
      exact_why = sweep(step, step.exact, exact, region);
      wanted.push_back(region);
      if (exact_why.empty()) exact_why = take_off(step, step.exact, region, exact);
      if (!exact_why.empty()) exact_why = step.name + ": " + exact_why + ".";
    }
    if (!printed_why.empty()) return;
    printed_why = sweep(step, step.printed, printed, region);
    all_printed.push_back(region);
    if (printed_why.empty()) printed_why = take_off(step, step.printed, region, printed);
  }
};

// What the printed settings make of the faces: of each step alone, and of the part.
void measure_printed(const Solid& body, const Cutting& cut, std::span<Step> steps, PartRow& row) {
  const DesignedFaces faces(body);
  const Vec3 low = cut.exact.bounds().low, printed_low = cut.printed.bounds().low;
  row.deviation_printed =
      cut.printed_why.empty() ? faces.blank_off(cut.wanted, low, printed_low) : -1;
  for (std::size_t i = 0; i < steps.size(); ++i) {
    const Sweep wanted{cut.wanted[i], low};
    steps[i].deviation_printed = faces.off(wanted, {cut.alone[i], low});
    if (cut.printed_why.empty())
      row.deviation_printed =
          std::max(row.deviation_printed, faces.off(wanted, {cut.all_printed[i], printed_low}));
  }
}

void prove_row(Plan& plan, int row, CutParts& parts_cut) {
  PartRow& about = plan.rows[static_cast<std::size_t>(row)];
  const parts::Part& part = plan.sample(row);
  const std::span<Step> steps = steps_of(plan, row);
  const Solid blank = blank_of(*plan.project, part), wanted = wanted_of(plan, row);
  Cutting cut{blank, blank, {}, {}, {}, {}, {}};
  for (const Step& step : steps) cut.step(step);
  const bool carried_out = cut.exact_why.empty(), printed_out = cut.printed_why.empty();
  std::string why = cut.exact_why;
  for (const Step& step : steps)
    if (why.empty() && !step.unproven_why.empty()) why = step.name + ": " + step.unproven_why;
  if (carried_out) measure_printed(wanted, cut, steps, about);
  cut.exact = to_low_corner(cut.exact);
  cut.printed = to_low_corner(cut.printed);
  Comparison plain;
  if (carried_out) plain = compare(cut.exact, wanted);
  if (carried_out && !plain.equal(box_area(part.size)))
    why = "Cut so, the part is off by " + plain_number(plain.deviation, 6) + " mm.";
  for (Step& step : steps) {
    step.proven = why.empty();
    step.unproven_why = why;
    step.deviation_exact = plain.deviation;
    step.volume_difference = plain.volume;
  }
  const auto at = static_cast<std::size_t>(row);
  parts_cut.sound[at] = carried_out ? 1 : 0;
  parts_cut.sound_printed[at] = printed_out ? 1 : 0;
  parts_cut.exact[at] = std::move(cut.exact);
  parts_cut.printed[at] = std::move(cut.printed);
}

// From where the proof leaves a row's work to the frame of one of its parts.
Rigid onto(const Plan& plan, int part) {
  const int row = plan.row_of_part[static_cast<std::size_t>(part)];
  const int first = plan.rows[static_cast<std::size_t>(row)].members.front();
  const Rigid out{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}, plan.sample(row).body.bounds().low};
  const std::optional<Rigid> turn =
      first == part ? std::nullopt : turn_onto(plan.sample(row), plan.as_cut(part));
  return turn.value_or(Rigid{}) * out;
}

// A part as cut, in the world: of what was cut in one piece with edging its share.
Solid share_of(const Plan& plan, const std::vector<Solid>& by_row, int part) {
  const auto left = [&](int of) -> const Solid& {
    return by_row[static_cast<std::size_t>(plan.row_of_part[static_cast<std::size_t>(of)])];
  };
  const Rigid& place = plan.assembly.parts[static_cast<std::size_t>(part)].place;
  const int panel = panel_of(plan.assembly, part);
  if (panel < 0 && !plan.edged.contains(part))
    return left(part).transformed(place * onto(plan, part));
  const int whole = panel < 0 ? part : panel;
  const std::vector<Edging> edging = edging_of(plan.assembly, whole);
  Solid cut = left(whole).transformed(onto(plan, whole));
  if (panel < 0) return panel_share(std::move(cut), edging).transformed(place);
  const auto strip = std::ranges::find(edging, part, &Edging::strip);
  return strip_share(std::move(cut), plan.assembly, panel, *strip).transformed(place);
}

// The parts as cut, where the designed ones stood: each put there when a joint first asks for it,
// and dropped after the last.
class CutInPlace {
 public:
  CutInPlace(const Plan& plan, const CutParts& cut) : plan_(plan), cut_(cut) {
    last_.resize(plan.assembly.parts.size());
    for (parts::Assembly* made : {&exact, &printed}) made->parts.resize(last_.size());
    for (std::size_t j = 0; j < plan.assembly.joints.size(); ++j)
      for (const int part : touched(j)) last_[static_cast<std::size_t>(part)] = j;
  }

  void place_for(std::size_t joint) {
    for (const int part : touched(joint)) place(static_cast<std::size_t>(part));
  }
  void drop_after(std::size_t joint) {
    for (const int part : touched(joint)) {
      const auto i = static_cast<std::size_t>(part);
      if (last_[i] == joint) exact.parts[i].world = printed.parts[i].world = {};
    }
  }

  parts::Assembly exact, printed;

 private:
  std::vector<int> touched(std::size_t joint) const {
    std::vector<int> found;
    for (const parts::Mate& mate : plan_.assembly.joints[joint].mates)
      found.insert(found.end(), {mate.a, mate.b});
    return found;
  }

  void place(std::size_t i) {
    if (!exact.parts[i].world.empty()) return;
    exact.parts[i].world = share_of(plan_, cut_.exact, static_cast<int>(i));
    printed.parts[i].world = share_of(plan_, cut_.printed, static_cast<int>(i));
  }

  const Plan& plan_;
  const CutParts& cut_;
  std::vector<std::size_t> last_;  // joint that needs each part
};

// A strip is no better than what is made of it together with its panel.
void prove_edging(Plan& plan, CutParts& cut) {
  for (const auto& [panel, whole] : plan.edged) {
    const auto row = static_cast<std::size_t>(plan.row_of_part[static_cast<std::size_t>(panel)]);
    for (const Edging& edging : edging_of(plan.assembly, panel)) {
      const int strip_row = plan.row_of_part[static_cast<std::size_t>(edging.strip)];
      for (std::vector<char>* sound : {&cut.sound, &cut.sound_printed})
        if ((*sound)[row] == 0) (*sound)[static_cast<std::size_t>(strip_row)] = 0;
    }
  }
}

void measure_joints(Plan& plan, const CutParts& cut) {
  CutInPlace made(plan, cut);
  for (std::size_t i = 0; i < plan.joints.size(); ++i) {
    const parts::Joint& joint = plan.assembly.joints[i];
    const auto all = [&](const std::vector<char>& sound) {
      return std::ranges::all_of(joint.between, [&](int part) {
        const auto at = static_cast<std::size_t>(part);
        return sound[static_cast<std::size_t>(plan.row_of_part[at])] != 0;
      });
    };
    const bool exact = all(cut.sound), printed = exact && all(cut.sound_printed);
    if (exact) made.place_for(i);
    if (exact) plan.joints[i].gap_cut = parts::joint_gap(joint, made.exact);
    if (printed)
      plan.joints[i].gap_printed = parts::joint_gap(joint, made.printed, parts::loose_search);
    made.drop_after(i);
  }
}

}  // namespace

Solid wanted_of(const Plan& plan, int row) {
  const parts::Part& part = plan.sample(row);
  const int first = plan.rows[static_cast<std::size_t>(row)].members.front();
  if (panel_of(plan.assembly, first) < 0) return to_low_corner(part.body);
  const Vec3 long_enough = blank_of(*plan.project, part).bounds().size();
  return Solid::box({}, {long_enough.x, part.size.y, part.size.z});
}

Comparison compare(const Solid& made, const Solid& wanted) {
  Comparison result;
  add_surplus(made, wanted, result);
  add_surplus(wanted, made, result);
  return result;
}

std::string cut_part(std::span<const Step> steps, bool printed, Solid& work) {
  for (const Step& step : steps) {
    const std::string why = carry_out(step, printed ? step.printed : step.exact, work);
    if (!why.empty()) return step.name + ": " + why + ".";
  }
  work = to_low_corner(work);
  return "";
}

void prove(Plan& plan) {
  CutParts cut;
  cut.exact.resize(plan.rows.size());
  cut.printed.resize(plan.rows.size());
  cut.sound.assign(plan.rows.size(), 0);
  cut.sound_printed.assign(plan.rows.size(), 0);
  in_parallel(plan.rows.size(),
              [&](std::size_t row) { prove_row(plan, static_cast<int>(row), cut); });
  prove_edging(plan, cut);
  measure_joints(plan, cut);
}

}  // namespace splay::fabrication
