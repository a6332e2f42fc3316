// Which steps are the same cut.
#include <algorithm>
#include <cmath>
#include <map>

#include "sheets/saw_steps_words.h"

namespace splay::sheets {

namespace {

using fabrication::Flag;
using fabrication::Setting;
using fabrication::Step;

constexpr double same_length = 1e-3, same_angle = 1e-9;  // mm, radians

bool near(double a, double b, double within) { return std::abs(a - b) < within; }

// What is drawn of a cut is alike whatever its fence or stop and its height are set to: each row
// says its own.
bool own_distance(const Step& step) {
  return sawn(step) && step.guide != fabrication::Guide::marks;
}

bool same_width(const Step& a, const Step& b) {
  return near(a.exact.width, b.exact.width, same_length) ||
         (a.runs_out && b.runs_out && a.exact.tilt == 0);
}

// Marks and lines are each row's own too, but for what a saw is led along.
bool same_setting(const Step& step, const Setting& a, const Setting& b) {
  const bool lines = told_by_marks(step);
  return near(a.tilt, b.tilt, same_angle) &&
         (near(a.gauge, b.gauge, same_angle) || step.has(Flag::sloped_jig)) &&
         (own_distance(step) || near(a.distance, b.distance, same_length)) &&
         (a.height > 0) == (b.height > 0) && near(a.jig_offset, b.jig_offset, same_length) &&
         a.facets == b.facets &&
         (lines || (a.marks.empty() && b.marks.empty() && a.lines.empty() && b.lines.empty() &&
                    a.depths.empty() && b.depths.empty()));
}

// Those that a row can't say for itself.
std::vector<Flag> flags_of(const Step& step) {
  std::vector<Flag> flags;
  for (const Flag flag : step.flags)
    if (flag != Flag::try_first && flag != Flag::same_setting && short_caution(step, flag).empty())
      flags.push_back(flag);
  std::ranges::sort(flags);
  return flags;
}

// "mortise", "shoulder": what is led along lines looks alike in parts that have it.
std::string kind_of(const Step& step) { return step.name.substr(0, step.name.find(' ')); }

bool same_way(const Step& a, const Step& b) {
  const bool drawn = !told_by_marks(a) || a.row == b.row || kind_of(a) == kind_of(b);
  return drawn && a.machine == b.machine && a.tool == b.tool && a.guide == b.guide &&
         a.position() == b.position() && a.reference_right == b.reference_right &&
         a.waste_right == b.waste_right && a.tilts_right == b.tilts_right &&
         a.to_long_point == b.to_long_point && a.cuts_through == b.cuts_through;
}

bool same_cut(const StepWork& first, const StepWork& other) {
  const Step &a = *first.step, &b = *other.step;
  return first.why.empty() && other.why.empty() && a.proven && b.proven && same_way(a, b) &&
         same_width(a, b) && a.remark == b.remark && flags_of(a) == flags_of(b) &&
         same_setting(a, a.exact, b.exact) && same_setting(a, a.printed, b.printed);
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
