// Which joints are undone or fitted later, and the order that follows from it. Internal to
// src/fabrication.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "fabrication/glue_up.h"

namespace splay::fabrication {

// Joints between what slides or swings and the rest, with those that are undone, ascending.
std::vector<int> moving_or_undone(const Plan& plan);
// All joints but those that put edging on its panel before assembly, unless the author's order
// names the strip itself; empty where there is no such edging.
std::vector<int> all_but_edging(const parts::Assembly& all, std::span<const Pinned> pinned);
// Of two that come together the lighter is brought, unless the heavier is set down on it.
void bring_the_lighter(const parts::Assembly& all, AssemblyOrder& order);
// The order in which what holds together without the first list of joints is made up first, each
// piece by itself; of these what does without the next, a shorter list; and then the rest; each as
// the author wants it. Nothing where straight lines don't do that.
std::optional<AssemblyOrder> order_in_pieces(const parts::Assembly& all,
                                             const std::vector<std::vector<int>>& left_out,
                                             std::span<const Pinned> pinned);

}  // namespace splay::fabrication
