#include "writers/haru.h"

#include <zlib.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <memory>
#include <stdexcept>

#include "base/utf8.h"

namespace splay::writers {

namespace {

[[noreturn]] void fail(HPDF_STATUS code) {
  std::array<char, 16> digits{};
  const auto end = std::to_chars(digits.data(), digits.data() + digits.size(), code, 16).ptr;
  throw std::runtime_error("libharu reports error 0x" + std::string(digits.data(), end));
}

void on_error(HPDF_STATUS code, HPDF_STATUS, void*) { fail(code); }

void check(HPDF_STATUS status) {
  if (status != HPDF_OK) fail(status);
}

template <class T>
T* made(T* object) {
  if (object == nullptr) throw std::runtime_error("libharu can't make an object");
  return object;
}

const HPDF_BYTE* as_bytes(std::string_view text) {
  return reinterpret_cast<const HPDF_BYTE*>(text.data());
}

// libharu takes the entry "Filter" away from a stream that it has not to compress itself, but lets
// this be called at the end of the dictionary.
HPDF_STATUS write_filter(HPDF_Dict, HPDF_Stream stream) {
  return HPDF_Stream_WriteStr(stream, "/Filter /FlateDecode\n");
}

void fill(HPDF_Dict stream, const std::string& bytes) {
  stream->filter = HPDF_STREAM_FILTER_NONE;
  stream->write_fn = write_filter;
  check(HPDF_Stream_Write(stream->stream, as_bytes(bytes), static_cast<HPDF_UINT>(bytes.size())));
}

struct FreeStream {
  void operator()(HPDF_Stream stream) const { HPDF_Stream_Free(stream); }
};

std::string all_of(HPDF_Stream stream) {
  std::string bytes;
  bytes.reserve(HPDF_Stream_Size(stream));
  const HPDF_UINT count = HPDF_MemStream_GetBufCount(stream);
  for (HPDF_UINT i = 0; i < count; ++i) {
    HPDF_UINT length = 0;
    const HPDF_BYTE* part = HPDF_MemStream_GetBufPtr(stream, i, &length);
    bytes.append(reinterpret_cast<const char*>(part), length);
  }
  if (bytes.size() != HPDF_Stream_Size(stream))
    throw std::runtime_error("libharu lost a part of a file");
  return bytes;
}

std::string utf16(std::string_view utf8) {
  std::string out = "\xFE\xFF";
  const auto unit = [&](char32_t value) {
    out += static_cast<char>(static_cast<unsigned char>(value >> 8));
    out += static_cast<char>(static_cast<unsigned char>(value & 0xFF));
  };
  while (!utf8.empty()) {
    const Character c = first_character(utf8);
    if (c.bytes == 0) throw std::invalid_argument("a title or name is not valid UTF-8");
    if (c.code < 0x10000) {
      unit(c.code);
    } else {
      unit(0xD800 + ((c.code - 0x10000) >> 10));
      unit(0xDC00 + ((c.code - 0x10000) & 0x3FF));
    }
    utf8.remove_prefix(c.bytes);
  }
  return out;
}

}  // namespace

// Deflated here, not by libharu, which compresses at zlib's usual level 6: drawing code comes out 4
// % larger at level 4 and takes less than half the time.
std::string deflated(const std::string& data) {
  constexpr int level = 4;
  uLongf size = compressBound(data.size());
  std::string out(size, '\0');
  if (compress2(reinterpret_cast<Bytef*>(out.data()), &size,
                reinterpret_cast<const Bytef*>(data.data()), data.size(), level) != Z_OK)
    throw std::runtime_error("zlib can't compress a page");
  out.resize(size);
  return out;
}

Haru::Haru() : document_(made(HPDF_New(on_error, nullptr))) {
  document_->pdf_version = HPDF_VER_16;
}

Haru::~Haru() { HPDF_Free(document_); }

HPDF_Page Haru::page(double width_points, double height_points,
                     const std::string& deflated_content) const {
  const HPDF_Page page = made(HPDF_AddPage(document_));
  check(HPDF_Page_SetWidth(page, static_cast<HPDF_REAL>(width_points)));
  check(HPDF_Page_SetHeight(page, static_cast<HPDF_REAL>(height_points)));
  fill(static_cast<HPDF_PageAttr>(page->attr)->contents, deflated_content);
  return page;
}

std::string Haru::save() const {
  check(HPDF_SaveToStream(document_));
  return all_of(document_->stream);
}

std::string Haru::font_program(HPDF_FontDef font) const {
  constexpr HPDF_UINT program_buffer = 1 << 16;
  const std::unique_ptr<HPDF_Stream_Rec, FreeStream> stream(
      made(HPDF_MemStream_New(document_->mmgr, program_buffer)));
  check(HPDF_TTFontDef_SaveFontData(font, stream.get()));
  return all_of(stream.get());
}

HPDF_Dict Haru::dictionary() const { return made(HPDF_Dict_New(document_->mmgr)); }

HPDF_Dict Haru::object(HPDF_Dict dict) const {
  check(HPDF_Xref_Add(document_->xref, dict));
  return dict;
}

HPDF_Dict Haru::stream(const std::string& data) const {
  const HPDF_Dict dict = made(HPDF_DictStream_New(document_->mmgr, document_->xref));
  fill(dict, deflated(data));
  return dict;
}

HPDF_Array Haru::array() const { return made(HPDF_Array_New(document_->mmgr)); }

void Haru::add(HPDF_Dict dict, const char* key, void* value) const {
  check(HPDF_Dict_Add(dict, key, value));
}

void Haru::add_name(HPDF_Dict dict, const char* key, const std::string& name) const {
  check(HPDF_Dict_AddName(dict, key, name.c_str()));
}

void Haru::add_number(HPDF_Dict dict, const char* key, int value) const {
  check(HPDF_Dict_AddNumber(dict, key, value));
}

void Haru::add_true(HPDF_Dict dict, const char* key) const {
  check(HPDF_Dict_AddBoolean(dict, key, HPDF_TRUE));
}

void Haru::add(HPDF_Array array, void* value) const { check(HPDF_Array_Add(array, value)); }

void Haru::add_number(HPDF_Array array, int value) const {
  check(HPDF_Array_AddNumber(array, value));
}

void Haru::add_real(HPDF_Array array, double value) const {
  check(HPDF_Array_AddReal(array, static_cast<HPDF_REAL>(value)));
}

void Haru::add_name(HPDF_Array array, const std::string& name) const {
  check(HPDF_Array_AddName(array, name.c_str()));
}

HPDF_Binary Haru::bytes(std::string_view bytes) const {
  if (bytes.size() > HPDF_LIMIT_MAX_STRING_LEN)
    throw std::invalid_argument("a title or name is too long for a PDF");
  std::string copy(bytes);  // libharu takes its bytes as not constant
  return made(HPDF_Binary_New(document_->mmgr, reinterpret_cast<HPDF_BYTE*>(copy.data()),
                              static_cast<HPDF_UINT>(copy.size())));
}

HPDF_Binary Haru::text(std::string_view utf8) const {
  const bool ascii =
      std::all_of(utf8.begin(), utf8.end(), [](char c) { return c >= ' ' && c < 0x7F; });
  return ascii ? bytes(utf8) : bytes(utf16(utf8));
}

}  // namespace splay::writers
