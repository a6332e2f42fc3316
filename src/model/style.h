// How pages look: pens, lettering, tones, which pages there are, signs. Read from styles/*.toml by
// the same reader as a project.
#pragma once

#include <array>
#include <memory>
#include <span>

#include "model/field.h"
#include "model/paper.h"
#include "model/symbol.h"

namespace splay::model {

// A kind of page as a style may name it. The sheets say which there are.
struct PageKind {
  std::string_view word;  // "cut-list"
  std::string_view kept;  // why it can't be left out, after "it ..."; "" when it can
};

// A sign of the maker's own in place of one of ours.
struct SymbolFile {
  Given<std::string> file;                 // below the style's folder: "symbols/triangle.svg"
  std::shared_ptr<const Symbol> symbol{};  // what the file draws, once it was read
};

struct Symbols : Fields {
  SymbolFile face_side, face_edge, triangle;  // marks of the bench
  SymbolFile shop;  // the maker's own mark, in the title block and on the client's cover
  void fields(FieldVisitor& visit) override;
  void check(Complaints& complaints) const override;
  std::array<SymbolFile*, 4> all() { return {&face_side, &face_edge, &triangle, &shop}; }
  std::array<const SymbolFile*, 4> all() const {
    return {&face_side, &face_edge, &triangle, &shop};
  }
};

struct Style : Fields {
  Style() = default;
  explicit Style(std::span<const PageKind> page_kinds)
      : kinds(page_kinds.begin(), page_kinds.end()) {}

  std::string name = "bench";
  // Line widths, mm: a series of ISO 128-2 (wide to narrow at least 2:1).
  Given<Length> wide{Length{0.5}}, narrow{Length{0.25}}, frame{Length{0.7}};
  // Capital heights, mm (ISO 3098 series; 2.5 is the least ever printed).
  Given<Length> lettering{Length{2.5}}, figures{Length{3.5}}, heading{Length{5}}, title{Length{7}};
  Given<std::string> typeface;  // a family as fontconfig names it; "" for the usual one
  Given<double> tone_light{0.93}, tone_mid{0.82}, tone_dark{0.68};  // greys of a toned view
  Given<PaperSize> paper{PaperSize::a4};     // where neither the job nor the call says one
  Given<std::vector<Given<int>>> leave_out;  // indices into `kinds`
  Symbols symbols;
  std::vector<PageKind> kinds;  // that leave_out may name

  bool leaves_out(std::string_view word) const;  // of a kind of page
  void fields(FieldVisitor& visit) override;
  void check(Complaints& complaints) const override;
};

}  // namespace splay::model
