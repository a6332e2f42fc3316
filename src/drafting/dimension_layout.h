// The inside of a dimension row. Internal to src/drafting.
//
// A row has its own axes on paper: s runs along it, t away from the view. Both are measured from
// the paper's origin, so that s == dot(along, p) and t == dot(out, p).
#pragma once

#include <span>
#include <vector>

#include "drafting/dimension.h"

namespace splay::drafting {

// Where a row stops: one extension line.
struct Stop {
  double s = 0;      // on paper
  double t = 0;      // the feature nearest to the row
  double exact = 0;  // real mm from the datum
  Figure figure;     // the same, rounded once
};

class RowFrame {
 public:
  RowFrame(const Kit& kit, const Placement& placement, const Row& row, double at)
      : kit_(kit), placement_(placement), row_(row), at_(at) {}

  const Kit& kit() const { return kit_; }
  const Row& row() const { return row_; }
  double at() const { return at_; }
  double height() const { return kit_.look.figures; }
  Vec2 point(double s, double t) const { return row_.along * s + row_.out * t; }

  // Ascending along the row, stations nearer than half a step merged.
  std::vector<Stop> stops() const;

  // The direction in which figures are read, from below or from the right, and their upward one.
  // `direction` is a unit vector.
  Vec2 reading() const { return readable(row_.along); }
  static Vec2 readable(Vec2 direction);
  static double turn(Vec2 direction);
  // Figures stand between the line and the view, not beyond the line.
  bool text_inside() const { return dot(left_of(reading()), row_.out) < 0; }

  // A figure whose middle is at s and whose side nearest to the view is at t; its box joins
  // `texts`.
  void figure(std::string words, double s, double t, DrawnRow& drawn) const;
  // A line in the row's axes, left out where it would run over a text of `avoid`.
  void line(double s1, double t1, double s2, double t2, ink::Path& path,
            std::span<const Quad> avoid = {}) const;
  void extensions(const std::vector<Stop>& stops, std::span<const Quad> avoid,
                  ink::Path& path) const;
  ink::DimensionClaim claim(const Stop& from, const Stop& to) const;

 private:
  const Kit& kit_;
  const Placement& placement_;
  const Row& row_;
  double at_;
};

void draw_chain(const RowFrame& frame, const std::vector<Stop>& stops, std::span<const Quad> avoid,
                DrawnRow& drawn);
void draw_running(const RowFrame& frame, const std::vector<Stop>& stops,
                  std::span<const Quad> avoid, DrawnRow& drawn);

inline constexpr double feature_gap = 1.2, overshoot = 2;  // of an extension line, mm

}  // namespace splay::drafting
