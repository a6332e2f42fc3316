// Full-size templates: what of a part is drawn to be glued on the work. Internal to src/sheets.
#pragma once

#include <string>
#include <vector>

#include "sheets/part_view_facts.h"

namespace splay::sheets {

struct TemplateLine {
  Vec2 a, b;
  bool cut = false;  // the saw follows it: waste on the right of a to b
  bool fold = false;
};

// On paper: millimetres full size, x of the part up the page, seen on its face.
struct Template {
  std::string title;    // "B-L left panel: head"
  std::string side;     // the face it is glued on
  std::string caption;  // what to check
  std::string anchor;
  std::vector<TemplateLine> lines;
  ink::Rect box;  // of all lines
  Vec2 face_mark, edge_mark;
  bool edge = false;  // it is folded over the front edge
  double hand = -1;   // -1: the face left of the fold; +1, seen from below: right of it
};

// Of the ends that aren't cut square across the face or taper, of laps and of housings that run
// slanting: the outline on the face, and with it round the arris the one on the front edge where
// that is flat. Wide ones are drawn at both edges only.
std::vector<Template> templates_of(const PartSheet& sheet);

// Leaves out wood beyond the cuts until it is no taller; false where the cuts alone are.
bool shorten(Template& made, double tallest);

// Of places spread over a room the one furthest from all lines, the middle before others.
Vec2 clear_place(const std::vector<TemplateLine>& lines, ink::Rect room);

// An angle to set a bevel gauge by.
struct GaugeAngle {
  double radians = 0;
  std::string names;  // "bevel of B-L, B-R; mitre of C"
};
std::vector<GaugeAngle> gauge_angles(const Context& context);

}  // namespace splay::sheets
