// Part views: every row of the cut list drawn as the maker works on it.
#include "sheets/kinds.h"
#include "sheets/part_view_arrange.h"
#include "sheets/part_view_panel.h"

namespace splay::sheets {

namespace {

constexpr double gap = between_panels;

// Panels that share a page.
struct Sheetful {
  Skyline skyline;
  std::string marks;
  drafting::Items items;
};

class Pages {
 public:
  explicit Pages(const Context& context) : context_(context), area_(context.area()) {}

  void put(Panel panel) {
    const double width = panel.picture.width + gap;
    if (open_) {
      const auto place = open_->skyline.place_for(width);
      if (place && place->y + panel.picture.height <= area_.height()) {
        put_at(*place, std::move(panel));
        return;
      }
      close();
    }
    open_ = Sheetful{Skyline(area_.width() + gap), {}, {}};
    put_at({0, 0}, std::move(panel));
  }

  std::vector<ink::Page> finish() {
    if (open_) close();
    return std::move(pages_);
  }

 private:
  void put_at(Vec2 place, Panel panel) {
    open_->skyline.fill(place, panel.picture.width + gap, panel.picture.height + gap);
    open_->marks += (open_->marks.empty() ? "" : ", ") + panel.mark;
    const Vec2 corner{area_.low.x + place.x, area_.high.y - place.y};
    drafting::append(open_->items, drafting::moved(std::move(panel.picture.items), corner));
  }

  void close() {
    ink::Page page = start_page(context_, "Part views: " + open_->marks, "as marked", true);
    drafting::append(page.items, std::move(open_->items));
    pages_.push_back(std::move(page));
    open_.reset();
  }

  const Context& context_;
  ink::Rect area_;
  std::optional<Sheetful> open_;
  std::vector<ink::Page> pages_;
};

}  // namespace

std::vector<ink::Page> make_part_views(const Context& context) {
  const ink::Rect area = context.area();
  std::vector<double> widths{area.width()};
  if (context.wide()) widths.push_back((area.width() - gap) / 2);
  Pages pages(context);
  for (const fabrication::PartRow& row : context.plan.rows) {
    const PartSheet sheet(context, row);
    pages.put(part_panel(sheet, widths, area.height()));
  }
  return pages.finish();
}

}  // namespace splay::sheets
