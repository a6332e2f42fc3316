// Views shared out over pages and set in rows at the largest standard scale. Internal to
// src/sheets.
#pragma once

#include <algorithm>
#include <map>
#include <tuple>
#include <vector>

#include "sheets/elevation_view.h"

namespace splay::sheets {

struct Sides {
  double before = -1e9, after = -1e9;  // of the view plane's origin
  double size() const { return before + after; }
  void include(double low, double high) {
    before = std::max(before, -low);
    after = std::max(after, high);
  }
};

struct ArrangedRow {
  std::vector<const DrawnElevation*> views;
  Sides up;
  double width = 0;  // of all views
};

struct Arranged {
  std::vector<ArrangedRow> rows;
  Sides first;           // across, of the first views
  bool aligned = false;  // the first views stand over each other
  double height() const {
    double sum = 0;
    for (const ArrangedRow& row : rows) sum += row.up.size();
    return sum;
  }
  double width(const ArrangedRow& row) const {
    return aligned ? row.width - row.views[0]->extent.width() + first.size() : row.width;
  }
};

inline constexpr double between_views = 5;  // mm at the least

// Every view is drawn once at each scale that is tried.
class Drawings {
 public:
  explicit Drawings(const Context& context) : context_(context) {}
  const Context& context() const { return context_; }
  const DrawnElevation& at(const Elevation* e, drafting::Scale scale) {
    const auto key = std::tuple(e, scale.paper, scale.real);
    const auto found = drawn_.find(key);
    return found != drawn_.end() ? found->second
                                 : drawn_.emplace(key, draw(context_, *e, scale)).first->second;
  }

 private:
  const Context& context_;
  std::map<std::tuple<const Elevation*, int, int>, DrawnElevation> drawn_;
};

// Views side by side in rows, the first row on top. The first views of all rows stand exactly over
// each other; a row's views stand on one line.
using Grid = std::vector<std::vector<const Elevation*>>;

// One page of views.
struct Sheet {
  Grid grid;
  drafting::Scale scale;
  Arranged arranged;
};

struct Choice {
  std::vector<Sheet> sheets;
  double ratio = 0;  // the smallest scale
};

// The way to share the views out over pages that shows them largest; a page more must make them a
// good deal larger.
Choice choose(Drawings& drawings, const ElevationSet& set);
// The same of ways given, few pages first: each way has a grid for each page. Each page more must
// make the views at least `worth_a_page` times as large.
Choice choose(Drawings& drawings, const std::vector<std::vector<Grid>>& ways, double worth_a_page);
// All pages at the smallest of their scales, so that views of one thing can be compared by eye.
void draw_all_at_one_scale(Drawings& drawings, Choice& choice);

// The page's views in an area; what is left over is shared out between and around them. Returns the
// largest rectangle beside a view alone in its row; low > high when there is none.
ink::Rect place(const Arranged& arranged, ink::Rect area, drafting::Items& items);

}  // namespace splay::sheets
