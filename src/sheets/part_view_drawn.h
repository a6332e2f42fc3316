// All pictures a part's panel is put together from. Each is drawn when first asked for, and kept.
#pragma once

#include <array>
#include <map>
#include <optional>
#include <string>
#include <tuple>
#include <vector>

#include "sheets/part_view_detail.h"
#include "sheets/part_view_set.h"

namespace splay::sheets {

inline constexpr double panel_gap = 5;  // mm between the pictures of a panel

// Columns the notes stand in.
struct Notes {
  double width = 0;  // of a column
  int columns = 1;
};

class PartDrawn {
 public:
  PartDrawn(const Context& context, const fabrication::PartRow& row) : sheet_(context, row) {}

  const PartSheet& sheet() const { return sheet_; }
  const ViewSet& set(bool lying);
  const drafting::Picture& views(bool lying, drafting::Scale scale);
  // Those that a part needs whose views are at this scale, with their words.
  const std::vector<drafting::Picture>& details(drafting::Scale scale, const DetailStyle& style);
  // Cuts that no detail shows, measures, remarks; without height when there are none.
  const drafting::Picture& notes(drafting::Scale scale, const Notes& layout);

 private:
  // What a scale may hide decides which details there are.
  using Hides = std::pair<bool, bool>;
  Hides hides(drafting::Scale scale) const;
  const std::vector<Detail>& wanted(drafting::Scale scale);
  const std::vector<DetailDrawing>& drawings(drafting::Scale scale, double most_up);
  const std::vector<std::string>& note_lines(drafting::Scale scale);

  PartSheet sheet_;
  std::array<std::optional<ViewSet>, 2> sets_;
  std::map<std::tuple<bool, int, int>, drafting::Picture> views_;
  std::map<Hides, std::vector<Detail>> wanted_;
  std::map<std::tuple<Hides, double>, std::vector<DetailDrawing>> drawings_;
  std::map<std::tuple<Hides, double, double, bool>, std::vector<drafting::Picture>> details_;
  std::optional<std::vector<std::string>> fittings_;
  std::map<Hides, std::vector<std::string>> note_lines_;
  std::map<std::tuple<Hides, double, int>, drafting::Picture> notes_;
};

}  // namespace splay::sheets
