// A kit with real fonts, and a page judged by the lint.
#pragma once

#include <catch2/catch.hpp>
#include <string>

#include "drafting/kit.h"
#include "drafting/sheet_frame.h"
#include "ink/lint.h"

namespace splay::test {

inline const ink::FontSet& fonts() {
  static const ink::FontSet set;
  return set;
}

inline drafting::Kit kit(Unit unit = Unit::inch) {
  return {&fonts(), {}, FigureStyle{.unit = unit, .fraction = 32, .decimals = 1}};
}

// Everything the lint has to say about one page with these items.
inline std::string faults(drafting::Items items, const ink::Paper& paper) {
  ink::Packet packet;
  packet.pages.push_back({paper, "test", "1", 0, std::move(items)});
  std::string text;
  for (const ink::LintFault& fault : ink::lint(packet, fonts(), {}))
    text += fault.rule + ": " + fault.text + "\n";
  return text;
}

inline std::string faults(drafting::Items items) {
  return faults(std::move(items), drafting::paper_named("A3"));
}

inline std::vector<std::string> words(const drafting::Items& items) {
  std::vector<std::string> found;
  for (const ink::Item& item : items) {
    if (const auto* text = std::get_if<ink::Text>(&item)) found.push_back(text->utf8);
    if (const auto* group = std::get_if<ink::Group>(&item))
      for (std::string& word : words(group->items)) found.push_back(std::move(word));
  }
  return found;
}

}  // namespace splay::test
