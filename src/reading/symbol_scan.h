// Numbers in an attribute of an SVG: in lists, in path data, in transforms.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

namespace splay::reading {

inline constexpr double largest_svg_number = 1e6;

class SvgScanner {
 public:
  explicit SvgScanner(std::string_view text) : text_(text) {}

  bool at_end() const { return at_ == text_.size(); }
  char peek() const { return at_end() ? '\0' : text_[at_]; }
  char take() { return at_end() ? '\0' : text_[at_++]; }
  void skip_space();
  void skip_comma();  // spaces with at most one comma among them
  // SVG 1.1's numbers ("1", "-.5", "1e-3", "1."), finite, none larger than largest_svg_number;
  // nothing, and nothing taken, where none stands.
  std::optional<double> number();
  std::optional<bool> flag();  // the one character 0 or 1
  // What stands here, for a message: a few characters, "the end" where nothing does.
  std::string_view here() const;

 private:
  std::size_t digits(std::size_t from) const;  // where they end

  std::string_view text_;
  std::size_t at_ = 0;
};

// A whole attribute of numbers, with spaces or commas between; nothing when there is anything else.
std::optional<std::vector<double>> svg_numbers(std::string_view text);

}  // namespace splay::reading
