// All pages of a plan.
#pragma once

#include "fabrication/plan.h"
#include "ink/fonts.h"
#include "ink/ink.h"
#include "model/style.h"

namespace splay::sheets {

// The shop binder on the job's paper. The plan must not be stopped (std::invalid_argument).
ink::Packet make_packet(const fabrication::Plan& plan, const model::Style& style,
                        const ink::FontSet& fonts);

}  // namespace splay::sheets
