// WAIST 2: pages as display lists. Drafting and sheets make them, writers turn them into bytes.
//
// Everything is on paper: millimetres, origin at the lower left corner of the sheet, y up. A writer
// draws the items in order, later over earlier, and understands nothing else. The roles and claims
// are for the lint and for links; they leave no ink.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "geometry/vec.h"

namespace splay::ink {

struct Rect {
  Vec2 low, high;
  double width() const { return high.x - low.x; }
  double height() const { return high.y - low.y; }
};

// Dash patterns of ISO 128-2: lengths are multiples of the line width (from memory: dash 12, gap 3,
// long dash 24, dot 0.5).
enum class Dash : std::uint8_t { continuous, dashed, chain, double_chain, dotted };

struct Pen {
  double width = 0.25;  // mm; the series 0.13 0.18 0.25 0.35 0.5 0.7 1.0 of ISO 128-2
  Dash dash = Dash::continuous;
  double grey = 0;  // 0 black to 1 white
  bool operator==(const Pen&) const = default;
};

// Straight runs and cubic curves. A subpath starts at move.
struct Path {
  enum class Verb : std::uint8_t { move, line, curve, close };
  std::vector<Verb> verbs;
  std::vector<Vec2> points;  // move and line take one, curve three, close none
  Path& move(Vec2 p);
  Path& line(Vec2 p);
  Path& curve(Vec2 c1, Vec2 c2, Vec2 p);
  Path& close();
  // Circular arc by Bezier pieces of at most a quarter turn; radians, anticlockwise when sweep > 0.
  // Starts with move, or with line when the path is already under way.
  Path& arc(Vec2 centre, double radius, double from, double sweep);
  Path& rect(Rect r);
  Path& polygon(const std::vector<Vec2>& corners);
};

struct Stroke {
  Path path;
  Pen pen;
};

// Even-odd filled.
struct Fill {
  Path path;
  double grey = 0;
};

enum class Face : std::uint8_t { regular, bold, italic };
enum class Align : std::uint8_t { left, centre, right };

// One line of text. `height` is the height of a capital letter on paper, mm (ISO 3098 speaks of it,
// not of a font's size). `at` is on the base line. Valid UTF-8 without control characters, every
// character drawable in the fonts loaded (see FontSet), else the writers throw.
struct Text {
  Vec2 at{};
  std::string utf8{};
  double height = 2.5;
  double turn = 0;  // radians anticlockwise
  Align align = Align::left;
  Face face = Face::regular;
  double grey = 0;
};

// A dimension printed on the page, for the lint: the two measured points on paper, the direction
// along which it measures, the scale (paper mm per real mm), the exact length and the printed step
// count. All with the same chain name and direction form a chain whose steps must sum to `overall`
// of that chain.
struct DimensionClaim {
  Vec2 from, to;
  Vec2 along{1, 0};
  double scale = 1;
  double exact_mm = 0;
  double step_mm = 0.1;
  std::int64_t steps = 0;  // as printed
  std::string chain;       // "" for a dimension of its own
  bool overall = false;    // the chain's overall
  bool running = false;    // from the datum, printed once rounded
};

// That a part is drawn or listed on this page. what: "view", "row", "label", "balloon", ...
struct PartClaim {
  std::string mark;
  std::string what;
};

// A place other pages can point to ("part B-L"), and a rectangle that leads there when clicked.
struct Anchor {
  std::string name;
  Vec2 at;
};
struct Link {
  Rect area;
  std::string target;
};

struct Group;
using Item = std::variant<Stroke, Fill, Text, DimensionClaim, PartClaim, Anchor, Link, Group>;

// Items that belong together: text may touch lines of its own group (a table cell and its frame, a
// dimension and its own line), never those of another. `role` is a plain word: "view", "dimension",
// "table", "title block", "frame", "leader", "note", "balloon", "hatching", "legend".
struct Group {
  std::string role;
  std::vector<Item> items;
};

// Everything the lint must know of the paper.
struct Paper {
  std::string name;  // "A4", "Letter", "A3", "Tabloid"
  double width = 210, height = 297;
  double margin_left = 20;  // filing edge (ISO 5457)
  double margin_right = 10, margin_top = 10, margin_bottom = 10;
  Rect area() const {
    return {{margin_left, margin_bottom}, {width - margin_right, height - margin_top}};
  }
};

struct Page {
  Paper paper;
  std::string title;  // in the bookmarks
  std::string label;  // page label and printed page number: "1", "ii", "P-3"
  int level = 0;      // depth in the bookmarks
  std::vector<Item> items;
};

struct Packet {
  std::string title;
  std::string subject;
  std::string author;
  std::string identity;  // made into the document /ID: same identity and pages, same bytes
  int year = 2000, month = 1, day = 1;  // of the revision: the only date in the file
  double least_text_height = 2.5;       // mm, capital letters
  bool two_sided = false;               // laid out for both sides of the paper, long edge bound
  std::vector<Page> pages;
};

}  // namespace splay::ink
