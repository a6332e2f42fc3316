#include <zlib.h>

#include <algorithm>
#include <array>
#include <span>
#include <stdexcept>
#include <string>
#include <vector>

#include "base/parallel.h"
#include "writers/haru.h"
#include "writers/pdf_content.h"
#include "writers/pdf_fonts.h"
#include "writers/pdf_navigation.h"
#include "writers/writers.h"

namespace splay::writers {

namespace {

std::string padded(int value, std::size_t digits) {
  const std::string text = std::to_string(value);
  return std::string(digits - std::min(digits, text.size()), '0') + text;
}

std::string pdf_date(const ink::Packet& packet) {
  const bool sound = packet.year >= 1 && packet.year <= 9999 && packet.month >= 1 &&
                     packet.month <= 12 && packet.day >= 1 && packet.day <= 31;
  if (!sound) throw std::invalid_argument("the packet's date is not a date");
  return "D:" + padded(packet.year, 4) + padded(packet.month, 2) + padded(packet.day, 2) +
         "000000Z";
}

void add_information(const Haru& haru, const ink::Packet& packet) {
  const HPDF_Dict info = haru.document()->info;
  haru.add(info, "Title", haru.text(packet.title));
  haru.add(info, "Subject", haru.text(packet.subject));
  haru.add(info, "Author", haru.text(packet.author));
  haru.add(info, "Creator", haru.text("splaybook"));
  haru.add(info, "CreationDate", haru.text(pdf_date(packet)));
  haru.add(info, "ModDate", haru.text(pdf_date(packet)));
}

uLong check_sum(const std::string& content) {
  return crc32_z(0, reinterpret_cast<const Bytef*>(content.data()), content.size());
}

// MD5 only names the file here, as ISO 32000-1 (file identifiers) proposes; it guards nothing.
std::string file_identity(const ink::Packet& packet, const std::vector<uLong>& sums) {
  std::string essence = packet.identity + '\n' + pdf_date(packet) + '\n';
  for (const uLong sum : sums) essence += std::to_string(sum) + '\n';
  HPDF_MD5_CTX context;
  HPDF_MD5Init(&context);
  HPDF_MD5Update(&context, reinterpret_cast<const HPDF_BYTE*>(essence.data()),
                 static_cast<HPDF_UINT32>(essence.size()));
  std::array<HPDF_BYTE, 16> digest{};
  HPDF_MD5Final(digest.data(), &context);
  return {reinterpret_cast<const char*>(digest.data()), digest.size()};
}

void add_identity(const Haru& haru, const std::string& identity) {
  const HPDF_Array pair = haru.array();
  haru.add(haru.document()->trailer, "ID", pair);
  for (int i = 0; i < 2; ++i) haru.add(pair, haru.bytes(identity));
}

// The print dialog is asked for actual size, paper by page size, and the sides the pages are laid
// out for.
void add_print_wishes(const Haru& haru, bool two_sided) {
  const HPDF_Dict wishes = haru.dictionary();
  haru.add(haru.document()->catalog, "ViewerPreferences", wishes);
  haru.add_name(wishes, "PrintScaling", "None");
  haru.add_name(wishes, "Duplex", two_sided ? "DuplexFlipLongEdge" : "Simplex");
  haru.add_true(wishes, "PickTrayByPDFSize");
  haru.add_true(wishes, "DisplayDocTitle");
}

// Pages deflated together: two threads have enough to do, and no packet is held twice.
constexpr std::size_t at_once = 32;

// What each page holds, deflated. Codes of characters are given as the pages first need them, so
// the pages are written in their order.
std::vector<std::string> contents(std::span<const ink::Page> pages, const ink::FontSet& fonts,
                                  std::vector<FontCodes>& codes, std::vector<uLong>& sums) {
  std::vector<std::string> made;
  for (const ink::Page& page : pages) {
    made.push_back(pdf_content(page, fonts, codes));
    sums.push_back(check_sum(made.back()));
  }
  in_parallel(made.size(), [&](std::size_t i) { made[i] = deflated(made[i]); });
  return made;
}

}  // namespace

std::string pdf(const ink::Packet& packet, const ink::FontSet& fonts) {
  if (packet.pages.empty()) throw std::invalid_argument("a packet without pages is no PDF");
  const Haru haru;
  std::vector<HPDF_Page> pages;
  std::vector<uLong> sums;
  std::vector<FontCodes> codes(fonts.files().size());
  for (std::size_t at = 0; at < packet.pages.size(); at += at_once) {
    const std::span<const ink::Page> some =
        std::span(packet.pages).subspan(at, std::min(at_once, packet.pages.size() - at));
    for (const std::string& content : contents(some, fonts, codes, sums)) {
      const ink::Paper& paper = some[pages.size() - at].paper;
      pages.push_back(
          haru.page(paper.width * points_per_mm, paper.height * points_per_mm, content));
    }
  }
  const HPDF_Dict font_resources = embed_fonts(haru, fonts, codes);
  for (const HPDF_Page page : pages) {
    auto* resources =
        static_cast<HPDF_Dict>(HPDF_Page_GetInheritableItem(page, "Resources", HPDF_OCLASS_DICT));
    haru.add(resources, "Font", font_resources);
  }
  add_bookmarks(haru, packet, pages);
  add_page_labels(haru, packet);
  add_links(haru, packet, pages);
  add_information(haru, packet);
  add_identity(haru, file_identity(packet, sums));
  add_print_wishes(haru, packet.two_sided);
  return haru.save();
}

}  // namespace splay::writers
