#include "sheets/part_view_drawn.h"

#include <algorithm>

#include "drafting/text_block.h"
#include "sheets/part_view_draw.h"
#include "sheets/part_view_wants.h"

namespace splay::sheets {

namespace {

using drafting::Picture;
using drafting::Scale;

Picture below_each_other(const std::vector<Picture>& pictures, std::size_t from, std::size_t to,
                         double width) {
  constexpr double space = 1.5;
  Picture whole{{}, width, 0};
  for (std::size_t i = from; i < to; ++i) {
    drafting::append(whole.items, drafting::moved(pictures[i].items, {0, -whole.height}));
    whole.height += pictures[i].height + space;
  }
  return whole;
}

Picture in_columns(const drafting::Kit& kit, const std::vector<std::string>& lines,
                   const Notes& notes) {
  std::vector<Picture> paragraphs;
  double total = 0;
  for (const std::string& line : lines) {
    paragraphs.push_back(
        drafting::paragraph(kit, line, notes.width, {.height = kit.look.lettering}));
    total += paragraphs.back().height;
  }
  std::size_t first = paragraphs.size();
  if (notes.columns > 1) {
    double left = 0;
    for (first = 0; first < paragraphs.size() && left < total / 2; ++first)
      left += paragraphs[first].height;
  }
  Picture whole = below_each_other(paragraphs, 0, first, notes.width);
  if (notes.columns == 1) return whole;
  Picture right = below_each_other(paragraphs, first, paragraphs.size(), notes.width);
  const double x = notes.width + panel_gap;
  drafting::append(whole.items, drafting::moved(std::move(right.items), {x, 0}));
  whole.width = x + notes.width;
  whole.height = std::max(whole.height, right.height);
  return whole;
}

}  // namespace

const ViewSet& PartDrawn::set(bool lying) {
  std::optional<ViewSet>& made = sets_[lying ? 0 : 1];
  if (!made) made = view_set(sheet_, lying);
  return *made;
}

const Picture& PartDrawn::views(bool lying, Scale scale) {
  const auto [at, is_new] = views_.try_emplace({lying, scale.paper, scale.real}, Picture{});
  if (is_new) at->second = draw_set(sheet_, set(lying), scale);
  return at->second;
}

PartDrawn::Hides PartDrawn::hides(Scale scale) const {
  return {drawn_small(sheet_, scale), drawn_thin(sheet_, scale)};
}

const std::vector<Detail>& PartDrawn::wanted(Scale scale) {
  const auto [at, is_new] = wanted_.try_emplace(hides(scale), std::vector<Detail>{});
  if (is_new) at->second = wanted_details(sheet_, scale);
  return at->second;
}

const std::vector<DetailDrawing>& PartDrawn::drawings(Scale scale, double most_up) {
  const auto [at, is_new] =
      drawings_.try_emplace({hides(scale), most_up}, std::vector<DetailDrawing>{});
  if (is_new)
    for (const Detail& detail : wanted(scale))
      at->second.push_back(draw_detail(sheet_, detail, most_up));
  return at->second;
}

const std::vector<Picture>& PartDrawn::details(Scale scale, const DetailStyle& style) {
  const auto [at, is_new] = details_.try_emplace(
      {hides(scale), style.most_up, style.least_width, style.beside}, std::vector<Picture>{});
  if (!is_new) return at->second;
  const std::vector<Detail>& details = wanted(scale);
  const std::vector<DetailDrawing>& drawn = drawings(scale, style.most_up);
  for (std::size_t i = 0; i < details.size(); ++i)
    at->second.push_back(worded(sheet_.kit(), details[i], drawn[i], style));
  return at->second;
}

const std::vector<std::string>& PartDrawn::note_lines(Scale scale) {
  const auto [at, is_new] = note_lines_.try_emplace(hides(scale), std::vector<std::string>{});
  std::vector<std::string>& lines = at->second;
  if (!is_new) return lines;
  if (!fittings_) fittings_ = fitting_lines(sheet_);
  lines = plain_cut_lines(sheet_, scale);
  lines.insert(lines.end(), fittings_->begin(), fittings_->end());
  for (const parts::Measure& measure : sheet_.part.measures)
    lines.push_back(capitalised(measure.name) + ": " + sheet_.kit().figures.text(measure.mm) + ".");
  lines.insert(lines.end(), sheet_.part.remarks.begin(), sheet_.part.remarks.end());
  return lines;
}

const Picture& PartDrawn::notes(Scale scale, const Notes& layout) {
  const auto [at, is_new] =
      notes_.try_emplace({hides(scale), layout.width, layout.columns}, Picture{});
  if (is_new) at->second = in_columns(sheet_.kit(), note_lines(scale), layout);
  return at->second;
}

}  // namespace splay::sheets
