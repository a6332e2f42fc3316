#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <map>
#include <tuple>

#include "base/figure.h"
#include "base/tolerance.h"
#include "ink/lint_page.h"

namespace splay::ink {

namespace {

constexpr double drawn_tolerance = 0.02;  // mm on paper; ISO 128 lines are ten times as wide

double drawn_mm(const DimensionClaim& claim) {
  return std::abs(dot(claim.to - claim.from, unit(claim.along))) / claim.scale;
}

double printed_mm(const DimensionClaim& claim) {
  return static_cast<double>(claim.steps) * claim.step_mm;
}

std::string where(const DimensionClaim& claim) {
  const std::string chain = claim.chain.empty() ? "" : " of chain \"" + claim.chain + "\"";
  return "the dimension" + chain + " at " + place_text((claim.from + claim.to) * 0.5);
}

// A link of a chain is the difference of two running figures, each rounded once: up to one step off
// the rounded length. Every other figure is rounded by itself: half a step.
void check_one(const LintPage& page, const DimensionClaim& claim, Faults& faults) {
  const bool link = !claim.chain.empty() && !claim.overall && !claim.running;
  const double allowed = (link ? 1.0 : 0.5) * claim.step_mm + 2 * tolerance::weld;
  if (std::abs(printed_mm(claim) - claim.exact_mm) > allowed)
    faults.push_back({"dimension-off", page.page->label,
                      where(claim) + " prints " + plain_number(printed_mm(claim), 4) + " mm for " +
                          plain_number(claim.exact_mm, 4)});
  const double off = std::abs(drawn_mm(claim) - std::abs(claim.exact_mm)) * claim.scale;
  if (off > drawn_tolerance)
    faults.push_back({"dimension-off", page.page->label,
                      where(claim) + " is drawn " + plain_number(drawn_mm(claim), 3) +
                          " mm long for " + plain_number(std::abs(claim.exact_mm), 3)});
}

struct Chain {
  const DimensionClaim* any = nullptr;
  std::int64_t link_steps = 0;
  double link_exact = 0;
  int links = 0;
  std::int64_t farthest_running = 0;
  int running = 0;
  std::vector<const DimensionClaim*> overall;
};

std::string against(std::int64_t steps, std::int64_t overall) {
  return std::to_string(steps) + " steps, the overall prints " + std::to_string(overall);
}

void check_chain(const LintPage& page, const Chain& chain, Faults& faults) {
  const auto open = [&](const std::string& why) {
    faults.push_back({"chain-open", page.page->label, where(*chain.any) + ": " + why});
  };
  if (chain.links > 0 && chain.overall.empty()) open("the chain has no overall");
  for (const DimensionClaim* overall : chain.overall) {
    if (chain.links > 0 && chain.link_steps != overall->steps)
      open("the links add up to " + against(chain.link_steps, overall->steps));
    if (chain.links > 0 && std::abs(chain.link_exact - overall->exact_mm) > 0.001)
      open("the links measure " + plain_number(chain.link_exact, 4) + " mm together, the overall " +
           plain_number(overall->exact_mm, 4));
    if (chain.running > 0 && std::abs(chain.farthest_running) > std::abs(overall->steps))
      open("a running figure reaches " + against(chain.farthest_running, overall->steps));
  }
}

// A direction and its opposite are one; to a thousandth of a radian.
std::pair<long, long> direction_key(Vec2 along) {
  const Vec2 u = unit(along);
  const long x = std::lround(u.x * 1000), y = std::lround(u.y * 1000);
  return x < 0 || (x == 0 && y < 0) ? std::pair{-x, -y} : std::pair{x, y};
}

}  // namespace

void lint_dimensions(const LintPage& page, Faults& faults) {
  std::map<std::tuple<std::string, std::pair<long, long>>, Chain> chains;
  for (const DimensionClaim* claim : page.dimensions) {
    check_one(page, *claim, faults);
    if (claim->chain.empty()) continue;
    Chain& chain = chains[{claim->chain, direction_key(claim->along)}];
    chain.any = claim;
    if (claim->overall) {
      chain.overall.push_back(claim);
    } else if (claim->running) {
      ++chain.running;
      if (std::abs(claim->steps) > std::abs(chain.farthest_running))
        chain.farthest_running = claim->steps;
    } else {
      ++chain.links;
      chain.link_steps += claim->steps;
      chain.link_exact += claim->exact_mm;
    }
  }
  for (const auto& [key, chain] : chains) check_chain(page, chain, faults);
}

}  // namespace splay::ink
