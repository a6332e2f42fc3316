// Hinges: where they stand, the line they turn about, and what is cut for them.
#include <algorithm>
#include <cmath>

#include "base/tolerance.h"
#include "constructs/door_build.h"
#include "constructs/section.h"

namespace splay::constructs {

namespace {

constexpr double least_facing = 0.3;  // of an edge that hinges can stand on, cosine
constexpr double in_line = 0.01;      // mm off one line that hinges still turn in
constexpr double plumb_to = 1e-5;     // radians
constexpr double usual_reach = 760;   // mm of height for each hinge but the first

// The edge that looks to the hinge side at a height: the outermost of them.
std::optional<DoorHinge> on_edge(const DoorLeaf& leaf, double z) {
  const double sense = leaf.left ? -1 : 1;
  std::optional<DoorHinge> best;
  for (std::size_t i = 0; i < leaf.shape.size(); ++i) {
    const Vec2 out = edge_out(leaf.shape, i);
    const Vec2 a = leaf.shape[i], b = leaf.shape[(i + 1) % leaf.shape.size()];
    if (out.x * sense < least_facing || z < std::min(a.y, b.y) || z > std::max(a.y, b.y)) continue;
    const Vec2 at = a + (b - a) * ((z - a.y) / (b.y - a.y));
    if (best && (at.x - best->at.x) * sense <= 0) continue;
    const Vec2 along = edge_direction(leaf.shape, i);
    best = DoorHinge{at, along.y < 0 ? -along : along, out};
  }
  return best;
}

}  // namespace

bool DoorBuild::lay_hinges(DoorLeaf& leaf) const {
  const DoorHinges& hinges = spec_.hinges;
  double foot = 1e300, head = -1e300;
  for (std::size_t i = 0; i < leaf.shape.size(); ++i) {
    const Vec2 out = edge_out(leaf.shape, i);
    if (out.x * (leaf.left ? -1 : 1) < least_facing) continue;
    for (const Vec2 p : {leaf.shape[i], leaf.shape[(i + 1) % leaf.shape.size()]}) {
      foot = std::min(foot, p.y);
      head = std::max(head, p.y);
    }
  }
  double lowest = 1e300;
  for (const Vec2 p : leaf.shape) lowest = std::min(lowest, p.y);
  const bool butt = hinges.kind.value == HingeKind::butt;
  const double half = butt ? hinge_length(hinges) / 2 : or_else(hinges.cup, 35) / 2;
  std::vector<double> places;
  if (hinges.at.given) {
    for (const Length& each : *hinges.at) places.push_back(lowest + each.mm);
  } else if (hinges.kind.value == HingeKind::pivot) {
    places = {foot, head};
  } else {
    const int more = static_cast<int>(std::ceil((head - foot) / usual_reach - 1e-9));
    const int count = hinges.count.given ? *hinges.count : std::max(2, more);
    const double end =
        butt ? or_else(hinges.from_ends, 2 * half) + half : or_else(hinges.from_ends, 100);
    for (int i = 0; i < count; ++i)
      places.push_back(foot + end + (head - foot - 2 * end) * i / (count - 1));
  }
  const double between = hinges.kind.value == HingeKind::pivot ? 0 : 2 * half;
  for (std::size_t i = 0; i < places.size(); ++i) {
    const double inside = hinges.kind.value == HingeKind::pivot ? 0 : half;
    const auto found = on_edge(leaf, places[i]);
    if (!found || places[i] - inside < foot - 1e-6 || places[i] + inside > head + 1e-6 ||
        (i > 0 && places[i] - places[i - 1] < between))
      return stop("hinges-have-no-room",
                  "The hinges of " + words(leaf) + " have no room on its hinge edge, which is " +
                      figure(std::max(0.0, head - foot)) + " high.",
                  "Fewer, shorter, or nearer to its ends; `at` from the lowest to the highest.",
                  hinges.at.given ? hinges.at.span : hinges.span);
    leaf.hinges.push_back(*found);
  }
  return true;
}

bool DoorBuild::lay_line(DoorLeaf& leaf) const {
  const DoorHinges& hinges = spec_.hinges;
  const DoorHinge& first = leaf.hinges.front();
  const double radius = barrel(hinges) / 2;
  double out = 0, front = 0;
  switch (hinges.kind.value) {
    case HingeKind::butt:
      out = over() ? radius : gap_at(first.out) / 2;
      front = over() ? -thick_ : radius;
      break;
    case HingeKind::cup:
      break;
    case HingeKind::pivot:
      out = -20;
      front = -thick_ / 2;
      break;
  }
  out = or_else(hinges.line_out, out);
  const double y = y_[0] - or_else(hinges.line_in_front, front);
  if (hinges.kind.value != HingeKind::pivot) {
    leaf.line_at = lift(first.at + first.out * out, y);
    leaf.line_along = lift_direction(first.along);
    return true;
  }
  // Plumb, as far inside the innermost of the hinge edge's ends as asked.
  const double sense = leaf.left ? -1 : 1;
  double x = first.at.x;
  for (const DoorHinge& each : leaf.hinges)
    x = sense < 0 ? std::max(x, each.at.x) : std::min(x, each.at.x);
  leaf.line_at = {x + sense * out, y, first.at.y};
  leaf.line_along = {0, 0, 1};
  return true;
}

bool DoorBuild::check_line(const DoorLeaf& leaf) const {
  if (spec_.hinges.kind.value == HingeKind::pivot) return true;
  const DoorHinge& first = leaf.hinges.front();
  double off = 0;
  for (const DoorHinge& each : leaf.hinges) {
    off = std::max(off, std::abs(cross(first.along, each.at - first.at)));
    if (std::abs(cross(first.along, each.along)) > plumb_to)
      off = std::max(off, std::abs(cross(each.along, each.at - first.at)));
  }
  const SourceSpan where = spec_.hinges.given ? spec_.hinges.span : spec_.span;
  if (off > in_line)
    return stop("hinges-not-in-line",
                "The hinges of " + words(leaf) + " stand " + figure(off) +
                    " off one line, on edges that turn: it can't open.",
                "Put all of them on one edge (hinges.at), or hang it on pivots.", where);
  const double lean = std::atan2(std::abs(first.along.x), first.along.y);
  if (lean < plumb_to) return true;
  // How far the corner furthest from the line sinks or rises by the time the door stands square.
  double most = 0;
  for (const Vec2 p : leaf.shape) {
    const double away = std::abs(cross(first.along, p - first.at));
    most = std::max(most, away * std::sin(lean));
  }
  const bool drops = (first.along.x > 0) != leaf.left;
  const std::string text =
      "The hinge line of " + words(leaf) + " leans " + degrees_text(Angle{lean}.degrees()) +
      " from plumb: by its weight the door falls " + (drops ? "open" : "shut") +
      ", and its free edge " + (drops ? "drops " : "climbs ") + figure(most) +
      " by the time it stands square to the front.";
  if (spec_.hinges.may_lean.value) {
    builder_.report({Level::caution,
                     "hinge-line-leans",
                     {spec_.name},
                     text,
                     "A stay or catch that holds it, or pivots on a plumb line.",
                     where});
    return true;
  }
  return stop("hinge-line-leans", text,
              "Hang it on the plumb side, on pivots (kind = \"pivot\"), or on a plumb stile beside "
              "it; may_lean = true if it should.",
              where);
}

}  // namespace splay::constructs
