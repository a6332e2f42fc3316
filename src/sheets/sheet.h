// One kind of page each in one file: a SheetKind in the registry makes its pages from the plan.
#pragma once

#include <memory>
#include <mutex>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "drafting/flow.h"
#include "drafting/kit.h"
#include "drafting/sheet_frame.h"
#include "fabrication/plan.h"
#include "geometry/hidden_lines.h"
#include "model/as_built.h"
#include "model/style.h"

namespace splay::sheets {

// A line of the index.
struct IndexEntry {
  std::string title;
  std::string first, last;  // page labels; the same for a single page
};

// Whom a packet of pages is for.
enum class ForWhom { shop, client };

// The whole piece as the eye sees it in the pictures of it: found when first drawn, and kept.
struct PieceSeen {
  std::once_flag found;
  std::vector<ViewLine> lines;
  std::vector<ToneFace> faces;
};

struct Context {
  const fabrication::Plan& plan;
  drafting::Kit kit;
  ink::Paper paper;
  std::vector<IndexEntry> index;             // only for a kind with needs_index
  std::string check_figure{};                // SHA-256 of what is signed, "" when it is not known
  const model::AsBuilt* as_built = nullptr;  // null: nothing is said of the finished work
  std::shared_ptr<PieceSeen> seen = std::make_shared<PieceSeen>();

  const model::Job& job() const { return plan.project->job; }
  ink::Rect area() const { return drafting::free_area(paper); }
  bool wide() const { return paper.width > paper.height; }
};

struct SheetKind {
  std::string_view word;   // "elevations"
  std::string_view title;  // in index and bookmarks
  std::vector<ink::Page> (*make)(const Context& context);
  ForWhom whom = ForWhom::shop;  // the packet it goes into
  std::string_view kept{};       // why no style may leave it out, after "it ..."; "" where one may
  std::string_view claim{};      // what it makes of every part ("view", "row"), for the page lint
  std::string_view anchors{};    // how the names of its anchors begin
  bool needs_index = false;      // made last, when every page's label is known
  bool takes_long = false;       // begun before the others
};

// In the order of the binder: register.cpp, one line each.
std::span<const SheetKind> registry();
// The same for what a style may leave out.
std::vector<model::PageKind> page_kinds();

// A page with frame and title block filled from the job; its bookmark has the sheet's title.
ink::Page start_page(const Context& context, const std::string& sheet_title,
                     const std::string& scale = {}, bool projection = false);

// A story on as many pages as it takes: one column upright, two lying.
std::vector<ink::Page> story_pages(const Context& context, const std::string& sheet_title,
                                   const drafting::Story& story);
double story_width(const Context& context);   // of a column in story_pages
double story_height(const Context& context);  // of one
// The same with larger lettering on a large sheet, for pages of text: it is read from further off.
Context for_reading(const Context& context);

// Words across the top of full-size drawings, with air below: at the look's lettering where one
// line takes them, else at 2.5 mm, so that the drawings keep their room.
drafting::Picture page_note(const Context& context, std::string_view words);

drafting::Look look_of(const model::Style& style);

// Solids of the assembly, placed, in the order of its parts.
std::vector<Solid> placed_solids(const parts::Assembly& assembly);

// "48 × 26 1/2 × 16 in": width, height and depth over everything.
std::string overall_text(const Context& context);

// Texts in a row: "A, B, C".
std::string joined(const std::vector<std::string>& texts, const std::string& between = ", ");
// In square feet or square metres, in feet or metres, as the job's unit has it.
std::string area_words(const Context& context, double mm2);
std::string length_words(const Context& context, double mm);
// Of stock as measured, never rounded to a fraction: "0.243 in", "18.2 mm".
std::string thickness_words(const Context& context, double mm);

// A heading and what stands under it, with air before the next.
void add_chapter(const Context& context, drafting::Story& story, const char* title,
                 drafting::Story more, double width);

// Anchor names that pages point to.
std::string part_anchor(const std::string& mark);  // "part B-L"

// Radians: a cut nearer than this to square is square; an angle smaller than this is not drawn.
inline constexpr double square_within = 1e-6, no_angle = 1e-4;

}  // namespace splay::sheets
