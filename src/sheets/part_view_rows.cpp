#include "sheets/part_view_rows.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <span>

#include "ink/outline.h"
#include "sheets/part_view_curves.h"

namespace splay::sheets {

namespace {

using drafting::Row;
using drafting::RowKind;
using parts::Side;

struct Stations {
  std::vector<Vec2> points;  // view plane
  std::vector<double> at;    // along the row, merged within half a step, ascending
};

// Grooves and rabbets along an edge are located in their own detail, from that edge.
bool by_edge_trench(const PartSheet& sheet, Side face, Vec3 corner) {
  return std::ranges::any_of(trenches_on(sheet, face), [&](const auto* trench) {
    const Trough trough = trough_of(*trench);
    const auto on = [&](const Plane& plane) { return std::abs(plane.distance(corner)) < 1e-5; };
    return trough.along_length() && (std::ranges::any_of(trough.walls(), on) ||
                                     std::ranges::any_of(trench->trench.stops, on));
  });
}

class FaceRows {
 public:
  FaceRows(const PartSheet& sheet, const SideView& face, Vec3 axis, Vec2 out)
      : sheet_(sheet), face_(face), axis_(axis), out_(out) {
    datum_side_ = std::abs(axis.x) > 0.5   ? Side::x_low
                  : std::abs(axis.y) > 0.5 ? front_edge(sheet.part)
                                           : Side::z_high;
    // From the datum side away from it.
    along_ = face.view.project(-parts::outward(datum_side_));
  }

  std::vector<FaceRow> make() const {
    Stations near, far;
    const double middle = dot(out_, drafting::middle(face_.box));
    for (const Vec3 corner : corners_on(sheet_, face_.side)) {
      if (in_own_detail(corner)) continue;
      const Vec2 p = face_.view.project(corner);
      (dot(out_, p) > middle ? near : far).points.push_back(p);
    }
    add_outer(near, far, middle);
    for (Stations* stations : {&near, &far}) {
      sort(*stations);
      if (std::abs(axis_.y) > 0.5 && stations->at.size() > most_across_end) keep_outer(*stations);
    }
    std::vector<FaceRow> rows;
    if (near.at.empty() && far.at.empty()) return rows;
    const bool near_tells_all = covers(near, far), far_tells_all = covers(far, near);
    if (near_tells_all || !far_tells_all) rows.push_back(row(near, out_, near_tells_all));
    if (!near_tells_all) rows.push_back(row(far, -out_, far_tells_all));
    return rows;
  }

 private:
  double step() const { return sheet_.kit().figures.step_mm() / 2; }

  void sort(Stations& stations) const {
    for (const Vec2 p : stations.points) stations.at.push_back(dot(along_, p));
    std::ranges::sort(stations.at);
    const auto same = [&](double a, double b) { return b - a < step(); };
    stations.at.erase(std::unique(stations.at.begin(), stations.at.end(), same), stations.at.end());
  }

  void keep_outer(Stations& stations) const {
    const auto at = [&](Vec2 p) { return dot(along_, p); };
    const auto [low, high] = std::ranges::minmax(stations.points, {}, at);
    stations = {{low, high}, {}};
    sort(stations);
  }

  bool in_own_detail(Vec3 corner) const {
    return std::abs(axis_.x) < 0.5 && square_ended() && by_edge_trench(sheet_, face_.side, corner);
  }

  // Where a trench has taken the face's edge away, the part still ends behind it: its width is
  // measured all the same. A bevel is another matter: the edge view gives what lies behind it.
  void add_outer(Stations& near, Stations& far, double middle) const {
    if (!square_ended()) return;
    const auto [low, high] = sheet_.part.body.extent(axis_);
    for (const double end : {low, high}) {
      const Vec3* nearest = nullptr;
      for (const Vec3& vertex : sheet_.part.body.vertices()) {
        if (std::abs(dot(axis_, vertex) - end) > 1e-6) continue;
        if (nearest == nullptr || up(vertex) > up(*nearest)) nearest = &vertex;
      }
      if (nearest == nullptr) continue;
      const Vec2 p = face_.view.project(*nearest);
      (dot(out_, p) > middle ? near : far).points.push_back(p);
    }
  }
  double up(Vec3 vertex) const {
    return dot(face_.view.toward, vertex) * 1e3 + dot(out_, face_.view.project(vertex)) * 1e-3;
  }

  bool covers(const Stations& all, const Stations& some) const {
    return std::ranges::all_of(some.at, [&](double s) {
      return std::ranges::any_of(all.at, [&](double a) { return std::abs(a - s) < step(); });
    });
  }

  FaceRow row(const Stations& stations, Vec2 out, bool only) const {
    FaceRow made;
    made.row.along = along_;
    made.row.out = out;
    made.row.stations = stations.points;
    made.row.kind = stations.at.size() > 2 ? RowKind::running : RowKind::overall;
    const std::string where = sheet_.name(face_.side);
    const std::string edge =
        sheet_.name(side_seen(face_.view.right * out.x + face_.view.up * out.y));
    const std::string place = only ? where : edge;
    made.from = "from the " + sheet_.name(datum_side_) + ", " + place;
    if (!only || !square_ended()) made.row.note = place;
    return made;
  }

  bool square_ended() const {
    return std::ranges::all_of(standing_cuts(sheet_), [&](const Cut& cut) {
      return std::abs(dot(parts::outward(cut.report.side), axis_)) < 0.5 ||
             (!cut.bevelled && !cut.mitred);
    });
  }

  const PartSheet& sheet_;
  const SideView& face_;
  Vec3 axis_;
  Vec2 out_, along_;
  Side datum_side_ = Side::x_low;
};

struct Span {
  Vec2 low, high;  // view plane
  bool empty = true;
};

// The two ends of a face's arris as the edge view shows them.
Span span_of(const PartSheet& sheet, const SideView& edge, Side face, Vec2 along) {
  Span span;
  for (const Vec3 corner : corners_on(sheet, face)) {
    const Vec2 p = edge.view.project(corner);
    if (span.empty || dot(along, p) < dot(along, span.low)) span.low = p;
    if (span.empty || dot(along, p) > dot(along, span.high)) span.high = p;
    span.empty = false;
  }
  return span;
}

bool same(const Span& a, const Span& b, Vec2 along, double step) {
  return std::abs(dot(along, a.low - b.low)) < step && std::abs(dot(along, a.high - b.high)) < step;
}

// The diameter of a round face along the length, and of the opposite face where it is another.
std::vector<FaceRow> diameters(const PartSheet& sheet, const SideView& face, Vec2 out) {
  std::vector<FaceRow> rows;
  std::optional<double> first;
  for (const Side side : {face.side, parts::opposite(face.side)}) {
    if (side < Side::z_low) break;
    const std::optional<Circle> circle = circle_on(sheet, side);
    if (!circle || (first && std::abs(*first - circle->radius) < 1e-6)) continue;
    FaceRow made;
    made.row.kind = RowKind::overall;
    made.row.along = face.view.project({1, 0, 0});
    made.row.out = out;
    made.row.sign = "Ø";
    if (first) made.row.note = sheet.name(side);
    first = circle->radius;
    for (const double way : {-1.0, 1.0})
      made.row.stations.push_back(
          face.view.project(circle->centre + Vec3{way * circle->radius, 0, 0}));
    rows.push_back(std::move(made));
  }
  // The smaller one nearer to the view.
  std::ranges::stable_sort(rows, {}, [](const FaceRow& row) {
    return norm(row.row.stations.back() - row.row.stations.front());
  });
  return rows;
}

}  // namespace

std::vector<FaceRow> face_rows(const PartSheet& sheet, const SideView& face, Vec3 axis, Vec2 out,
                               bool outside) {
  std::vector<FaceRow> rows = FaceRows(sheet, face, axis, out).make();
  if (std::abs(axis.x) > 0.5) {
    std::vector<FaceRow> round = diameters(sheet, face, out);
    std::ranges::move(round, std::back_inserter(rows));
  }
  if (outside)
    for (FaceRow& row : rows) row.row.out = out;
  return rows;
}

std::vector<double> ascending(std::vector<double> values, double step) {
  std::ranges::sort(values);
  const auto near = [&](double a, double b) { return b - a < step; };
  values.erase(std::unique(values.begin(), values.end(), near), values.end());
  return values;
}

std::vector<CrowdedEnd> crowded_ends(const PartSheet& sheet) {
  const auto [low, high] = sheet.part.body.extent({1, 0, 0});
  const double step = sheet.kit().figures.step_mm() / 2;
  std::vector<CrowdedEnd> ends;
  for (const Side end : {Side::x_low, Side::x_high}) {
    CrowdedEnd crowded{end, worked_face(sheet), {}};
    std::vector<double> across{0, sheet.part.size.y};
    for (const Vec3 corner : corners_on(sheet, crowded.face)) {
      const bool here = (corner.x < (low + high) / 2) == (end == Side::x_low);
      if (!here || by_edge_trench(sheet, crowded.face, corner)) continue;
      crowded.corners.push_back(corner);
      across.push_back(corner.y);
    }
    if (ascending(std::move(across), step).size() > most_across_end)
      ends.push_back(std::move(crowded));
  }
  return ends;
}

bool runs_over(const ink::Group& group, std::span<const drafting::Quad> given) {
  constexpr double beside = 0.4;  // mm: a line so near a figure is read with it
  drafting::Room texts(drafting::no_rect());
  for (const drafting::Quad& text : given) texts.take(text);
  return std::ranges::any_of(group.items, [&](const ink::Item& item) {
    const auto* stroke = std::get_if<ink::Stroke>(&item);
    const auto* fill = std::get_if<ink::Fill>(&item);
    if (!stroke && !fill) return false;
    for (const ink::Polyline& line : ink::flatten(stroke ? stroke->path : fill->path))
      for (std::size_t i = 0; i + 1 < line.points.size(); ++i)
        if (texts.over_text(line.points[i], line.points[i + 1], beside)) return true;
    return false;
  });
}

ClearRow draw_clear(const drafting::Kit& kit, const drafting::Placement& placement, const Row& row,
                    double at, drafting::Room& room, std::vector<drafting::Quad>& texts) {
  constexpr double step = 3, clearance = 0.3;
  constexpr int most_steps = 16;
  ClearRow drawn{drafting::draw_row(kit, placement, row, at, texts), at};
  for (int i = 1; i <= most_steps; ++i) {
    const bool clear = std::ranges::all_of(
        drawn.row.texts, [&](const drafting::Quad& text) { return room.free(text, clearance); });
    if (clear && !runs_over(drawn.row.group, texts)) break;
    drawn.at = at + i * step;
    drawn.row = drafting::draw_row(kit, placement, row, drawn.at, texts);
  }
  texts.insert(texts.end(), drawn.row.texts.begin(), drawn.row.texts.end());
  room.take(kit, ink::Item(drawn.row.group));
  return drawn;
}

std::vector<Row> edge_rows(const PartSheet& sheet, const ViewSet& set) {
  const Vec2 along = set.edge.view.project({1, 0, 0});
  const double step = sheet.kit().figures.step_mm() / 2;
  const Side far_side = parts::opposite(set.face.side);
  const Span near = span_of(sheet, set.edge, set.face.side, along);
  const Span far = span_of(sheet, set.edge, far_side, along);
  std::vector<Row> rows;
  const auto add = [&](const Span& span, const std::string& note) {
    Row row;
    row.kind = RowKind::overall;
    row.stations = {span.low, span.high};
    row.along = along;
    row.out = set.to_edge;
    row.note = note;
    rows.push_back(row);
  };
  if (far.empty || near.empty) return rows;
  if (!same(near, far, along, step)) add(far, sheet.name(far_side));
  Span all;
  all.empty = false;
  all.low = dot(along, near.low) < dot(along, far.low) ? near.low : far.low;
  all.high = dot(along, near.high) > dot(along, far.high) ? near.high : far.high;
  if (!same(all, near, along, step) && !same(all, far, along, step)) add(all, "overall");
  return rows;
}

}  // namespace splay::sheets
