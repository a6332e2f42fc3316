#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <numbers>

#include "sheets/elevation_moving.h"
#include "sheets/elevation_view.h"

namespace splay::sheets {

namespace {

constexpr double true_to = 1e-6;  // a direction's part along the line of sight

bool is_true(Vec3 v, const View& view) { return std::abs(dot(v, view.toward)) < true_to * norm(v); }

// A section plane square to a line of sight: of a few places the one that shows most. A part counts
// for it, one cut along its face (a large hatched area that hides what lies behind) against it; the
// earlier place wins when they are equal.
struct ChosenCut {
  View view;
  Plane plane;
};

double face_area(const std::vector<Face>& faces) {
  double area = 0;
  for (const Face& face : faces) area += face.area;
  return area;
}

ChosenCut choose_cut(const std::vector<Solid>& solids, const View& view) {
  double low = 1e300, high = -1e300;
  for (const Solid& solid : solids) {
    const auto [from, to] = solid.extent(view.toward);
    low = std::min(low, from);
    high = std::max(high, to);
  }
  const ink::Rect box = drafting::view_box(solids, view);
  const double large = 0.12 * box.width() * box.height();
  ChosenCut best{view, {view.toward, (low + high) / 2}};
  int most = -1000;
  for (const double part : {0.5, 0.42, 0.58, 0.35, 0.65, 0.27, 0.73}) {
    const Plane plane{view.toward, low + (high - low) * part};
    int shown = 0;
    for (const Solid& solid : solids) {
      const std::vector<Face> faces = solid.section(plane);
      if (!faces.empty()) shown += face_area(faces) > large ? -3 : 1;
    }
    if (shown > most) {
      most = shown;
      best.plane = plane;
    }
  }
  return best;
}

// All lengths of one chain that a view shows true and in one direction.
struct Chain {
  std::vector<const parts::KeyLength*> lengths;
  Vec2 along;
};

bool all_running(const Chain& chain) {
  return std::ranges::all_of(chain.lengths, [&](const parts::KeyLength* length) {
    return !length->overall && norm(length->from - chain.lengths.front()->from) < 1e-6;
  });
}

drafting::Row base_row(const Elevation& e, const Chain& chain, Vec2 out) {
  drafting::Row row;
  row.chain = chain.lengths.front()->chain;
  row.along = chain.along;
  row.out = out;
  for (const parts::KeyLength* length : chain.lengths) {
    row.stations.push_back(e.view.project(length->from));
    row.stations.push_back(e.view.project(length->to));
  }
  return row;
}

std::vector<drafting::Row>& side_of(Elevation& e, Vec2 out) {
  if (out.y < -0.5) return e.below;
  if (out.y > 0.5) return e.above;
  return out.x < 0 ? e.left : e.right;
}

// Horizontal lengths go below unless they lie in the upper half, upright ones to the left unless
// they lie at the right edge.
Vec2 side_for(const Elevation& e, const Chain& chain) {
  const parts::KeyLength& first = *chain.lengths.front();
  const Vec2 mid = (e.view.project(first.from) + e.view.project(first.to)) * 0.5;
  const Vec2 centre = drafting::middle(e.box);
  if (std::abs(chain.along.x) > 0.5)
    return mid.y > centre.y + e.box.height() / 4 ? Vec2{0, 1} : Vec2{0, -1};
  return mid.x > centre.x + e.box.width() / 4 ? Vec2{1, 0} : Vec2{-1, 0};
}

// Does the view already have a dimension between these two places along a direction?
bool measured(const Elevation& e, Vec2 along, double low, double high) {
  constexpr double near = 0.01;  // mm
  for (const auto* rows : {&e.below, &e.above, &e.left, &e.right})
    for (const drafting::Row& row : *rows) {
      if (std::abs(dot(row.along, along)) < 0.5 || row.kind != drafting::RowKind::overall) continue;
      const double a = dot(along, row.stations[0]), b = dot(along, row.stations[1]);
      if (std::abs(std::min(a, b) - low) < near && std::abs(std::max(a, b) - high) < near)
        return true;
    }
  return false;
}

void add_chain(Elevation& e, const Chain& chain) {
  const Vec2 out = side_for(e, chain);
  drafting::Row row = base_row(e, chain, out);
  std::vector<drafting::Row>& rows = side_of(e, out);
  if (all_running(chain)) {
    row.kind = drafting::RowKind::running;
    row.has_datum = true;
    row.datum = dot(row.along, e.view.project(chain.lengths.front()->from));
    rows.insert(rows.begin(), row);  // the finest nearest to the view
    return;
  }
  drafting::Row overall = row;
  overall.kind = drafting::RowKind::overall;
  const auto by_along = [&](Vec2 a, Vec2 b) { return dot(row.along, a) < dot(row.along, b); };
  const auto [low, high] = std::ranges::minmax_element(row.stations, by_along);
  overall.stations = {*low, *high};
  if (chain.lengths.size() == 1 &&
      measured(e, row.along, dot(row.along, *low), dot(row.along, *high)))
    return;
  if (chain.lengths.size() > 1) rows.insert(rows.begin(), row);
  // The shorter one nearer to the view, so that no extension line crosses a dimension line.
  const auto span = [](const drafting::Row& of) {
    return std::abs(dot(of.along, of.stations.back() - of.stations.front()));
  };
  rows.insert(std::ranges::find_if(rows,
                                   [&](const drafting::Row& other) {
                                     return other.kind == drafting::RowKind::overall &&
                                            span(other) > span(overall) + true_to;
                                   }),
              overall);
}

void add_lengths(Elevation& e, const std::vector<const parts::KeyLength*>& lengths) {
  std::map<std::pair<std::string, bool>, Chain> chains;
  std::vector<std::pair<std::string, bool>> order;
  for (const parts::KeyLength* length : lengths) {
    const Vec2 run = e.view.project(length->to) - e.view.project(length->from);
    const Vec2 along{std::abs(run.x), std::abs(run.y)};
    if (along.x > true_to * norm(run) && along.y > true_to * norm(run)) {
      e.sloped.push_back({e.view.project(length->from), e.view.project(length->to)});
      continue;
    }
    const std::pair key{length->chain, along.x > along.y};
    if (!chains.contains(key)) order.push_back(key);
    chains[key].lengths.push_back(length);
    chains[key].along = key.second ? Vec2{1, 0} : Vec2{0, 1};
  }
  for (const auto& key : order) add_chain(e, chains[key]);
}

// The same two ends measured twice under two names are one dimension.
bool repeats(const parts::KeyLength& a, const parts::KeyLength& b) {
  const auto near = [](Vec3 p, Vec3 q) { return norm(p - q) < 1e-6; };
  return (near(a.from, b.from) && near(a.to, b.to)) || (near(a.from, b.to) && near(a.to, b.from));
}

// Inner places are seen best where the piece is cut open; whole sizes from outside.
Elevation* view_for(const parts::KeyLength& length, ElevationSet& set) {
  const Vec3 run = length.to - length.from;
  std::vector<Elevation*> order{&set.front, &set.side, &set.plan};
  if (!length.overall) order = {&set.section_a, &set.section_b, &set.plan};
  const auto found =
      std::ranges::find_if(order, [&](const Elevation* e) { return is_true(run, e->view); });
  return found == order.end() ? nullptr : *found;
}

void give_lengths(const parts::Assembly& assembly, ElevationSet& set) {
  std::map<Elevation*, std::vector<const parts::KeyLength*>> given;
  std::vector<const parts::KeyLength*> done;
  for (const parts::KeyLength& length : assembly.lengths) {
    if (norm(length.to - length.from) < 1e-6) continue;
    if (std::ranges::any_of(done, [&](const auto* d) { return repeats(*d, length); })) continue;
    done.push_back(&length);
    if (Elevation* e = view_for(length, set)) given[e].push_back(&length);
  }
  for (Elevation* e : {&set.front, &set.side, &set.plan, &set.section_a, &set.section_b})
    add_lengths(*e, given[e]);
}

// The view's whole width and height, when no row gives them.
void ensure_overall(Elevation& e, bool across, bool up) {
  const auto given = [&](Vec2 along, double low, double high) {
    return measured(e, along, low, high);
  };
  drafting::Row row;
  row.kind = drafting::RowKind::overall;
  if (across && !given({1, 0}, e.box.low.x, e.box.high.x)) {
    row.stations = {e.box.low, {e.box.high.x, e.box.low.y}};
    e.below.push_back(row);
  }
  if (up && !given({0, 1}, e.box.low.y, e.box.high.y)) {
    row.stations = {e.box.low, {e.box.low.x, e.box.high.y}};
    row.along = {0, 1};
    row.out = {-1, 0};
    e.left.push_back(row);
  }
}

double distance_to(Vec2 p, Vec2 a, Vec2 b) {
  const Vec2 run = b - a;
  const double length = dot(run, run);
  const double at = length > 0 ? std::clamp(dot(p - a, run) / length, 0.0, 1.0) : 0;
  return norm(p - (a + run * at));
}

// A section shows nothing of what stands in front of its plane: whether it has a line at the point.
bool has_line_at(const Elevation& section, Vec3 at) {
  constexpr double near = 0.5;
  const Vec2 p = section.view.project(at);
  const auto passes = [&](Vec2 a, Vec2 b) { return distance_to(p, a, b) < near; };
  for (const std::vector<drafting::Loops>& part : section.section->parts)
    for (const drafting::Loops& face : part)
      for (const std::vector<Vec2>& loop : face)
        for (std::size_t i = 0; i < loop.size(); ++i)
          if (passes(loop[i], loop[(i + 1) % loop.size()])) return true;
  return std::ranges::any_of(section.section->beyond, [&](const ViewLine& line) {
    return !line.hidden && passes(line.a, line.b);
  });
}

// An angle with a plumb leg is a lean and belongs to the outside view; corners are seen in the cut,
// unless it has taken them away.
void give_angles(const parts::Assembly& assembly, ElevationSet& set) {
  const auto plumb = [](Vec3 v) { return norm(cross(v, {0, 0, 1})) < true_to * norm(v); };
  for (const parts::NamedAngle& angle : assembly.angles) {
    if (is_square(angle)) continue;
    std::vector<Elevation*> order{&set.section_a, &set.section_b, &set.front, &set.side, &set.plan};
    if (plumb(angle.from) || plumb(angle.to)) order = {&set.front, &set.side};
    const auto shown = std::ranges::find_if(order, [&](const Elevation* e) {
      return is_true(angle.from, e->view) && is_true(angle.to, e->view) &&
             (!e->section || has_line_at(*e, angle.at));
    });
    if (shown != order.end()) (*shown)->angles.push_back(angle);
  }
}

Elevation elevation(const std::string& title, const View& view, const std::vector<Solid>& solids) {
  Elevation e;
  e.title = title;
  e.view = view;
  e.lines = hidden_lines(solids, view);
  e.box = drafting::view_box(e.lines);
  return e;
}

Elevation section(const std::string& title, const ChosenCut& cut,
                  const std::vector<Solid>& solids) {
  Elevation e;
  e.title = title;
  e.view = cut.view;
  e.section = drafting::cut_section(solids, cut.plane, cut.view);
  e.box = drafting::view_box(e.section->beyond);
  return e;
}

// Where a view sees a cutting plane edge on, from edge to edge of the view.
CutLine cut_line(const Elevation& e, const ChosenCut& cut, const std::string& letter) {
  const Vec2 normal = e.view.project(cut.plane.n);
  const Vec2 along = std::abs(normal.x) > 0.5 ? Vec2{0, 1} : Vec2{1, 0};
  const Vec2 on_plane = normal * cut.plane.d;
  const auto end = [&](Vec2 corner) { return on_plane + along * dot(along, corner); };
  return {end(e.box.low), end(e.box.high), -normal, letter};
}

}  // namespace

bool is_square(const parts::NamedAngle& angle) {
  return std::abs(angle.radians - std::numbers::pi / 2) < true_to;
}

ElevationSet elevations_of(const Context& context) {
  const bool third_angle = *context.job().units == Unit::inch;
  const View side_view = third_angle ? View::right_side() : View::left();
  const std::vector<Solid> solids = placed_solids(context.plan.assembly);
  const ChosenCut a = choose_cut(solids, View::front()), b = choose_cut(solids, side_view);
  ElevationSet set;
  set.front = elevation("Front", View::front(), solids);
  set.side = elevation(third_angle ? "Right side" : "Left side", side_view, solids);
  set.plan = elevation("Plan", View::top(), solids);
  set.section_a = section("Section A–A", a, solids);
  set.section_b = section("Section B–B", b, solids);
  set.plan.cut_lines = {cut_line(set.plan, a, "A"), cut_line(set.plan, b, "B")};
  give_lengths(context.plan.assembly, set);
  give_movement(context.plan.assembly, set.front);
  give_movement(context.plan.assembly, set.side);
  give_movement(context.plan.assembly, set.plan);
  ensure_overall(set.front, true, true);
  ensure_overall(set.side, true, false);
  give_angles(context.plan.assembly, set);
  return set;
}

}  // namespace splay::sheets
