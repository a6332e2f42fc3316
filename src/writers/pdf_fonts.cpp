#include "writers/pdf_fonts.h"

#include <algorithm>
#include <stdexcept>
#include <string>

#include "writers/slim_font.h"

namespace splay::writers {

namespace {

void put_hex(std::string& out, char32_t value, int digits) {
  constexpr const char* hex = "0123456789ABCDEF";
  for (int shift = 4 * (digits - 1); shift >= 0; shift -= 4) out += hex[(value >> shift) & 0xF];
}

void put_utf16_hex(std::string& out, char32_t c) {
  if (c < 0x10000) return put_hex(out, c, 4);
  put_hex(out, 0xD800 + ((c - 0x10000) >> 10), 4);
  put_hex(out, 0xDC00 + ((c - 0x10000) & 0x3FF), 4);
}

// The map from codes back to characters. libharu's own is not valid (it writes begincidrange where
// bfrange belongs), so that words could not be searched or copied.
std::string to_unicode(const FontCodes& codes) {
  constexpr std::size_t most_lines = 100;  // in one block (Adobe technical note 5014)
  std::string map =
      "/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n"
      "/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def\n"
      "/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n"
      "1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n";
  const std::vector<LetterCode>& letters = codes.letters();
  for (std::size_t from = 0; from < letters.size(); from += most_lines) {
    const std::size_t to = std::min(letters.size(), from + most_lines);
    map += std::to_string(to - from) + " beginbfrange\n";
    for (std::size_t i = from; i < to; ++i) {
      for (int end = 0; end < 2; ++end) map += '<', put_hex(map, letters[i].code, 4), map += "> ";
      map += '<';
      put_utf16_hex(map, letters[i].character);
      map += ">\n";
    }
    map += "endbfrange\n";
  }
  return map + "endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n";
}

std::string glyph_map(const FontCodes& codes) {
  std::string map(2 * (codes.letters().back().code + std::size_t{1}), '\0');
  for (const LetterCode& letter : codes.letters()) {
    map[2 * std::size_t{letter.code}] = static_cast<char>(letter.glyph >> 8);
    map[2 * std::size_t{letter.code} + 1] = static_cast<char>(letter.glyph & 0xFF);
  }
  return map;
}

// One font while it is embedded.
class Embedding {
 public:
  Embedding(const Haru& haru, const ink::FontSet& fonts, int index, const FontCodes& codes)
      : haru_(haru), fonts_(fonts), index_(index), codes_(codes) {
    const std::string& path = fonts.files()[static_cast<std::size_t>(index)].path;
    const char* name = HPDF_LoadTTFontFromFile(haru.document(), path.c_str(), HPDF_TRUE);
    definition_ = HPDF_GetFontDef(haru.document(), name);
    if (definition_ == nullptr) throw std::runtime_error("libharu can't load " + path);
    // Six letters before the name say that it is a subset (ISO 32000-1); libharu puts the style
    // behind it a second time.
    const std::string base = definition_->base_font;
    name_ = "SPLAY";
    name_ += static_cast<char>('A' + index);
    name_ += '+' + base.substr(0, base.find(','));
  }

  HPDF_Dict font() const {
    const HPDF_Dict font = haru_.object(haru_.dictionary());
    haru_.add_name(font, "Type", "Font");
    haru_.add_name(font, "Subtype", "Type0");
    haru_.add_name(font, "BaseFont", name_);
    haru_.add_name(font, "Encoding", "Identity-H");
    const HPDF_Array descendants = haru_.array();
    haru_.add(font, "DescendantFonts", descendants);
    haru_.add(descendants, descendant());
    haru_.add(font, "ToUnicode", haru_.stream(to_unicode(codes_)));
    return font;
  }

 private:
  HPDF_Dict descendant() const {
    const HPDF_Dict font = haru_.object(haru_.dictionary());
    haru_.add_name(font, "Type", "Font");
    haru_.add_name(font, "Subtype", "CIDFontType2");
    haru_.add_name(font, "BaseFont", name_);
    const HPDF_Dict system = haru_.dictionary();
    haru_.add(font, "CIDSystemInfo", system);
    haru_.add(system, "Registry", haru_.text("Adobe"));
    haru_.add(system, "Ordering", haru_.text("Identity"));
    haru_.add_number(system, "Supplement", 0);
    haru_.add(font, "FontDescriptor", descriptor());
    haru_.add_number(font, "DW", 0);
    add_widths(font);
    haru_.add(font, "CIDToGIDMap", haru_.stream(glyph_map(codes_)));
    return font;
  }

  void add_widths(HPDF_Dict font) const {
    const HPDF_Array table = haru_.array();
    haru_.add(font, "W", table);
    HPDF_Array row = nullptr;
    unsigned next = 0;
    for (const LetterCode& letter : codes_.letters()) {
      if (letter.code != next) {
        haru_.add_number(table, letter.code);
        row = haru_.array();
        haru_.add(table, row);
      }
      haru_.add_number(row, fonts_.advance(index_, letter.glyph));
      next = letter.code + 1u;
    }
  }

  HPDF_Dict descriptor() const {
    const HPDF_Dict dict = haru_.object(haru_.dictionary());
    haru_.add_name(dict, "Type", "FontDescriptor");
    haru_.add_name(dict, "FontName", name_);
    haru_.add_number(dict, "Flags", HPDF_FONT_SYMBOLIC);  // our own codes
    const HPDF_Array box = haru_.array();
    haru_.add(dict, "FontBBox", box);
    const HPDF_Box& extent = definition_->font_bbox;
    for (const HPDF_REAL side : {extent.left, extent.bottom, extent.right, extent.top})
      haru_.add_number(box, static_cast<int>(side));
    haru_.add_number(dict, "Ascent", definition_->ascent);
    haru_.add_number(dict, "Descent", definition_->descent);
    haru_.add_number(dict, "CapHeight", definition_->cap_height);
    haru_.add_number(dict, "ItalicAngle", definition_->italic_angle);
    haru_.add_number(dict, "StemV", definition_->stemv);
    haru_.add(dict, "FontFile2", subset());
    return dict;
  }

  // Libharu marks the parts of a composite glyph only one level deep, so the closure is marked
  // here.
  HPDF_Dict subset() const {
    auto* attributes = static_cast<HPDF_TTFontDefAttr>(definition_->attr);
    std::vector<std::uint32_t> glyphs;
    for (const LetterCode& letter : codes_.letters()) glyphs.push_back(letter.glyph);
    const std::vector<std::uint32_t> whole = fonts_.closure(index_, glyphs);
    for (const std::uint32_t glyph : whole) {
      if (glyph >= attributes->num_glyphs) throw std::runtime_error("a glyph outside its font");
      attributes->glyph_tbl.flgs[glyph] = 1;
    }
    const std::string program = slim_font(haru_.font_program(definition_), whole);
    const HPDF_Dict file = haru_.stream(program);
    haru_.add_number(file, "Length1", static_cast<int>(program.size()));
    return file;
  }

  const Haru& haru_;
  const ink::FontSet& fonts_;
  int index_;
  const FontCodes& codes_;
  HPDF_FontDef definition_ = nullptr;
  std::string name_;
};

}  // namespace

HPDF_Dict embed_fonts(const Haru& haru, const ink::FontSet& fonts,
                      const std::vector<FontCodes>& codes) {
  const HPDF_Dict resources = haru.object(haru.dictionary());
  for (std::size_t i = 0; i < codes.size(); ++i) {
    if (codes[i].letters().empty()) continue;
    const Embedding embedding(haru, fonts, static_cast<int>(i), codes[i]);
    std::string name = "F";
    name += std::to_string(i);
    haru.add(resources, name.c_str(), embedding.font());
  }
  return resources;
}

}  // namespace splay::writers
