// Ends cut into many fingers, drawn large: running figures along the end, and along the base line
// where they are others.
#include <algorithm>
#include <cmath>

#include "sheets/part_view_rows.h"
#include "sheets/part_view_wants.h"

namespace splay::sheets {

namespace {

using parts::Side;

constexpr double same_place = 1e-6;  // mm
constexpr double most_wide = 151;  // mm on paper: what the narrowest page takes beside its figures

struct EndFace {
  CrowdedEnd crowded;
  double tip = 0, base = 0;  // x of the end; of the inner corners, the least deep
  bool one_base = true;
  std::vector<double> outer, inner;  // y of corners at the end and further in, ascending
};

EndFace read_end(const PartSheet& sheet, CrowdedEnd crowded) {
  EndFace end;
  const bool low = crowded.end == Side::x_low;
  const auto [first, last] = sheet.part.body.extent({1, 0, 0});
  end.tip = low ? first : last;
  std::vector<double> depths;
  for (const Vec3 corner : crowded.corners) {
    const bool at_end = std::abs(corner.x - end.tip) < same_place;
    (at_end ? end.outer : end.inner).push_back(corner.y);
    if (!at_end) depths.push_back(corner.x);
  }
  const double step = sheet.kit().figures.step_mm() / 2;
  depths = ascending(std::move(depths), step);
  end.base = depths.empty() ? end.tip : low ? depths.front() : depths.back();
  end.one_base = depths.size() == 1;
  // Both start at the edge that figures are from, and reach the other.
  for (std::vector<double>* row : {&end.outer, &end.inner}) {
    if (row->empty()) continue;
    row->insert(row->end(), {0, sheet.part.size.y});
    *row = ascending(std::move(*row), step);
  }
  end.crowded = std::move(crowded);
  return end;
}

bool close(const std::vector<double>& a, const std::vector<double>& b, double within) {
  return std::ranges::equal(a, b, [&](double x, double y) { return std::abs(x - y) < within; });
}

bool alike(const EndFace& a, const EndFace& b) {
  return std::abs(std::abs(a.tip - a.base) - std::abs(b.tip - b.base)) < same_place &&
         close(a.outer, b.outer, same_place) && close(a.inner, b.inner, same_place);
}

DetailRow row_of(const PartSheet& sheet, const EndFace& end, const std::vector<double>& places,
                 double x, Vec3 out) {
  DetailRow row;
  row.kind = drafting::RowKind::running;
  const double z = end.crowded.face == Side::z_high ? sheet.part.size.z : 0;
  for (const double y : places) row.stations.push_back({x, y, z});
  row.along = -parts::outward(front_edge(sheet.part));
  row.out = out;
  return row;
}

Detail detail_of(const PartSheet& sheet, const EndFace& end) {
  const Vec3 out = parts::outward(end.crowded.end);
  const double z = end.crowded.face == Side::z_high ? sheet.part.size.z : 0;
  Detail detail;
  detail.cut = false;
  detail.with_hidden = false;
  detail.across = most_wide;
  detail.view.toward = parts::outward(end.crowded.face);
  detail.view.up = out;
  detail.view.right = cross(detail.view.up, detail.view.toward);
  detail.of.add({end.tip, 0, z});
  detail.of.add({end.base, sheet.part.size.y, z});
  const std::string from = "Figures from the " + sheet.name(front_edge(sheet.part));
  const bool two_rows = !end.inner.empty() && !end.outer.empty() &&
                        !close(end.outer, end.inner, sheet.kit().figures.step_mm() / 2);
  if (!end.outer.empty()) detail.rows.push_back(row_of(sheet, end, end.outer, end.tip, out));
  if (two_rows) detail.rows.push_back(row_of(sheet, end, end.inner, end.base, -out));
  if (end.outer.empty()) detail.rows.push_back(row_of(sheet, end, end.inner, end.base, out));
  const std::string depth = sheet.kit().figures.text(std::abs(end.tip - end.base));
  const std::string base = end.one_base ? "base line" : "inner corners";
  detail.caption = from + (two_rows ? ": above along the end, below along the " + base : "") + ".";
  if (end.one_base) detail.caption += " Base line " + depth + " from the end.";
  return detail;
}

}  // namespace

std::vector<Detail> end_details(const PartSheet& sheet) {
  std::vector<EndFace> ends;
  for (CrowdedEnd& crowded : crowded_ends(sheet))
    ends.push_back(read_end(sheet, std::move(crowded)));
  std::vector<Detail> details;
  const bool both = ends.size() == 2 && alike(ends[0], ends[1]);
  for (std::size_t i = 0; i < (both ? 1 : ends.size()); ++i) {
    details.push_back(detail_of(sheet, ends[i]));
    std::string title = capitalised(sheet.name(ends[i].crowded.end));
    if (both) title += "; " + sheet.name(ends[1].crowded.end) + ", the other way round";
    details.back().title = title + ", " + sheet.name(ends[i].crowded.face);
  }
  return details;
}

}  // namespace splay::sheets
