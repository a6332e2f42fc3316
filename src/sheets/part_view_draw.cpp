#include "sheets/part_view_draw.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <optional>

#include "drafting/callout.h"
#include "drafting/conventions.h"
#include "drafting/dimension.h"
#include "sheets/part_view_curves.h"
#include "sheets/part_view_names.h"
#include "sheets/part_view_rows.h"
#include "sheets/part_view_wants.h"

namespace splay::sheets {

namespace {

using drafting::Placement;
using parts::Side;

constexpr double view_gap = 7;       // between two views
constexpr double first_line = 10;    // of a row, off the view
constexpr double least_thick = 0.7;  // ISO 128: nearer parallel lines run together

class SetDrawing {
 public:
  SetDrawing(const PartSheet& sheet, const ViewSet& set, drafting::Scale scale)
      : sheet_(sheet),
        set_(set),
        kit_(sheet.kit()),
        scale_(scale.ratio()),
        standard_(scale),
        room_(drafting::grown(Placement{scale.ratio(), {0, 0}}.paper(set.face.box), 150)) {}

  drafting::Picture draw() {
    face_ = {scale_, {0, 0}};
    begin(set_.face, face_);
    fittings();
    for (const FaceRow& row : face_rows(sheet_, set_.face, {1, 0, 0}, -set_.to_edge)) draw_row(row);
    for (const FaceRow& row : face_rows(sheet_, set_.face, {0, 1, 0}, -set_.to_end)) draw_row(row);
    if (sheet_.part.size.z * scale_ >= least_thick) {
      // What is round looks from its end as it does from its edge.
      const bool round = is_round();
      if (!round && !drawn_thin(sheet_, standard_)) end_ = beside(set_.end, set_.to_end);
      if (round || edge_tells()) edge_ = beside(set_.edge, set_.to_edge);
      if (set_.far_edge) draw_far_edge();
      if (edge_) draw_edge();
      if (end_) draw_end();
    }
    angles();
    name_sides();
    return cut_out(kit_, std::move(items_));
  }

 private:
  // The edge of a narrow strip without bevel or trench is a plain rectangle that the end view
  // tells.
  bool edge_tells() const {
    return !drawn_small(sheet_, standard_) ||
           std::ranges::any_of(standing_cuts(sheet_), &Cut::bevelled) || worked();
  }

  bool is_round() const { return circle_on(sheet_, set_.face.side).has_value(); }

  bool worked() const {
    return std::ranges::any_of(std::array{Side::y_low, Side::y_high, Side::z_low, Side::z_high},
                               [&](Side side) { return !openings_on(sheet_, side).empty(); });
  }

  // Draws a view; the rows that follow stand round it.
  void begin(const SideView& side, const Placement& placement) {
    // Dashes inside a thin strip run together with its outline.
    constexpr double least_for_hidden = 1.8;  // mm
    const bool thin = std::min(side.box.width(), side.box.height()) * scale_ < least_for_hidden;
    std::vector<ViewLine> lines = side.lines;
    if (thin) std::erase_if(lines, &ViewLine::hidden);
    items_.emplace_back(drafting::draw_view(kit_, lines, placement));
    room_.take(kit_, items_.back());
    host_ = &placement;
    host_box_ = placement.paper(side.box);
    reach_.clear();
  }

  // The middles of what lies on the face, or under it on the far one.
  void fittings() {
    ink::Group group{"view", {}};
    for (const LaidFitting& fitting : laid_fittings(sheet_)) {
      const bool near = fitting.side == set_.face.side;
      if (!near && fitting.side != parts::opposite(set_.face.side)) continue;
      const Vec2 at = face_.paper(set_.face.view.project(fitting.at));
      drafting::append(group.items,
                       drafting::fitting_mark(kit_, at, fitting.diameter * scale_, near));
    }
    if (group.items.empty()) return;
    items_.emplace_back(std::move(group));
    room_.take(kit_, items_.back());
  }

  // How far the view and its rows reach in a direction.
  double reach(Vec2 out) const {
    const auto rows = reach_.find({out.x, out.y});
    return rows != reach_.end() ? rows->second
                                : std::max(dot(out, host_box_.low), dot(out, host_box_.high));
  }

  void draw_row(const FaceRow& wanted) {
    const drafting::Row& row = wanted.row;
    ClearRow drawn = draw_clear(kit_, *host_, row, reach(row.out) + first_line, room_, texts_);
    items_.emplace_back(std::move(drawn.row.group));
    reach_[{row.out.x, row.out.y}] = drawn.row.reach;
    if (row.kind != drafting::RowKind::running) return;
    // The datum's sign where the row's first line bends, its name beside it.
    double first = 1e300;
    for (const Vec2 p : row.stations) first = std::min(first, dot(row.along, host_->paper(p)));
    const Vec2 datum = datum_place(row.along * first, row.out, drawn.at);
    items_.emplace_back(drafting::datum_mark(kit_, datum, 3.6));
    room_.take(kit_, items_.back());
    datums_.push_back({datum - row.along * 3, wanted.from});
  }

  // On the extension line of the datum, clear of the figures of all rows: before the bend, or as
  // near to it as there is room.
  Vec2 datum_place(Vec2 base, Vec2 out, double at) const {
    constexpr double size = 3.6, clear = 0.4;
    for (const double before : {5.0, 6.5, 8.0, 3.5, 9.5, 11.0, 13.0, 15.0, 18.0}) {
      const Vec2 place = base + out * (at - before);
      const Vec2 half{size / 2 + clear, size / 2 + clear};
      const drafting::Quad mark = drafting::quad({place - half, place + half});
      if (std::ranges::none_of(
              texts_, [&](const drafting::Quad& text) { return drafting::touch(text, mark); }))
        return place;
    }
    return base + out * (at - 5);
  }

  // Beside the view drawn last, its axes in line with those of that view.
  Placement beside(const SideView& side, Vec2 to) const {
    Placement placement{scale_, {0, 0}};
    const ink::Rect box = placement.paper(side.box);
    const double near = std::min(dot(to, box.low), dot(to, box.high));
    // Figures may stand out over the view's end; the arrows beside a thin end need room too.
    const ink::Rect drawn = drafting::extent(kit_, items_);
    const double figures = std::max(dot(to, drawn.low), dot(to, drawn.high));
    const double free = norm(to - set_.to_end) < 0.5 ? std::max(reach(to), figures) : reach(to);
    placement.origin = to * (free + view_gap - near);
    return placement;
  }

  void draw_edge() {
    begin(set_.edge, *edge_);
    const bool worked_on = !openings_on(sheet_, set_.edge.side).empty();
    if (worked_on) {
      for (const FaceRow& row : face_rows(sheet_, set_.edge, {1, 0, 0}, set_.to_edge, true))
        draw_row(row);
      for (const FaceRow& row : face_rows(sheet_, set_.edge, {0, 0, 1}, -set_.to_end, true))
        draw_row(row);
    } else if (!set_.other) {
      for (const drafting::Row& row : edge_rows(sheet_, set_)) draw_row({row, {}});
    }
    if (is_round()) draw_thickness(set_.edge, {1, 0, 0}, -set_.to_end);
    if (!set_.other) return;
    other_ = beside(*set_.other, set_.to_edge);
    begin(*set_.other, *other_);
    for (const FaceRow& row : face_rows(sheet_, *set_.other, {1, 0, 0}, set_.to_edge, true))
      draw_row(row);
  }

  void draw_far_edge() {
    far_edge_ = beside(*set_.far_edge, -set_.to_edge);
    begin(*set_.far_edge, *far_edge_);
    for (const FaceRow& row : face_rows(sheet_, *set_.far_edge, {1, 0, 0}, -set_.to_edge, true))
      draw_row(row);
  }

  void draw_end() {
    begin(set_.end, *end_);
    // At the edge away from the edge view.
    draw_thickness(set_.end, {0, 1, 0}, -set_.to_edge);
  }

  // Beside a view that shows it, at the side of the part towards `out`, which lies along `axis`.
  void draw_thickness(const SideView& side, Vec3 axis, Vec2 out) {
    drafting::Row thickness;
    thickness.kind = drafting::RowKind::overall;
    const Vec2 across = side.view.project({0, 0, 1});
    thickness.along = {std::abs(across.x), std::abs(across.y)};
    thickness.out = out;
    const Vec3 at = dot(out, side.view.project(axis)) > 0 ? axis : Vec3{};
    const Vec3 size = sheet_.part.size;
    for (const double z : {0.0, size.z})
      thickness.stations.push_back(side.view.project({at.x * size.x, at.y * size.y, z}));
    draw_row({thickness, {}});
  }

  void name_sides() {
    drafting::Room room(drafting::grown(drafting::extent(kit_, items_), 12));
    room.take(kit_, items_);
    Names names(sheet_, room);
    for (const Datum& datum : datums_) names.near(datum.at, datum.words, 12);
    names.on_face(set_.face, face_);
    if (other_) names.on_face(*set_.other, *other_);
    if (edge_) names.trenches(set_.edge, *edge_);
    if (far_edge_) names.trenches(*set_.far_edge, *far_edge_);
    if (far_edge_)
      names.beside(*set_.far_edge, far_edge_->paper(set_.far_edge->box), -set_.to_edge);
    if (edge_) names.beside(set_.edge, edge_->paper(set_.edge.box), set_.to_edge);
    if (end_) names.beside(set_.end, end_->paper(set_.end.box), set_.to_end);
    drafting::append(items_, names.take());
  }

  // Mitres and tapers where they are seen, when the view is large enough to show them.
  void angles() {
    drafting::Room room(drafting::grown(drafting::extent(kit_, items_), 25));
    room.take(kit_, items_);
    angles_in(set_.face, face_, room);
    if (edge_) angles_in(set_.edge, *edge_, room);
  }

  void angles_in(const SideView& side, const Placement& placement, drafting::Room& room) {
    if (std::min(side.box.width(), side.box.height()) * scale_ < small_on_paper) return;
    std::vector<double> drawn;
    for (const Cut& cut : standing_cuts(sheet_)) {
      const double radians = cut.report.face_angle;
      const bool again = std::ranges::any_of(
          drawn, [&](double other) { return std::abs(other - radians) < 1e-9; });
      if (!cut.mitred || again) continue;
      const Vec3 out = parts::outward(cut.report.side);
      if (std::abs(dot(out, side.view.toward)) > 0.5) continue;
      // A mitred end is drawn with the face, a taper of a face with the edge.
      const bool of_face = std::abs(out.z) < 0.5;
      if (of_face != (&side == &set_.face)) continue;
      // Where there is no room for it, the words of the cut have it.
      auto angle = drafting::fit_angle(kit_, room, face_angle(cut, side.view, placement));
      if (!angle) continue;
      items_.emplace_back(std::move(*angle));
      drawn.push_back(radians);
    }
  }

  // Between the line of the cut and the square, at the point that stands furthest out.
  drafting::AngleMark face_angle(const Cut& cut, const View& view,
                                 const Placement& placement) const {
    const Vec3 out = parts::outward(cut.report.side);
    std::vector<Vec3> corners = face_on(sheet_.boundary, cut.plane)->loops.front();
    std::ranges::stable_sort(corners, [&](Vec3 a, Vec3 b) {
      return dot(out, a) + 1e-6 * dot(view.toward, a) > dot(out, b) + 1e-6 * dot(view.toward, b);
    });
    const Vec3 tip = corners.front(), line = corners.back() - tip;
    drafting::AngleMark mark;
    mark.at = placement.paper(view.project(tip));
    mark.from = view.project(line - out * dot(out, line));
    mark.to = view.project(line);
    mark.radians = cut.report.face_angle;
    mark.name = "face angle";
    return mark;
  }

  struct Datum {
    Vec2 at;
    std::string words;
  };

  const PartSheet& sheet_;
  const ViewSet& set_;
  const drafting::Kit& kit_;
  double scale_;
  drafting::Scale standard_;
  Placement face_;
  std::optional<Placement> edge_, end_, other_, far_edge_;
  drafting::Items items_;
  const Placement* host_ = nullptr;  // of the view that rows stand round
  ink::Rect host_box_;
  std::map<std::pair<double, double>, double> reach_;  // of its rows, by their direction
  drafting::Room room_;                                // all that is drawn
  std::vector<drafting::Quad> texts_;  // of all rows: extension lines stop short of them
  std::vector<Datum> datums_;
};

}  // namespace

bool drawn_small(const PartSheet& sheet, drafting::Scale scale) {
  return sheet.part.size.y * scale.ratio() < small_on_paper;
}

bool drawn_thin(const PartSheet& sheet, drafting::Scale scale) {
  return drawn_small(sheet, scale) && sheet.part.size.z * scale.ratio() < thin_on_paper;
}

drafting::Picture draw_set(const PartSheet& sheet, const ViewSet& set, drafting::Scale scale) {
  return SetDrawing(sheet, set, scale).draw();
}

drafting::Picture cut_out(const drafting::Kit& kit, drafting::Items items) {
  if (items.empty()) return {};
  const ink::Rect box = drafting::extent(kit, items);
  return {drafting::moved(std::move(items), {-box.low.x, -box.high.y}), box.width(), box.height()};
}

}  // namespace splay::sheets
