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

  // Rows that should stand on one page if they can: a part, or a pair.
  void add(const std::vector<const fabrication::PartRow*>& rows) {
    std::vector<Panel> panels;
    for (const fabrication::PartRow* row : rows) {
      std::optional<Panel> panel = fitted(*row, {});
      if (!panel) {
        for (const fabrication::PartRow* each : rows) add_in_shares(*each);
        return;
      }
      panels.push_back(std::move(*panel));
    }
    add(panels, rows);
  }

 private:
  std::optional<Panel> fitted(const fabrication::PartRow& row, const PanelShare& share) const {
    return part_panel(PartSheet(context_, row), widths_, area_.height(), false, share);
  }

  // As much of the part as a page takes, the views first, the notes last.
  Panel next_share(const fabrication::PartRow& row, const Panel* before) const {
    constexpr std::size_t most = 16;  // details on a page
    for (std::size_t count = most + 1; count-- > 0;) {
      PanelShare share;
      share.views = before == nullptr;
      share.from = before ? before->share.to : 0;
      share.to = share.from + count;
      share.notes = before && share.to >= before->details;
      if (before) share.scale = before->scale;
      if (before && count == 0 && !share.notes) break;
      if (std::optional<Panel> panel = fitted(row, share)) return std::move(*panel);
    }
    throw std::length_error("part " + row.mark + " fits on no page");
  }

  // Each share has a page of its own.
  void add_in_shares(const fabrication::PartRow& row) {
    std::optional<Panel> last;
    do {
      last = next_share(row, last ? &*last : nullptr);
      last->share.scale = last->scale;
      std::vector<Panel> panels{*last};
      sheetfuls_.push_back({Skyline(area_.width() + gap), {}});
      put_all(sheetfuls_.back(), panels, {&row});
    } while (!last->share.notes);
  }

  void add(std::vector<Panel>& panels, const std::vector<const fabrication::PartRow*>& rows) {
    for (Sheetful& page : sheetfuls_)
      if (put_all(page, panels, rows)) return;
    sheetfuls_.push_back({Skyline(area_.width() + gap), {}});
    if (put_all(sheetfuls_.back(), panels, rows)) return;
    sheetfuls_.pop_back();
    for (const fabrication::PartRow* row : rows) add({row});
  }

 public:
  std::vector<ink::Page> pages() {
    std::vector<ink::Page> pages;
    for (Sheetful& sheetful : sheetfuls_) {
      grow(sheetful);
      pages.push_back(drawn(std::move(sheetful)));
    }
    return pages;
  }

 private:
  // What a page has left over goes to its panels at larger scales, column by column.
  void grow(Sheetful& page) const {
    if (page.panels.size() == 1) {
      Placed& only = page.panels.front();
      regrow(only, widths_, area_.height());
      return;
    }
    const double width = page.panels.front().panel.picture.width;
    const bool columns = std::ranges::all_of(
        page.panels, [&](const Placed& p) { return p.panel.picture.width == width; });
    if (!columns) return;
    for (double x = 0; x < area_.width(); x += width + gap) {
      std::vector<Placed*> column;
      for (Placed& placed : page.panels)
        if (std::abs(placed.place.x - x) < 1e-6) column.push_back(&placed);
      grow(column);
    }
  }

  void regrow(Placed& placed, const std::vector<double>& widths, double height) const {
    std::optional<Panel> larger =
        part_panel(PartSheet(context_, *placed.row), widths, height, true, placed.panel.share);
    if (larger) placed.panel = std::move(*larger);
  }

  // Panels above each other, each given its share of what is left.
  void grow(const std::vector<Placed*>& column) const {
    double left_over = area_.height() + gap;
    for (const Placed* placed : column) left_over -= placed->panel.picture.height + gap;
    auto still = static_cast<double>(column.size());
    double depth = 0;
    for (Placed* placed : column) {
      const drafting::Picture& before = placed->panel.picture;
      const double height = before.height;
      regrow(*placed, {before.width}, height + left_over / still);
      placed->place.y = depth;
      depth += placed->panel.picture.height + gap;
      left_over -= placed->panel.picture.height - height;
      --still;
    }
  }

  // All of them on this page, or none.
  bool put_all(Sheetful& page, std::vector<Panel>& panels,
               const std::vector<const fabrication::PartRow*>& rows) const {
    Skyline skyline = page.skyline;
    std::vector<Vec2> places;
    for (const Panel& panel : panels) {
      const Size size{panel.picture.width + gap, panel.picture.height + gap};
      const auto place = skyline.place_for(size.width);
      if (!place || place->y + size.height > area_.height() + gap) return false;
      skyline.fill(*place, size.width, size.height);
      places.push_back(*place);
    }
    page.skyline = std::move(skyline);
    for (std::size_t i = 0; i < panels.size(); ++i)
      page.panels.push_back({std::move(panels[i]), rows[i], places[i]});
    return true;
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
  const std::vector<const fabrication::PartRow*> rows = rows_in_order(context.plan);
  for (std::size_t i = 0; i < rows.size(); ++i) {
    if (rows[i]->pair >= 0 && i + 1 < rows.size()) {
      binding.add({rows[i], rows[i + 1]});
      ++i;
    } else {
      binding.add({rows[i]});
    }
  }
  return binding.pages();
}

}  // namespace splay::sheets
