// Leaders, balloons and labels that look for their own place. Deterministic: the order given
// decides.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "drafting/room.h"

namespace splay::drafting {

struct Callout {
  Vec2 tip;                        // on paper: what it points at
  std::vector<std::string> lines;  // text, or the one mark of a balloon
  std::string link;                // an anchor's name
  std::string mark;                // when set, a PartClaim {mark, claim}
  std::string claim = "balloon";
  double height = 0;  // 0: the look's lettering (balloons: figures)
};

// Labels near their tips: on the tip's own free space when `on_the_spot`, else at growing distances
// in 16 directions, with a leader that crosses no text and as few lines as can be. `room` learns of
// each. A label that finds no free place near takes the nearest in the room's area.
std::vector<ink::Group> place_labels(const Kit& kit, Room& room, std::span<const Callout> callouts,
                                     bool on_the_spot = false);

// Balloons (rounded frames with a mark) in columns left and right of `view` inside `area`, in the
// order of their tips' height so that leaders don't cross; groups "balloon". What overflows a
// column goes to the other side. The area must be high enough for half of them.
std::vector<ink::Group> place_balloons(const Kit& kit, ink::Rect view, ink::Rect area,
                                       std::span<const Callout> callouts);
// How many of such balloons the two columns have room for.
std::size_t balloons_in(const Kit& kit, ink::Rect area, std::span<const Callout> callouts);
// The width a column of such balloons takes beside the view.
double balloon_column_width(const Kit& kit, std::span<const Callout> callouts);

// One balloon centred on `at` without leader.
ink::Group balloon(const Kit& kit, Vec2 at, const Callout& callout);

// A leader with a dot (on a surface) or an arrow (on an edge) at its tip.
ink::Group leader(const Kit& kit, Vec2 from, Vec2 tip, bool dot);

// Title of a view, centred under it: wide text, the scale after it. `at` is the middle of the top.
ink::Group view_title(const Kit& kit, Vec2 at, std::string_view title, std::string_view scale);
inline constexpr double view_title_height = 9;

}  // namespace splay::drafting
