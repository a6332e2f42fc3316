#include <algorithm>
#include <array>
#include <cmath>
#include <map>

#include "sheets/elevation_view.h"

namespace splay::sheets {

namespace {

constexpr double true_to = 1e-6;  // a direction's part along the line of sight

bool is_true(Vec3 v, const View& view) { return std::abs(dot(v, view.toward)) < true_to * norm(v); }

// The section plane that meets most parts: square to the front's line of sight or to the side's,
// through the middle or a quarter off it, the earlier one when they meet as many.
struct Cut {
  View view;
  Plane plane;
  std::size_t met = 0;
};

Cut choose_cut(const std::vector<Solid>& solids, const View& side) {
  Cut best;
  for (const View& view : {View::front(), side}) {
    for (const double part : {0.5, 0.4, 0.6, 0.3}) {
      double low = 1e300, high = -1e300;
      for (const Solid& solid : solids) {
        const auto [from, to] = solid.extent(view.toward);
        low = std::min(low, from);
        high = std::max(high, to);
      }
      const Plane plane{view.toward, low + (high - low) * part};
      const auto met = static_cast<std::size_t>(std::ranges::count_if(
          solids, [&](const Solid& solid) { return !solid.section(plane).empty(); }));
      if (met > best.met) best = {view, plane, met};
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
  if (chain.lengths.size() > 1) rows.insert(rows.begin(), row);
  rows.push_back(overall);
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

void give_lengths(const parts::Assembly& assembly, ElevationSet& set) {
  const std::array<Elevation*, 4> views{&set.front, &set.side, &set.plan, &set.section};
  std::array<std::vector<const parts::KeyLength*>, 4> given;
  std::vector<const parts::KeyLength*> done;
  for (const parts::KeyLength& length : assembly.lengths) {
    if (norm(length.to - length.from) < 1e-6) continue;
    if (std::ranges::any_of(done, [&](const auto* d) { return repeats(*d, length); })) continue;
    done.push_back(&length);
    // Inner places are seen best where the piece is cut open.
    const bool inner = !length.overall;
    if (inner && is_true(length.to - length.from, set.section.view)) {
      given[3].push_back(&length);
      continue;
    }
    for (std::size_t i = 0; i < views.size(); ++i) {
      if (!is_true(length.to - length.from, views[i]->view)) continue;
      given[i].push_back(&length);
      break;
    }
  }
  for (std::size_t i = 0; i < views.size(); ++i) add_lengths(*views[i], given[i]);
}

// The view's whole width and height, when no row gives them.
void ensure_overall(Elevation& e, bool across, bool up) {
  const auto given = [&](Vec2 along, double low, double high) {
    for (const auto* rows : {&e.below, &e.above, &e.left, &e.right})
      for (const drafting::Row& row : *rows) {
        if (std::abs(dot(row.along, along)) < 0.5 || row.kind != drafting::RowKind::overall)
          continue;
        const double a = dot(along, row.stations[0]), b = dot(along, row.stations[1]);
        if (std::abs(std::min(a, b) - low) < 0.01 && std::abs(std::max(a, b) - high) < 0.01)
          return true;
      }
    return false;
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

void give_angles(const parts::Assembly& assembly, ElevationSet& set) {
  const std::array<Elevation*, 4> views{&set.front, &set.side, &set.plan, &set.section};
  for (const parts::NamedAngle& angle : assembly.angles) {
    const auto shown = std::ranges::find_if(views, [&](const Elevation* e) {
      return is_true(angle.from, e->view) && is_true(angle.to, e->view);
    });
    if (shown == views.end())
      set.untrue.push_back(angle);
    else
      (*shown)->angles.push_back(angle);
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

Elevation section(const Cut& cut, const std::vector<Solid>& solids) {
  Elevation e;
  e.title = "Section A–A";
  e.view = cut.view;
  e.section = drafting::cut_section(solids, cut.plane, cut.view);
  e.box = drafting::view_box(e.section->beyond);
  return e;
}

// Where a view sees the cutting plane edge on, from edge to edge of the view.
CutLine cut_line(const Elevation& e, const Cut& cut) {
  const Vec2 normal = e.view.project(cut.plane.n);
  const Vec2 along = std::abs(normal.x) > 0.5 ? Vec2{0, 1} : Vec2{1, 0};
  const Vec2 on_plane = normal * cut.plane.d;
  const auto end = [&](Vec2 corner) { return on_plane + along * dot(along, corner); };
  return {end(e.box.low), end(e.box.high), -normal, "A"};
}

}  // namespace

ElevationSet elevations_of(const Context& context) {
  const bool third_angle = *context.job().units == Unit::inch;
  const View side_view = third_angle ? View::right_side() : View::left();
  const std::vector<Solid> solids = placed_solids(context.plan.assembly);
  const Cut cut = choose_cut(solids, side_view);
  ElevationSet set;
  set.front = elevation("Front", View::front(), solids);
  set.side = elevation(third_angle ? "Right side" : "Left side", side_view, solids);
  set.plan = elevation("Plan", View::top(), solids);
  set.section = section(cut, solids);
  set.plan.cut_line = cut_line(set.plan, cut);
  give_lengths(context.plan.assembly, set);
  ensure_overall(set.front, true, true);
  ensure_overall(set.side, true, false);
  give_angles(context.plan.assembly, set);
  return set;
}

}  // namespace splay::sheets
