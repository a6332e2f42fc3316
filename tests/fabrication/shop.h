// Projects of plain boards and panels for the tests of layouts and bills.
#pragma once

#include <string>

#include "packing/verify.h"
#include "support/piece.h"

namespace splay::test {

// No allowance, so that blanks are as large as their parts.
inline std::string bare_job(const std::string& kerf = "1/8 in", const std::string& unit = "in") {
  return job(unit) + "[shop]\nblank_allowance = 0\n[shop.saw]\nkerf = \"" + kerf + "\"\n";
}

// `count` panels above each other, none touching: lengths as the job's unit has them. Names of as
// many letters share a stack.
inline std::string panels(const std::string& name, int count, const std::string& stock,
                          const std::string& length, const std::string& width,
                          const std::string& rest = "") {
  std::string text;
  for (int i = 1; i <= count; ++i)
    text += "[board." + name + std::to_string(i) + "]\nstock = \"" + stock + "\"\nat = [0, \"" +
            std::to_string(1500 * name.size()) + " mm\", \"" + std::to_string(150 * i) +
            " mm\"]\nlength = \"" + length + "\"\nwidth = \"" + width + "\"\n" + rest;
  return text;
}

inline const fabrication::StockLayout& layout(const Built& piece, const std::string& stock) {
  for (const fabrication::StockLayout& each : piece.plan.layouts)
    if (each.stock == stock) return each;
  FAIL("no layout of " << stock);
  return piece.plan.layouts.front();
}

inline std::string verified(const fabrication::StockLayout& layout) {
  return packing::verify::plan(layout.task, layout.plan);
}

// Findings of this code, as text.
inline std::string said(const Built& piece, const std::string& code) {
  std::string text;
  for (const Finding& each : piece.plan.findings)
    if (each.code == code) text += each.text + "\n";
  return text;
}

}  // namespace splay::test
