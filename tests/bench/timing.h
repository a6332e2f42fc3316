// What the benchmarks share: medians of processor time, and the floor that the PDF writer is held
// against.
#pragma once

#include <hpdf.h>
#include <sys/resource.h>

#include <algorithm>
#include <functional>
#include <string>
#include <vector>

#include "ink/ink.h"
#include "writers/pdf_content.h"

namespace splay::bench {

inline std::vector<std::string> contents_of(const ink::Packet& packet, const ink::FontSet& fonts) {
  std::vector<writers::FontCodes> codes;
  std::vector<std::string> contents;
  for (const ink::Page& page : packet.pages)
    contents.push_back(writers::pdf_content(page, fonts, codes));
  return contents;
}

// As any program would that has the strings and leaves the rest to libharu.
inline void save_only(const ink::Packet& packet, const std::vector<std::string>& contents) {
  const HPDF_Doc document = HPDF_New(nullptr, nullptr);
  HPDF_SetCompressionMode(document, HPDF_COMP_ALL);
  for (std::size_t i = 0; i < contents.size(); ++i) {
    const HPDF_Page page = HPDF_AddPage(document);
    HPDF_Page_SetWidth(page, static_cast<HPDF_REAL>(packet.pages[i].paper.width * 72 / 25.4));
    HPDF_Page_SetHeight(page, static_cast<HPDF_REAL>(packet.pages[i].paper.height * 72 / 25.4));
    HPDF_Stream_Write(static_cast<HPDF_PageAttr>(page->attr)->stream,
                      reinterpret_cast<const HPDF_BYTE*>(contents[i].data()),
                      static_cast<HPDF_UINT>(contents[i].size()));
  }
  HPDF_SaveToStream(document);
  HPDF_Free(document);
}

// Processor time, of this process and of those it has waited for: other work on the machine doesn't
// count.
inline double processor_ms() {
  double ms = 0;
  for (const int who : {RUSAGE_SELF, RUSAGE_CHILDREN}) {
    rusage use{};
    getrusage(who, &use);
    for (const timeval& part : {use.ru_utime, use.ru_stime})
      ms += static_cast<double>(part.tv_sec) * 1e3 + static_cast<double>(part.tv_usec) / 1e3;
  }
  return ms;
}

inline double once_ms(const std::function<void()>& work) {
  const double start = processor_ms();
  work();
  return processor_ms() - start;
}

inline double median(std::vector<double> times) {
  std::sort(times.begin(), times.end());
  return times[times.size() / 2];
}

}  // namespace splay::bench
