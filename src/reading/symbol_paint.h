// How an element of an SVG is painted: what it says, else what stands around it says.
#pragma once

#include <optional>
#include <string_view>

namespace splay::reading {

struct SvgPaint {
  std::optional<double> fill = 0;  // grey, 0 black to 1 white; nothing: not filled
  std::optional<double> stroke{};
  double width = 1;
  bool even_odd = false;
};

struct SvgColour {
  std::optional<double> grey;  // nothing for "none"
};
// none, black, white, grey or gray, #rgb and #rrggbb with three equal parts; nothing for others.
std::optional<SvgColour> svg_colour(std::string_view text);

// What is allowed for the attribute when it doesn't take this text; "" when it did. Only for the
// names below.
std::string_view paint_attribute(std::string_view name, std::string_view text, SvgPaint& paint);
inline constexpr std::string_view paint_names =
    "fill stroke stroke-width fill-rule stroke-linecap stroke-linejoin";

}  // namespace splay::reading
