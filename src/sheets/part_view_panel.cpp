#include "sheets/part_view_panel.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "drafting/text_block.h"
#include "sheets/part_view_arrange.h"
#include "sheets/part_view_draw.h"
#include "sheets/part_view_wants.h"

namespace splay::sheets {

namespace {

using drafting::Picture;
using drafting::Scale;

constexpr double gap = 6;  // between pictures
constexpr double note_width = 56;
constexpr double worth_of_scale = 0.25;  // of a page, for a scale twice as large

void put_below(Picture& whole, Picture picture, double space) {
  drafting::append(whole.items, drafting::moved(std::move(picture.items), {0, -whole.height}));
  whole.height += picture.height + space;
}

// Remarks and plain cuts; nothing when there are none.
std::optional<Picture> notes_of(const PartSheet& sheet, Scale scale) {
  std::vector<std::string> lines = plain_cut_lines(sheet, scale);
  lines.insert(lines.end(), sheet.part.remarks.begin(), sheet.part.remarks.end());
  if (lines.empty()) return std::nullopt;
  Picture notes{{}, note_width, 0};
  for (const std::string& line : lines)
    put_below(
        notes,
        drafting::paragraph(sheet.kit(), line, note_width, {.height = sheet.kit().look.lettering}),
        1.5);
  return notes;
}

struct Try {
  Picture picture;
  double cost = 0;
};

class PanelMaker {
 public:
  PanelMaker(const PartSheet& sheet, const std::vector<double>& widths, double height)
      : sheet_(sheet), widths_(widths), height_(height) {}

  Panel make() {
    for (const bool lying : {true, false}) {
      const ViewSet set = view_set(sheet_, lying);
      for (const double width : widths_) try_scales(set, width);
    }
    if (!best_) throw std::length_error("part " + sheet_.row.mark + " fits on no page");
    return {sheet_.row.mark, std::move(best_->picture)};
  }

 private:
  // The largest scale that fits, and the next smaller one, which may take much less paper.
  void try_scales(const ViewSet& set, double width) {
    const Unit unit = *sheet_.context.job().units;
    Scale scale = drafting::largest_scale(unit, {set.face.box.width(), set.face.box.height()},
                                          {width, height_});
    int fitting = 0;
    for (; fitting < 2;) {
      if (std::optional<Picture> picture = at_scale(set, width, scale)) {
        ++fitting;
        offer(std::move(*picture), scale);
      }
      const Scale smaller = drafting::next_smaller(scale, unit);
      if (smaller == scale) return;
      scale = smaller;
    }
  }

  void offer(Picture picture, Scale scale) {
    // Panels stand on a page one, two, three ... times: what is between is paper left empty.
    const double share = picture.width / *std::ranges::max_element(widths_);
    const double times = std::floor((height_ + between_panels) / (picture.height + between_panels));
    const double cost = share / times - worth_of_scale * std::log2(scale.ratio());
    if (!best_ || cost < best_->cost - 1e-9) best_ = Try{std::move(picture), cost};
  }

  std::optional<Picture> at_scale(const ViewSet& set, double width, Scale scale) const {
    std::vector<Picture> pictures;
    pictures.push_back(draw_set(sheet_, set, scale));
    if (pictures.front().width > width) return std::nullopt;
    for (const Detail& detail : wanted_details(sheet_, scale))
      pictures.push_back(draw_detail(sheet_, detail));
    if (std::optional<Picture> notes = notes_of(sheet_, scale)) pictures.push_back(*notes);
    std::optional<Picture> body = arranged(std::move(pictures), width, gap);
    if (!body) return std::nullopt;
    Picture whole = panel_head(sheet_, width, scale);
    whole.height += 4;
    put_below(whole, std::move(*body), 0);
    if (whole.height > height_) return std::nullopt;
    return whole;
  }

  const PartSheet& sheet_;
  const std::vector<double>& widths_;
  double height_;
  std::optional<Try> best_;
};

}  // namespace

Panel part_panel(const PartSheet& sheet, const std::vector<double>& widths, double height) {
  return PanelMaker(sheet, widths, height).make();
}

}  // namespace splay::sheets
