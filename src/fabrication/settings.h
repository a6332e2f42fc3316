// What is done to the derived steps of a whole plan: settings as they can be read off a machine,
// what keeps the setting of an earlier step, how the work is turned, and what to mind.
#pragma once

#include "fabrication/plan.h"

namespace splay::fabrication {

// The setting rounded to the machine's scales and the job's smallest step. A width stays as it is:
// a stack or bit is fitted to the piece that goes in.
Setting printed_setting(const model::Project& project, const Step& step);

// Derives, orders, groups and proves every step of the plan; adds what there is to say of them.
void plan_steps(Plan& plan);

// Marks, turns, groups, same_as and flags; the printed settings must be there.
void finish_steps(Plan& plan);

}  // namespace splay::fabrication
