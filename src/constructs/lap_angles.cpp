#include "constructs/lap_angles.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

#include "base/tolerance.h"
#include "constructs/orientation.h"

namespace splay::constructs {

namespace {

using parts::Part;

// A side of the body along its length, in the part frame.
struct LongSide {
  Plane plane;
  std::string name;
};

std::vector<LongSide> long_sides(const Part& part) {
  std::vector<LongSide> sides;
  const Box box = part.body.bounds();
  for (const parts::Operation& operation : part.operations)
    if (operation.kind == parts::OperationKind::edge_cut) {
      const std::size_t comma = operation.name.find(", ");
      sides.push_back({operation.cut, comma == std::string::npos
                                          ? operation.name
                                          : operation.name.substr(comma + 2)});
    }
  for (int i = 2; i < 6; ++i) {
    const auto side = static_cast<parts::Side>(i);
    const Vec3 n = parts::outward(side), corner = (i & 1) != 0 ? box.high : box.low;
    const bool cut = std::any_of(sides.begin(), sides.end(), [&](const LongSide& each) {
      return each.name == part.side_names[static_cast<std::size_t>(i)];
    });
    if (!cut) sides.push_back({{n, dot(n, corner)}, part.side_names[static_cast<std::size_t>(i)]});
  }
  return sides;
}

double off_square(Vec3 line, Vec3 length) {
  return std::abs(std::numbers::pi / 2 - angle_between(line, length));
}

// Where three planes meet.
std::optional<Vec3> corner_of(const Plane& a, const Plane& b, const Plane& c) {
  const double volume = dot(a.n, cross(b.n, c.n));
  if (std::abs(volume) < 1e-12) return std::nullopt;
  return (cross(b.n, c.n) * a.d + cross(c.n, a.n) * b.d + cross(a.n, b.n) * c.d) * (1 / volume);
}

// How far each wall is from the part's first end, along the straight edge on the lap's face.
void measure_walls(parts::Builder& builder, int index, const parts::Operation& lap,
                   const LongSide& face, const LongSide& edge, const std::string& other) {
  const Part& part = builder.part(index);
  Plane end{{-1, 0, 0}, -part.body.bounds().low.x};
  for (const parts::Operation& operation : part.operations)
    if (operation.kind == parts::OperationKind::end_cut && operation.cut.n.x < 0)
      end = operation.cut;
  const std::optional<Vec3> start = corner_of(face.plane, edge.plane, end);
  std::vector<double> reach;
  for (const Plane& wall : lap.trench.walls)
    if (const auto at = corner_of(face.plane, edge.plane, wall); at && start)
      reach.push_back(at->x - start->x);
  std::sort(reach.begin(), reach.end());
  if (reach.size() != 2) return;
  const std::string from = ", from the " + part.side_names[0] + " along the " + edge.name;
  builder.measure(index, "near wall of the lap for " + other + from, reach[0]);
  builder.measure(index, "far wall of the lap for " + other + from, reach[1]);
}

}  // namespace

LapLines lap_lines(const Part& part, const parts::Operation& lap) {
  const Vec3 out = parts::outward(lap.trench.open);
  LapLines lines;
  const Vec3 wall = unit(cross(lap.trench.walls.front().n, out));
  for (const Plane& each : lap.trench.walls)
    lines.parallel = lines.parallel && std::abs(dot(unit(cross(each.n, out)), wall)) > 1 - 1e-12;
  lines.off_square = off_square(wall, {1, 0, 0});
  for (const LongSide& side : long_sides(part)) {
    if (std::abs(dot(side.plane.n, out)) > 0.7) continue;
    const Vec3 edge = cross(side.plane.n, out);
    const double taper = angle_between(edge, {1, 0, 0});
    lines.edges.push_back(
        {side.name, std::min(taper, std::numbers::pi - taper), off_square(wall, edge)});
  }
  return lines;
}

namespace {

const parts::Operation* find_lap(const Part& part, const std::string& other) {
  const auto found = std::find_if(
      part.operations.rbegin(), part.operations.rend(), [&](const parts::Operation& operation) {
        return operation.name == "lap for " + other && !operation.trench.walls.empty();
      });
  return found == part.operations.rend() ? nullptr : &*found;
}

std::string words_of(const LapLines& lines, const LapEdge* straight) {
  std::string text = off_square_words(lines.off_square) + " to the length";
  text += straight != nullptr
              ? ", set from the " + straight->name
              : ", set from the blank's edges before tapering, or from the centre line";
  for (const LapEdge& edge : lines.edges)
    if (!edge.straight())
      text += "; " + off_square_words(edge.off_square) + " to the " + edge.name +
              ", which tapers " + degrees_of(edge.taper);
  if (!lines.parallel) text += "; its walls are not parallel";
  return text + ".";
}

}  // namespace

void state_lap(parts::Builder& builder, int index, int other) {
  const std::string& name = builder.part(other).name;
  const parts::Operation* lap = find_lap(builder.part(index), name);
  if (lap == nullptr) return;
  const LapLines lines = lap_lines(builder.part(index), *lap);
  const auto straight = std::find_if(lines.edges.begin(), lines.edges.end(),
                                     [](const LapEdge& edge) { return edge.straight(); });
  const bool none = straight == lines.edges.end();
  builder.remark(index,
                 "Lap for " + name + ": walls " + words_of(lines, none ? nullptr : &*straight));
  if (none) return;
  const Vec3 out = parts::outward(lap->trench.open);
  const std::vector<LongSide> sides = long_sides(builder.part(index));
  const auto face =
      std::max_element(sides.begin(), sides.end(), [&](const LongSide& a, const LongSide& b) {
        return dot(a.plane.n, out) < dot(b.plane.n, out);
      });
  const auto edge = std::find_if(sides.begin(), sides.end(),
                                 [&](const LongSide& side) { return side.name == straight->name; });
  measure_walls(builder, index, *lap, *face, *edge, name);
}

}  // namespace splay::constructs
