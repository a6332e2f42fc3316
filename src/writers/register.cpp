#include <array>

#include "writers/formats.h"
#include "writers/report.h"
#include "writers/writers.h"

namespace splay::writers {

// A new kind of file is one file and one line here.
std::span<const Format> formats() {
  static constexpr std::array kinds{
      Format{"pdf", "the pages, to print", write_pdf, true},
      Format{"png", "the pages as pictures, and all of them on one", write_page_pictures, true},
      Format{"svg", "each part at its true size in millimetres", write_part_svg},
      Format{"dxf", "the outlines of each part in millimetres, DXF R12", write_part_dxf},
      Format{"step", "the piece as an assembly of solids, ISO 10303-214", write_assembly_step},
      Format{"csv", "the cut list", write_cut_list},
      Format{"json", "everything computed", write_report},
      Format{"as-built", "measured sizes beside the designed ones", write_as_built},
  };
  return kinds;
}

Files write_pdf(const Subject& subject) {
  return {{subject.name + "-" + subject.pages + ".pdf", pdf(subject.packet, subject.fonts)}};
}

Files write_report(const Subject& subject) {
  return {{subject.name + ".json", report(subject.plan, &subject.packet)}};
}

std::string plain_file_name(std::string_view text) {
  std::string name;
  for (const char c : text) {
    const bool plain = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
                       c == '-' || c == '_';
    name += plain ? c : '_';
  }
  return name;
}

}  // namespace splay::writers
