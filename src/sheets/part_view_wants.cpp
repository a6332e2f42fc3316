#include "sheets/part_view_wants.h"

#include <algorithm>
#include <cmath>

#include "sheets/part_view_curves.h"
#include "sheets/part_view_draw.h"

namespace splay::sheets {

namespace {

using parts::Side;

constexpr double one_angle = 1e-9;

// The same setting, so that one picture does for both.
bool alike(const Cut& a, const Cut& b) {
  const auto near = [](double x, double y) { return std::abs(x - y) < one_angle; };
  return a.end == b.end && near(a.report.bevel, b.report.bevel) &&
         near(a.report.face_angle, b.report.face_angle) &&
         a.report.long_face == b.report.long_face && a.report.on_edge == b.report.on_edge &&
         (!a.report.on_edge || a.report.long_edge == b.report.long_edge);
}

using Group = std::vector<Cut>;

std::vector<Group> grouped(const std::vector<Cut>& cuts) {
  std::vector<Group> groups;
  for (const Cut& cut : cuts) {
    const auto group =
        std::ranges::find_if(groups, [&](const Group& g) { return alike(g.front(), cut); });
    if (group == groups.end())
      groups.push_back({cut});
    else
      group->push_back(cut);
  }
  return groups;
}

void add_once(std::vector<std::string>& words, const std::string& word) {
  if (std::ranges::find(words, word) == words.end()) words.push_back(word);
}

// "taper, left edge" on the left edge: the side need not be named twice.
std::string without_side(std::string words, const std::string& side) {
  if (words.ends_with(", " + side)) words.resize(words.size() - side.size() - 2);
  return words;
}

std::string title_of_cut(const PartSheet& sheet, const Group& group) {
  std::vector<std::string> sides, acts, each;
  for (const Cut& cut : group) {
    const std::string& side = sheet.name(cut.report.side);
    const std::string words = without_side(operation_words(sheet, *cut.operation), side);
    const std::string mark = neighbour_mark(sheet, *cut.operation);
    add_once(sides, side);
    add_once(acts, without_side(plain_words(sheet, *cut.operation), side));
    const std::string act = words + (mark.empty() ? "" : " (" + mark + ")");
    each.push_back(words == side ? side : side + ": " + act);
  }
  const bool few = group.size() <= 2 && sides.size() == group.size();
  std::string title = few ? joined(each, "; ") : joined(sides, ", ") + ": " + joined(acts, ", ");
  if (sides.size() == 2) title += ", the other way round";
  return capitalised(title);
}

std::string caption_of(const PartSheet& sheet, const Cut& cut) {
  const fabrication::CutReport& report = cut.report;
  std::string words = capitalised(setting_words(sheet, report)) +
                      ". Long point: " + long_arris_words(sheet, report) + ".";
  if (!cut.bevelled) return words + " " + capitalised(show_words(sheet)) + " up on the saw.";
  words += " " + capitalised(sheet.name(face_down(report))) + " down on the saw.";
  const Angle tilt = *sheet.context.plan.project->shop.saw.tilt;
  if (report.bevel > tilt.rad + one_angle)
    words += " Steeper than the saw tilts with the board flat (" + degrees_text(tilt.degrees()) +
             "): see the cautions.";
  return words;
}

double plane_at(const Plane& plane, Vec3 point, Vec3 axis) {
  return (plane.d - dot(plane.n, point)) / dot(plane.n, axis);
}

Vec3 positive(Vec3 axis) { return {std::abs(axis.x), std::abs(axis.y), std::abs(axis.z)}; }

// The line of a cut in one plane: from the arris that stands furthest out to the opposite one.
struct CutLine {
  Vec3 tip, other;
};

// Through the middle of the cut, across the sides that `outer` and its opposite are.
CutLine cut_line(const Cut& cut, Side outer) {
  const Vec3 axis = positive(parts::outward(cut.report.side));
  const Vec3 across = parts::outward(outer), wide = positive(across);
  const auto at = [&](double where) {
    const Vec3 base = cut.middle() + wide * (where - dot(wide, cut.middle()));
    return base +
           axis * (plane_at(cut.plane, base - axis * dot(axis, base), axis) - dot(axis, base));
  };
  const double low = dot(wide, cut.of.low), high = dot(wide, cut.of.high);
  const bool from_high = dot(across, wide) > 0;
  return {at(from_high ? high : low), at(from_high ? low : high)};
}

Box box_of(std::initializer_list<Vec3> points) {
  Box box;
  for (const Vec3 p : points) box.add(p);
  return box;
}

Detail bevel_detail(const PartSheet& sheet, const Group& group) {
  const Cut& cut = group.front();
  const Side down = face_down(cut.report);
  const CutLine line = cut_line(cut, cut.report.long_face);
  const Vec3 axis = positive(parts::outward(cut.report.side));
  Detail detail;
  detail.view.up = -parts::outward(down);
  detail.view.right = axis;
  detail.view.toward = cross(axis, detail.view.up);
  detail.cut_at = dot(detail.view.toward, cut.middle());
  detail.of = box_of({line.tip, line.other});
  detail.title = title_of_cut(sheet, group);
  detail.caption = caption_of(sheet, cut);
  detail.below = {sheet.name(down) + ", down"};
  detail.above = {sheet.name(parts::opposite(down))};
  const Vec3 square = -parts::outward(cut.report.long_face);
  detail.angles.push_back({line.tip, square, line.other - line.tip,
                           angle_between(square, line.other - line.tip),
                           cut.mitred ? "on the edge" : "bevel"});
  detail.rows.push_back(
      {drafting::RowKind::overall, {line.tip, line.other}, axis, detail.view.up, {}});
  return detail;
}

// A mitre seen on the show face, the long edge below, as it lies against the gauge.
Detail mitre_detail(const PartSheet& sheet, const Group& group) {
  const Cut& cut = group.front();
  const CutLine line = cut_line(cut, cut.report.long_edge);
  Detail detail;
  detail.cut = false;
  detail.view.toward = {0, 0, 1};
  detail.view.up = -parts::outward(cut.report.long_edge);
  detail.view.right = cross(detail.view.up, detail.view.toward);
  detail.of = box_of({line.tip, line.other});
  detail.title = title_of_cut(sheet, group);
  // A compound cut has its words under its bevel.
  if (!cut.bevelled) detail.caption = caption_of(sheet, cut);
  if (cut.bevelled) detail.title += ", on the face";
  detail.below = {sheet.name(cut.report.long_edge)};
  detail.above = {sheet.name(parts::opposite(cut.report.long_edge))};
  const Vec3 square = detail.view.up;
  detail.angles.push_back({line.tip, square, line.other - line.tip,
                           angle_between(square, line.other - line.tip), "face angle"});
  const Vec3 along = detail.view.right;
  detail.rows.push_back(
      {drafting::RowKind::overall, {line.tip, line.other}, along, detail.view.up, {}});
  return detail;
}

// As near to the middle as the wood is whole there: where a section is largest.
double whole_place(const PartSheet& sheet) {
  double best = sheet.part.size.x / 2, most = 0;
  for (const double part : {1.0, 0.8, 1.2, 0.6, 1.4, 0.4, 1.6}) {
    const double x = part * sheet.part.size.x / 2;
    double area = 0;
    for (const Face& face : sheet.part.body.section({{1, 0, 0}, x})) area += face.area;
    if (area <= most * (1 + 1e-9)) continue;
    most = area;
    best = x;
  }
  return best;
}

Detail section_across(const PartSheet& sheet) {
  const Vec3 size = sheet.part.size;
  const double x = whole_place(sheet);
  Detail detail;
  detail.view = {{0, 1, 0}, {0, 0, 1}, {1, 0, 0}};
  detail.cut_at = x;
  detail.of = box_of({{x, 0, 0}, {x, size.y, size.z}});
  detail.title = "Section across";
  detail.above = {sheet.name(Side::z_high)};
  const Vec3 low{x, 0, 0};
  detail.rows.push_back(
      {drafting::RowKind::overall, {low, low + Vec3{0, size.y, 0}}, {0, 1, 0}, {0, 0, -1}, {}});
  detail.rows.push_back({drafting::RowKind::overall,
                         {low + Vec3{0, size.y, 0}, low + Vec3{0, size.y, size.z}},
                         {0, 0, 1},
                         {0, 1, 0},
                         {}});
  return detail;
}

// A detail that shows the thickness across already.
bool has_edge_trench(const PartSheet& sheet) {
  for (const Side face : {Side::z_low, Side::z_high})
    if (std::ranges::any_of(trenches_on(sheet, face),
                            [](const auto* trench) { return trough_of(*trench).along_length(); }))
      return true;
  return false;
}

// Shown by a detail: bevels always, mitres of ends when the face is drawn small.
bool in_detail(const PartSheet& sheet, const Cut& cut, drafting::Scale scale) {
  return cut.bevelled || (cut.mitred && cut.end && drawn_small(sheet, scale));
}

}  // namespace

std::vector<Detail> wanted_details(const PartSheet& sheet, drafting::Scale scale) {
  std::vector<Detail> details;
  for (const Group& group : grouped(standing_cuts(sheet))) {
    if (!in_detail(sheet, group.front(), scale)) continue;
    if (group.front().bevelled) details.push_back(bevel_detail(sheet, group));
    if (group.front().mitred && group.front().end && drawn_small(sheet, scale))
      details.push_back(mitre_detail(sheet, group));
  }
  for (Detail& detail : curve_details(sheet)) details.push_back(std::move(detail));
  for (Detail& detail : trench_details(sheet)) details.push_back(std::move(detail));
  for (Detail& detail : end_details(sheet)) details.push_back(std::move(detail));
  for (Detail& detail : tenon_details(sheet)) details.push_back(std::move(detail));
  if (drawn_thin(sheet, scale) && !has_edge_trench(sheet)) details.push_back(section_across(sheet));
  return details;
}

std::vector<std::string> plain_cut_lines(const PartSheet& sheet, drafting::Scale scale) {
  std::vector<std::string> lines;
  for (const Group& group : grouped(standing_cuts(sheet))) {
    const Cut& cut = group.front();
    if (in_detail(sheet, cut, scale) || !cut.mitred) continue;
    std::string line = title_of_cut(sheet, group) + ". " + caption_of(sheet, cut);
    lines.push_back(std::move(line));
  }
  return lines;
}

}  // namespace splay::sheets
