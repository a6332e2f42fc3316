// libharu as a C++ document: errors thrown, objects by value. The page contents and the font
// dictionaries are ours; libharu does the document structure, the font subset and the file.
#pragma once

#include <hpdf.h>

#include <string>
#include <string_view>

namespace splay::writers {

// What a stream holds, as zlib deflates it.
std::string deflated(const std::string& data);

// Throws std::runtime_error from every member when libharu fails; the document is then of no use.
class Haru {
 public:
  Haru();
  ~Haru();
  Haru(const Haru&) = delete;
  Haru& operator=(const Haru&) = delete;

  HPDF_Doc document() const { return document_; }
  HPDF_Page page(double width_points, double height_points,
                 const std::string& deflated_content) const;
  std::string save() const;  // the whole file

  // A TrueType file with the glyphs marked in the font's glyph table and empty ones for the rest.
  std::string font_program(HPDF_FontDef font) const;

  HPDF_Dict dictionary() const;                     // to be put into another object
  HPDF_Dict object(HPDF_Dict dict) const;           // made an object of its own, referred to
  HPDF_Dict stream(const std::string& data) const;  // deflated here, an object of its own
  HPDF_Array array() const;

  void add(HPDF_Dict dict, const char* key, void* value) const;
  void add_name(HPDF_Dict dict, const char* key, const std::string& name) const;
  void add_number(HPDF_Dict dict, const char* key, int value) const;
  void add_true(HPDF_Dict dict, const char* key) const;
  void add(HPDF_Array array, void* value) const;
  void add_number(HPDF_Array array, int value) const;
  void add_real(HPDF_Array array, double value) const;
  void add_name(HPDF_Array array, const std::string& name) const;

  // Strings are written in hexadecimal: bytes as they are, or a text as ISO 32000-1 has it (ASCII,
  // else UTF-16 with a byte order mark). Throws std::invalid_argument for malformed UTF-8.
  HPDF_Binary bytes(std::string_view bytes) const;
  HPDF_Binary text(std::string_view utf8) const;

 private:
  HPDF_Doc document_ = nullptr;
};

}  // namespace splay::writers
