// Dimensions, after ISO 129-1 (from memory): narrow lines, filled arrows, figures above the line
// and parallel to it, read from below or from the right.
//
// A running figure is rounded once from its distance to the datum; a chain prints the differences
// of its running figures, so that every chain adds up to its overall. Every figure carries an
// ink::DimensionClaim. Each row is a group "dimension".
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "drafting/room.h"
#include "drafting/view.h"

namespace splay::drafting {

enum class RowKind { chain, overall, running };

// Dimensions along one line.
struct Row {
  RowKind kind = RowKind::chain;
  std::vector<Vec2>
      stations;            // view plane; any order, those within half a step of each other merge
  std::string chain;       // name; an overall with the same name closes that chain
  Vec2 along{1, 0};        // unit, on paper
  Vec2 out{0, -1};         // unit, square to along: away from the view
  double datum = 0;        // running and chain: dot(along, view-plane point) of the zero; used
  bool has_datum = false;  //   when set, else the first station
  std::string sign;        // before the figure of an overall: "Ø"
  std::string note;        // after it: "at the foot"
};

struct DrawnRow {
  ink::Group group;
  double reach = 0;  // greatest dot(out, paper point) it takes
  std::vector<Quad> texts;
};

// The row's line lies where dot(out, point) == at. Extension lines stop short of the texts in
// `avoid`, which are the rows nearer to the view.
DrawnRow draw_row(const Kit& kit, const Placement& placement, const Row& row, double at,
                  std::span<const Quad> avoid = {});

// Rows with the same directions, the one nearest to the view first. The first line is 10 mm off
// `outline` (the view's box on paper) and each next at least 8 mm further out. Extension lines stop
// short of the texts of `avoid` too.
struct DrawnRows {
  std::vector<ink::Group> groups;
  double reach = 0;
};
DrawnRows draw_rows(const Kit& kit, const Placement& placement, ink::Rect outline,
                    std::span<const Row> rows, std::span<const Quad> avoid = {});

// A single dimension parallel to a..b (view plane), its line `offset` mm on paper off the edge on
// the side of `out`.
DrawnRow draw_aligned(const Kit& kit, const Placement& placement, Vec2 a, Vec2 b, Vec2 out,
                      double offset, const std::string& note = {});

// An angle: arc with arrows between two directions at `at`, and its figure "12.00°" with the rise
// ("2 9/16 in 12") and its name below it, placed free of everything in `room`, which learns of it.
// The directions are on paper; `radians` is what is printed. Group "dimension".
struct AngleMark {
  Vec2 at, from, to;
  double radians = 0;
  std::string name;
  double radius = 12;  // mm on paper
};
ink::Group draw_angle(const Kit& kit, Room& room, const AngleMark& mark);
// The same with the figure alone where there is no place for more, and nothing where there is none
// for that: the angle must then be named elsewhere.
std::optional<ink::Group> try_angle(const Kit& kit, Room& room, const AngleMark& mark);
// The same with arcs of other radii too.
std::optional<ink::Group> fit_angle(const Kit& kit, Room& room, const AngleMark& mark);

// The two lines that name an angle anywhere.
std::string angle_text(const std::string& name, double radians);  // "lean 12.00°"
// "2 9/16 in 12"; of an obtuse angle what it has over a right angle: "2 9/16 in 12 past square".
std::string angle_rise(const Kit& kit, double radians);

// A filled arrow head, 3 mm long, its tip at `tip`, pointing along `direction`.
ink::Fill arrow_head(Vec2 tip, Vec2 direction, double length = 3);

}  // namespace splay::drafting
