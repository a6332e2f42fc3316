#include "writers/slim_font.h"

#include <algorithm>
#include <array>
#include <bit>
#include <stdexcept>
#include <string_view>

namespace splay::writers {

namespace {

constexpr std::size_t header_size = 12, record_size = 16;
// In the order of their names, as the directory must be.
constexpr std::array<std::string_view, 9> drawing_tables = {"cvt ", "fpgm", "glyf", "head", "hhea",
                                                            "hmtx", "loca", "maxp", "prep"};

[[noreturn]] void refuse() { throw std::runtime_error("a font subset is not a TrueType file"); }

std::uint32_t big_endian(std::string_view bytes, std::size_t at, std::size_t size) {
  if (at + size > bytes.size()) refuse();
  std::uint32_t value = 0;
  for (std::size_t i = 0; i < size; ++i)
    value = value << 8 | static_cast<unsigned char>(bytes[at + i]);
  return value;
}

void put(std::string& out, std::uint32_t value, std::size_t size) {
  for (std::size_t i = size; i-- > 0;) out += static_cast<char>(value >> (8 * i) & 0xFF);
}

std::uint32_t checksum(std::string_view bytes) {  // of a length that is a multiple of four
  std::uint32_t sum = 0;
  for (std::size_t at = 0; at < bytes.size(); at += 4) sum += big_endian(bytes, at, 4);
  return sum;
}

std::string_view find_table(std::string_view font, std::string_view tag) {
  const std::size_t count = big_endian(font, 4, 2);
  for (std::size_t i = 0; i < count; ++i) {
    const std::size_t record = header_size + i * record_size;
    if (font.substr(std::min(record, font.size()), 4) != tag) continue;
    const std::size_t offset = big_endian(font, record + 8, 4),
                      length = big_endian(font, record + 12, 4);
    if (offset > font.size() || length > font.size() - offset) refuse();
    return font.substr(offset, length);
  }
  return {};
}

void clear_metrics(std::string& metrics, std::size_t long_metrics,
                   const std::vector<std::uint32_t>& kept) {
  for (std::size_t glyph = 0; glyph < long_metrics; ++glyph)
    if (!std::binary_search(kept.begin(), kept.end(), glyph))
      std::fill_n(metrics.begin() + static_cast<std::ptrdiff_t>(4 * glyph), 4, '\0');
}

struct Table {
  std::string_view tag;
  std::string bytes;  // padded to a multiple of four
  std::size_t length = 0;
};

std::vector<Table> drawing_tables_of(std::string_view font,
                                     const std::vector<std::uint32_t>& kept) {
  std::vector<Table> tables;
  for (const std::string_view tag : drawing_tables) {
    const std::string_view found = find_table(font, tag);
    if (found.empty()) continue;
    Table table{tag, std::string(found), found.size()};
    if (tag == "hmtx") {
      const std::size_t long_metrics = big_endian(find_table(font, "hhea"), 34, 2);
      if (long_metrics == 0 || 4 * long_metrics > table.length) refuse();
      // The last long metric serves every glyph after it.
      clear_metrics(table.bytes, long_metrics - 1, kept);
    }
    if (tag == "head") {
      big_endian(found, 8, 4);  // refuses a short table
      std::fill_n(table.bytes.begin() + 8, 4, '\0');
    }
    table.bytes.resize((table.length + 3) / 4 * 4, '\0');
    tables.push_back(std::move(table));
  }
  return tables;
}

}  // namespace

std::string slim_font(const std::string& font, const std::vector<std::uint32_t>& kept) {
  const std::vector<Table> tables = drawing_tables_of(font, kept);
  if (find_table(font, "glyf").empty() || find_table(font, "head").empty()) refuse();
  const auto count = static_cast<std::uint32_t>(tables.size());
  const std::uint32_t range = std::bit_floor(count) * 16;
  std::string out = font.substr(0, 4);
  put(out, count, 2);
  put(out, range, 2);
  put(out, static_cast<std::uint32_t>(std::bit_width(count)) - 1, 2);
  put(out, count * 16 - range, 2);
  std::size_t offset = header_size + tables.size() * record_size;
  std::size_t adjustment = 0;
  for (const Table& table : tables) {
    out += table.tag;
    put(out, checksum(table.bytes), 4);
    put(out, static_cast<std::uint32_t>(offset), 4);
    put(out, static_cast<std::uint32_t>(table.length), 4);
    if (table.tag == "head") adjustment = offset + 8;
    offset += table.bytes.size();
  }
  for (const Table& table : tables) out += table.bytes;
  std::string whole;
  put(whole, 0xB1B0AFBA - checksum(out), 4);  // OpenType, table "head"
  out.replace(adjustment, 4, whole);
  return out;
}

}  // namespace splay::writers
