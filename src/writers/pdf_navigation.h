// How a reader gets about in a PDF: bookmarks, page labels, links and the places they lead to.
#pragma once

#include <vector>

#include "ink/ink.h"
#include "writers/haru.h"

namespace splay::writers {

// `pages`: the PDF pages of packet.pages, in order.
void add_bookmarks(const Haru& haru, const ink::Packet& packet,
                   const std::vector<HPDF_Page>& pages);
void add_page_labels(const Haru& haru, const ink::Packet& packet);
// Throws std::invalid_argument for two anchors of one name and a link to none.
void add_links(const Haru& haru, const ink::Packet& packet, const std::vector<HPDF_Page>& pages);

}  // namespace splay::writers
