// Part views: every row of the cut list drawn as the maker works on it.
#include <algorithm>
#include <cmath>

#include "sheets/kinds.h"
#include "sheets/part_view_arrange.h"
#include "sheets/part_view_panel.h"

namespace splay::sheets {

namespace {

constexpr double gap = between_panels;

struct Placed {
  Panel panel;
  const fabrication::PartRow* row;
  Vec2 place;  // upper left corner in the page's area: x, depth
};

// Panels that share a page.
struct Sheetful {
  Skyline skyline;
  std::vector<Placed> panels;
};

class Binding {
 public:
  explicit Binding(const Context& context) : context_(context), area_(context.area()) {
    widths_.push_back(area_.width());
    if (context.wide()) widths_.push_back((area_.width() - gap) / 2);
  }

  void add(const fabrication::PartRow& row) {
    put(part_panel(PartSheet(context_, row), widths_, area_.height(), false), row);
  }

  std::vector<ink::Page> pages() {
    std::vector<ink::Page> pages;
    for (Sheetful& sheetful : sheetfuls_) {
      grow(sheetful);
      pages.push_back(drawn(std::move(sheetful)));
    }
    return pages;
  }

 private:
  // What a page has left over goes to its panels, column by column, at larger scales.
  void grow(Sheetful& page) const {
    const double width = page.panels.front().panel.picture.width;
    const bool columns = std::ranges::all_of(
        page.panels, [&](const Placed& p) { return p.panel.picture.width == width; });
    if (!columns) return;
    for (double x = 0; x < area_.width(); x += width + gap) {
      std::vector<Placed*> column;
      double left_over = area_.height() + gap;
      for (Placed& placed : page.panels) {
        if (std::abs(placed.place.x - x) > 1e-6) continue;
        column.push_back(&placed);
        left_over -= placed.panel.picture.height + gap;
      }
      double depth = 0;
      for (Placed* placed : column) {
        const double before = placed->panel.picture.height;
        placed->panel =
            part_panel(PartSheet(context_, *placed->row), {width}, before + left_over, true);
        placed->place.y = depth;
        depth += placed->panel.picture.height + gap;
        left_over -= placed->panel.picture.height - before;
      }
    }
  }

  // On the first page that has room for it.
  void put(Panel panel, const fabrication::PartRow& row) {
    const Size size{panel.picture.width + gap, panel.picture.height + gap};
    for (Sheetful& page : sheetfuls_) {
      const auto place = page.skyline.place_for(size.width);
      if (!place || place->y + size.height > area_.height() + gap) continue;
      page.skyline.fill(*place, size.width, size.height);
      page.panels.push_back({std::move(panel), &row, *place});
      return;
    }
    sheetfuls_.push_back({Skyline(area_.width() + gap), {}});
    sheetfuls_.back().skyline.fill({0, 0}, size.width, size.height);
    sheetfuls_.back().panels.push_back({std::move(panel), &row, {0, 0}});
  }

  ink::Page drawn(Sheetful sheetful) const {
    std::string marks;
    for (const Placed& placed : sheetful.panels)
      marks += (marks.empty() ? "" : ", ") + placed.panel.mark;
    ink::Page page = start_page(context_, "Part views: " + marks, "as marked", true);
    for (Placed& placed : sheetful.panels) {
      const Vec2 corner{area_.low.x + placed.place.x, area_.high.y - placed.place.y};
      drafting::append(page.items, drafting::moved(std::move(placed.panel.picture.items), corner));
    }
    return page;
  }

  const Context& context_;
  ink::Rect area_;
  std::vector<double> widths_;
  std::vector<Sheetful> sheetfuls_;
};

}  // namespace

std::vector<ink::Page> make_part_views(const Context& context) {
  Binding binding(context);
  for (const fabrication::PartRow* row : rows_in_order(context.plan)) binding.add(*row);
  return binding.pages();
}

}  // namespace splay::sheets
