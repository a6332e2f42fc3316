// Bytes from a packet. A writer returns the whole file; files.h puts it on disk.
#pragma once

#include <string>
#include <vector>

#include "ink/fonts.h"
#include "ink/ink.h"

namespace splay::writers {

// PDF 1.6 through libharu: fonts embedded and subset, bookmarks, page labels, links, PrintScaling
// none, one-sided printing asked for, dates and /ID from the packet only. Throws
// std::invalid_argument for text that can't be drawn, a number that is not finite, two anchors of
// one name, a link to none, a date that is none or a packet without pages; std::runtime_error when
// libharu fails.
std::string pdf(const ink::Packet& packet, const ink::FontSet& fonts);

// One page at 1:1 in millimetres, through tinyxml2. A group is a <g> whose class is its role; links
// and anchors are left out, since what they lead to is in other files. Throws std::invalid_argument
// as pdf() does for text and numbers.
std::string svg(const ink::Page& page, const ink::FontSet& fonts);

// A page drawn small on another one; `corner` is its upper left, mm on that page.
struct Inset {
  const ink::Page* page = nullptr;
  Vec2 corner;
  double scale = 1;
};

// One page as a picture through Cairo, `dpi` dots to the inch (1 to 10,000), which the file states,
// and over it the insets. Throws std::invalid_argument as svg() does, std::runtime_error when the
// picture is too large.
std::string png(const ink::Page& page, const ink::FontSet& fonts, double dpi,
                const std::vector<Inset>& insets = {});

}  // namespace splay::writers
