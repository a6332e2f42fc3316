#include <algorithm>
#include <cstdlib>
#include <set>

#include "fabrication/random_steps.h"
#include "fabrication/steps_check.h"

namespace splay::test {

namespace {

constexpr double exact = 1e-6;  // mm

// Findings that say a piece can't be built; one of the proof is none of them.
bool refused(const Built& built) {
  return std::ranges::any_of(built.plan.findings, [](const Finding& finding) {
    return finding.level == Level::stop && finding.code != "unproven-step";
  });
}

// What isn't proven or doesn't close, a line each.
std::string failures(const Built& built) {
  std::string text;
  for (const fabrication::Step& step : built.plan.steps) {
    if (step.proven && step.deviation_exact < exact) continue;
    const fabrication::PartRow& row = built.plan.rows[static_cast<std::size_t>(step.row)];
    const bool said = std::ranges::any_of(built.plan.findings, [&](const Finding& finding) {
      return finding.level == Level::stop &&
             std::ranges::find(finding.about, row.mark) != finding.about.end();
    });
    text += row.name + ", " + step.id + " " + step.name + ": " +
            (step.proven ? "deviates " + std::to_string(step.deviation_exact) : step.unproven_why) +
            (said ? "" : " AND NO FINDING SAYS SO") + "\n";
  }
  for (const fabrication::JointReport& joint : built.plan.joints)
    if (joint.gap_cut < 0 || joint.gap_cut >= exact)
      text += "joint " + joint.name + " (" + joint.kind + "): " +
              (joint.gap_cut < 0 ? "not measured" : "open " + std::to_string(joint.gap_cut)) + "\n";
  return text;
}

int asked(int pieces) {
  const char* more = std::getenv("SPLAYBOOK_MORE");
  return pieces * (more == nullptr ? 1 : std::max(1, std::atoi(more)));
}

}  // namespace

std::string a_shop(Chance& chance) {
  return job("mm") + "[shop.saw]\ntilts = \"" + chance.word({"left", "right"}) +
         "\"\nwidest_stack = " + (chance.coin() ? "20" : "0") + "\nkerf = " + chance.mm(2.2, 3.6) +
         "\n" + sheet("panel", chance.mm(15, 22) + " mm") + sheet("back", "6 mm") +
         board("leg", "120 mm") + board("oak", "20 mm") + board("thin", "16 mm") +
         board("lip", "5 mm") + board("thick", "60 mm");
}

void prove(const Wanted& wanted) {
  const int pieces = asked(wanted.pieces);
  int built_count = 0, tries = 0, steps = 0, machine = 0;
  std::string list;
  std::set<std::string> joints;
  for (unsigned seed = wanted.seed; built_count < pieces && tries < 4 * pieces; ++seed, ++tries) {
    Chance chance(seed);
    const std::string text = wanted.write(chance);
    INFO("seed " << seed << "\n" << text);
    const Built built = build(text);
    if (refused(built)) continue;
    ++built_count;
    steps += static_cast<int>(built.plan.steps.size());
    for (const fabrication::Step& step : built.plan.steps)
      machine += step.machine != fabrication::Machine::hand;
    for (const parts::Joint& joint : built.plan.assembly.joints) joints.insert(joint.kind);
    const std::string failed = failures(built);
    if (!failed.empty()) list += "seed " + std::to_string(seed) + ":\n" + failed;
    check_each_once(built.plan);
  }
  std::string kinds;
  for (const std::string& kind : joints) kinds += (kinds.empty() ? "" : ", ") + kind;
  WARN(built_count << " " << wanted.what << " of " << tries << " tried, " << steps << " steps, "
                   << machine << " by machine; joints: " << kinds);
  if (!list.empty()) FAIL_CHECK(list);
  CHECK(built_count == pieces);
  CHECK(machine >= wanted.by_machine * steps);
}

}  // namespace splay::test
