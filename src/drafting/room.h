// What is taken on a page, so that a figure or a label finds a free place.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "drafting/kit.h"

namespace splay::drafting {

// A convex quadrilateral on paper, as FontSet::box gives it.
using Quad = std::vector<Vec2>;
Quad quad(ink::Rect r);
bool touch(const Quad& a, const Quad& b);       // areas have a point in common
bool touch(const Quad& q, Vec2 a, Vec2 b);      // so do quad and segment
bool crossing(Vec2 a, Vec2 b, Vec2 c, Vec2 d);  // segments cross or touch
Quad grown(const Quad& q, double by);           // of a rectangle, turned or not

class Room {
 public:
  // Where labels may stand at all.
  explicit Room(ink::Rect area);
  ink::Rect area() const { return area_; }

  // Everything an item draws: lines, text boxes, outlines of fills; groups too.
  void take(const Kit& kit, const ink::Item& item);
  void take(const Kit& kit, const Items& items);
  void take(Quad text);
  void take(Vec2 a, Vec2 b);

  // Inside the area, over no text and over no line.
  bool free(const Quad& place, double clearance = 1.2) const;
  bool free(const ink::Rect& place, double clearance = 1.2) const;
  // How many lines a place or a leader crosses; whether a leader runs over a text.
  int lines_under(const Quad& place) const;
  int lines_crossed(Vec2 a, Vec2 b) const;
  bool over_text(Vec2 a, Vec2 b, double clearance = 0.5) const;
  bool over_text(const Quad& place, double clearance = 0.8) const;

 private:
  struct Segment {
    Vec2 a, b;
    ink::Rect box;
  };
  struct Block {
    Quad quad;
    ink::Rect box;
    bool upright = false;  // the quad is its box
  };
  // Lines by the square of the area they run through.
  struct Cells {
    std::size_t from = 0, to = 0;
  };
  static Cells cells(double low, double high, std::size_t count);
  std::vector<std::uint32_t>& cell(std::size_t row, std::size_t column) {
    return grid_[row * columns_ + column];
  }
  ink::Rect area_;
  std::vector<Block> texts_;
  std::vector<Segment> lines_;
  std::size_t columns_, rows_;
  std::vector<std::vector<std::uint32_t>> grid_;
};

// Centres of items with the given widths, in the given order, as near to where they are wanted as
// can be (least squares), none nearer to the next than the widths allow, all within [low, high]
// when that is possible. `wanted` ascending.
std::vector<double> spread(std::span<const double> wanted, std::span<const double> widths,
                           double low, double high);

}  // namespace splay::drafting
