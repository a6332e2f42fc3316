// The kinds of file a piece can be written as: register.cpp, one line each.
#pragma once

#include <map>
#include <span>
#include <string>
#include <string_view>

#include "fabrication/plan.h"
#include "ink/fonts.h"
#include "ink/ink.h"
#include "model/as_built.h"

namespace splay::writers {

using Files = std::map<std::string, std::string>;  // plain name to bytes

// What there is to write: the packet's pages and the plan they were drawn from.
struct Subject {
  const fabrication::Plan& plan;
  const ink::Packet& packet;
  const ink::FontSet& fonts;
  std::string name;   // of the piece and its revision: "canted-tea-cabinet-B"
  std::string pages;  // of the packet: "shop"
  const model::AsBuilt* as_built = nullptr;  // what was measured, when anything was
};

struct Format {
  std::string_view word;  // "csv"
  std::string_view help;
  Files (*make)(const Subject& subject);
  bool of_pages = false;  // of the packet's pages, so that each packet has its own
};
std::span<const Format> formats();

// A name to put a mark or label into: letters, digits, "-", "_" stay, anything else becomes "_".
std::string plain_file_name(std::string_view text);

// The makers, each in its own file.
Files write_pdf(const Subject& subject);
Files write_page_pictures(const Subject& subject);  // PNG: each page, and all on a contact sheet
Files write_part_svg(const Subject& subject);       // 1:1, one file for each row of the cut list
Files write_part_dxf(const Subject& subject);       // the same as DXF R12
Files write_assembly_step(const Subject& subject);  // ISO 10303-21, the assembly of solids
Files write_cut_list(const Subject& subject);       // CSV
Files write_report(const Subject& subject);         // JSON
Files write_as_built(const Subject& subject);       // CSV; nothing when nothing was measured

}  // namespace splay::writers
