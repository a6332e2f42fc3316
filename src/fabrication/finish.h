// What is finished with what: areas from the solids, quantities, and what is finished before it is
// put together.
#pragma once

#include <string>
#include <vector>

#include "model/finish.h"

namespace splay::fabrication {

struct Plan;

struct FinishJob {
  const model::Finish* finish = nullptr;  // of the plan's project
  std::vector<int> parts;                 // indices into Assembly::parts
  std::vector<int> before;                // those to be finished before assembly
  double area = 0;                        // mm2 of their surfaces that no joint covers
  double litres = 0;                      // for all coats; 0 when the coverage is not given
};
std::vector<FinishJob> plan_finish(const Plan& plan);

// mm2 of a part's surface less what its joints cover.
double open_area(const Plan& plan, int part);

// The usual cautions for a kind of finish, one sentence each.
std::vector<std::string> finish_cautions(model::FinishKind kind);

// Findings: "finish-on-nothing" (a name that is no part or stock), "part-without-finish".
void judge_finish(Plan& plan);

}  // namespace splay::fabrication
