// Part views: every row of the cut list drawn as the maker works on it.
#include <algorithm>
#include <cmath>
#include <deque>
#include <memory>
#include <stdexcept>

#include "sheets/kinds.h"
#include "sheets/part_view_arrange.h"
#include "sheets/part_view_panel.h"

namespace splay::sheets {

namespace {

constexpr double gap = between_panels;

using PartPointer = std::shared_ptr<PartDrawn>;

struct Placed {
  Panel panel;
  PartPointer part;
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

  // Parts that should stand on one page if they can: one, or a pair.
  void add(const std::vector<PartPointer>& parts) {
    std::vector<Placed> panels = whole(parts, {});
    if (parts.size() > 1 && panels.size() == parts.size()) panels = turned_alike(parts, panels);
    if (panels.size() == parts.size()) {
      add(std::move(panels));
    } else {
      add_pages(parts);
    }
    while (open_.size() > most_open) close();
  }

  std::vector<ink::Page> pages() {
    while (!open_.empty()) close();
    return std::move(pages_);
  }

 private:
  // Pages that later panels may still fill: few, so that a part stands near its place in the list.
  static constexpr std::size_t most_open = 6;

  // Those that fit on a page whole.
  std::vector<Placed> whole(const std::vector<PartPointer>& parts, const PanelShare& share) const {
    std::vector<Placed> panels;
    for (const PartPointer& part : parts)
      if (std::optional<Panel> panel = fitted(*part, share))
        panels.push_back({std::move(*panel), part, {}});
    return panels;
  }

  // Mirror images lie or stand alike, as the first does, else as the second, where both fit so.
  std::vector<Placed> turned_alike(const std::vector<PartPointer>& parts,
                                   const std::vector<Placed>& panels) const {
    for (const Placed& model : panels) {
      PanelShare share;
      share.lying = model.panel.lying;
      std::vector<Placed> alike = whole(parts, share);
      if (alike.size() == parts.size()) return alike;
    }
    return panels;
  }

  // Parts that need pages of their own. What is left over of a pair stands together behind both, or
  // each behind its own part where one page doesn't hold both.
  void add_pages(const std::vector<PartPointer>& parts) {
    const std::size_t behind = open_.size();
    std::vector<Placed> rests;
    std::vector<std::size_t> ends;  // how many pages are open with each part's own
    std::optional<bool> lying;
    for (const PartPointer& part : parts) {
      const std::size_t had = rests.size();
      lying = add_in_shares(part, lying, rests);
      if (rests.size() > had) ends.push_back(open_.size());
    }
    Sheetful together{Skyline(area_.width() + gap), {}};
    if (rests.size() < 2 || put_all(together, rests)) {
      if (!together.panels.empty()) rests = std::move(together.panels);
      if (!rests.empty()) add(std::move(rests), behind);
      return;
    }
    for (std::size_t i = rests.size(); i-- > 0;) {
      Sheetful page{Skyline(area_.width() + gap), {}};
      std::vector<Placed> one;
      one.push_back(std::move(rests[i]));
      put_all(page, one);
      open_.insert(open_.begin() + static_cast<std::ptrdiff_t>(ends[i]), std::move(page));
    }
  }

  std::optional<Panel> fitted(PartDrawn& part, const PanelShare& share) const {
    return part_panel(part, widths_, area_.height(), false, share);
  }

  // On the first page, from the open one `first` on, with room for all; when no page has that, each
  // on its own.
  void add(std::vector<Placed> panels, std::size_t first = 0) {
    for (std::size_t i = first; i < open_.size(); ++i)
      if (put_all(open_[i], panels)) return;
    open_.push_back({Skyline(area_.width() + gap), {}});
    if (put_all(open_.back(), panels)) return;
    open_.pop_back();
    for (Placed& panel : panels) {
      std::vector<Placed> one;
      one.push_back(std::move(panel));
      add(std::move(one), first);
    }
  }

  // All of them on this page, or none.
  bool put_all(Sheetful& page, std::vector<Placed>& panels) const {
    Skyline skyline = page.skyline;
    for (Placed& placed : panels) {
      const drafting::Picture& picture = placed.panel.picture;
      const Size size{picture.width + gap, picture.height + gap};
      const auto place = skyline.place_for(size.width);
      if (!place || place->y + size.height > area_.height() + gap) return false;
      skyline.fill(*place, size.width, size.height);
      placed.place = *place;
    }
    page.skyline = std::move(skyline);
    std::ranges::move(panels, std::back_inserter(page.panels));
    return true;
  }

  // As much of the part as a page takes, the views first, the notes last: the views large if they
  // can be, else as they fit.
  Panel next_share(PartDrawn& part, const Panel* before, std::optional<bool> lying) const {
    constexpr std::size_t most = 16;  // details on a page
    // Where it fits as its mirror image lies it lies so too.
    const std::vector<std::pair<double, std::optional<bool>>> tries{
        {0.75, lying}, {0.75, {}}, {0.0, {}}};
    for (const auto& [least_scale, turn] : tries) {
      for (std::size_t count = most + 1; count-- > 0;) {
        PanelShare share;
        share.views = before == nullptr;
        share.from = before ? before->share.to : 0;
        share.to = share.from + count;
        share.notes = before && share.to >= before->details;
        share.least_scale = least_scale;
        share.lying = before ? before->share.lying : turn;
        if (before) share.scale = before->scale;
        if (before && count == 0 && !share.notes) break;
        if (std::optional<Panel> panel = fitted(part, share)) return std::move(*panel);
      }
    }
    throw std::length_error("part " + part.sheet().row.mark + " fits on no page");
  }

  // Each share begins a page; the last of several goes to `rests`. How its views lie.
  bool add_in_shares(const PartPointer& part, std::optional<bool> lying,
                     std::vector<Placed>& rests) {
    std::optional<Panel> last;
    do {
      const bool begun = last.has_value();
      last = next_share(*part, last ? &*last : nullptr, lying);
      last->share.lying = last->lying;
      last->share.scale = last->scale;
      std::vector<Placed> panels{{*last, part, {}}};
      if (begun && last->share.notes) {
        rests.push_back(std::move(panels.front()));
        break;
      }
      open_.push_back({Skyline(area_.width() + gap), {}});
      put_all(open_.back(), panels);
    } while (!last->share.notes);
    return last->lying;
  }

  void close() {
    grow(open_.front());
    pages_.push_back(drawn(open_.front()));
    open_.pop_front();
  }

  // What a page has left over goes to its panels at larger scales, column by column.
  void grow(Sheetful& page) const {
    if (page.panels.size() == 1) {
      regrow(page.panels.front(), widths_, area_.height());
      return;
    }
    const double width = page.panels.front().panel.picture.width;
    const bool columns = std::ranges::all_of(
        page.panels, [&](const Placed& p) { return p.panel.picture.width == width; });
    if (!columns) return;
    const int places = static_cast<int>(area_.width() / (width + gap)) + 1;
    for (int i = 0; i < places; ++i) {
      const double x = i * (width + gap);
      std::vector<Placed*> column;
      for (Placed& placed : page.panels)
        if (std::abs(placed.place.x - x) < 1e-6) column.push_back(&placed);
      grow(column);
    }
  }

  // Panels above each other, each given its share of what is left.
  void grow(const std::vector<Placed*>& column) const {
    double left_over = area_.height() + gap;
    for (const Placed* placed : column) left_over -= placed->panel.picture.height + gap;
    // What the later ones don't take the earlier ones may have yet.
    for (const bool again : {false, true}) {
      auto still = static_cast<double>(column.size());
      for (Placed* placed : column) {
        const drafting::Picture& before = placed->panel.picture;
        const double height = before.height;
        regrow(*placed, {before.width}, height + left_over / (again ? 1 : still));
        left_over -= placed->panel.picture.height - height;
        --still;
      }
    }
    double depth = 0;
    for (Placed* placed : column) {
      placed->place.y = depth;
      depth += placed->panel.picture.height + gap;
    }
  }

  static void regrow(Placed& placed, const std::vector<double>& widths, double height) {
    std::optional<Panel> larger =
        part_panel(*placed.part, widths, height, true, placed.panel.share);
    if (larger) placed.panel = std::move(*larger);
  }

  ink::Page drawn(Sheetful& sheetful) const {
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
  std::deque<Sheetful> open_;
  std::vector<ink::Page> pages_;
};

}  // namespace

std::vector<ink::Page> make_part_views(const Context& context) {
  Binding binding(context);
  const std::vector<const fabrication::PartRow*> rows = rows_in_order(context.plan);
  for (std::size_t i = 0; i < rows.size(); ++i) {
    std::vector<PartPointer> parts{std::make_shared<PartDrawn>(context, *rows[i])};
    if (rows[i]->pair >= 0 && i + 1 < rows.size())
      parts.push_back(std::make_shared<PartDrawn>(context, *rows[++i]));
    binding.add(parts);
  }
  return binding.pages();
}

}  // namespace splay::sheets
