// What must be so of the hardware an author adds, and everything else judged of hardware.
#include <algorithm>

#include "fabrication/hardware.h"
#include "fabrication/hardware_judges.h"
#include "fabrication/plan.h"

namespace splay::fabrication {

namespace {

void check_authors(Plan& plan) {
  const auto& all = plan.project->hardware;
  const auto none_named = [&](const std::string& name) {
    return std::ranges::find(plan.assembly.parts, name, &parts::Part::name) ==
           plan.assembly.parts.end();
  };
  for (std::size_t i = 0; i < all.size(); ++i) {
    const model::Hardware& hardware = all[i];
    if (hardware.at.given) continue;  // looked at when it was placed
    for (const std::string& name : *hardware.on)
      if (none_named(name))
        plan.findings.push_back(
            {Level::stop,
             "unknown-part",
             {hardware.name},
             "[hardware." + hardware.name + "] names a part \"" + name + "\", and there is none.",
             "The cut list has the names of all parts.",
             hardware.on.span});
    const std::string& per = *hardware.per;
    const bool counted = !hardware.per.given || per == "piece" || per == "part" ||
                         (per == "door" && !plan.assembly.swings.empty()) ||
                         (per == "drawer" && !plan.assembly.slides.empty()) ||
                         std::ranges::find(plan.assembly.fittings, per, &parts::Fitting::kind) !=
                             plan.assembly.fittings.end();
    if (!counted)
      plan.findings.push_back({Level::caution,
                               "hardware-for-nothing",
                               {hardware.name},
                               "[hardware." + hardware.name + "] is counted for each \"" + per +
                                   "\", and the piece has none.",
                               "piece, part, door, drawer, or the kind of a fitting in the "
                               "hardware list.",
                               hardware.per.span});
  }
}

// Fittings that are alike are told of once.
void drop_repeated(Plan& plan, std::size_t before) {
  std::vector<Finding>& all = plan.findings;
  for (std::size_t i = before; i < all.size();) {
    const bool twice = std::any_of(
        all.begin(), all.begin() + static_cast<std::ptrdiff_t>(i),
        [&](const Finding& each) { return each.code == all[i].code && each.text == all[i].text; });
    if (twice)
      all.erase(all.begin() + static_cast<std::ptrdiff_t>(i));
    else
      ++i;
  }
}

}  // namespace

void judge_hardware(Plan& plan) {
  const std::size_t before = plan.findings.size();
  check_authors(plan);
  judge_screws(plan);
  judge_fastenings(plan);
  drop_repeated(plan, before);
}

}  // namespace splay::fabrication
