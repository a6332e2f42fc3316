// Parts drawn apart along the ways they are brought together. Internal to src/sheets.
#pragma once

#include <vector>

#include "drafting/view.h"
#include "fabrication/gluing.h"
#include "sheets/sheet.h"

namespace splay::sheets {

// How each part of the assembly is moved when these joinings (indices into the order's, ascending)
// are undone, so that along each way `gap` mm of air stand between what it brings together. At most
// `furthest` mm for each.
std::vector<Vec3> drawn_apart(const parts::Assembly& assembly,
                              const std::vector<fabrication::Joining>& order,
                              const std::vector<int>& joinings, double gap, double furthest);

// An arrow along each way, from where a joint's surface is drawn apart to where it belongs; on the
// view plane.
struct WayArrow {
  int joining = 0;
  Vec2 from, to;
};
std::vector<WayArrow> way_arrows(const parts::Assembly& assembly,
                                 const std::vector<fabrication::Joining>& order,
                                 const std::vector<int>& joinings, const std::vector<Vec3>& moved,
                                 const View& view);

// From one part's surface to the other's of every two that these joinings bring together, as they
// are drawn apart; on the view plane.
struct HomeLine {
  Vec2 from, to;
};
std::vector<HomeLine> home_lines(const parts::Assembly& assembly,
                                 const std::vector<fabrication::Joining>& order,
                                 const std::vector<int>& joinings, const std::vector<Vec3>& moved,
                                 const View& view);

// "down", "to the left, 12.00° off": a direction of the piece seen from its front.
std::string way_words(Vec3 way);

inline constexpr double seen_turn = 0.52, seen_rise = 0.42;  // radians, as pictures of the piece

}  // namespace splay::sheets
