#include "writers/slim_font.h"

#include <ft2build.h>
#include FT_FREETYPE_H
#include FT_OUTLINE_H
#include FT_TRUETYPE_TABLES_H

#include <catch2/catch.hpp>
#include <cstdint>
#include <stdexcept>

#include "ink/fonts.h"
#include "writers/tools.h"

using splay::ink::FontSet;
using splay::writer_tests::slurp;
using splay::writers::slim_font;

namespace {

class Loaded {
 public:
  explicit Loaded(const std::string& bytes) : bytes_(bytes) {
    REQUIRE(FT_Init_FreeType(&library_) == 0);
    REQUIRE(FT_New_Memory_Face(library_, reinterpret_cast<const FT_Byte*>(bytes_.data()),
                               static_cast<FT_Long>(bytes_.size()), 0, &face_) == 0);
  }
  ~Loaded() {
    FT_Done_Face(face_);
    FT_Done_FreeType(library_);
  }
  Loaded(const Loaded&) = delete;
  Loaded& operator=(const Loaded&) = delete;

  bool has(const char (&tag)[5]) const {
    FT_ULong length = 0;
    return FT_Load_Sfnt_Table(face_, FT_MAKE_TAG(tag[0], tag[1], tag[2], tag[3]), 0, nullptr,
                              &length) == 0 &&
           length > 0;
  }
  struct Glyph {
    long advance = 0, area = 0;
    bool operator==(const Glyph&) const = default;
  };
  Glyph glyph(unsigned index) const {
    REQUIRE(FT_Load_Glyph(face_, index, FT_LOAD_NO_SCALE) == 0);
    FT_BBox box;
    FT_Outline_Get_CBox(&face_->glyph->outline, &box);
    return {face_->glyph->metrics.horiAdvance, (box.xMax - box.xMin) * (box.yMax - box.yMin)};
  }

 private:
  std::string bytes_;
  FT_Library library_ = nullptr;
  FT_Face face_ = nullptr;
};

std::uint32_t sum_of(const std::string& bytes) {
  std::uint32_t sum = 0;
  for (std::size_t i = 0; i < bytes.size(); ++i)
    sum += static_cast<std::uint32_t>(static_cast<unsigned char>(bytes[i])) << (24 - 8 * (i % 4));
  return sum;
}

}  // namespace

TEST_CASE("a slimmed font keeps what draws its letters and nothing else") {
  const FontSet fonts;
  for (int font = 0; font < 4; ++font) {
    const std::string whole = slurp(fonts.files()[static_cast<std::size_t>(font)].path);
    const std::vector<std::uint32_t> kept = fonts.closure(font, {40, 75, 200});
    const std::string slim = slim_font(whole, kept);
    CHECK(slim.size() < whole.size());
    CHECK(slim.size() % 4 == 0);
    CHECK(sum_of(slim) == 0xB1B0AFBA);  // OpenType: what a whole file adds up to
    const Loaded before(whole), after(slim);
    for (const std::uint32_t glyph : kept) CHECK(after.glyph(glyph) == before.glyph(glyph));
    CHECK(after.glyph(100).advance == 0);
    CHECK(before.glyph(100).advance > 0);
    CHECK(after.has("glyf"));
    CHECK(before.has("cmap"));
    CHECK(!after.has("cmap"));
    CHECK(!after.has("name"));
    CHECK(!after.has("post"));
  }
}

TEST_CASE("what is not a TrueType file is refused") {
  const std::string whole = slurp(FontSet().files()[0].path);
  for (const std::string& bad :
       {std::string(), std::string("not a font at all"), whole.substr(0, 100),
        whole.substr(0, whole.size() / 2), std::string(2000, '\xFF')})
    CHECK_THROWS_AS(slim_font(bad, {0}), std::runtime_error);
}
