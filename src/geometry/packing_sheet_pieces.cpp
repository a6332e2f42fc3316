#include "geometry/packing_sheet_pieces.h"

#include <algorithm>
#include <stdexcept>

#include "geometry/packing_ticks.h"

namespace splay::packing {

namespace {

void refuse_unless(bool right, const char* what) {
  if (!right) throw std::invalid_argument(what);
}

void check(const SheetTask& task) {
  refuse_unless(task.kerf >= 0, "negative kerf");
  for (const SheetStock& s : task.sheets) {
    refuse_unless(s.width > 0 && s.height > 0, "a sheet without size");
    refuse_unless(s.cost >= 0, "a sheet of negative cost");
    const EdgeTrim& t = s.trim;
    refuse_unless(std::min({t.left, t.right, t.bottom, t.top}) >= 0, "negative edge trim");
  }
  for (const SheetPart& p : task.parts) {
    refuse_unless(p.width > 0 && p.height > 0, "a part without size");
    refuse_unless(p.count >= 0, "a negative number of parts");
  }
}

Piece with_kerf(const SheetPart& part, Units kerf) {
  return {ticks_of(part.width) + kerf, ticks_of(part.height) + kerf, part.may_turn};
}

Piece whole_strip(const SheetTask& task, const Sequence& sequence, Units kerf) {
  Piece strip{0, 0, true};
  for (const int index : sequence.parts) {
    const Piece p = with_kerf(task.parts[static_cast<std::size_t>(index)], kerf);
    const bool along_x = sequence.axis == Axis::x;
    strip.width = along_x ? strip.width + p.width : std::max(strip.width, p.width);
    strip.height = along_x ? std::max(strip.height, p.height) : strip.height + p.height;
    strip.may_turn = strip.may_turn && p.may_turn;
  }
  return strip;
}

}  // namespace

SheetPieces pieces_of(const SheetTask& task) {
  check(task);
  SheetPieces result;
  result.kerf = ticks_of(task.kerf);
  for (const SheetStock& s : task.sheets) {
    const Units w = ticks_of(s.width - s.trim.left - s.trim.right);
    const Units h = ticks_of(s.height - s.trim.bottom - s.trim.top);
    const bool usable = w > 0 && h > 0;
    result.stocks.push_back(
        {usable ? w + result.kerf : 0, usable ? h + result.kerf : 0, usable ? s.count : 0, s.cost});
  }
  std::vector<int> single;
  for (const SheetPart& p : task.parts) single.push_back(p.count);
  for (std::size_t s = 0; s < task.sequences.size(); ++s) {
    const Sequence& sequence = task.sequences[s];
    refuse_unless(!sequence.parts.empty(), "an empty sequence");
    for (const int index : sequence.parts) {
      const auto i = static_cast<std::size_t>(index);
      refuse_unless(index >= 0 && i < single.size(), "a sequence names no part");
      refuse_unless(--single[i] >= 0, "a sequence takes more copies than there are");
    }
    result.pieces.push_back(whole_strip(task, sequence, result.kerf));
    result.origins.push_back({-1, static_cast<int>(s)});
  }
  for (std::size_t i = 0; i < single.size(); ++i) {
    const Piece piece = with_kerf(task.parts[i], result.kerf);
    result.pieces.insert(result.pieces.end(), static_cast<std::size_t>(single[i]), piece);
    result.origins.insert(result.origins.end(), static_cast<std::size_t>(single[i]),
                          {static_cast<int>(i), -1});
  }
  return result;
}

}  // namespace splay::packing
