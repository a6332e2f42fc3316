#include "ink/font_face.h"

#include <ft2build.h>
#include FT_FREETYPE_H
#include FT_SFNT_NAMES_H
#include FT_TRUETYPE_IDS_H

#include <stdexcept>

namespace splay::ink {

struct FontFace::Impl {
  FT_Library library = nullptr;
  FT_Face face = nullptr;
  std::string path;

  Impl() = default;
  Impl(const Impl&) = delete;
  Impl& operator=(const Impl&) = delete;
  ~Impl() {
    if (face != nullptr) FT_Done_Face(face);
    if (library != nullptr) FT_Done_FreeType(library);
  }

  void load(std::uint32_t glyph, FT_Int32 flags) const {
    if (FT_Load_Glyph(face, glyph, flags) != 0)
      throw std::runtime_error("a glyph of " + path + " can't be read");
  }
  double thousandths(FT_Pos units) const {
    return static_cast<double>(units) * 1000 / face->units_per_EM;
  }
};

FontFace::FontFace(const std::string& path) : impl_(std::make_shared<Impl>()) {
  impl_->path = path;
  if (FT_Init_FreeType(&impl_->library) != 0) throw std::runtime_error("FreeType does not start");
  if (FT_New_Face(impl_->library, path.c_str(), 0, &impl_->face) != 0 ||
      FT_Select_Charmap(impl_->face, FT_ENCODING_UNICODE) != 0 || impl_->face->units_per_EM == 0)
    throw std::runtime_error("the font file " + path + " can't be read");
}

std::shared_ptr<void> FontFace::handle() const { return {impl_, impl_->face}; }

std::uint32_t FontFace::glyph_of(char32_t character) const {
  return FT_Get_Char_Index(impl_->face, character);
}

GlyphMeasure FontFace::measure(std::uint32_t glyph) const {
  impl_->load(glyph, FT_LOAD_NO_SCALE | FT_LOAD_IGNORE_TRANSFORM);
  const FT_Glyph_Metrics& metrics = impl_->face->glyph->metrics;
  const auto em = static_cast<FT_Pos>(impl_->face->units_per_EM);
  return {glyph, static_cast<int>(metrics.horiAdvance * 1000 / em),
          impl_->thousandths(metrics.horiBearingY - metrics.height),
          impl_->thousandths(metrics.horiBearingY)};
}

double FontFace::capital_height() const { return measure(glyph_of(U'H')).high; }

std::string FontFace::version() const {
  const FT_UInt count = FT_Get_Sfnt_Name_Count(impl_->face);
  for (FT_UInt i = 0; i < count; ++i) {
    FT_SfntName name;
    if (FT_Get_Sfnt_Name(impl_->face, i, &name) != 0 || name.name_id != TT_NAME_ID_VERSION_STRING)
      continue;
    std::string text;  // UTF-16 or one byte a letter: the ASCII letters are the same either way
    for (FT_UInt k = 0; k < name.string_len; ++k)
      if (name.string[k] >= 0x20 && name.string[k] < 0x7F)
        text += static_cast<char>(name.string[k]);
    return text;
  }
  return "";
}

std::vector<std::uint32_t> FontFace::components(std::uint32_t glyph) const {
  impl_->load(glyph, FT_LOAD_NO_SCALE | FT_LOAD_NO_RECURSE);
  const FT_GlyphSlot slot = impl_->face->glyph;
  std::vector<std::uint32_t> parts;
  if (slot->format != FT_GLYPH_FORMAT_COMPOSITE) return parts;
  for (FT_UInt i = 0; i < slot->num_subglyphs; ++i) {
    FT_Int index = 0, arg1 = 0, arg2 = 0;
    FT_UInt flags = 0;
    FT_Matrix transform;
    if (FT_Get_SubGlyph_Info(slot, i, &index, &flags, &arg1, &arg2, &transform) != 0)
      throw std::runtime_error("a composite glyph of " + impl_->path + " can't be read");
    parts.push_back(static_cast<std::uint32_t>(index));
  }
  return parts;
}

}  // namespace splay::ink
