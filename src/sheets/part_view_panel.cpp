#include "sheets/part_view_panel.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <optional>
#include <span>
#include <stdexcept>
#include <tuple>

#include "drafting/text_block.h"
#include "sheets/part_view_arrange.h"
#include "sheets/part_view_draw.h"
#include "sheets/part_view_wants.h"

namespace splay::sheets {

namespace {

using drafting::Picture;
using drafting::Scale;

constexpr double gap = 5;  // between pictures
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

void put_below(Picture& whole, Picture picture, double space) {
  drafting::append(whole.items, drafting::moved(std::move(picture.items), {0, -whole.height}));
  whole.height += picture.height + space;
}

Picture paragraphs(const drafting::Kit& kit, const std::vector<std::string>& lines, double width) {
  Picture notes{{}, width, 0};
  for (const std::string& line : lines)
    put_below(notes, drafting::paragraph(kit, line, width, {.height = kit.look.lettering}), 1.5);
  return notes;
}

// One way to lay the panel out: the views lying or standing, at a scale, the details in a style.
struct Way {
  bool lying = true;
  Scale scale;
  double width = 0;  // of the panel
  DetailStyle details;
  double notes = 0;  // width of the notes, 0 when there are none
  Arrangement arrangement;
};

class PanelMaker {
 public:
  PanelMaker(const PartSheet& sheet, const std::vector<double>& widths, double height, bool alone,
             const PanelShare& share)
      : sheet_(sheet), widths_(widths), height_(height), alone_(alone), share_(share) {}

  std::optional<Panel> make() {
    try_details({large_detail, less_detail});
    if (!best_) try_details({least_detail});
    if (!best_) return std::nullopt;
    return Panel{sheet_.row.mark, drawn(*best_), share_, best_->scale, all_details(*best_).size()};
  }

 private:
  void try_details(std::initializer_list<double> sizes) {
    for (const bool lying : {true, false})
      for (const double width : widths_)
        for (const double up : sizes)
          for (const DetailStyle& style :
               {DetailStyle{up, narrow_detail, false}, DetailStyle{up, wide_detail, false},
                DetailStyle{up, narrow_detail, true}}) {
            Way way;
            way.lying = lying;
            way.width = width;
            way.details = style;
            try_scales(way);
          }
  }

  const ViewSet& set(bool lying) {
    std::optional<ViewSet>& made = sets_[lying ? 0 : 1];
    if (!made) made = view_set(sheet_, lying);
    return *made;
  }

  const Picture& views(const Way& way) {
    const auto [at, is_new] =
        views_.try_emplace({way.lying, way.scale.paper, way.scale.real}, Picture{});
    if (is_new && share_.views) at->second = draw_set(sheet_, set(way.lying), way.scale);
    return at->second;
  }

  const std::vector<Picture>& all_details(const Way& way) {
    const auto [at, is_new] =
        details_.try_emplace({drawn_small(sheet_, way.scale), drawn_thin(sheet_, way.scale),
                              way.details.most_up, way.details.least_width, way.details.beside},
                             std::vector<Picture>{});
    if (is_new)
      for (const Detail& detail : wanted_details(sheet_, way.scale))
        at->second.push_back(draw_detail(sheet_, detail, way.details));
    return at->second;
  }

  // Those of the share.
  std::span<const Picture> details(const Way& way) {
    const std::span<const Picture> all = all_details(way);
    const std::size_t from = std::min(share_.from, all.size());
    return all.subspan(from, std::min(share_.to, all.size()) - from);
  }

  // Remarks and plain cuts.
  Picture notes(const Way& way) const {
    if (!share_.notes) return {};
    std::vector<std::string> lines = plain_cut_lines(sheet_, way.scale);
    for (const parts::Measure& measure : sheet_.part.measures)
      lines.push_back(capitalised(measure.name) + ": " + sheet_.kit().figures.text(measure.mm) +
                      ".");
    lines.insert(lines.end(), sheet_.part.remarks.begin(), sheet_.part.remarks.end());
    return paragraphs(sheet_.kit(), lines, way.notes);
  }

  // The largest scale that fits, and the next smaller one, which may take much less paper.
  void try_scales(Way way) {
    const Unit unit = *sheet_.context.job().units;
    const ink::Rect& box = set(way.lying).face.box;
    way.scale = drafting::largest_scale(unit, {box.width(), box.height()}, {way.width, height_});
    if (share_.scale) {
      way.scale = *share_.scale;
      offer(way);
      return;
    }
    for (int fitting = 0; fitting < 2;) {
      fitting += offer(way) ? 1 : 0;
      const Scale smaller = drafting::next_smaller(way.scale, unit);
      if (smaller == way.scale) return;
      way.scale = smaller;
    }
  }

  // Does it fit? The best way that does is kept.
  bool offer(Way way) {
    std::vector<Size> sizes{{views(way).width, views(way).height}};
    if (sizes.front().width > way.width) return false;
    for (const Picture& detail : details(way)) sizes.push_back({detail.width, detail.height});
    const double room = height_ - panel_head_height - below_head;
    bool fits = false;
    // Notes in a column of their own, or across the panel.
    for (const double width : {note_width, way.width}) {
      way.notes = width;
      const Picture words = notes(way);
      if (words.height > 0) sizes.push_back({words.width, words.height});
      if (words.height <= 0) way.notes = 0;
      const std::optional<Arrangement> body = arranged(sizes, way.width, gap);
      if (words.height > 0) sizes.pop_back();
      if (!body || body->height > room) continue;
      fits = true;
      way.arrangement = *body;
      const double cost = cost_of(way);
      if (best_ && cost > best_cost_ - 1e-9) continue;
      best_ = way;
      best_cost_ = cost;
    }
    return fits;
  }

  double cost_of(const Way& way) const {
    // Panels stand on a page one, two, three ... times: what is between is paper left empty.
    const double panel = way.arrangement.height + panel_head_height + below_head;
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
    if (way.notes > 0) pictures.push_back(notes(way));
    Picture whole = panel_head(sheet_, way.width, way.scale, share_.views);
    const double top = whole.height + below_head;
    for (std::size_t i = 0; i < pictures.size(); ++i) {
      const Vec2 place = way.arrangement.places[i];
      drafting::append(whole.items,
                       drafting::moved(std::move(pictures[i].items), {place.x, -top - place.y}));
    }
    whole.height = top + way.arrangement.height;
    return whole;
  }

  const PartSheet& sheet_;
  const std::vector<double>& widths_;
  double height_;
  bool alone_;
  const PanelShare& share_;
  std::array<std::optional<ViewSet>, 2> sets_;
  std::map<std::tuple<bool, int, int>, Picture> views_;
  std::map<std::tuple<bool, bool, double, double, bool>, std::vector<Picture>> details_;
  std::optional<Way> best_;
  double best_cost_ = 0;
};

}  // namespace

std::optional<Panel> part_panel(const PartSheet& sheet, const std::vector<double>& widths,
                                double height, bool alone, const PanelShare& share) {
  return PanelMaker(sheet, widths, height, alone, share).make();
}

}  // namespace splay::sheets
