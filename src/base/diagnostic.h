// What is wrong with a file an author wrote, and where.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace splay {

// A place in a source file. Lines and columns count from 1; a column counts Unicode characters.
// line 0 means the file as a whole.
struct SourceSpan {
  int line = 0;
  int column = 0;
  int length = 1;  // characters to underline, on that line
  bool operator==(const SourceSpan&) const = default;
};

// One thing wrong. `code` is a stable word in kebab case ("unknown-key") that tests and readers can
// search for; the three texts answer what was found, what is allowed and what to do.
struct Diagnostic {
  SourceSpan span;
  std::string code;
  std::string found;
  std::string allowed;
  std::string hint;
};

// The diagnostic as text for a terminal: place, found, the source line with carets, allowed, hint.
std::string describe(const Diagnostic& diagnostic, std::string_view file_name,
                     std::string_view source);

// In file order, without repeats.
void sort_diagnostics(std::vector<Diagnostic>& diagnostics);

// The word of `known` nearest to `word` by edit distance, at most a third of its letters wrong; ""
// when none is near.
std::string_view nearest_word(std::string_view word, const std::vector<std::string_view>& known);

}  // namespace splay
