// Which steps are the same cut.
#include <algorithm>
#include <cmath>
#include <map>

#include "sheets/saw_steps_work.h"

namespace splay::sheets {

namespace {

using fabrication::Flag;
using fabrication::Setting;
using fabrication::Step;

constexpr double same_length = 1e-3, same_angle = 1e-9;  // mm, radians

bool near(double a, double b, double within) { return std::abs(a - b) < within; }

bool marked(const Setting& set) {
  return !set.marks.empty() || !set.lines.empty() || !set.depths.empty();
}

// A cut right through is drawn alike whatever fence or stop is set to: each row says its own.
bool own_distance(const Step& step) {
  return step.tool == fabrication::Tool::blade && step.cuts_through && step.exact.height == 0;
}

bool same_setting(const Setting& a, const Setting& b, bool any_distance) {
  return near(a.tilt, b.tilt, same_angle) && near(a.gauge, b.gauge, same_angle) &&
         (any_distance || near(a.distance, b.distance, same_length)) &&
         near(a.height, b.height, same_length) && near(a.width, b.width, same_length) &&
         near(a.jig_offset, b.jig_offset, same_length) && a.facets == b.facets && !marked(a) &&
         !marked(b);
}

std::vector<Flag> flags_of(const Step& step) {
  std::vector<Flag> flags;
  for (const Flag flag : step.flags)
    if (flag != Flag::try_first && flag != Flag::same_setting) flags.push_back(flag);
  std::ranges::sort(flags);
  return flags;
}

bool same_cut(const StepWork& first, const StepWork& other) {
  const Step &a = *first.step, &b = *other.step;
  // As thick over the table, so that the one drawing is right for both.
  const bool alike = first.why.empty() && other.why.empty() &&
                     near(first.bite.high.z, other.bite.high.z, same_length);
  return alike && a.proven && b.proven && a.machine == b.machine && a.tool == b.tool &&
         a.guide == b.guide && a.position() == b.position() &&
         a.reference_right == b.reference_right && a.waste_right == b.waste_right &&
         a.tilts_right == b.tilts_right && a.to_long_point == b.to_long_point &&
         a.cuts_through == b.cuts_through && a.remark == b.remark && flags_of(a) == flags_of(b) &&
         same_setting(a.exact, b.exact, own_distance(a)) &&
         same_setting(a.printed, b.printed, own_distance(a));
}

}  // namespace

std::vector<JoinedSteps> joined_steps(const Bench& bench) {
  std::vector<JoinedSteps> cards;
  std::map<int, std::size_t> last;  // the card of each row's step before
  for (const StepWork* work : bench.steps) {
    const auto before = last.find(work->step->row);
    std::size_t card = before == last.end() ? 0 : before->second;
    while (card < cards.size() && !same_cut(*cards[card].front(), *work)) ++card;
    if (card == cards.size()) cards.emplace_back();
    cards[card].push_back(work);
    last[work->step->row] = card;
  }
  return cards;
}

}  // namespace splay::sheets
