#include "model/style.h"

#include <algorithm>

namespace splay::model {

namespace {

constexpr Range pen{0.1, 2.0, false};        // mm
constexpr Range capitals{2.5, 20.0, false};  // mm
constexpr Range grey{0, 1, false};           // 0 black, 1 white

// A file below the style's own folder, by a path that every system reads alike.
bool lies_below(std::string_view path) {
  if (path.find('\\') != std::string_view::npos || path.find(':') != std::string_view::npos)
    return false;
  while (true) {
    const std::size_t end = path.find('/');
    const std::string_view step = path.substr(0, end);
    if (step.empty() || step == "." || step == "..") return false;
    if (end == std::string_view::npos) return true;
    path.remove_prefix(end + 1);
  }
}

void check_file(const SymbolFile& symbol, Complaints& complaints) {
  if (!symbol.file.given || (lies_below(*symbol.file) && symbol.file->ends_with(".svg"))) return;
  complaints.complain({symbol.file.span, "bad-symbol-path",
                       "\"" + *symbol.file + "\" is no SVG file below the style's folder",
                       "a path from the style's folder inwards, with / and ending in .svg",
                       "put the file beside the style, as in \"symbols/triangle.svg\""});
}

void check_pages(const Style& style, Complaints& complaints) {
  const auto& all = *style.leave_out;
  std::string allowed;
  for (const PageKind& kind : style.kinds)
    if (kind.kept.empty()) allowed.append(allowed.empty() ? "" : ", ").append(kind.word);
  for (std::size_t i = 0; i < all.size(); ++i) {
    const PageKind& kind = style.kinds[static_cast<std::size_t>(*all[i])];
    const std::string word = "\"" + std::string(kind.word) + "\"";
    if (!kind.kept.empty())
      complaints.complain({all[i].span, "page-kept",
                           word + " can't be left out: it " + std::string(kind.kept), allowed, ""});
    for (std::size_t k = 0; k < i; ++k)
      if (*all[k] == *all[i])
        complaints.complain({all[i].span, "repeated-name", word + " is left out twice",
                             "each kind of page once", ""});
  }
}

}  // namespace

void Symbols::fields(FieldVisitor& visit) {
  constexpr std::string_view ours = "our own sign";
  visit.text(
      may("face_side", "SVG file of the mark on the show face; its foot points to the edge", ours),
      face_side.file);
  visit.text(
      may("face_edge", "SVG file of the mark on the edge; its point touches the face side", ours),
      face_edge.file);
  visit.text(may("triangle", "SVG file of the triangle across parts that lie together", ours),
             triangle.file);
  visit.text(
      may("shop", "SVG file of the maker's own mark, for title blocks and the client's cover",
          "no mark"),
      shop.file);
}

void Symbols::check(Complaints& complaints) const {
  for (const SymbolFile* symbol : all()) check_file(*symbol, complaints);
}

bool Style::leaves_out(std::string_view word) const {
  return std::ranges::any_of(*leave_out, [&](const Given<int>& index) {
    return kinds[static_cast<std::size_t>(*index)].word == word;
  });
}

void Style::fields(FieldVisitor& visit) {
  visit.length(may("wide", "width of outlines that are seen"), wide, pen);
  visit.length(may("narrow", "width of hidden, dimension and hatching lines"), narrow, pen);
  visit.length(may("frame", "width of the border and the title block"), frame, pen);
  visit.length(may("lettering", "capital height of notes and tables"), lettering, capitals);
  visit.length(may("figures", "capital height of dimensions"), figures, capitals);
  visit.length(may("heading", "capital height of headings"), heading, capitals);
  visit.length(may("title", "capital height of the page title"), title, capitals);
  visit.text(may("typeface", "the family of all lettering, as `fc-list : family` names it",
                 "Liberation Sans Narrow"),
             typeface);
  visit.number(may("tone_light", "grey of a face turned to the light, 0 black to 1 white"),
               tone_light, grey);
  visit.number(may("tone_mid", "grey of a face seen in between"), tone_mid, grey);
  visit.number(may("tone_dark", "grey of a face turned away"), tone_dark, grey);
  choose(visit, may("paper", "the paper, where neither the job nor --paper says one"), paper,
         paper_words);
  std::vector<std::string_view> words;
  for (const PageKind& kind : kinds) words.push_back(kind.word);
  visit.words(may("leave_out", "kinds of page that a packet of this style has not"), leave_out,
              words);
  visit.table(may("symbols", "signs of your own", "the signs are ours"), symbols);
}

void Style::check(Complaints& complaints) const {
  constexpr double slack = 1e-9;
  check_pages(*this, complaints);
  if (wide->mm < 2 * narrow->mm - slack)
    complaints.complain({wide.given ? wide.span : narrow.span, "lines-too-alike",
                         "wide lines are less than twice as wide as narrow ones",
                         "wide at least twice narrow (ISO 128-2)", ""});
  if (!(*tone_light > *tone_mid && *tone_mid > *tone_dark)) {
    const auto& odd = tone_mid.given ? tone_mid : tone_light.given ? tone_light : tone_dark;
    complaints.complain({odd.span, "tones-out-of-order", "the three greys are not in order",
                         "tone_light over tone_mid over tone_dark", ""});
  }
}

}  // namespace splay::model
