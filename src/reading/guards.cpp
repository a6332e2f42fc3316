#include "reading/guards.h"

#include <array>

#include "base/utf8.h"
#include "reading/reading.h"

namespace splay::reading {

namespace {

std::string hexadecimal(unsigned char byte) {
  constexpr std::string_view digits = "0123456789ABCDEF";
  return {'0', 'x', digits[byte >> 4u], digits[byte & 15u]};
}

// The offset just past a string that starts at `at`, or the end of the text when it has none.
std::size_t past_string(std::string_view text, std::size_t at) {
  const char quote = text[at];
  const std::string fence(3, quote);
  const bool long_form = text.substr(at, 3) == fence;
  std::size_t i = at + (long_form ? 3 : 1);
  for (; i < text.size(); ++i) {
    if (quote == '"' && text[i] == '\\') {
      ++i;
    } else if (long_form) {
      if (text.substr(i, 3) == fence) return i + 3;
    } else if (text[i] == quote || text[i] == '\n') {
      return i + 1;
    }
  }
  return text.size();
}

// Counts the levels of tables and arrays at every byte, as an upper bound: a dot in a key is a
// level, and so is every open bracket.
class Nesting {
 public:
  // The offset at which the text is too deep, or npos.
  std::size_t too_deep_at(std::string_view text) {
    for (std::size_t at = 0; at < text.size();) {
      const char c = text[at];
      if (c == '"' || c == '\'') {
        at = past_string(text, at);
        continue;
      }
      if (c == '#') {
        at = std::min(text.find('\n', at), text.size());
        continue;
      }
      step(c);
      if (level() > deepest_nesting) return at;
      ++at;
    }
    return std::string_view::npos;
  }

 private:
  int level() const { return open_ + outer_dots_ + dots_ + (in_header_ ? 0 : header_dots_ + 1); }

  void step(char c) {
    if (c == '[' || c == '{') {
      open(c);
    } else if (c == ']' || c == '}') {
      close();
    } else if (c == '.') {
      ++dots_;
    } else if (c == '=') {
      after_equals_ = true;
    } else if (c == ',' || c == '\n') {
      dots_ = 0;
      after_equals_ = open_ > 0 && after_equals_;
      in_header_ = in_header_ && open_ > 0;
    }
  }

  void open(char c) {
    if (open_ == 0 && !after_equals_ && c == '[') {
      in_header_ = true;
      header_dots_ = 0;
    }
    const auto index = static_cast<std::size_t>(open_);
    if (index < waiting_.size()) waiting_[index] = dots_;
    outer_dots_ += dots_;
    dots_ = 0;
    ++open_;
  }

  void close() {
    if (open_ == 0) return;
    if (in_header_) header_dots_ += dots_;
    --open_;
    dots_ = waiting_[static_cast<std::size_t>(open_)];
    outer_dots_ -= dots_;
  }

  std::array<int, deepest_nesting + 2> waiting_{};  // dots of the keys whose values are open
  int open_ = 0;
  int outer_dots_ = 0;
  int dots_ = 0;
  int header_dots_ = 0;
  bool in_header_ = false;
  bool after_equals_ = false;
};

}  // namespace

std::optional<Diagnostic> refuse_bytes(const SourceText& source, std::size_t most,
                                       std::string hint) {
  const std::string_view text = source.text();
  if (text.size() > most)
    return Diagnostic{{},
                      "file-too-large",
                      "the file has " + std::to_string(text.size()) + " bytes",
                      "at most " + std::to_string(most) + " bytes",
                      std::move(hint)};
  if (const std::size_t at = malformed_at(text); at != std::string_view::npos)
    return Diagnostic{source.at_offset(at), "bad-utf8",
                      "the byte " + hexadecimal(static_cast<unsigned char>(text[at])) +
                          " is not part of any UTF-8 character",
                      "text saved as UTF-8", "save the file again with the encoding UTF-8"};
  return std::nullopt;
}

std::optional<Diagnostic> refuse_unreadable(const SourceText& source) {
  if (auto refusal = refuse_bytes(source, largest_file, "is this the project file?"))
    return refusal;
  const std::string_view text = source.text();
  if (const std::size_t at = Nesting().too_deep_at(text); at != std::string_view::npos)
    return Diagnostic{source.at_offset(at), "nested-too-deep",
                      "brackets and dotted keys are nested deeper than " +
                          std::to_string(deepest_nesting) + " levels here",
                      std::to_string(deepest_nesting) + " levels", "is a bracket left open?"};
  return std::nullopt;
}

}  // namespace splay::reading
