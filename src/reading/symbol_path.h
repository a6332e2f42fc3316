// Outlines of an SVG: path data (SVG 1.1, chapter 8) and basic shapes (chapter 9) as lines and
// cubic curves.
#pragma once

#include <string>
#include <string_view>

#include "model/symbol.h"

namespace splay::reading {

// Builds an outline: a subpath that goes on after its close starts where that one did.
class SymbolPathMaker {
 public:
  void move(Vec2 p);
  void line(Vec2 p);
  void curve(Vec2 c1, Vec2 c2, Vec2 p);
  void close();
  // Elliptical arc from where the path is (SVG 1.1, appendix F.6: end points to centre, radii that
  // are too small grown). `turn` in degrees. Curves of at most an eighth of a turn: they leave the
  // ellipse by less than 1e-5 of its larger radius.
  void arc(Vec2 radii, double turn, bool large, bool sweep, Vec2 end);
  void ellipse(Vec2 centre, Vec2 radii);
  void polygon(const std::vector<Vec2>& corners, bool closed);
  // With round corners where `radii` are not 0; no larger than the rectangle has room for.
  void rect(Vec2 low, Vec2 size, Vec2 radii);

  Vec2 at() const { return at_; }
  const model::SymbolPath& path() const { return path_; }

 private:
  void start();  // a subpath, where none is under way

  model::SymbolPath path_;
  Vec2 at_{}, first_{};
  bool under_way_ = false;
};

// Reads the data of a path. What is wrong with it, "" when nothing is; then what was read is of no
// use.
std::string read_path_data(std::string_view data, SymbolPathMaker& path);

}  // namespace splay::reading
