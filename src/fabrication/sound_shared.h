// Where two mated parts touch. Internal to src/fabrication.
#pragma once

#include <optional>

#include "geometry/polygon.h"
#include "parts/part.h"

namespace splay::fabrication {

// How far the surface that a mate's parts share reaches along a direction of part `index`, both in
// that part's frame; nothing where they share none.
std::optional<Interval> shared_reach(const parts::Mate& mate, int index, Vec3 along,
                                     const parts::Assembly& all);

struct Plan;

// A panel that nothing but grooves holds: it swells in them, and shows a bare edge when it shrinks,
// so that it is finished before assembly (common practice, no source).
bool lies_in_grooves(const Plan& plan, int part);

inline constexpr double sole =
    1.0;  // mm: what stands within this of the lowest stands on the floor
// MPa, along the grain; 0 where nothing is known of the stock.
double modulus_of(const Plan& plan, const parts::Part& part);

}  // namespace splay::fabrication
