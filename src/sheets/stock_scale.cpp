// How large sheets and boards are drawn (part of stock_drawing.h).
#include <algorithm>

#include "sheets/stock_drawing.h"

namespace splay::sheets {

namespace {

using fabrication::CutSheet;
using fabrication::StockLayout;

constexpr double least_side = 6.5;  // mm on paper for a part's mark

// Standard scales from the largest down to a sixtieth.
std::vector<drafting::Scale> scales(const Context& context) {
  const Unit unit = *context.job().units;
  std::vector<drafting::Scale> all{{1, 1}};
  while (all.back().ratio() > 1.0 / 60) {
    const drafting::Scale next = drafting::next_smaller(all.back(), unit);
    if (next == all.back()) break;
    all.push_back(next);
  }
  return all;
}

double narrowest_part(const CutSheet& sheet) {
  double least = 1e9;
  for (const packing::PlacedPart& part : sheet.parts)
    least = std::min({least, part.width, part.height});
  return least;
}

}  // namespace

StockScale sheet_scale(const Context& context, const StockLayout& layout, const CutSheet& sheet,
                       drafting::Room2 room, bool sparing) {
  constexpr std::size_t few = 3;
  constexpr double least_length = 88;  // mm on paper
  const fabrication::Supplied& supply = layout.supplies[sheet.supply];
  const double part = narrowest_part(sheet);
  StockScale best;
  bool found = false;
  const std::vector<drafting::Scale> all = scales(context);
  for (const drafting::Scale scale : all) {
    for (const bool upright : {false, true}) {
      const StockScale tried{scale, 1, upright};
      const double length = tried.length(supply.length) + 2 * stock_margin;
      const double width = tried.width(supply.width) + 2 * stock_margin;
      const double across = upright ? width : length;
      const double up = (upright ? length : width) + grain_strip;
      if (across > room.width || up > room.height) continue;
      const bool roomy = sparing && sheet.parts.size() <= few &&
                         part * scale.ratio() >= 2 * least_side &&
                         tried.length(std::max(supply.length, supply.width)) >= least_length;
      if (found && (!roomy || scale == best.along)) continue;  // lying goes before standing
      best = tried;
      found = true;
    }
  }
  if (!found) best.along = all.back();
  return best;
}

StockScale board_scale(const Context& context, const StockLayout& layout, drafting::Room2 room) {
  double length = 0, width = 0, part = 1e9;
  for (const CutSheet& sheet : layout.sheets) {
    length = std::max(length, layout.supplies[sheet.supply].length);
    width = std::max(width, layout.supplies[sheet.supply].width);
    part = std::min(part, narrowest_part(sheet));
  }
  StockScale best;
  best.along = drafting::largest_scale(*context.job().units, {length, 1},
                                       {room.width - 2 * stock_margin, room.height});
  constexpr double widest = 40;  // mm on paper
  for (const int widened : {1, 2, 3, 4}) {
    best.widened = widened;
    if (part * best.along.ratio() * widened >= least_side) break;
    if (width * best.along.ratio() * (widened + 1) > widest) break;
  }
  return best;
}

}  // namespace splay::sheets
