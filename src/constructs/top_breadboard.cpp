// Breadboard ends: a tongue in a groove, fixed in the middle, free to move elsewhere.
#include <algorithm>
#include <cmath>

#include "constructs/top_build.h"
#include "joinery/bed.h"
#include "joinery/draft.h"
#include "joinery/joint.h"
#include "model/movement.h"

namespace splay::constructs {

// An end, in the world: `way` along the panel's grain out of it.
struct TopBuild::End {
  std::string name;
  Vec3 way, across;
  double outer = 0, shoulder = 0;  // along `way`
  double low = 0, high = 0;        // along `across`: the top's edges
  double tongue_low = 0, tongue_high = 0, tongue = 0, movement = 0;
};

// A top that its middle holds goes half of it to either side, at the worst of both seasons.
double TopBuild::movement_of(double width) const {
  const model::Stock* stock = builder_.project().stocks.find(*spec_.stock);
  const bool solid = stock != nullptr && *stock->kind == model::StockKind::board;
  const double rate = solid ? stock->timber.across_coefficient() : 0;
  return std::max(width / 96,
                  model::movement(width, rate, 0, model::most_points(builder_.project().room)));
}

std::vector<TopBuild::End> TopBuild::ends() const {
  const Breadboard& spec = spec_.breadboard;
  const bool along_x = spec_.grain.value == TopGrain::across;
  std::vector<End> result;
  for (const bool far : {false, true}) {
    End end;
    end.name = along_x ? (far ? "right" : "left") : (far ? "back" : "front");
    const std::vector<std::string>& wanted = *spec.ends;
    if (!wanted.empty() && std::find(wanted.begin(), wanted.end(), end.name) == wanted.end())
      continue;
    end.way = (along_x ? Vec3{1, 0, 0} : Vec3{0, 1, 0}) * (far ? 1 : -1);
    end.across = along_x ? Vec3{0, 1, 0} : Vec3{1, 0, 0};
    end.outer = far ? (along_x ? high_.x : high_.y) : -(along_x ? low_.x : low_.y);
    end.shoulder = end.outer - spec.width->mm;
    end.low = along_x ? low_.y : low_.x;
    end.high = along_x ? high_.y : high_.x;
    end.tongue = spec.tongue_thickness.given ? spec.tongue_thickness->mm : thick_ / 3;
    end.tongue_low = under_ + (thick_ - end.tongue) / 2;
    end.tongue_high = end.tongue_low + end.tongue;
    end.movement = spec.movement.given ? spec.movement->mm : movement_of(end.high - end.low);
    result.push_back(end);
  }
  return result;
}

bool TopBuild::check_breadboard() const {
  const Breadboard& spec = spec_.breadboard;
  const auto refused = [&](std::string text, std::string remedy) {
    return stop("no-breadboard", std::move(text), std::move(remedy), spec.span);
  };
  for (const TopEdge& side : edges_)
    if (side.curve < 0 && std::min(std::abs(side.out().x), std::abs(side.out().y)) > 1e-9)
      return refused("Breadboard ends need a rectangular top, and " + spec_.name +
                         " has a slanting " + side.name + " side.",
                     "Leave them out, or use a rectangle.");
  if (spec.stock.given && std::abs(stock_thickness(builder_, *spec.stock) - thick_) > 1e-6)
    return refused("The end boards of " + spec_.name + " are not as thick as it is.",
                   "Use a stock of the same thickness.");
  for (const End& end : ends()) {
    if (end.tongue > thick_ - 2)
      return refused("The tongue of " + spec_.name + " is as thick as the top.",
                     "A third of the thickness is usual.");
    if (spec.tongue_length->mm + spec.bottom_gap->mm > spec.width->mm - 5)
      return refused("The groove for the tongue of " + spec_.name + " leaves under 5 mm of the " +
                         joinery::figure(builder_, spec.width->mm) + " wide end board.",
                     "A shorter tongue or a wider board.");
    if (spec.pin->mm * 2 > spec.tongue_length->mm)
      return refused("Pins of " + joinery::figure(builder_, spec.pin->mm) +
                         " leave too little of a tongue " +
                         joinery::figure(builder_, spec.tongue_length->mm) + " long.",
                     "Pins at most half as thick as the tongue is long.");
    const double pitch = (end.high - end.low) / *spec.pins;
    if (spec.pin->mm + end.movement > pitch / 2 ||
        (spec.stopped.given && 2 * spec.stopped->mm > end.high - end.low - pitch))
      return refused("The pins of " + spec_.name + " have no room for their slots.",
                     "Fewer pins, or a tongue stopped nearer the edges.");
    if (spec.stopped.given && spec.stopped->mm < end.movement / 2 + 2)
      return refused("A tongue stopped " + joinery::figure(builder_, spec.stopped->mm) +
                         " from the edges has no room to move by " +
                         joinery::figure(builder_, end.movement / 2) + ".",
                     "Stop it further in.");
  }
  return true;
}

void TopBuild::cut_tongue(int panel, const End& end) {
  const Plane shoulder{end.way, end.shoulder};
  const std::string name = "shoulder at the " + end.name + " end";
  for (const bool upper : {false, true}) {
    parts::Operation operation;
    operation.kind = parts::OperationKind::shoulder;
    operation.name = name;
    operation.cut = shoulder;
    operation.removed = {shoulder.flipped(), upper ? Plane{{0, 0, -1}, -end.tongue_high}
                                                   : Plane{{0, 0, 1}, end.tongue_low}};
    builder_.shape(panel, operation);
  }
  if (!spec_.breadboard.stopped.given) return;
  const double back = spec_.breadboard.stopped->mm;
  for (const bool high : {false, true}) {
    const Plane beside =
        high ? Plane{-end.across, -(end.high - back)} : Plane{end.across, end.low + back};
    parts::Operation operation;
    operation.kind = parts::OperationKind::shoulder;
    operation.name = name;
    operation.cut = shoulder;
    operation.removed = {shoulder.flipped(), beside};
    builder_.shape(panel, operation);
  }
}

void TopBuild::join_end(int panel, int board, const End& end) {
  const Breadboard& spec = spec_.breadboard;
  const std::string name = joinery::joint_name(builder_, board, panel);
  parts::Trench groove;
  const double deep = spec.tongue_length->mm + spec.bottom_gap->mm;
  groove.open = joinery::nearest_side(builder_.part(board), -end.way);
  groove.floor = {-end.way, -(end.shoulder + deep)};
  groove.walls = {{{0, 0, 1}, end.tongue_low}, {{0, 0, -1}, -end.tongue_high}};
  groove.shallow = groove.deep = deep;
  if (spec.stopped.given) {
    const double stop = spec.stopped->mm - end.movement / 2;
    groove.stops = {{end.across, end.low + stop}, {-end.across, -(end.high - stop)}};
  }
  Region removed = {groove.floor.flipped()};
  for (const auto* planes : {&groove.walls, &groove.stops})
    for (const Plane& plane : *planes) removed.push_back(plane.flipped());
  builder_.cut_trench(board, parts::OperationKind::groove, removed, groove,
                      "groove for the tongue of " + builder_.part(panel).name, name);
  builder_.add_joint({name,
                      "tongue and groove",
                      {board, panel},
                      0,
                      {{panel, board, {end.way, end.shoulder}},
                       {panel, board, {{0, 0, 1}, end.tongue_high}},
                       {panel, board, {{0, 0, -1}, -end.tongue_low}}}});
}

// Blind pins from the underside. The tongue's slots run across its grain.
void TopBuild::pin_end(int panel, int board, const End& end) {
  const Breadboard& spec = spec_.breadboard;
  const double d = spec.pin->mm;
  const double top = (end.tongue_high + under_ + thick_) / 2;
  const std::string joint = joinery::joint_name(builder_, board, panel);
  const FigureStyle style = builder_.project().job.figures();
  for (int i = 0; i < *spec.pins; ++i) {
    const double place = end.low + (end.high - end.low) * (i + 0.5) / *spec.pins;
    const double along = end.shoulder + spec.tongue_length->mm / 2;
    const Vec3 at = end.way * along + end.across * place + Vec3{0, 0, under_};
    const std::vector<Plane> facets = joinery::cylinder(at, {0, 0, 1}, d / 2);
    Region hole = facets;
    hole.push_back({{0, 0, 1}, top});
    builder_.cut_region(board, parts::OperationKind::hole, hole, "pin hole", joint, facets);
    const bool middle = 2 * i + 1 == *spec.pins;
    const double half = (d + end.movement) / 2;
    const Region slot = {{end.way, along + d / 2},
                         {-end.way, -(along - d / 2)},
                         {end.across, place + half},
                         {-end.across, -(place - half)}};
    if (middle)
      builder_.cut_region(panel, parts::OperationKind::hole, hole, "hole for the fixed pin", joint,
                          facets);
    else
      builder_.cut_region(panel, parts::OperationKind::mortise, slot, "slot for a sliding pin",
                          joint);
    builder_.add_fitting({"dowel",
                          style.text(d) + " x " + style.with_unit(top - under_),
                          at,
                          {0, 0, 1},
                          d,
                          top - under_,
                          {board, panel},
                          joint});
  }
  builder_.remark(board, "Glue only the middle pin and the tongue beside it; the others slide by " +
                             style.with_unit(end.movement / 2) + " either way");
}

bool TopBuild::build_with_ends() {
  if (!check_breadboard()) return false;
  const bool along_x = spec_.grain.value == TopGrain::across;
  const std::vector<End> found = ends();
  Vec2 low = low_, high = high_;  // of the panel with its tongues
  for (const End& end : found) {
    const double reach = end.shoulder + spec_.breadboard.tongue_length->mm;
    (end.way.x + end.way.y > 0 ? (along_x ? high.x : high.y) : (along_x ? low.x : low.y)) =
        (end.way.x + end.way.y) * reach;
  }
  if ((along_x ? high.x - low.x : high.y - low.y) < 4 * spec_.breadboard.tongue_length->mm)
    return stop("no-breadboard", "The end boards leave nothing of " + spec_.name + " between them.",
                "Narrower end boards.", spec_.breadboard.span);
  const int panel = add_slab("top", *spec_.stock, low, high, along_x);
  trim(panel);
  const std::string& stock = spec_.breadboard.stock.given ? *spec_.breadboard.stock : *spec_.stock;
  for (const End& end : found) {
    const Vec3 a = end.way * end.shoulder + end.across * end.low;
    const Vec3 b = end.way * end.outer + end.across * end.high;
    const int board =
        add_slab(end.name + " end board", stock, {std::min(a.x, b.x), std::min(a.y, b.y)},
                 {std::max(a.x, b.x), std::max(a.y, b.y)}, !along_x);
    trim(board);
    cut_tongue(panel, end);
    join_end(panel, board, end);
    pin_end(panel, board, end);
  }
  return true;
}

}  // namespace splay::constructs
