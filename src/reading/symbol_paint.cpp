#include "reading/symbol_paint.h"

#include <cstdint>
#include <string>

#include "reading/symbol_scan.h"

namespace splay::reading {

namespace {

// -1 for what is no hexadecimal digit.
int digit(char c) {
  if (c >= '0' && c <= '9') return c - '0';
  if (c >= 'a' && c <= 'f') return c - 'a' + 10;
  return c >= 'A' && c <= 'F' ? c - 'A' + 10 : -1;
}

std::optional<SvgColour> hexadecimal(std::string_view digits) {
  if (digits.size() != 3 && digits.size() != 6) return std::nullopt;
  const std::size_t each = digits.size() / 3;
  std::optional<int> value;
  for (std::size_t part = 0; part < 3; ++part) {
    const int high = digit(digits[part * each]), low = digit(digits[part * each + each - 1]);
    if (high < 0 || low < 0) return std::nullopt;
    if (value && *value != high * 16 + low) return std::nullopt;
    value = high * 16 + low;
  }
  return SvgColour{*value / 255.0};
}

}  // namespace

std::optional<SvgColour> svg_colour(std::string_view text) {
  if (text == "none") return SvgColour{std::nullopt};
  if (text == "black") return SvgColour{0};
  if (text == "white") return SvgColour{1};
  if (text == "grey" || text == "gray") return SvgColour{128 / 255.0};
  if (text.starts_with('#')) return hexadecimal(text.substr(1));
  return std::nullopt;
}

std::string_view paint_attribute(std::string_view name, std::string_view text, SvgPaint& paint) {
  if (name == "fill" || name == "stroke") {
    const auto colour = svg_colour(text);
    if (!colour) return "none, black, white, grey, or a grey as #808080";
    (name == "fill" ? paint.fill : paint.stroke) = colour->grey;
    return "";
  }
  if (name == "stroke-width") {
    const auto numbers = svg_numbers(text);
    if (!numbers || numbers->size() != 1 || numbers->front() < 0)
      return "a number without a unit, not below 0";
    paint.width = numbers->front();
    return "";
  }
  if (name == "fill-rule") {
    if (text != "evenodd" && text != "nonzero") return "evenodd or nonzero";
    paint.even_odd = text == "evenodd";
    return "";
  }
  return text == "round" ? "" : "round: so pages draw ends and joins";
}

}  // namespace splay::reading
