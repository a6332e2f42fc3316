#include "drafting/scale.h"

#include <algorithm>
#include <array>
#include <span>

namespace splay::drafting {

namespace {

// Largest first.
constexpr std::array<Scale, 14> millimetre_scales{{{10, 1},
                                                   {5, 1},
                                                   {2, 1},
                                                   {1, 1},
                                                   {1, 2},
                                                   {1, 5},
                                                   {1, 10},
                                                   {1, 20},
                                                   {1, 25},
                                                   {1, 50},
                                                   {1, 100},
                                                   {1, 200},
                                                   {1, 500},
                                                   {1, 1000}}};

constexpr std::array<Scale, 13> inch_scales{{{8, 1},
                                             {4, 1},
                                             {2, 1},
                                             {1, 1},
                                             {1, 2},
                                             {1, 4},
                                             {1, 8},
                                             {1, 12},
                                             {1, 16},
                                             {1, 24},
                                             {1, 32},
                                             {1, 48},
                                             {1, 96}}};

std::span<const Scale> series(Unit unit) {
  return unit == Unit::inch ? std::span<const Scale>(inch_scales)
                            : std::span<const Scale>(millimetre_scales);
}

std::string inch_words(Scale scale) {
  if (scale == Scale{1, 1}) return "full size";
  if (scale == Scale{1, 2}) return "half size";
  if (scale == Scale{1, 4}) return "quarter size";
  if (scale.paper > 1) return {};
  constexpr int per_foot = 12 * 8;  // eighths of an inch of paper at full size
  const FigureStyle eighths{.unit = Unit::inch, .fraction = 8};
  return eighths.text(Figure{per_foot / scale.real}) + " in = 1 ft";
}

}  // namespace

std::string short_text(Scale scale) {
  return std::to_string(scale.paper) + ":" + std::to_string(scale.real);
}

std::string text(Scale scale, Unit unit) {
  const std::string words = unit == Unit::inch ? inch_words(scale) : std::string{};
  return words.empty() ? short_text(scale) : short_text(scale) + " (" + words + ")";
}

Scale largest_scale(Unit unit, Room2 real, Room2 paper, bool may_enlarge) {
  const std::span<const Scale> scales = series(unit);
  constexpr double slack = 1e-9;
  const auto fits = [&](const Scale& scale) {
    return (may_enlarge || scale.paper == 1) && real.width * scale.ratio() <= paper.width + slack &&
           real.height * scale.ratio() <= paper.height + slack;
  };
  const auto found = std::ranges::find_if(scales, fits);
  return found == scales.end() ? scales.back() : *found;
}

Scale next_smaller(Scale scale, Unit unit) {
  const std::span<const Scale> scales = series(unit);
  const auto smaller = [&](const Scale& s) { return s.ratio() < scale.ratio(); };
  const auto found = std::ranges::find_if(scales, smaller);
  return found == scales.end() ? scale : *found;
}

}  // namespace splay::drafting
