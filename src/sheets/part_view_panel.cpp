#include "sheets/part_view_panel.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <span>

#include "sheets/part_view_arrange.h"

namespace splay::sheets {

namespace {

using drafting::Picture;
using drafting::Scale;

constexpr double note_width = 56;
constexpr double below_head = 3;
constexpr double large_detail = 26, less_detail = 13;
constexpr double least_detail = 6.5;  // only for a part that fits on no page otherwise
constexpr double narrow_detail = 52, wide_detail = 80;
// What a scale twice as large is worth, in pages: less once the part is as large as `workable`.
constexpr double worth_of_scale = 0.45, worth_beyond = 0.2, workable = 0.2;
constexpr double worth_of_detail = 0.06;

double worth_of(Scale scale) {
  const double ratio = scale.ratio();
  return worth_of_scale * std::log2(std::min(ratio, workable)) +
         worth_beyond * std::log2(std::max(ratio / workable, 1.0));
}

// One way to lay the panel out: the views lying or standing, at a scale, the details in a style.
struct Way {
  bool lying = true;
  Scale scale;
  double width = 0;  // of the panel
  DetailStyle details;
  Notes notes;
  Arrangement arrangement;
};

class Layout {
 public:
  Layout(PartDrawn& part, const std::vector<double>& widths, double height, bool alone,
         const PanelShare& share)
      : part_(part),
        widths_(widths),
        unit_(*part.sheet().context.job().units),
        height_(height),
        alone_(alone),
        share_(share) {}

  std::optional<Panel> make() {
    for (const bool lying : turns())
      for (const double width : widths_) largest_ = std::max(largest_, largest_views(lying, width));
    try_details({large_detail, less_detail});
    if (!best_ && share_.least_scale <= 0) try_details({least_detail});
    if (!best_) return std::nullopt;
    const std::size_t details = part_.details(best_->scale, best_->details).size();
    return Panel{part_.sheet().row.mark, drawn(*best_), share_,
                 best_->scale,           best_->lying,  details};
  }

 private:
  std::vector<bool> turns() const {
    return share_.lying ? std::vector<bool>{*share_.lying} : std::vector<bool>{true, false};
  }

  void try_details(std::initializer_list<double> sizes) {
    for (const bool lying : turns())
      for (const double width : widths_)
        for (const double up : sizes)
          for (const DetailStyle& style :
               {DetailStyle{up, narrow_detail, false}, DetailStyle{up, wide_detail, false},
                DetailStyle{up, narrow_detail, true}})
            try_scales({lying, {}, width, style, {}, {}});
  }

  const Picture& views(const Way& way) {
    return share_.views ? part_.views(way.lying, way.scale) : nothing_;
  }

  const Picture& notes(const Way& way) {
    return share_.notes ? part_.notes(way.scale, way.notes) : nothing_;
  }

  // Those of the share.
  std::span<const Picture> details(const Way& way) {
    const std::span<const Picture> all = part_.details(way.scale, way.details);
    const std::size_t from = std::min(share_.from, all.size());
    return all.subspan(from, std::min(share_.to, all.size()) - from);
  }

  double room() const { return height_ - panel_head_height(part_.sheet().kit()) - below_head; }

  Scale first_guess(bool lying, double width) {
    const ink::Rect& box = part_.set(lying).face.box;
    return drafting::largest_scale(unit_, {box.width(), box.height()}, {width, height_});
  }

  // The largest scale at which the views alone fit; 0 when there is none.
  double largest_views(bool lying, double width) {
    if (!share_.views) return 0;
    for (Scale scale = first_guess(lying, width);;) {
      const Picture& picture = part_.views(lying, scale);
      if (picture.width <= width && picture.height <= room()) return scale.ratio();
      const Scale smaller = drafting::next_smaller(scale, unit_);
      if (smaller == scale) return 0;
      scale = smaller;
    }
  }

  // The largest scale that fits, and the next smaller one, which may take much less paper.
  void try_scales(Way way) {
    way.scale = share_.scale ? *share_.scale : first_guess(way.lying, way.width);
    for (int fitting = 0; fitting < 2;) {
      if (!share_.scale && way.scale.ratio() < share_.least_scale * largest_ - 1e-9) return;
      fitting += offer(way) ? 1 : 0;
      const Scale smaller = drafting::next_smaller(way.scale, unit_);
      if (share_.scale || smaller == way.scale) return;
      way.scale = smaller;
    }
  }

  // Does it fit? The best way that does is kept.
  bool offer(Way way) {
    std::vector<Size> sizes{{views(way).width, views(way).height}};
    if (sizes.front().width > way.width) return false;
    for (const Picture& detail : details(way)) sizes.push_back({detail.width, detail.height});
    bool fits = false;
    // Notes in a column of their own, in two, or across the panel.
    const double half = (way.width - panel_gap) / 2;
    for (const Notes& layout : {Notes{note_width, 1}, Notes{half, 2}, Notes{way.width, 1}}) {
      way.notes = layout;
      const Picture& words = notes(way);
      const bool noted = words.height > 0;
      if (noted) sizes.push_back({words.width, words.height});
      const std::optional<Arrangement> body = arranged(sizes, way.width, panel_gap, room());
      if (noted) sizes.pop_back();
      if (body) {
        fits = true;
        way.arrangement = *body;
        keep(way);
      }
      if (!noted) break;
    }
    return fits;
  }

  void keep(const Way& way) {
    const double cost = cost_of(way);
    if (best_ && cost > best_cost_ - 1e-9) return;
    best_ = way;
    best_cost_ = cost;
  }

  double cost_of(const Way& way) const {
    // Panels stand on a page one, two, three ... times: what is between is paper left empty.
    const double panel =
        way.arrangement.height + panel_head_height(part_.sheet().kit()) + below_head;
    const double share = way.width / *std::ranges::max_element(widths_);
    const double times = std::floor((height_ + between_panels) / (panel + between_panels));
    const double paper = alone_ ? 0 : share / times;
    return paper + panel * 1e-4 - worth_of(way.scale) -
           worth_of_detail * std::log2(way.details.most_up);
  }

  Picture drawn(const Way& way) {
    std::vector<Picture> pictures{views(way)};
    const std::span<const Picture> more = details(way);
    pictures.insert(pictures.end(), more.begin(), more.end());
    if (notes(way).height > 0) pictures.push_back(notes(way));
    Picture whole = panel_head(part_.sheet(), way.width, way.scale, share_.views);
    const double top = whole.height + below_head;
    for (std::size_t i = 0; i < pictures.size(); ++i) {
      const Vec2 place = way.arrangement.places[i];
      drafting::append(whole.items,
                       drafting::moved(std::move(pictures[i].items), {place.x, -top - place.y}));
    }
    whole.height = top + way.arrangement.height;
    return whole;
  }

  PartDrawn& part_;
  const std::vector<double>& widths_;
  Unit unit_;
  double height_;
  bool alone_;
  const PanelShare& share_;
  double largest_ = 0;  // scale of the views alone
  Picture nothing_;
  std::optional<Way> best_;
  double best_cost_ = 0;
};

}  // namespace

std::optional<Panel> part_panel(PartDrawn& part, const std::vector<double>& widths, double height,
                                bool alone, const PanelShare& share) {
  return Layout(part, widths, height, alone, share).make();
}

}  // namespace splay::sheets
