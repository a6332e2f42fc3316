// Building a drawer, step by step. Places are in the opening's own frame: x to the right from its
// lowest left corner, y to the back, z up.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "constructs/drawer.h"

namespace splay::constructs {

class DrawerBuild {
 public:
  DrawerBuild(const Drawer& spec, parts::Builder& builder) : spec_(spec), builder_(builder) {}
  void run();

 private:
  // drawer.cpp
  bool stop(std::string code, std::string text, std::string remedy, SourceSpan span) const;
  std::string figure(double mm) const;
  double wall(std::size_t side, double z) const;  // x of the opening's left (0) or right side
  bool leans(std::size_t side) const;
  bool lay_out();
  void lay_heights();
  bool lay_length();
  bool check_box() const;
  std::vector<double> front_gaps() const;
  void add_front();
  void note_lost_space() const;
  void add_measures();
  // drawer_runners.cpp
  void find_walls();
  void add_packing(std::size_t side);
  void add_runner(std::size_t side);
  // drawer_box.cpp
  void add_box();
  int add_side(bool right);
  int add_cross(bool back);
  void join_corner(int side, int cross, bool right, bool back);
  void join_rabbet(int side, int cross, const Plane& face, bool back);
  std::string join_tongue(int side, int cross, const Plane& face, bool back);
  void add_bottom();
  Plane plane(Vec3 n, double d) const;  // of the opening's frame, in the world

  const Drawer& spec_;
  parts::Builder& builder_;
  Polygon opening_;
  Rigid place_;
  double each_side_ = 0, play_ = 0, below_ = 0, above_ = 0;
  double thick_ = 0;                    // of the box's sides
  std::array<double, 2> band_{};        // the runner's foot and top
  std::array<double, 2> face_{}, x_{};  // plumb faces the runners lie on; the box's sides
  std::array<double, 2> y_{}, z_{};     // the box
  std::array<int, 2> sides_{-1, -1}, crosses_{-1, -1}, packs_{-1, -1}, walls_{-1, -1};
};

}  // namespace splay::constructs
