// One font file through FreeType, measured in thousandths of the em without scaling or hinting.
#pragma once

#include <cstdint>
#include <memory>
#include <string>
#include <vector>

namespace splay::ink {

struct GlyphMeasure {
  std::uint32_t glyph = 0;
  int advance = 0;           // floor(font units * 1000 / em), as libharu computes
  double low = 0, high = 0;  // lowest and highest ink over the base line, thousandths of the em
};

class FontFace {
 public:
  explicit FontFace(const std::string& path);  // throws std::runtime_error

  std::uint32_t glyph_of(char32_t character) const;  // 0: not in the file
  GlyphMeasure measure(std::uint32_t glyph) const;   // throws std::runtime_error for a bad file
  double capital_height() const;                     // of H, thousandths of the em
  std::string version() const;                       // of the name table
  // Components a composite glyph is put together from; empty for a simple one.
  std::vector<std::uint32_t> components(std::uint32_t glyph) const;
  // The FT_Face, for a library that draws with it; lives as long as the pointer or this.
  std::shared_ptr<void> handle() const;

 private:
  struct Impl;
  std::shared_ptr<Impl> impl_;
};

}  // namespace splay::ink
