// A cut tree of the searches, kerf included, as the layout of a sheet in millimetres.
#include <algorithm>
#include <numeric>

#include "geometry/packing_cuts.h"
#include "geometry/packing_sheet_pieces.h"
#include "geometry/packing_ticks.h"

namespace splay::packing {

namespace {

// A region of the tree holds material of its size less one kerf each way.
class Writer {
 public:
  Writer(const SheetTask& task, const SheetPieces& pieces, int stock, CutTree tree)
      : task_(task),
        pieces_(pieces),
        sheet_(task.sheets[static_cast<std::size_t>(stock)]),
        tree_(std::move(tree)) {
    layout_.stock = stock;
    layout_.area = sheet_.width * sheet_.height;
  }

  SheetLayout run() {
    for (const int region : regions_with(tree_, Content::piece)) expand_sequence(region);
    trim_edges();
    for (const int cut : cut_order(tree_)) write_cut(at(cut));
    for (const int region : regions_with(tree_, Content::piece)) write_part(at(region));
    for (const int region : regions_with(tree_, Content::off_cut)) write_off_cut(at(region));
    std::stable_sort(
        layout_.off_cuts.begin(), layout_.off_cuts.end(),
        [](const OffCut& a, const OffCut& b) { return a.width * a.height > b.width * b.height; });
    return std::move(layout_);
  }

 private:
  const CutNode& at(int node) const { return tree_[static_cast<std::size_t>(node)]; }
  const SheetPieces::Origin& origin(int piece) const {
    return pieces_.origins[static_cast<std::size_t>(piece)];
  }

  // Divides the strip of a sequence into its parts; from here on `piece` counts parts in a list.
  void expand_sequence(int region) {
    const SheetPieces::Origin from = origin(at(region).piece);
    if (from.sequence < 0) {
      name_part(region, from.part, -1, at(region).turned);
      return;
    }
    const Sequence& sequence = task_.sequences[static_cast<std::size_t>(from.sequence)];
    const bool turned = at(region).turned;
    const Axis axis = turned ? other(sequence.axis) : sequence.axis;
    for (std::size_t i = 0; i < sequence.parts.size(); ++i) {
      const SheetPart& part = task_.parts[static_cast<std::size_t>(sequence.parts[i])];
      Units width = ticks_of(part.width) + pieces_.kerf;
      Units height = ticks_of(part.height) + pieces_.kerf;
      if (turned) std::swap(width, height);
      int mine = region;
      if (i + 1 < sequence.parts.size()) {
        mine = split_region(tree_, region, axis, axis == Axis::x ? width : height);
        region = mine + 1;
      }
      mine = trim_part(mine, width, height);
      name_part(mine, sequence.parts[i], from.sequence, turned);
    }
  }

  int trim_part(int region, Units width, Units height) {
    if (at(region).width == width && at(region).height == height) return region;
    for (const int side : {0, 1}) {  // what is cut off holds no piece
      CutNode& node = tree_[static_cast<std::size_t>(region)];
      node.content = Content::off_cut;
      node.piece = -1;
      if (side == 0 && node.width > width) region = split_region(tree_, region, Axis::x, width);
      if (side == 1 && node.height > height) region = split_region(tree_, region, Axis::y, height);
    }
    return region;
  }

  void name_part(int region, int part, int sequence, bool turned) {
    CutNode& node = tree_[static_cast<std::size_t>(region)];
    node.content = Content::piece;
    node.turned = turned;
    node.piece = static_cast<int>(named_.size());
    named_.push_back({part, sequence});
  }

  void trim_edges() {
    const double kerf = task_.kerf;
    const EdgeTrim& t = sheet_.trim;
    const double right = sheet_.width - t.right, top = sheet_.height - t.top;
    const auto add = [&](double amount, Axis axis, double where, double from, double to) {
      if (amount > thinnest_cut) layout_.cuts.push_back({axis, where, from, to, true});
    };
    add(t.bottom, Axis::y, t.bottom - kerf, 0, sheet_.width);
    add(t.top, Axis::y, top, 0, sheet_.width);
    add(t.left, Axis::x, t.left - kerf, t.bottom, top);
    add(t.right, Axis::x, right, t.bottom, top);
  }

  double x_mm(Units x) const { return sheet_.trim.left + mm_of(x); }
  double y_mm(Units y) const { return sheet_.trim.bottom + mm_of(y); }

  void write_cut(const CutNode& region) {
    const bool across = region.axis == Axis::x;
    const Units far =
        across ? region.x + region.width - region.at : region.y + region.height - region.at;
    if (mm_of(far) < thinnest_cut) return;
    const Units blade = region.at - pieces_.kerf;
    SheetCut cut;
    cut.axis = region.axis;
    cut.at = across ? x_mm(blade) : y_mm(blade);
    cut.from = across ? y_mm(region.y) : x_mm(region.x);
    cut.to = cut.from + mm_of((across ? region.height : region.width) - pieces_.kerf);
    layout_.cuts.push_back(cut);
  }

  void write_part(const CutNode& region) {
    const auto& [index, sequence] = named_[static_cast<std::size_t>(region.piece)];
    const SheetPart& part = task_.parts[static_cast<std::size_t>(index)];
    layout_.parts.push_back({index, sequence, x_mm(region.x), y_mm(region.y),
                             region.turned ? part.height : part.width,
                             region.turned ? part.width : part.height, region.turned});
    layout_.parts_area += part.width * part.height;
  }

  void write_off_cut(const CutNode& region) {
    const double width = mm_of(region.width - pieces_.kerf);
    const double height = mm_of(region.height - pieces_.kerf);
    if (width <= 0 || height <= 0 || std::min(width, height) < task_.least_off_cut) return;
    layout_.off_cuts.push_back({x_mm(region.x), y_mm(region.y), width, height});
    layout_.off_cut_area += width * height;
  }

  const SheetTask& task_;
  const SheetPieces& pieces_;
  const SheetStock& sheet_;
  CutTree tree_;
  std::vector<SheetPieces::Origin> named_;
  SheetLayout layout_;
};

}  // namespace

SheetLayout layout_of(const SheetTask& task, const SheetPieces& pieces, int stock, CutTree tree) {
  return Writer(task, pieces, stock, std::move(tree)).run();
}

}  // namespace splay::packing
