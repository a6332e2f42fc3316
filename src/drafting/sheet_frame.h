// The sheet: paper sizes, frame, title block, scale bars, page numbers.
//
// Frame and filing margin: ISO 5457 (20 mm at the filing edge, 10 mm elsewhere). Fields of the
// title block: ISO 7200 (from memory). Two bars of 100 mm and 4 in, one across and one up the page,
// show whether the sheet was printed true.
#pragma once

#include <string>

#include "drafting/kit.h"

namespace splay::drafting {

// "A4", "Letter" upright; "A3", "Tabloid" lying. Throws std::invalid_argument for another name.
ink::Paper paper_named(std::string_view name);

struct TitleFields {
  std::string job, client, number, revision, date, maker;
  std::string sheet;         // what this page shows
  std::string scale;         // "1:8 (1 1/2 in = 1 ft)", or "as marked", or "" for a page of text
  std::string units;         // "Lengths in inches"
  bool projection = false;   // draw the symbol of the projection used
  bool third_angle = false;  // else first angle
};

// Where a page's drawing may go: inside frame, title block and bars, with some air.
ink::Rect free_area(const ink::Paper& paper);

// A page with its frame, title block and bars, bound at the left, without its number.
ink::Page start_page(const Kit& kit, const ink::Paper& paper, const TitleFields& fields);

// Writes label and "page x of y" once all pages are known, and an anchor "page x". bind_right moves
// all that is on the page towards the left, for the back of a leaf in a two-sided binder.
void number_page(const Kit& kit, ink::Page& page, int number, int count, bool bind_right);
// The same for pages that stand before the numbered ones: "i", "i of ii".
void label_page(const Kit& kit, ink::Page& page, const std::string& label, const std::string& words,
                bool bind_right);

// Bars in the outer margin beside what changed, between the heights given.
void put_change_bar(ink::Page& page, double low, double high);

// Words in bold that nobody can miss, over the frame in the upper margin.
void put_warning(const Kit& kit, ink::Page& page, const std::string& words);

// A bar of 100 mm and 4 in, from `at` along +x, or up when `upright`; the mm figures above, the
// inch figures below (left and right when upright). It takes bar_depth across, half on either side.
ink::Group scale_bar(const Kit& kit, Vec2 at, bool upright);
inline constexpr double bar_length = 101.6, bar_depth = 10.0;

}  // namespace splay::drafting
