// A member of a flat ring: a face frame's or a panelled frame's, drawn as its face is seen.
#pragma once

#include <string>

#include "constructs/ring_layout.h"
#include "parts/builder.h"

namespace splay::constructs {

// The blank of a ring's member from `from` to `to` along it (mm from its first outside corner), its
// back at the depth `back` and its show face `thick` before it; without a name and a stock. Its
// ends are named as a maker reads it, its last side `face`.
parts::Blank flat_member(const RingMember& member, double from, double to, double back,
                         double thick, const std::string& face);

}  // namespace splay::constructs
