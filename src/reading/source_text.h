// The text of a file with its lines, and the spans of what toml++ found in it.
#pragma once

#include <toml++/toml.h>
#include <string_view>
#include <vector>

#include "base/diagnostic.h"

namespace splay::reading {

class SourceText {
 public:
  explicit SourceText(std::string_view text);

  std::string_view text() const { return text_; }  // without a byte order mark
  std::string_view line(int number) const;         // from 1, without its line end
  SourceSpan at_offset(std::size_t byte, std::size_t characters = 1) const;

  // A region that runs over several lines is underlined to the end of its first.
  SourceSpan span(const toml::source_region& region) const;

  // The characters of a text value from byte `at` on, `bytes` long. Where escapes or several lines
  // hide which source character made which, the whole value.
  SourceSpan inside(const toml::node& text_value, std::size_t at, std::size_t bytes) const;

 private:
  std::string_view text_;
  bool marked_ = false;  // the file starts with a byte order mark: one more column in line 1
  std::vector<std::size_t> starts_;
};

}  // namespace splay::reading
