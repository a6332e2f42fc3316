// Pictures put on a page one after the other, each as high up as it goes.
#pragma once

#include <optional>
#include <vector>

#include "geometry/vec.h"

namespace splay::sheets {

// The lower border of what is placed so far, over a strip of the given width. Depths are counted
// from the top down, mm.
class Skyline {
 public:
  explicit Skyline(double width) : steps_{{0, width, 0}} {}
  // The place (upper left corner: x, depth) where a rectangle hangs highest, the leftmost of those;
  // nothing when it is wider than the strip.
  std::optional<Vec2> place_for(double width) const;
  void fill(Vec2 place, double width, double height);
  double depth() const;

 private:
  struct Step {
    double from, to, depth;
  };
  std::vector<Step> steps_;
};

struct Size {
  double width = 0, height = 0;
};

struct Arrangement {
  std::vector<Vec2> places;  // upper left corners: x, depth
  double height = 0;
};

// Pictures of these sizes in a strip, `gap` between them, the first at the upper left corner and
// the others in the order that takes least height; nothing when one is too wide or when they get
// higher than `highest`.
std::optional<Arrangement> arranged(const std::vector<Size>& sizes, double width, double gap,
                                    double highest = 1e300);

}  // namespace splay::sheets
