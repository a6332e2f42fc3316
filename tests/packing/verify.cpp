#include "packing/verify.h"

#include <algorithm>
#include <cmath>

#include "geometry/packing_cuts.h"

namespace splay::packing::verify {

namespace {

double low(const Rect& r, int axis) { return axis == 0 ? r.x : r.y; }
double high(const Rect& r, int axis) { return axis == 0 ? r.x + r.width : r.y + r.height; }

bool separable(std::vector<Rect> rects, double kerf, double tolerance) {
  if (rects.size() < 2) return true;
  for (int axis = 0; axis < 2; ++axis) {
    std::sort(rects.begin(), rects.end(),
              [axis](const Rect& a, const Rect& b) { return low(a, axis) < low(b, axis); });
    double reach = high(rects[0], axis);
    for (std::size_t i = 1; i < rects.size(); ++i) {
      if (low(rects[i], axis) >= reach + kerf - tolerance) {
        const auto middle = rects.begin() + static_cast<std::ptrdiff_t>(i);
        return separable({rects.begin(), middle}, kerf, tolerance) &&
               separable({middle, rects.end()}, kerf, tolerance);
      }
      reach = std::max(reach, high(rects[i], axis));
    }
  }
  return false;
}

}  // namespace

std::string rectangles(const std::vector<Rect>& rects, const Rect& sheet, double kerf,
                       double tolerance) {
  for (std::size_t i = 0; i < rects.size(); ++i) {
    const Rect& a = rects[i];
    for (int axis = 0; axis < 2; ++axis)
      if (low(a, axis) < low(sheet, axis) - tolerance ||
          high(a, axis) > high(sheet, axis) + tolerance)
        return "a rectangle leaves the sheet";
    for (std::size_t j = 0; j < i; ++j) {
      const Rect& b = rects[j];
      bool apart = false;
      for (int axis = 0; axis < 2; ++axis)
        apart = apart || low(a, axis) >= high(b, axis) + kerf - tolerance ||
                low(b, axis) >= high(a, axis) + kerf - tolerance;
      if (!apart) return "two rectangles overlap or leave no room for the kerf";
    }
  }
  return separable(rects, kerf, tolerance) ? "" : "no cut from edge to edge parts the rectangles";
}

std::string tree(const CutTree& tree, Units width, Units height, const std::vector<Piece>& pieces,
                 const std::vector<std::int64_t>& most) {
  std::vector<Rect> rects;
  std::vector<std::int64_t> count(pieces.size(), 0);
  for (const CutNode& node : tree) {
    if (node.content != Content::piece) continue;
    if (node.piece < 0 || node.piece >= static_cast<int>(pieces.size())) return "no such piece";
    const auto index = static_cast<std::size_t>(node.piece);
    const Piece& p = pieces[index];
    if (node.turned && !p.may_turn) return "a piece is turned against its grain";
    const bool fits = node.turned ? node.width == p.height && node.height == p.width
                                  : node.width == p.width && node.height == p.height;
    if (!fits) return "a region is not of the size of its piece";
    if (++count[index] > most[index]) return "a piece is cut too often";
    rects.push_back({static_cast<double>(node.x), static_cast<double>(node.y),
                     static_cast<double>(node.width), static_cast<double>(node.height)});
  }
  return rectangles(rects, {0, 0, static_cast<double>(width), static_cast<double>(height)}, 0, 0);
}

std::string placed_once(const Packing& packing, const std::vector<Piece>& pieces) {
  std::vector<int> seen(pieces.size(), 0);
  const std::vector<std::int64_t> one_each(pieces.size(), 1);
  for (const PackedSheet& sheet : packing.sheets) {
    const CutTree cuts = sheet.tree.cuts();
    const std::string wrong = tree(cuts, sheet.tree.width(), sheet.tree.height(), pieces, one_each);
    if (wrong != sound) return wrong;
    for (const int region : regions_with(cuts, Content::piece))
      ++seen[static_cast<std::size_t>(cuts[static_cast<std::size_t>(region)].piece)];
  }
  for (const int piece : packing.unplaced) ++seen[static_cast<std::size_t>(piece)];
  return seen == std::vector<int>(pieces.size(), 1) ? sound : "a piece is not placed just once";
}

}  // namespace splay::packing::verify
