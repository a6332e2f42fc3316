// Building a top, step by step.
#pragma once

#include <string>
#include <vector>

#include "constructs/top.h"

namespace splay::constructs {

// One side of the outline seen from above, or one facet of a curve between two of them.
struct TopEdge {
  Vec2 a, b;
  std::string name;
  int curve = -1;  // of the curve it is a facet of
  Vec2 out() const { return -left_of(unit(b - a)); }
};

class TopBuild {
 public:
  TopBuild(const Top& spec, parts::Builder& builder) : spec_(spec), builder_(builder) {}
  void run();

 private:
  bool stop(std::string code, std::string text, std::string remedy, SourceSpan span) const;
  // top_outline.cpp
  bool lay_out();
  bool round_corners(const Polygon& polygon, const std::vector<std::string>& names);
  void add_arc(Vec2 centre, double radius, double from, double turn, int least,
               const std::string& name);
  // top.cpp
  int add_slab(const std::string& name, const std::string& stock, Vec2 low, Vec2 high, bool across);
  void trim(int part);
  void trim_curve(int part, int curve);
  Plane edge(const TopEdge& side) const;
  Plane bevel(const TopEdge& side) const;
  bool bevelled(const TopEdge& side) const;
  bool bites(int part, const Plane& plane) const;
  void add_measures(int part);
  // top_breadboard.cpp
  bool build_with_ends();
  struct End;
  bool check_breadboard() const;
  double movement_of(double width) const;
  std::vector<End> ends() const;
  void cut_tongue(int panel, const End& end);
  void join_end(int panel, int board, const End& end);
  void pin_end(int panel, int board, const End& end);

  const Top& spec_;
  parts::Builder& builder_;
  std::vector<TopEdge> edges_;
  int curves_ = 0;
  Vec2 low_, high_;  // the outline's bounds
  double under_ = 0, thick_ = 0;
};

}  // namespace splay::constructs
