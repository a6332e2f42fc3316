#include "fabrication/finish.h"

#include <algorithm>

#include "fabrication/plan.h"
#include "fabrication/sound_shared.h"
#include "parts/audit.h"

namespace splay::fabrication {

namespace {

bool names(const std::vector<std::string>& list, const std::string& name) {
  return std::ranges::find(list, name) != list.end();
}

bool asks_for(const model::Finish& finish, const parts::Part& part) {
  return names(*finish.on, part.name) || names(*finish.stocks, part.stock);
}

}  // namespace

double open_area(const Plan& plan, int part) {
  const auto& parts = plan.assembly.parts;
  double area = parts[static_cast<std::size_t>(part)].world.area();
  for (const parts::Joint& joint : plan.assembly.joints)
    for (const parts::Mate& mate : joint.mates)
      if (mate.a == part || mate.b == part)
        area -= parts::measure(mate, parts[static_cast<std::size_t>(mate.a)].world,
                               parts[static_cast<std::size_t>(mate.b)].world)
                    .area;
  return std::max(0.0, area);
}

std::vector<FinishJob> plan_finish(const Plan& plan) {
  std::vector<FinishJob> jobs;
  const auto& finishes = plan.project->finishes;
  const auto& parts = plan.assembly.parts;
  for (std::size_t f = 0; f < finishes.size(); ++f) {
    FinishJob job;
    job.finish = &finishes[f];
    const bool the_rest = !job.finish->on.given && !job.finish->stocks.given;
    for (std::size_t i = 0; i < parts.size(); ++i) {
      bool others = false;
      for (std::size_t o = 0; o < finishes.size(); ++o)
        others = others || (o != f && asks_for(finishes[o], parts[i]));
      if (the_rest ? others : !asks_for(*job.finish, parts[i])) continue;
      const int index = static_cast<int>(i);
      job.parts.push_back(index);
      if (names(*job.finish->before, parts[i].name) ||
          (!job.finish->before.given && lies_in_grooves(plan, index)))
        job.before.push_back(index);
      job.area += open_area(plan, index);
    }
    if (*job.finish->coverage > 0)
      job.litres = job.area * 1e-6 * *job.finish->coats / *job.finish->coverage;
    jobs.push_back(std::move(job));
  }
  return jobs;
}

std::vector<std::string> finish_cautions(model::FinishKind kind) {
  using model::FinishKind;
  std::vector<std::string> cautions;
  if (kind == FinishKind::oil || kind == FinishKind::varnish || kind == FinishKind::paint)
    cautions.emplace_back(
        "Rags wet with drying oil heat themselves and catch fire: spread them flat and single "
        "outdoors to dry, or put them into a closed metal can filled with water, at once.");
  if (kind == FinishKind::shellac || kind == FinishKind::lacquer || kind == FinishKind::varnish ||
      kind == FinishKind::wax)
    cautions.emplace_back(
        "The solvent's vapour burns: no flame, spark or heater near; lids on; small quantities.");
  if (kind == FinishKind::two_part)
    cautions.emplace_back(
        "Hardeners may make one allergic by skin or breath: gloves, and the breathing protection "
        "its data sheet names.");
  cautions.emplace_back(
      "Air the room while it is put on and while it dries; gloves and eye protection.");
  cautions.emplace_back(
      "The maker's data sheet and local rules come before this page: drying times, protection, "
      "waste. Food only on what its maker says is fit for it, when it has cured.");
  return cautions;
}

void judge_finish(Plan& plan) {
  const auto& finishes = plan.project->finishes;
  if (finishes.empty()) return;
  const auto is_part = [&](const std::string& name) {
    return std::ranges::find(plan.assembly.parts, name, &parts::Part::name) !=
           plan.assembly.parts.end();
  };
  const auto complain = [&](const model::Finish& finish, const std::string& name, SourceSpan span) {
    plan.findings.push_back({Level::caution,
                             "finish-on-nothing",
                             {finish.name},
                             "[finish." + finish.name + "] names \"" + name +
                                 "\", and the piece has nothing of that name.",
                             "Names of parts as in the cut list; in `stocks`, names of stocks.",
                             span});
  };
  for (std::size_t f = 0; f < finishes.size(); ++f) {
    for (const auto* list : {&finishes[f].on, &finishes[f].before})
      for (const std::string& name : **list)
        if (!is_part(name)) complain(finishes[f], name, list->span);
    for (const std::string& name : *finishes[f].stocks)
      if (plan.project->stocks.find(name) == nullptr)
        complain(finishes[f], name, finishes[f].stocks.span);
  }
  std::vector<bool> covered(plan.assembly.parts.size(), false);
  for (const FinishJob& job : plan_finish(plan))
    for (const int part : job.parts) covered[static_cast<std::size_t>(part)] = true;
  std::vector<std::string> bare;
  for (std::size_t i = 0; i < covered.size(); ++i) {
    const std::string& mark = plan.mark_of(static_cast<int>(i));
    if (!covered[i] && !names(bare, mark)) bare.push_back(mark);
  }
  if (!bare.empty())
    plan.findings.push_back({Level::note, "part-without-finish", bare,
                             "No finish is named for these parts.",
                             "Name them or their stock, or leave `on` and `stocks` out of one "
                             "finish: it goes on all the rest."});
}

}  // namespace splay::fabrication
