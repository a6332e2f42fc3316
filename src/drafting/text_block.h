// Lines and paragraphs.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "drafting/kit.h"

namespace splay::drafting {

inline constexpr double line_pitch = 1.75;  // times the capital height (ISO 3098 asks 1.4 or more)

// The width of its widest line, unbroken but at "\n".
double widest_line(const Kit& kit, std::string_view text, double height,
                   ink::Face face = ink::Face::regular);

// A text broken at spaces (a word too long for a line between its characters) so that no line is
// wider than `width`; "\n" always breaks. At least one line.
std::vector<std::string> wrap(const Kit& kit, std::string_view text, double width, double height,
                              ink::Face face = ink::Face::regular);

// The text cut so that it fits, with an ellipsis when anything is left out.
std::string shortened(const Kit& kit, std::string_view text, double width, double height,
                      ink::Face face = ink::Face::regular);

struct TextStyle {
  double height = 2.5;
  ink::Face face = ink::Face::regular;
  ink::Align align = ink::Align::left;
};

// A wrapped paragraph as a picture of the given width.
Picture paragraph(const Kit& kit, std::string_view text, double width, TextStyle style);

// A text fitted into a box, centred in its height: at `style.height` when one line of it fits, else
// on a smaller height of the ISO 3098 series down to 2.5, else on several lines, else shortened.
ink::Group fitted(const Kit& kit, std::string_view text, ink::Rect box, TextStyle style);

}  // namespace splay::drafting
