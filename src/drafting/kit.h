// What every drawing call needs: fonts, the look of the pages, how lengths are printed.
//
// All of src/drafting works on paper: millimetres, origin at the lower left corner of the sheet, y
// up (as src/ink), unless a comment says otherwise.
#pragma once

#include <memory>
#include <string_view>
#include <vector>

#include "base/figure.h"
#include "ink/fonts.h"
#include "ink/ink.h"

namespace splay::drafting {

// A sign of the maker's own: strokes and fills about the origin in a box whose longer side is 1, in
// the order they are drawn; pens in the same measure.
struct Symbol {
  std::vector<ink::Item> items;
  double width = 1, height = 1;
};
// What takes the place of signs of ours; null where ours is drawn. The shop's own mark has none.
struct Symbols {
  std::shared_ptr<const Symbol> face_side, face_edge, triangle, shop;
};

// Line widths and capital heights, mm; greys from 0 black to 1 white.
struct Look {
  double wide = 0.5, middle = 0.35, narrow = 0.25, frame = 0.7;
  double lettering = 2.5;  // notes, tables
  double figures = 3.5;    // dimensions
  double heading = 5, title = 7;
  double tone_light = 0.93, tone_mid = 0.82, tone_dark = 0.68;
  Symbols symbols;
};

struct Kit {
  const ink::FontSet* fonts = nullptr;  // outlives the kit
  Look look;
  FigureStyle figures;

  ink::Pen visible() const { return {look.wide}; }
  ink::Pen thin() const { return {look.narrow}; }
  ink::Pen hidden() const { return {look.narrow, ink::Dash::dashed}; }
  ink::Pen centre() const { return {look.narrow, ink::Dash::chain}; }
  double width(std::string_view text, double height, ink::Face face = ink::Face::regular) const {
    return fonts->width(text, height, face);
  }
};

using Items = std::vector<ink::Item>;

// A drawing of its own, to be put somewhere: its upper left corner is the origin, so that what it
// holds has y from -height to 0.
struct Picture {
  Items items;
  double width = 0, height = 0;
};

// The same items moved on paper (claims, anchors and links too).
ink::Item moved(ink::Item item, Vec2 by);
Items moved(Items items, Vec2 by);
// The box of all ink (half line widths left out) and link areas; low > high when there is none.
ink::Rect extent(const Kit& kit, const Items& items);
ink::Rect grown(ink::Rect r, double by);
ink::Rect joined(ink::Rect a, ink::Rect b);
void include(ink::Rect& box, Vec2 point);  // makes the box as large as that
bool overlap(ink::Rect a, ink::Rect b);
inline Vec2 middle(ink::Rect r) { return (r.low + r.high) * 0.5; }
inline constexpr ink::Rect no_rect() { return {{1e300, 1e300}, {-1e300, -1e300}}; }

// Puts everything of `more` at the end of `items`.
void append(Items& items, Items more);
void append(Items& items, std::vector<ink::Group> groups);

}  // namespace splay::drafting
