#include "sheets/part_view_shape.h"

#include <algorithm>
#include <cmath>

#include "fabrication/cuts.h"

namespace splay::sheets {

namespace {

using parts::Operation;
using parts::OperationKind;
using parts::Side;

constexpr double near_surface = 1e-5;  // mm
constexpr double least_facing = 0.9;   // of a taper that still belongs to its side, cosine

double along(Vec3 axis, Vec3 p) { return dot(axis, p); }

bool lies_on(const Face& face, const Plane& plane) {
  return std::ranges::all_of(face.loops.front(), [&](Vec3 corner) {
    return std::abs(plane.distance(corner)) < near_surface;
  });
}

bool known(const std::vector<Vec3>& points, Vec3 p) {
  return std::ranges::any_of(points, [&](Vec3 q) { return norm(p - q) < near_surface; });
}

Plane bounding_plane(const PartSheet& sheet, Side side) {
  const Vec3 out = parts::outward(side);
  return {out, std::max(0.0, along(out, sheet.part.size))};
}

bool belongs(const PartSheet& sheet, const Face& face, Side side) {
  if (dot(face.plane.n, parts::outward(side)) < least_facing) return false;
  if (lies_on(face, bounding_plane(sheet, side))) return true;
  return std::ranges::any_of(sheet.part.operations, [&](const Operation& operation) {
    return operation.kind == OperationKind::edge_cut && lies_on(face, operation.cut);
  });
}

// It has a wall, and a floor that looks out of the side it is open to.
bool has_floor(const Operation& operation) {
  constexpr double least = 0.3;
  return !operation.trench.walls.empty() &&
         dot(operation.trench.floor.n, parts::outward(operation.trench.open)) > least;
}

bool is_trench(const Operation& operation) {
  switch (operation.kind) {
    case OperationKind::housing:
    case OperationKind::groove:
    case OperationKind::rabbet:
      return has_floor(operation);
    // A corner cut off has one wall and opens to an edge; all else is a lap.
    case OperationKind::notch:
      return has_floor(operation) &&
             (operation.trench.walls.size() > 1 || operation.trench.open >= Side::z_low);
    default:
      return false;
  }
}

bool cuts_corner(const Operation& operation) {
  return operation.kind == OperationKind::notch && !is_trench(operation) &&
         operation.trench.walls.size() == 1 && std::abs(operation.trench.walls.front().n.x) > 0.5;
}

class CutFinder {
 public:
  explicit CutFinder(const PartSheet& sheet) : sheet_(sheet) {}

  std::vector<Cut> find() {
    for (const Operation& operation : sheet_.part.operations) {
      switch (operation.kind) {
        case OperationKind::end_cut:
        case OperationKind::shoulder:
          add(operation, operation.cut, true);
          break;
        case OperationKind::edge_cut:
          add(operation, operation.cut, false);
          break;
        case OperationKind::notch:
          if (cuts_corner(operation)) add(operation, operation.trench.walls.front(), true);
          break;
        default:
          break;
      }
    }
    return std::move(cuts_);
  }

 private:
  void add(const Operation& operation, const Plane& plane, bool end) {
    const Face* face = face_on(sheet_.boundary, plane);
    const bool again = std::ranges::any_of(cuts_, [&](const Cut& cut) {
      return norm(cut.plane.n - plane.n) < square_within &&
             std::abs(cut.plane.d - plane.d) < near_surface;
    });
    if (face == nullptr || again) return;
    Operation read = operation;
    read.kind = end ? OperationKind::end_cut : OperationKind::edge_cut;
    read.cut = plane;
    const fabrication::CutReport report = fabrication::read_cut(read, sheet_.part);
    cuts_.push_back({&operation, end, plane, report, box_of(*face), report.bevel > square_within,
                     report.face_angle > square_within});
  }

  const PartSheet& sheet_;
  std::vector<Cut> cuts_;
};

// The middle of those corners of a side that two planes of a pocket meet in.
std::optional<Vec3> mouth(const std::vector<Vec3>& corners, const Operation& operation) {
  Vec3 sum;
  int count = 0;
  for (const Vec3 corner : corners) {
    const auto planes = std::ranges::count_if(operation.removed, [&](const Plane& plane) {
      return std::abs(plane.distance(corner)) < near_surface;
    });
    if (planes < 2) continue;
    sum = sum + corner;
    ++count;
  }
  if (count < 3) return std::nullopt;
  return sum * (1.0 / count);
}

}  // namespace

const Face* face_on(const Boundary& boundary, const Plane& plane) {
  const Face* largest = nullptr;
  for (const Face& face : boundary.faces)
    if (lies_on(face, plane) && (largest == nullptr || face.area > largest->area)) largest = &face;
  return largest;
}

const Face* floor_of(const Boundary& boundary, const parts::Trench& trench) {
  const Face* largest = nullptr;
  for (const Face& face : boundary.faces) {
    if (!lies_on(face, trench.floor) || (largest != nullptr && face.area <= largest->area))
      continue;
    const Box box = box_of(face);
    const Vec3 middle = (box.low + box.high) * 0.5;
    const auto holds = [&](const Plane& side) { return side.distance(middle) > -near_surface; };
    if (std::ranges::all_of(trench.walls, holds) && std::ranges::all_of(trench.stops, holds))
      largest = &face;
  }
  return largest;
}

Box box_of(const Face& face) {
  Box box;
  for (const Vec3 corner : face.loops.front()) box.add(corner);
  return box;
}

std::vector<Cut> standing_cuts(const PartSheet& sheet) { return CutFinder(sheet).find(); }

Side side_seen(Vec3 toward) {
  Side best = Side::x_low;
  double most = -2;
  for (int i = 0; i < 6; ++i) {
    const double facing = dot(parts::outward(static_cast<Side>(i)), toward);
    if (facing > most) {
      most = facing;
      best = static_cast<Side>(i);
    }
  }
  return best;
}

std::vector<Vec3> corners_on(const PartSheet& sheet, Side side) {
  std::vector<Vec3> curved;
  for (const Edge& edge : sheet.boundary.edges)
    if (edge.smooth) curved.insert(curved.end(), {edge.a, edge.b});
  std::vector<Vec3> corners;
  for (const Face& face : sheet.boundary.faces) {
    if (!belongs(sheet, face, side)) continue;
    for (const std::vector<Vec3>& loop : face.loops)
      for (const Vec3 p : loop)
        if (!known(curved, p) && !known(corners, p)) corners.push_back(p);
  }
  return corners;
}

std::vector<const Operation*> trenches_on(const PartSheet& sheet, Side side) {
  std::vector<const Operation*> trenches;
  for (const Operation& operation : sheet.part.operations)
    if (is_trench(operation) && operation.trench.open == side &&
        floor_of(sheet.boundary, operation.trench) != nullptr)
      trenches.push_back(&operation);
  return trenches;
}

std::vector<Opening> openings_on(const PartSheet& sheet, Side side) {
  std::vector<Opening> openings;
  for (const Operation* trench : trenches_on(sheet, side)) {
    const Box box = box_of(*floor_of(sheet.boundary, trench->trench));
    openings.push_back({trench, (box.low + box.high) * 0.5});
  }
  const std::vector<Vec3> corners = corners_on(sheet, side);
  for (const Operation& operation : sheet.part.operations)
    if (operation.kind == OperationKind::mortise || operation.kind == OperationKind::hole)
      if (const std::optional<Vec3> at = mouth(corners, operation))
        openings.push_back({&operation, *at});
  return openings;
}

std::vector<Plane> Trough::walls() const {
  std::vector<Plane> walls;
  if (low) walls.push_back(*low);
  if (high) walls.push_back(*high);
  return walls;
}

Trough trough_of(const Operation& trench) {
  const bool on_edge = trench.trench.open < Side::z_low;
  Trough troughs[2];
  troughs[0].axis = {1, 0, 0};
  troughs[1].axis = on_edge ? Vec3{0, 0, 1} : Vec3{0, 1, 0};
  for (const Plane& wall : trench.trench.walls) {
    const double lengthwise = dot(wall.n, troughs[0].axis);
    const double sideways = dot(wall.n, troughs[1].axis);
    const bool of_run = std::abs(sideways) <= std::abs(lengthwise);
    Trough& trough = troughs[of_run ? 0 : 1];
    // Normals point into the trench. Of two walls on one side the inner one bounds it.
    std::optional<Plane>& side = (of_run ? lengthwise : sideways) > 0 ? trough.low : trough.high;
    const double reach = wall.d / dot(wall.n, trough.axis);
    const bool inner =
        !side || (&side == &trough.low) == (reach > side->d / dot(side->n, trough.axis));
    if (inner) side = wall;
  }
  const auto count = [](const Trough& trough) { return trough.walls().size(); };
  return count(troughs[1]) > count(troughs[0]) ? troughs[1] : troughs[0];
}

}  // namespace splay::sheets
