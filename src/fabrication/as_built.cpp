#include "fabrication/as_built.h"

#include <algorithm>

namespace splay::fabrication {

namespace {

const PartRow* row_of(const Plan& plan, const std::string& mark) {
  const auto row = std::ranges::find(plan.rows, mark, &PartRow::mark);
  return row == plan.rows.end() ? nullptr : &*row;
}

}  // namespace

std::vector<Measured> measured(const Plan& plan, const model::AsBuilt& built) {
  const Box box = parts::bounds(plan.assembly);
  const Vec3 overall = box.empty() ? Vec3{} : box.size();
  std::vector<Measured> all;
  const auto add = [&](const std::string& what, double designed, const model::Given<Length>& size) {
    if (size.given) all.push_back({what, designed, size->mm});
  };
  add("width over everything", overall.x, built.width);
  add("height over everything", overall.z, built.height);
  add("depth over everything", overall.y, built.depth);
  for (std::size_t i = 0; i < built.parts.size(); ++i) {
    const model::BuiltPart& part = built.parts[i];
    const PartRow* row = row_of(plan, part.name);
    if (row == nullptr) continue;
    add(part.name + " length", row->finished.x, part.length);
    add(part.name + " width", row->finished.y, part.width);
    add(part.name + " thickness", row->finished.z, part.thickness);
  }
  return all;
}

std::vector<Diagnostic> as_built_faults(const Plan& plan, const model::AsBuilt& built) {
  std::string marks;
  for (const PartRow& row : plan.rows) marks += (marks.empty() ? "" : ", ") + row.mark;
  std::vector<Diagnostic> faults;
  for (std::size_t i = 0; i < built.parts.size(); ++i)
    if (row_of(plan, built.parts[i].name) == nullptr)
      faults.push_back({built.parts[i].span, "unknown-mark",
                        "no part has the mark \"" + built.parts[i].name + "\"", marks, ""});
  return faults;
}

}  // namespace splay::fabrication
