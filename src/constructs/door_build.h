// Building a door, step by step. Places are in the opening's own frame: x to the right, y to the
// back from the front plane, z up.
#pragma once

#include <array>
#include <optional>
#include <string>

#include "constructs/door.h"

namespace splay::constructs {

struct DoorHinge {
  Vec2 at;          // on the leaf's edge
  Vec2 along, out;  // of that edge: upwards; out of the leaf
};

struct DoorLeaf {
  std::string word;  // in front of the names of its parts: "", "left ", "right "
  bool left = true;  // where it hangs
  Polygon shape;
  std::vector<int> parts;
  std::vector<DoorHinge> hinges;
  Vec3 line_at, line_along;  // that it turns about
};

class DoorBuild {
 public:
  DoorBuild(const Door& spec, parts::Builder& builder) : spec_(spec), builder_(builder) {}
  void run();

 private:
  // door.cpp
  bool stop(std::string code, std::string text, std::string remedy, SourceSpan span) const;
  std::string figure(double mm) const;
  std::string words(const DoorLeaf& leaf) const;  // "the left leaf of pantry"
  Plane plane(Vec3 n, Vec3 through) const;        // of the opening's frame, in the world
  bool over() const { return spec_.fit.value == DoorFit::over; }
  double gap_at(Vec2 out) const;  // mm, inset: at an edge that looks so
  double swells(bool across) const;
  bool lay_out();
  bool lay_leaves(const Polygon& whole);
  void add_measures(const DoorLeaf& leaf);
  // door_leaf.cpp
  bool add_leaf(DoorLeaf& leaf);
  bool add_slab(DoorLeaf& leaf);
  bool add_frame(DoorLeaf& leaf);
  void state_panel_room(const DoorLeaf& leaf);
  bool bevel_closing_edge(const DoorLeaf& leaf);
  bool round_corners(const DoorLeaf& leaf);
  // door_hinges.cpp
  bool lay_hinges(DoorLeaf& leaf) const;
  bool lay_line(DoorLeaf& leaf) const;
  bool check_line(const DoorLeaf& leaf) const;
  // door_hang.cpp
  bool hang(DoorLeaf& leaf);
  bool hang_on(const DoorLeaf& leaf, std::size_t hinge, int part, int host);
  void let_in(const DoorHinge& hinge, int part, int host, const std::string& number,
              const std::string& joint);
  bool drill_cup(const DoorHinge& hinge, int part, const std::string& joint);
  bool drill_plate(const DoorHinge& hinge, int host, const std::string& joint);
  bool hang_on_pivots(DoorLeaf& leaf);
  bool drill_pivot(int part, Vec3 at, Vec3 way, const std::string& joint);
  int part_at(const std::vector<int>& among, Vec3 point) const;  // in the opening's frame
  std::vector<int> others(const DoorLeaf& leaf) const;
  std::string tie(int part, int host, const std::string& kind);

  const Door& spec_;
  parts::Builder& builder_;
  ClearOpening opening_;
  double thick_ = 0;
  std::array<double, 2> y_{};  // face and back
  std::vector<DoorLeaf> leaves_;
  std::vector<std::string> tied_;  // joints recorded already
};

// The sizes of hinges, mm.
inline double barrel(const DoorHinges& hinges) { return or_else(hinges.barrel, 6); }
inline double hinge_length(const DoorHinges& hinges) {
  return or_else(hinges.length, Length::inches(2.5).mm);
}

// Edge i of a leaf or opening: its direction, anticlockwise, and the way it looks.
Vec2 edge_direction(const Polygon& polygon, std::size_t i);
Vec2 edge_out(const Polygon& polygon, std::size_t i);
// "left", "right", "top" or "bottom" for each edge, by the way it looks; numbered from the first
// on where more than one looks the same way.
std::vector<std::string> edge_words(const Polygon& polygon);

// Tries every swing of the assembly: what each touches first while all else stands closed, and
// whether two of them can stand open at the same time. Findings "door-hits" (level stop),
// "doors-meet-open" (caution); a remark on the part that carries the hinges.
void check_swings(parts::Builder& builder);

}  // namespace splay::constructs
