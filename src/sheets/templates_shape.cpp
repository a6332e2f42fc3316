#include "sheets/templates_shape.h"

#include <algorithm>
#include <cmath>

#include "drafting/kit.h"
#include "sheets/part_view_shape.h"

namespace splay::sheets {

namespace {

using parts::OperationKind;
using parts::Side;

constexpr double widest = 130, window = 72;   // mm: of a template, and of one at an edge
constexpr double longest = 150, behind = 32;  // along the part, and wood shown beyond the cut
constexpr double taper = 90;                  // of a line that runs on along the part
constexpr double on_plane = 1e-5;
constexpr double odd = 1e-4;  // radians: nearer to square than a pencil shows over a board

// Between two lines square to `axis` (x or y).
bool clip(Vec2& a, Vec2& b, Vec2 axis, double low, double high) {
  const double da = dot(axis, a), db = dot(axis, b);
  if (std::max(da, db) < low || std::min(da, db) > high) return false;
  const Vec2 from = a, run = b - a;
  const auto at = [&](double level) { return from + run * ((level - da) / (db - da)); };
  if (da < low) a = at(low);
  if (da > high) a = at(high);
  if (db < low) b = at(low);
  if (db > high) b = at(high);
  return norm(b - a) > 1e-3;
}

struct Piece {
  Vec2 a, b;  // x along the part, y across it; of the edge y is negative, folded down
  bool cut = false;
};

ink::Rect box_of_lines(const std::vector<TemplateLine>& lines, bool cuts_only) {
  ink::Rect box = drafting::no_rect();
  for (const TemplateLine& line : lines) {
    if (cuts_only && !line.cut) continue;
    box = drafting::joined(drafting::joined(box, {line.a, line.a}), {line.b, line.b});
  }
  return box;
}

// Its box, and its marks in it: the face lies left of the fold, seen from below right of it.
void settle(Template& made) {
  made.box = box_of_lines(made.lines, false);
  const double fold = std::clamp(0.0, made.box.low.x, made.box.high.x);
  const ink::Rect left{made.box.low, {fold, made.box.high.y}},
      right{{fold, made.box.low.y}, made.box.high};
  made.face_mark = clear_place(made.lines, made.hand < 0 ? left : right);
  made.edge_mark = clear_place(made.lines, made.hand < 0 ? right : left);
}

class TemplateMaker {
 public:
  explicit TemplateMaker(const PartSheet& sheet) : sheet_(sheet), size_(sheet.part.size) {}

  std::vector<Template> make() {
    const bool whole = size_.x <= longest && size_.y <= widest;
    for (const Side end : {Side::x_low, Side::x_high}) {
      if (!odd_end(end)) continue;
      end_templates(end, whole);
      if (whole) break;
    }
    for (const Side face : {Side::z_high, Side::z_low})
      for (const parts::Operation* trench : trenches_on(sheet_, face)) lap(face, *trench);
    return std::move(all_);
  }

 private:
  bool near_end(const Cut& cut, Side end) const {
    return cut.end ? side_seen(cut.plane.n) == end
                   : (end == Side::x_high ? cut.of.high.x > size_.x - 1 : cut.of.low.x < 1);
  }

  // Slanting across the face, or along a taper or a curve.
  bool odd_end(Side end) const {
    for (const Cut& cut : standing_cuts(sheet_)) {
      if (cut.operation->kind == OperationKind::shoulder || !near_end(cut, end)) continue;
      if (std::abs(cut.report.face_angle) > odd) return true;
    }
    return std::ranges::any_of(sheet_.part.operations, [&](const parts::Operation& operation) {
      if (operation.kind != OperationKind::outline) return false;
      const Solid gone = Solid::convex(operation.removed, 1e4);
      const Box box = gone.bounds();
      return end == Side::x_low ? box.low.x < 1 : box.high.x > size_.x - 1;
    });
  }

  // The outlines that lie on one side's own plane, laid flat.
  std::vector<Piece> outline(Side side) const {
    std::vector<Piece> pieces;
    const Vec3 out = parts::outward(side);
    const Plane plane{out, std::max(0.0, dot(out, size_))};
    for (const Face& face : sheet_.boundary.faces) {
      if (dot(face.plane.n, out) < 1 - 1e-9) continue;
      if (std::abs(plane.distance(face.loops.front().front())) > on_plane) continue;
      for (const std::vector<Vec3>& loop : face.loops)
        for (std::size_t i = 0; i < loop.size(); ++i) {
          const Vec2 a = flat(side, loop[i]), b = flat(side, loop[(i + 1) % loop.size()]);
          pieces.push_back(
              {a, b, !arris(side, a, b) && breaks(face, loop[i], loop[(i + 1) % loop.size()])});
        }
    }
    return pieces;
  }

  // The surface beyond an arris of the face turns away steeply: a saw went there. Where a taper
  // begins it hardly does.
  bool breaks(const Face& face, Vec3 a, Vec3 b) const {
    constexpr double steep = 0.87, near = 1e-4;  // cosine of 30 degrees; mm
    const Vec3 middle = (a + b) * 0.5;
    for (const Edge& edge : sheet_.boundary.edges) {
      const Vec3 run = edge.b - edge.a, to = middle - edge.a;
      const double along = dot(to, run) / dot(run, run);
      if (along < 0 || along > 1 || norm(to - run * along) > near) continue;
      for (const int index : {edge.face_1, edge.face_2}) {
        if (index < 0) continue;
        const Vec3 n = sheet_.boundary.faces[static_cast<std::size_t>(index)].plane.n;
        if (norm(n - face.plane.n) > 1e-9 && dot(n, face.plane.n) > steep) return false;
      }
    }
    return true;
  }

  Vec2 flat(Side side, Vec3 p) const {
    return side == Side::y_low ? Vec2{p.x, p.z - size_.z} : Vec2{p.x, p.y};
  }

  // Along the blank's own edge: nothing is cut there by this template.
  bool arris(Side side, Vec2 a, Vec2 b) const {
    const double low = side == Side::y_low ? -size_.z : 0, high = side == Side::y_low ? 0 : size_.y;
    const auto on = [&](double level) {
      return std::abs(a.y - level) < on_plane && std::abs(b.y - level) < on_plane;
    };
    return on(low) || on(high);
  }

  // `whole`: both ends have room on one.
  void end_templates(Side end, bool whole) {
    const bool two = size_.y > widest;
    const std::string name = whole ? "all of it" : sheet_.name(end);
    if (!two) {
      add(Side::z_high, end, -size_.z, size_.y, name, true, whole);
      return;
    }
    add(Side::z_high, end, -size_.z, window, name + ", " + sheet_.name(Side::y_low), true);
    add(Side::z_high, end, size_.y - window, size_.y, name + ", " + sheet_.name(Side::y_high),
        false);
  }

  // How far into the part the cut lines within a strip across it reach that begin near its end;
  // what lies further in has templates of its own.
  Interval reach(const std::vector<Piece>& pieces, double low, double high, Side end) const {
    const double sense = end == Side::x_high ? -1 : 1;
    std::vector<std::array<double, 2>> runs;  // from the end inwards
    double outermost = 1e300;
    for (Piece piece : pieces) {
      if (!piece.cut || !clip(piece.a, piece.b, {0, 1}, low, high)) continue;
      // A bevelled edge is no end.
      if (std::abs(piece.a.y - piece.b.y) < odd * norm(piece.b - piece.a)) continue;
      const double a = sense * piece.a.x, b = sense * piece.b.x;
      runs.push_back({std::min(a, b), std::max(a, b)});
      outermost = std::min(outermost, runs.back()[0]);
    }
    // Where the side is tapered away all round, none of it reaches this end.
    if (outermost > (end == Side::x_high ? -size_.x : 0) + window) return {1, -1};
    Interval reach{1e300, -1e300};
    for (const auto& [from, to] : runs) {
      if (from > outermost + window) continue;
      for (const double each : {sense * from, sense * std::min(to, outermost + taper)}) {
        reach.from = std::min(reach.from, each);
        reach.to = std::max(reach.to, each);
      }
    }
    return reach;
  }

  void add(Side face, Side end, double low, double high, const std::string& name, bool with_edge,
           bool whole = false) {
    std::vector<Piece> pieces = outline(face);
    Interval along = reach(pieces, low, high, end);
    if (along.from > along.to) return;
    if (with_edge) {
      std::vector<Piece> edge = outline(Side::y_low);
      // A slanting end may stand out further at the edge than on the face.
      const Interval more = reach(edge, low, 0, end);
      if (more.from <= more.to)
        along = {std::min(along.from, more.from), std::max(along.to, more.to)};
      // The arris where it is folded is on the face's outline already.
      std::erase_if(edge, [](const Piece& piece) {
        return std::abs(piece.a.y) < on_plane && std::abs(piece.b.y) < on_plane;
      });
      pieces.insert(pieces.end(), edge.begin(), edge.end());
    }
    if (end == Side::x_high)
      along.from = std::max(along.to - longest, along.from - behind);
    else
      along.to = std::min(along.from + longest, along.to + behind);
    along.from = whole ? 0 : std::max(along.from, 0.0);
    along.to = whole ? size_.x : std::min(along.to, size_.x);
    draw(face, pieces, along, low, high, name);
  }

  void lap(Side face, const parts::Operation& trench) {
    const Trough trough = trough_of(trench);
    if (trough.axis.x == 0 || trough.walls().empty()) return;
    const bool slanting = std::ranges::any_of(trough.walls(), [](const Plane& wall) {
      return std::abs(std::atan2(wall.n.y, std::abs(wall.n.x))) > odd;
    });
    if (trench.kind != OperationKind::notch && !slanting) return;
    const Face* floor = face_on(sheet_.boundary, trench.trench.floor);
    if (floor == nullptr) return;
    const Box box = box_of(*floor);
    std::string name = operation_words(sheet_, trench);
    const auto part = [&](double low, double high, const std::string& more) {
      std::vector<Piece> pieces = outline(face);
      Interval along{1e300, -1e300};
      for (Piece piece : pieces) {
        if (!piece.cut || !clip(piece.a, piece.b, {0, 1}, low, high)) continue;
        for (const Vec2 p : {piece.a, piece.b})
          if (p.x > box.low.x - 40 && p.x < box.high.x + 40) {
            along.from = std::min(along.from, p.x);
            along.to = std::max(along.to, p.x);
          }
      }
      if (along.from > along.to || along.to - along.from > longest) return;
      along = {std::max(0.0, along.from - behind), std::min(size_.x, along.to + behind)};
      draw(face, pieces, along, low, high, name + more);
    };
    if (size_.y <= widest) {
      part(0, size_.y, "");
      return;
    }
    part(0, window, ", " + sheet_.name(Side::y_low));
    part(size_.y - window, size_.y, ", " + sheet_.name(Side::y_high));
  }

  // On paper: up is along the part, the face towards the reader.
  void draw(Side face, const std::vector<Piece>& pieces, Interval along, double low, double high,
            const std::string& name) {
    Template made;
    const double hand = face == Side::z_high ? -1 : 1;
    const auto paper = [&](Vec2 p) { return Vec2{hand * p.y, p.x}; };
    double longest_cut = 0;
    for (Piece piece : pieces) {
      if (!clip(piece.a, piece.b, {1, 0}, along.from, along.to) ||
          !clip(piece.a, piece.b, {0, 1}, low, high))
        continue;
      if (piece.cut) longest_cut = std::max(longest_cut, norm(piece.b - piece.a));
      TemplateLine line{paper(piece.a), paper(piece.b), piece.cut, false};
      // Seen from below the loop runs the other way round.
      if (hand > 0) std::swap(line.a, line.b);
      made.lines.push_back(line);
    }
    const bool any_cut = std::ranges::any_of(made.lines, &TemplateLine::cut);
    if (!any_cut) return;
    made.edge = low < 0 && std::ranges::any_of(made.lines, [&](const TemplateLine& line) {
                  return hand * line.a.x < -on_plane || hand * line.b.x < -on_plane;
                });
    made.hand = hand;
    for (TemplateLine& line : made.lines)
      if (made.edge && std::abs(line.a.x) < on_plane && std::abs(line.b.x) < on_plane)
        line.fold = true;
    made.title = sheet_.row.mark + ": " + name;
    made.side = sheet_.name(face);
    made.anchor = part_anchor(sheet_.row.mark);
    made.caption = "longest cut line " + sheet_.kit().figures.with_unit(longest_cut);
    if (const std::string hands = hand_words(sheet_.row); !hands.empty())
      made.caption += "; " + hands;
    settle(made);
    all_.push_back(std::move(made));
  }

  const PartSheet& sheet_;
  Vec3 size_;
  std::vector<Template> all_;
};

}  // namespace

bool shorten(Template& made, double tallest) {
  constexpr double least_behind = 5;
  if (made.box.height() <= tallest) return true;
  const ink::Rect cuts = box_of_lines(made.lines, true);
  const double beyond = (tallest - cuts.height()) / 2;
  if (beyond < least_behind) return false;
  std::erase_if(made.lines, [&](TemplateLine& line) {
    return !clip(line.a, line.b, {0, 1}, cuts.low.y - beyond, cuts.high.y + beyond);
  });
  settle(made);
  return true;
}

std::vector<Template> templates_of(const PartSheet& sheet) { return TemplateMaker(sheet).make(); }

}  // namespace splay::sheets
