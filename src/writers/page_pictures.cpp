// The pages as pictures, and a contact sheet: all of them small on one picture, in their order.
#include <algorithm>
#include <cmath>

#include "writers/formats.h"
#include "writers/writers.h"

namespace splay::writers {

namespace {

constexpr double page_dpi = 150, contact_dpi = 150;
constexpr double cell_width = 70, gap = 8, caption_room = 8, capitals = 2.5;  // mm

// As many columns as make the sheet about as wide as it is high.
std::size_t columns_for(const std::vector<ink::Page>& pages) {
  constexpr double most = 12;
  double shape = 0;  // height of all pages over their width
  for (const ink::Page& page : pages) shape += page.paper.height / page.paper.width;
  return static_cast<std::size_t>(std::clamp(std::ceil(std::sqrt(shape)), 1.0, most));
}

// The caption of a page, shortened to the width of its cell.
std::string caption(const ink::Page& page, const ink::FontSet& fonts) {
  std::string text = page.label + "  " + page.title;
  const auto fits = [&](const std::string& t) { return fonts.width(t, capitals) <= cell_width; };
  if (fits(text)) return text;
  const auto continues = [](char c) { return (static_cast<unsigned char>(c) & 0xC0) == 0x80; };
  while (text.size() > page.label.size() && !fits(text + "…")) {
    while (continues(text.back())) text.pop_back();
    text.pop_back();
  }
  return text + "…";
}

struct Contact {
  ink::Page sheet;
  std::vector<Inset> insets;
};

Contact contact_of(const ink::Packet& packet, const ink::FontSet& fonts) {
  const std::size_t columns = std::min(columns_for(packet.pages), packet.pages.size());
  Contact contact;
  contact.sheet.title = packet.title;
  contact.sheet.label = "contact sheet";
  ink::Paper& paper = contact.sheet.paper;
  paper.width = gap + static_cast<double>(columns) * (cell_width + gap);
  std::vector<double> tops;  // of each row, from the upper edge
  double depth = gap;
  for (std::size_t first = 0; first < packet.pages.size(); first += columns) {
    tops.push_back(depth);
    double highest = 0;
    for (std::size_t i = first; i < std::min(first + columns, packet.pages.size()); ++i)
      highest = std::max(highest,
                         packet.pages[i].paper.height * cell_width / packet.pages[i].paper.width);
    depth += highest + caption_room + gap;
  }
  paper.height = depth;
  for (std::size_t i = 0; i < packet.pages.size(); ++i) {
    const ink::Page& page = packet.pages[i];
    const double scale = cell_width / page.paper.width;
    const Vec2 corner{gap + static_cast<double>(i % columns) * (cell_width + gap),
                      paper.height - tops[i / columns]};
    const double foot = corner.y - page.paper.height * scale;
    constexpr double outside = 0.3;
    contact.sheet.items.emplace_back(
        ink::Stroke{ink::Path{}.rect({{corner.x - outside, foot - outside},
                                      {corner.x + cell_width + outside, corner.y + outside}}),
                    {0.25}});
    contact.sheet.items.emplace_back(ink::Text{
        .at = {corner.x, foot - 2 * capitals}, .utf8 = caption(page, fonts), .height = capitals});
    contact.insets.push_back({&page, corner, scale});
  }
  return contact;
}

}  // namespace

Files write_page_pictures(const Subject& subject) {
  const std::string name = subject.name + "-" + subject.pages;
  const std::size_t digits = std::to_string(subject.packet.pages.size()).size();
  Files files;
  for (const ink::Page& page : subject.packet.pages) {
    std::string label = plain_file_name(page.label);
    if (label.size() < digits) label.insert(0, digits - label.size(), '0');
    files[name + "-page-" + label + ".png"] = png(page, subject.fonts, page_dpi);
  }
  const Contact contact = contact_of(subject.packet, subject.fonts);
  files[name + "-pages.png"] = png(contact.sheet, subject.fonts, contact_dpi, contact.insets);
  return files;
}

}  // namespace splay::writers
