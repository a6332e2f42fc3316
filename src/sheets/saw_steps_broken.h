// Drawings too long for their place: stretches where nothing happens are left out between freehand
// lines. Paper millimetres throughout: "unbroken" is the drawing before anything is left out.
#pragma once

#include <vector>

#include "drafting/hatch.h"

namespace splay::sheets {

// A stretch that is shown, and how far it moves.
struct Stretch {
  double from = 0, to = 0, shift = 0;
};

class BrokenAxis {
 public:
  // What is needed to show low..high in `room`. The neighbourhood of `at` is always shown; an end
  // that need not be seen is broken off first, then the middle between `at` and an end.
  struct Wanted {
    double low = 0, high = 0, room = 0, at = 0;
    bool low_end = false, high_end = false;
  };
  explicit BrokenAxis(const Wanted& wanted);
  // Of low..high what lies in from..to, broken off at either end where there is more.
  static BrokenAxis window(double low, double high, double from, double to);

  const std::vector<Stretch>& stretches() const { return stretches_; }
  double operator()(double unbroken) const;  // what is left out is squeezed in
  double low() const { return stretches_.front().from + stretches_.front().shift; }
  double high() const { return stretches_.back().to + stretches_.back().shift; }
  bool broken_off_low() const { return off_low_; }
  bool broken_off_high() const { return off_high_; }

 private:
  BrokenAxis() = default;
  void add_side(double length, double room, bool end, bool up, double at);
  std::vector<Stretch> stretches_;
  bool off_low_ = false, off_high_ = false;
};

// Two axes at right angles, the first along `along`.
class BrokenView {
 public:
  BrokenView(Vec2 along, BrokenAxis first, BrokenAxis second)
      : along_(along), first_(std::move(first)), second_(std::move(second)) {}

  Vec2 paper(Vec2 unbroken) const;
  // What is shown of a line, of closed loops, and the freehand lines where loops are broken.
  void line(Vec2 a, Vec2 b, ink::Path& path) const;
  void outline(const drafting::Loops& loops, ink::Path& path) const;
  void breaks(const drafting::Loops& loops, ink::Path& path) const;
  std::vector<drafting::Loops> shown(const drafting::Loops& loops) const;
  bool broken() const;

 private:
  struct Window {
    Stretch first, second;
  };
  struct Border {
    Vec2 inward;
    double at = 0;
  };
  std::vector<Window> windows() const;
  std::vector<Border> borders(const Window& window) const;
  Vec2 shift(const Window& window) const {
    return along_ * window.first.shift + left_of(along_) * window.second.shift;
  }
  void break_along(const drafting::Loops& loops, Vec2 normal, double at, const Window& window,
                   ink::Path& path) const;

  Vec2 along_;
  BrokenAxis first_, second_;
};

}  // namespace splay::sheets
