// Finding font files with fontconfig. Only TrueType outlines: the PDF writer embeds no others.
#pragma once

#include <string>
#include <vector>

namespace splay::ink {

enum class Cut { upright, bold, italic };

struct FontWanted {
  std::string family;
  Cut cut = Cut::upright;
  std::string debian_package;  // where to get it, for the error; "" when nobody can say
};

// Paths in the order wanted; of several widths of a family the most usual. Throws
// std::runtime_error that names the first family not found.
std::vector<std::string> find_font_files(const std::vector<FontWanted>& wanted);

}  // namespace splay::ink
