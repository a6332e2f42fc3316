// The report: everything computed, as JSON (RFC 8259). Lengths are millimetres, angles degrees.
#pragma once

#include <string>

#include "fabrication/plan.h"
#include "ink/ink.h"

namespace splay::writers {

// `packet` may be null when a finding of level stop withholds it; then "pages" is empty.
std::string report(const fabrication::Plan& plan, const ink::Packet* packet);

}  // namespace splay::writers
