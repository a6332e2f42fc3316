#include <algorithm>
#include <cmath>

#include "packing/verify.h"

namespace splay::packing::verify {

namespace {

constexpr double near = 1e-3;  // mm; lengths are rounded to about a hundred-thousandth

bool same(double a, double b) { return std::abs(a - b) <= near; }
bool same(const Rect& a, const Rect& b) {
  return same(a.x, b.x) && same(a.y, b.y) && same(a.width, b.width) && same(a.height, b.height);
}

// Makes one cut in whichever region it runs through from edge to edge.
bool saw(std::vector<Rect>& regions, const SheetCut& cut, double kerf) {
  for (std::size_t i = 0; i < regions.size(); ++i) {
    const Rect r = regions[i];
    const bool across = cut.axis == Axis::x;
    const double from = across ? r.y : r.x, to = from + (across ? r.height : r.width);
    const double begin = across ? r.x : r.y, end = begin + (across ? r.width : r.height);
    if (!same(from, cut.from) || !same(to, cut.to)) continue;
    if (cut.at + kerf <= begin || cut.at >= end) continue;
    Rect near_side = r, far_side = r;
    (across ? near_side.width : near_side.height) = cut.at - begin;
    (across ? far_side.x : far_side.y) = cut.at + kerf;
    (across ? far_side.width : far_side.height) = end - cut.at - kerf;
    regions[i] = near_side;
    regions.push_back(far_side);
    return true;
  }
  return false;
}

bool take(std::vector<Rect>& regions, const Rect& wanted) {
  const auto found =
      std::find_if(regions.begin(), regions.end(), [&](const Rect& r) { return same(r, wanted); });
  if (found == regions.end()) return false;
  regions.erase(found);
  return true;
}

std::string cuts(const SheetTask& task, const SheetLayout& layout) {
  const SheetStock& stock = task.sheets[static_cast<std::size_t>(layout.stock)];
  std::vector<Rect> regions = {{0, 0, stock.width, stock.height}};
  std::size_t trims = 0;
  for (const SheetCut& cut : layout.cuts) {
    if (!saw(regions, cut, task.kerf)) return "a cut does not run from edge to edge of a region";
    if (cut.trim && ++trims > 4) return "more than four edges";
  }
  for (const PlacedPart& part : layout.parts)
    if (!take(regions, {part.x, part.y, part.width, part.height}))
      return "the cuts do not give a part its size";
  for (const OffCut& off_cut : layout.off_cuts)
    if (!take(regions, {off_cut.x, off_cut.y, off_cut.width, off_cut.height}))
      return "the cuts do not give an off-cut";
  const Rect usable = {stock.trim.left, stock.trim.bottom,
                       stock.width - stock.trim.left - stock.trim.right,
                       stock.height - stock.trim.bottom - stock.trim.top};
  for (const Rect& r : regions) {
    const bool inside = r.x >= usable.x - near && r.y >= usable.y - near &&
                        r.x + r.width <= usable.x + usable.width + near &&
                        r.y + r.height <= usable.y + usable.height + near;
    if (inside && std::min(r.width, r.height) > task.least_off_cut + near)
      return "an off-cut is not listed";
  }
  return "";
}

std::string sequence(const SheetTask& task, int index, std::vector<PlacedPart> placed) {
  const Sequence& wanted = task.sequences[static_cast<std::size_t>(index)];
  if (placed.size() != wanted.parts.size()) return "a sequence is not on one sheet";
  const bool turned = placed[0].turned;
  const bool along_x = (wanted.axis == Axis::x) != turned;
  std::sort(placed.begin(), placed.end(), [&](const PlacedPart& a, const PlacedPart& b) {
    return along_x ? a.x < b.x : a.y < b.y;
  });
  for (std::size_t i = 0; i < placed.size(); ++i) {
    if (placed[i].part != wanted.parts[i]) return "a sequence is out of order";
    if (placed[i].turned != turned) return "a sequence is partly turned";
    if (i == 0) continue;
    const PlacedPart &a = placed[i - 1], &b = placed[i];
    const bool next = along_x ? same(b.x, a.x + a.width + task.kerf) && same(a.y, b.y)
                              : same(b.y, a.y + a.height + task.kerf) && same(a.x, b.x);
    if (!next) return "parts of a sequence are not next to each other";
  }
  return "";
}

std::string part_as_asked(const SheetTask& task, const PlacedPart& placed) {
  const SheetPart& part = task.parts[static_cast<std::size_t>(placed.part)];
  if (placed.turned && !part.may_turn) return "the grain is not kept";
  const double w = placed.turned ? part.height : part.width;
  const double h = placed.turned ? part.width : part.height;
  return placed.width == w && placed.height == h ? "" : "a part has lost its size";
}

std::string layout_alone(const SheetTask& task, const SheetLayout& layout) {
  const SheetStock& stock = task.sheets[static_cast<std::size_t>(layout.stock)];
  std::vector<Rect> rects;
  std::vector<std::vector<PlacedPart>> sequences(task.sequences.size());
  double area = 0;
  for (const PlacedPart& placed : layout.parts) {
    if (std::string wrong = part_as_asked(task, placed); !wrong.empty()) return wrong;
    rects.push_back({placed.x, placed.y, placed.width, placed.height});
    area += placed.width * placed.height;
    if (placed.sequence >= 0)
      sequences[static_cast<std::size_t>(placed.sequence)].push_back(placed);
  }
  const EdgeTrim& t = stock.trim;
  const Rect usable = {t.left, t.bottom, stock.width - t.left - t.right,
                       stock.height - t.bottom - t.top};
  if (std::string wrong = rectangles(rects, usable, task.kerf, near); !wrong.empty()) return wrong;
  for (std::size_t s = 0; s < sequences.size(); ++s)
    if (!sequences[s].empty())
      if (std::string wrong = sequence(task, static_cast<int>(s), sequences[s]); !wrong.empty())
        return wrong;
  if (std::abs(area - layout.parts_area) > 1e-9 * (1 + area)) return "the area of the parts is off";
  if (!same(layout.area, stock.width * stock.height)) return "the area of the sheet is off";
  if (layout.parts_area + layout.off_cut_area > layout.area * (1 + 1e-6))
    return "more area than the sheet has";
  return cuts(task, layout);
}

}  // namespace

std::string plan(const SheetTask& task, const SheetPlan& plan) {
  std::vector<std::int64_t> parts(task.parts.size(), 0), sheets(task.sheets.size(), 0);
  std::vector<int> in_sequence(task.sequences.size(), 0);
  double cost = 0;
  for (const SheetLayout& layout : plan.layouts) {
    if (std::string wrong = layout_alone(task, layout); !wrong.empty()) return wrong;
    const auto stock = static_cast<std::size_t>(layout.stock);
    ++sheets[stock];
    cost += task.sheets[stock].cost;
    for (const PlacedPart& placed : layout.parts) {
      ++parts[static_cast<std::size_t>(placed.part)];
      if (placed.sequence >= 0) ++in_sequence[static_cast<std::size_t>(placed.sequence)];
    }
  }
  for (const int part : plan.unplaced) ++parts[static_cast<std::size_t>(part)];
  for (std::size_t p = 0; p < parts.size(); ++p)
    if (parts[p] != task.parts[p].count) return "a part is missing or there twice";
  for (std::size_t s = 0; s < task.sequences.size(); ++s)
    if (plan.unplaced.empty() && in_sequence[s] != static_cast<int>(task.sequences[s].parts.size()))
      return "a sequence is missing or there twice";
  for (std::size_t s = 0; s < sheets.size(); ++s)
    if (task.sheets[s].count >= 0 && sheets[s] > task.sheets[s].count) return "a sheet used twice";
  if (std::abs(cost - plan.cost) > 1e-9 * (1 + cost)) return "the cost is off";
  return plan.cost >= plan.bound - 1e-9 * (1 + cost) ? "" : "the cost is under the proven bound";
}

std::string plan(const BoardTask& task, const BoardPlan& plan) {
  std::vector<std::int64_t> parts(task.parts.size(), 0), boards(task.boards.size(), 0);
  double cost = 0;
  for (const BoardLayout& layout : plan.layouts) {
    const BoardStock& board = task.boards[static_cast<std::size_t>(layout.stock)];
    ++boards[static_cast<std::size_t>(layout.stock)];
    cost += board.cost;
    double free_from = board.trim_left;
    for (const BoardLayout::Placed& placed : layout.parts) {
      ++parts[static_cast<std::size_t>(placed.part)];
      const double end = placed.at + placed.length;
      if (placed.length != task.parts[static_cast<std::size_t>(placed.part)].length)
        return "a part has lost its length";
      if (placed.at < free_from - near) return "two parts leave no room for the kerf";
      if (end > board.length - board.trim_right + near) return "a part reaches past the board";
      for (const Interval& defect : board.blocked)
        if (placed.at < defect.to - near && end > defect.from + near)
          return "a part reaches into a defect";
      for (const double cut : layout.cuts)
        if (cut < end - near && cut + task.kerf > placed.at + near) return "a cut hits a part";
      const auto freed = [&](double face) {
        return std::any_of(layout.cuts.begin(), layout.cuts.end(), [&](double cut) {
          return same(cut, face) || same(cut + task.kerf, face);
        });
      };
      if (placed.at > near && !freed(placed.at)) return "a part is not cut free on its left";
      if (end < board.length - 1e-3 - near && !freed(end)) return "a part is not cut free";
      free_from = end + task.kerf;
    }
  }
  for (const int part : plan.unplaced) ++parts[static_cast<std::size_t>(part)];
  for (std::size_t p = 0; p < parts.size(); ++p)
    if (parts[p] != task.parts[p].count) return "a part is missing or there twice";
  for (std::size_t b = 0; b < boards.size(); ++b)
    if (task.boards[b].count >= 0 && boards[b] > task.boards[b].count) return "a board used twice";
  if (std::abs(cost - plan.cost) > 1e-9 * (1 + cost)) return "the cost is off";
  return plan.cost >= plan.bound - 1e-9 * (1 + cost) ? "" : "the cost is under the proven bound";
}

}  // namespace splay::packing::verify
