// Bytes from a packet. A writer returns the whole file; files.h puts it on disk.
#pragma once

#include <string>

#include "ink/fonts.h"
#include "ink/ink.h"

namespace splay::writers {

// PDF 1.6 through libharu: fonts embedded and subset, bookmarks, page labels, links, PrintScaling
// none, dates and /ID from the packet only. Throws std::invalid_argument for text that can't be
// drawn or a number that is not finite, std::runtime_error when libharu fails.
std::string pdf(const ink::Packet& packet, const ink::FontSet& fonts);

// One page at 1:1 in millimetres, through tinyxml2.
std::string svg(const ink::Page& page, const ink::FontSet& fonts);

// One page as a picture through Cairo, `dpi` dots to the inch.
std::string png(const ink::Page& page, const ink::FontSet& fonts, double dpi);

}  // namespace splay::writers
