// Fonts: one entry for all text. Files are found with fontconfig, measured with FreeType.
//
// A character that the typeface lacks is taken from a condensed one with every symbol; one that
// neither has is refused by name. Measures are in units of the capital height, so
// that a text's width on paper is width(...) for its own height in millimetres.
#pragma once

#include <cstdint>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "ink/ink.h"

namespace splay::ink {

// A run of one text set from one font file. The glyph advances equal what libharu computes
// (floor(advance * 1000 / em)), so that every writer places letters alike.
struct Run {
  int font = 0;  // index into FontSet::files()
  std::string utf8;
  std::u32string characters;          // as many as glyphs: one character, one glyph
  std::vector<std::uint32_t> glyphs;  // glyph numbers of the file
  std::vector<double> advances;       // mm, for the text's height
  double size = 0;                    // font size (em) in mm
};

// A run at its place: the left end of its base line on paper, mm.
struct PlacedRun {
  Run run;
  Vec2 at;
};

inline constexpr const char* usual_typeface = "Liberation Sans Narrow";

// For several threads at once.
class FontSet {
 public:
  // The upright, bold and italic cuts of a typeface, named as fontconfig names families. Throws
  // std::runtime_error that names the family looked for when a cut can't be found.
  explicit FontSet(const std::string& typeface = usual_typeface);
  ~FontSet();
  FontSet(const FontSet&) = delete;
  FontSet& operator=(const FontSet&) = delete;

  struct File {
    std::string path;
    std::string family;
    std::string version;
  };
  const std::vector<File>& files() const;

  // Throws std::invalid_argument for bad UTF-8, control characters, a character no font has, or a
  // script written from right to left (which needs shaping that is not done here).
  std::vector<Run> runs(std::string_view utf8, double height, Face face) const;
  double width(std::string_view utf8, double height, Face face = Face::regular) const;
  bool can_draw(std::string_view utf8) const;
  // The box of a text on paper, turned as the text is: its four corners, from the depth of its
  // descenders to the top of its capitals (or ascenders).
  std::vector<Vec2> box(const Text& text) const;
  // The runs of a text where they stand on paper, aligned and turned.
  std::vector<PlacedRun> place(const Text& text) const;

  // The glyphs a subset of a file must hold so that all of `glyphs` draw whole: the same and every
  // component of composite ones, however deep, and glyph 0. Ascending, without repeats.
  std::vector<std::uint32_t> closure(int font, const std::vector<std::uint32_t>& glyphs) const;
  // The advance of a glyph in thousandths of the em, as libharu computes it.
  int advance(int font, std::uint32_t glyph) const;
  // The FreeType face (FT_Face) of a file, for a library that draws with it. Stays open as long as
  // the pointer is held, even after the FontSet is gone.
  std::shared_ptr<void> freetype_face(int font) const;

 private:
  struct Impl;
  std::unique_ptr<Impl> impl_;
};

}  // namespace splay::ink
