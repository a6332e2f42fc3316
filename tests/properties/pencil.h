// Writes random pieces as a maker would: every length in either unit, left and right exchanged on
// demand. What is drawn depends on the seed alone.
#pragma once

#include <cmath>
#include <string>

#include "support/chance.h"
#include "support/piece.h"

namespace splay::test {

class Pencil : public Chance {
 public:
  Pencil(unsigned seed, std::string unit, bool mirrored)
      : Chance(seed), seed_(seed), unit_(std::move(unit)), mirrored_(mirrored) {}
  std::string mm(double length) const {
    return plain_number(unit_ == "mm" ? length : length / Length::mm_per_inch, 12);
  }
  std::string mm(double low, double high) { return mm(between(low, high)); }
  static std::string degrees(double angle) { return "\"" + plain_number(angle, 9) + " deg\""; }
  std::string degrees(double low, double high) { return degrees(between(low, high)); }
  // Of the left and the right side.
  std::string leans(double low, double high) {
    const std::string left = degrees(low, high), right = degrees(low, high);
    return "[" + (mirrored_ ? right + ", " + left : left + ", " + right) + "]";
  }
  std::string point(double x, double y, double z) const {
    return "[" + mm(mirrored_ ? -x : x) + ", " + mm(y) + ", " + mm(z) + "]";
  }
  // A plan direction, and an angle that a mirror turns round.
  std::string direction(double angle) const {
    return degrees(std::remainder(mirrored_ ? 180 - angle : angle, 360));
  }
  std::string hand(double angle) const { return degrees(mirrored_ ? -angle : angle); }
  const char* left() const { return mirrored_ ? "right" : "left"; }
  const char* right() const { return mirrored_ ? "left" : "right"; }

  // The job, a shop with machines of its own limits, and the stocks that all pieces are made of.
  // Drawn apart, so that what is added here changes no piece.
  std::string shop() const;

 private:
  unsigned seed_;
  std::string unit_;
  bool mirrored_;
};

}  // namespace splay::test
