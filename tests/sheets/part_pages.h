// Binders of the demo pieces, and what stands on a part's pages, for tests.
#pragma once

#include <algorithm>
#include <string>
#include <vector>

#include "ink/lint.h"
#include "ink/outline.h"
#include "sheets/packet.h"
#include "support/piece.h"
#include "writers/files.h"

namespace splay::test {

inline const ink::FontSet& fonts() {
  static const ink::FontSet set;
  return set;
}

inline Built piece_from(const std::string& path) {
  return build(writers::read_file(std::string(SPLAYBOOK_SOURCE_DIR) + "/" + path, 1u << 24));
}

inline ink::Packet binder(const Built& piece, model::PaperSize paper = model::PaperSize::a4) {
  piece.project->job.paper.value = paper;
  return sheets::make_packet(piece.plan, model::Style{}, fonts());
}

// Everything of one type on a page, groups searched.
template <class T>
std::vector<T> all_of(const ink::Page& page) {
  std::vector<T> found;
  ink::walk(page.items, [&](const ink::Item& item) {
    if (const T* one = std::get_if<T>(&item)) found.push_back(*one);
  });
  return found;
}

// The pages of that title.
inline std::vector<const ink::Page*> titled(const ink::Packet& packet, const std::string& title) {
  std::vector<const ink::Page*> pages;
  for (const ink::Page& page : packet.pages)
    if (page.title == title) pages.push_back(&page);
  return pages;
}

// The words stand on the page, broken over lines or not.
inline bool shows(const ink::Page& page, const std::string& words) {
  std::string all;
  for (const ink::Text& text : all_of<ink::Text>(page)) all += text.utf8 + " ";
  return all.find(words) != std::string::npos;
}

// The part view pages whose bookmark names the mark.
inline std::vector<const ink::Page*> pages_of(const ink::Packet& packet, const std::string& mark) {
  std::vector<const ink::Page*> pages;
  for (const ink::Page& page : packet.pages) {
    const std::string start = "Part views: ";
    if (!page.title.starts_with(start)) continue;
    const std::string marks = ", " + page.title.substr(start.size()) + ",";
    if (marks.find(", " + mark + ",") != std::string::npos) pages.push_back(&page);
  }
  return pages;
}

inline bool shows(const std::vector<const ink::Page*>& pages, const std::string& words) {
  return std::ranges::any_of(pages, [&](const ink::Page* page) { return shows(*page, words); });
}

// A dimension of this length is printed on one of the pages.
inline bool measures(const std::vector<const ink::Page*>& pages, double mm) {
  return std::ranges::any_of(pages, [&](const ink::Page* page) {
    return std::ranges::any_of(all_of<ink::DimensionClaim>(*page), [&](const auto& claim) {
      return std::abs(std::abs(claim.exact_mm) - mm) < 1e-6;
    });
  });
}

inline std::string page_faults(const Built& piece, const ink::Packet& packet) {
  std::vector<std::string> marks;
  for (const fabrication::PartRow& row : piece.plan.rows) marks.push_back(row.mark);
  std::string text;
  for (const ink::LintFault& fault : ink::lint(packet, fonts(), marks))
    text += "page " + fault.page + ": " + fault.rule + ": " + fault.text + "\n";
  return text;
}

}  // namespace splay::test
