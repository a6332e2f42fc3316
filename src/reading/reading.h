// TOML to model. All faults at once, each with its place; a project only when there is none.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "base/diagnostic.h"
#include "model/project.h"
#include "model/style.h"

namespace splay::reading {

struct ProjectReading {
  std::optional<model::Project> project;  // only when no diagnostic stands against it
  std::vector<Diagnostic> diagnostics;    // in file order
};

inline constexpr std::size_t largest_file = 4u << 20;  // bytes
inline constexpr int deepest_nesting = 64;

// Never throws for what the text says. Tables: [job], [sizes], [shop], [buying], [room], [client],
// [approval], [stock.NAME] and one table [WORD.NAME] for each kind of the registry.
ProjectReading read_project(std::string_view source, std::string_view file_name,
                            const model::Registry& registry);

struct StyleReading {
  std::optional<model::Style> style;
  std::vector<Diagnostic> diagnostics;
};
// `pages`: the kinds of page it may name. Symbols are not read: the style has their files' names.
StyleReading read_style(std::string_view source, std::string_view name,
                        std::span<const model::PageKind> pages = {});

// The fields of a word ("case", "case.shelf", "job", "stock"), for a terminal; "" when the word is
// unknown. A word further in ("dowel") is explained at its one place, or its places are named.
// Without a word: the list of words. "style" is the file of a style, which may name these `pages`.
std::string explain(std::string_view word, const model::Registry& registry,
                    std::span<const model::PageKind> pages = {});

// The format of both files as a Markdown page, from the same description.
std::string reference_page(const model::Registry& registry,
                           std::span<const model::PageKind> pages = {});

}  // namespace splay::reading
