#include "writers/pdf_navigation.h"

#include <map>
#include <stdexcept>
#include <string>

#include "ink/outline.h"
#include "writers/pdf_content.h"

namespace splay::writers {

namespace {

struct Place {
  HPDF_Page page = nullptr;
  Vec2 at;
};

using Places = std::map<std::string, Place>;  // sorted: a name tree must be

Places places_of(const ink::Packet& packet, const std::vector<HPDF_Page>& pages) {
  Places places;
  for (std::size_t i = 0; i < pages.size(); ++i)
    ink::walk(packet.pages[i].items, [&](const ink::Item& item) {
      const auto* anchor = std::get_if<ink::Anchor>(&item);
      if (anchor == nullptr) return;
      if (!places.emplace(anchor->name, Place{pages[i], anchor->at}).second)
        throw std::invalid_argument("two places are named \"" + anchor->name + "\"");
    });
  return places;
}

void add_destinations(const Haru& haru, const Places& places) {
  const HPDF_Dict tree = haru.dictionary();
  const HPDF_Dict names = haru.dictionary();
  const HPDF_Array list = haru.array();
  haru.add(haru.document()->catalog, "Names", names);
  haru.add(names, "Dests", tree);
  haru.add(tree, "Names", list);
  for (const auto& [name, place] : places) {
    haru.add(list, haru.bytes(name));
    const HPDF_Array target = haru.array();
    haru.add(list, target);
    haru.add(target, place.page);
    haru.add_name(target, "XYZ");
    haru.add_real(target, place.at.x * points_per_mm);
    haru.add_real(target, place.at.y * points_per_mm);
    haru.add_number(target, 0);  // keep the reader's magnification
  }
}

HPDF_Dict annotation(const Haru& haru, const ink::Link& link) {
  const HPDF_Dict note = haru.object(haru.dictionary());
  haru.add_name(note, "Type", "Annot");
  haru.add_name(note, "Subtype", "Link");
  const HPDF_Array area = haru.array();
  haru.add(note, "Rect", area);
  for (const double side : {link.area.low.x, link.area.low.y, link.area.high.x, link.area.high.y})
    haru.add_real(area, side * points_per_mm);
  const HPDF_Array border = haru.array();
  haru.add(note, "Border", border);
  for (int i = 0; i < 3; ++i) haru.add_number(border, 0);
  constexpr int print_flag = 4;
  haru.add_number(note, "F", print_flag);
  haru.add(note, "Dest", haru.bytes(link.target));
  return note;
}

}  // namespace

void add_bookmarks(const Haru& haru, const ink::Packet& packet,
                   const std::vector<HPDF_Page>& pages) {
  struct Open {
    int level = 0;
    HPDF_Outline outline = nullptr;
  };
  std::vector<Open> open;  // from the outermost to the last, levels rising
  for (std::size_t i = 0; i < pages.size(); ++i) {
    const ink::Page& page = packet.pages[i];
    while (!open.empty() && open.back().level >= page.level) open.pop_back();
    const HPDF_Outline parent = open.empty() ? nullptr : open.back().outline;
    const HPDF_Outline outline = HPDF_CreateOutline(haru.document(), parent, "-", nullptr);
    haru.add(outline, "Title", haru.text(page.title.empty() ? page.label : page.title));
    const HPDF_Array target = haru.array();
    haru.add(outline, "Dest", target);
    haru.add(target, pages[i]);
    haru.add_name(target, "Fit");
    open.push_back({page.level, outline});
  }
  if (!pages.empty()) HPDF_SetPageMode(haru.document(), HPDF_PAGE_MODE_USE_OUTLINE);
}

// Each page's label is its own prefix without a number: any label at all can be had so.
void add_page_labels(const Haru& haru, const ink::Packet& packet) {
  const HPDF_Dict tree = haru.dictionary();
  const HPDF_Array list = haru.array();
  haru.add(haru.document()->catalog, "PageLabels", tree);
  haru.add(tree, "Nums", list);
  for (std::size_t i = 0; i < packet.pages.size(); ++i) {
    haru.add_number(list, static_cast<int>(i));
    const HPDF_Dict label = haru.dictionary();
    haru.add(list, label);
    haru.add(label, "P", haru.text(packet.pages[i].label));
  }
}

void add_links(const Haru& haru, const ink::Packet& packet, const std::vector<HPDF_Page>& pages) {
  const Places places = places_of(packet, pages);
  if (!places.empty()) add_destinations(haru, places);
  for (std::size_t i = 0; i < pages.size(); ++i) {
    HPDF_Array notes = nullptr;
    ink::walk(packet.pages[i].items, [&](const ink::Item& item) {
      const auto* link = std::get_if<ink::Link>(&item);
      if (link == nullptr) return;
      if (!places.contains(link->target))
        throw std::invalid_argument("page " + packet.pages[i].label + " links to \"" +
                                    link->target + "\", which is nowhere");
      if (notes == nullptr) {
        notes = haru.array();
        haru.add(pages[i], "Annots", notes);
      }
      haru.add(notes, annotation(haru, *link));
    });
  }
}

}  // namespace splay::writers
