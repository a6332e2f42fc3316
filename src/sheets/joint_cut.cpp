#include "sheets/joint_cut.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

#include "parts/audit.h"
#include "sheets/joint_fittings.h"

namespace splay::sheets {

namespace {

using parts::Assembly;
using parts::Joint;
using parts::OperationKind;
using parts::Part;

constexpr double parallel = 0.02;    // sine below which two directions are taken as one
constexpr double least_line = 0.05;  // mm: a shorter line of contact shows nothing

const Part& part_at(const Assembly& assembly, int index) {
  return assembly.parts[static_cast<std::size_t>(index)];
}

// One part reaches into or over the other: two cuts are needed to see it.
bool interlocks(const Assembly& assembly, const Joint& joint) {
  return std::ranges::any_of(joint.between, [&](int index) {
    return std::ranges::any_of(part_at(assembly, index).operations, [&](const auto& operation) {
      return operation.joint == joint.name &&
             (operation.kind == OperationKind::shoulder || operation.kind == OperationKind::notch ||
              operation.kind == OperationKind::mortise);
    });
  });
}

std::optional<Vec3> square_to_both(Vec3 a, Vec3 b);

// The line of a housing, groove or rabbet: along its floor and its wall, in the world.
std::optional<Vec3> trench_line(const Assembly& assembly, const Joint& joint) {
  for (const int index : joint.between) {
    const Part& part = part_at(assembly, index);
    for (const parts::Operation& operation : part.operations) {
      const bool trench = operation.kind == OperationKind::housing ||
                          operation.kind == OperationKind::groove ||
                          operation.kind == OperationKind::rabbet;
      if (operation.joint != joint.name || !trench || operation.trench.walls.empty()) continue;
      const auto line = square_to_both(operation.trench.floor.n, operation.trench.walls.front().n);
      if (line) return part.place.direction(*line);
    }
  }
  return std::nullopt;
}

std::optional<Vec3> square_to_both(Vec3 a, Vec3 b) {
  const Vec3 n = cross(a, b);
  if (norm(n) < parallel) return std::nullopt;
  return unit(n);
}

// From the front, from above or from the right, whichever is nearest; the piece's top is up.
View seen_along(Vec3 direction) {
  Vec3 toward = direction;
  const Vec3 preferred{0.4, -1, 0.7};
  if (dot(toward, preferred) < 0) toward = -toward;
  const Vec3 top{0, 0, 1}, back{0, 1, 0};
  const bool from_above = std::abs(toward.z) > 0.9;
  const Vec3 wanted = from_above ? back : top;
  const Vec3 up = unit(wanted - toward * dot(wanted, toward));
  return {cross(up, toward), up, toward};
}

// What meets of each pair of surfaces, as polygons in the world.
std::vector<std::vector<Vec3>> surfaces(const Assembly& assembly, const Joint& joint) {
  std::vector<std::vector<Vec3>> all;
  for (const parts::Mate& mate : joint.mates) {
    const parts::Contact contact =
        parts::contact(mate, part_at(assembly, mate.a).world, part_at(assembly, mate.b).world);
    for (const Polygon& piece : contact.pieces) {
      all.emplace_back();
      for (const Vec2 p : piece) all.back().push_back(contact.frame.point({p.x, p.y, 0}));
    }
  }
  return all;
}

std::optional<Line2> crossed(const std::vector<Vec3>& surface, const Plane& plane,
                             const View& view) {
  std::vector<Vec2> at;
  for (std::size_t i = 0; i < surface.size(); ++i) {
    const Vec3 a = surface[i], b = surface[(i + 1) % surface.size()];
    const double da = plane.distance(a), db = plane.distance(b);
    if ((da < 0) == (db < 0)) continue;
    at.push_back(view.project(a + (b - a) * (da / (da - db))));
  }
  if (at.size() != 2 || norm(at[1] - at[0]) < least_line) return std::nullopt;
  return Line2{at[0], at[1]};
}

bool joined(Line2& line, const Line2& more) {
  constexpr double same_place = 1e-4;
  const Vec2 along = unit(line.b - line.a);
  if (std::abs(cross(along, unit(more.b - more.a))) > same_place) return false;
  for (const auto& [near, far] : {std::pair{more.a, more.b}, std::pair{more.b, more.a}}) {
    if (norm(near - line.b) < same_place)
      line.b = far;
    else if (norm(near - line.a) < same_place)
      line.a = far;
    else
      continue;
    return true;
  }
  return false;
}

// A surface comes in convex pieces: what goes on in one line is one line of contact.
void join_lines(std::vector<Line2>& lines) {
  for (std::size_t i = 0; i < lines.size(); ++i)
    for (std::size_t k = i + 1; k < lines.size(); ++k) {
      if (!joined(lines[i], lines[k])) continue;
      lines.erase(lines.begin() + static_cast<std::ptrdiff_t>(k));
      k = i;
    }
}

class Cutter {
 public:
  Cutter(const Assembly& assembly, const Joint& joint)
      : assembly_(assembly), joint_(joint), surfaces_(surfaces(assembly, joint)) {}

  // Of the planes square to the direction the one that meets the most.
  std::optional<JointCut> along(Vec3 direction) const {
    const View view = seen_along(direction);
    std::optional<JointCut> best;
    double most = least_line;
    for (const double level : levels(view)) {
      JointCut cut{view, {view.toward, level}, {}, {}, {}, {}, {}};
      double length = 0;
      for (const std::vector<Vec3>& surface : surfaces_)
        if (const auto line = crossed(surface, cut.plane, view)) {
          length += norm(line->b - line->a);
          cut.contacts.push_back(*line);
        }
      add_fittings(assembly_, joint_, cut);
      // A fitting takes away contact of its own width: it is what there is to see.
      for (const CutFitting& fitting : cut.fittings) length += 3 * norm(fitting.to - fitting.from);
      if (cut.contacts.empty() || length <= most * (1 + 1e-9)) continue;
      most = length;
      best = std::move(cut);
    }
    if (!best) return std::nullopt;
    join_lines(best->contacts);
    add_parts(*best);
    widen_fittings(*best);
    return best;
  }

  // Of two directions the one whose cut shows more of sloping sides, else the first.
  std::optional<JointCut> fingers(Vec3 one, Vec3 other) const {
    std::optional<JointCut> best;
    double most = -1;
    for (const Vec3 direction : {one, other}) {
      std::optional<JointCut> cut = along(direction);
      if (!cut) continue;
      double sloping = 0;
      for (const Line2& line : cut->contacts) {
        const Vec2 run = line.b - line.a;
        if (std::min(std::abs(run.x), std::abs(run.y)) > parallel * norm(run)) sloping += norm(run);
      }
      if (sloping <= most + least_line) continue;
      most = sloping;
      best = std::move(cut);
    }
    if (best) shorten(*best);
    return best;
  }

 private:
  // A row of fingers: as many as tell the rest.
  static void shorten(JointCut& cut) {
    constexpr double most = 2.4;     // times as long as the window is wide
    constexpr std::size_t many = 6;  // lines of contact
    if (cut.contacts.size() <= many) return;
    const double width = cut.window.width(), height = cut.window.height();
    const double stretch = most * std::min(width, height);
    if (height > stretch)
      cut.window.high.y = cut.window.low.y + stretch;
    else if (width > stretch)
      cut.window.high.x = cut.window.low.x + stretch;
    std::erase_if(cut.contacts, [&](const Line2& line) {
      const auto shown = [&](Vec2 p) {
        return p.x >= cut.window.low.x && p.x <= cut.window.high.x && p.y >= cut.window.low.y &&
               p.y <= cut.window.high.y;
      };
      return !shown(line.a) || !shown(line.b);
    });
  }

  std::vector<double> levels(const View& view) const {
    std::vector<double> levels;
    for (const std::vector<Vec3>& surface : surfaces_) {
      double low = 1e300, high = -1e300;
      for (const Vec3 p : surface) {
        low = std::min(low, dot(view.toward, p));
        high = std::max(high, dot(view.toward, p));
      }
      if (high - low > least_line) levels.push_back((low + high) / 2);
    }
    for (const parts::Fitting& fitting : assembly_.fittings)
      if (fitting.joint == joint_.name) levels.push_back(dot(view.toward, fitting.at));
    return levels;
  }

  void add_parts(JointCut& cut) const {
    double thick = 0;
    for (const int index : joint_.between) {
      const Part& part = part_at(assembly_, index);
      drafting::Loops loops;
      for (const Face& face : part.world.section(cut.plane))
        for (const std::vector<Vec3>& points : face.loops) {
          loops.emplace_back();
          for (const Vec3 p : points) loops.back().push_back(cut.view.project(p));
        }
      if (loops.empty()) continue;
      thick = std::max(thick, std::min(part.size.y, part.size.z));
      cut.parts.push_back(index);
      cut.loops.push_back(std::move(loops));
    }
    ink::Rect box = drafting::no_rect();
    for (const Line2& line : cut.contacts)
      box = drafting::joined(box, {{std::min(line.a.x, line.b.x), std::min(line.a.y, line.b.y)},
                                   {std::max(line.a.x, line.b.x), std::max(line.a.y, line.b.y)}});
    // So far beside it that the thickest part's far face is seen too; of thick parts, which have
    // much of the joint inside them, not all of that.
    constexpr double beside = 1.2, thick_beside = 0.7, least_thick = 30, least = 6;
    box = drafting::grown(
        box,
        std::max(std::min(beside * thick, std::max(least_thick, thick_beside * thick)), least));
    ink::Rect wood = drafting::no_rect();
    for (const drafting::Loops& loops : cut.loops)
      for (const std::vector<Vec2>& loop : loops)
        for (const Vec2 p : loop) wood = drafting::joined(wood, {p, p});
    cut.window = {{std::max(box.low.x, wood.low.x), std::max(box.low.y, wood.low.y)},
                  {std::min(box.high.x, wood.high.x), std::min(box.high.y, wood.high.y)}};
  }

  const Assembly& assembly_;
  const Joint& joint_;
  std::vector<std::vector<Vec3>> surfaces_;
};

}  // namespace

bool worked(const Assembly& assembly, const Joint& joint) {
  const auto fitted = [&](const parts::Fitting& fitting) { return fitting.joint == joint.name; };
  return std::ranges::any_of(assembly.fittings, fitted) ||
         std::ranges::any_of(joint.between, [&](int index) {
           return std::ranges::any_of(
               part_at(assembly, index).operations,
               [&](const auto& operation) { return operation.joint == joint.name; });
         });
}

std::vector<JointCut> joint_cuts(const Assembly& assembly, const Joint& joint) {
  if (joint.between.size() < 2) return {};
  const Rigid& a = part_at(assembly, joint.between[0]).place;
  const Rigid& b = part_at(assembly, joint.between[1]).place;
  const std::optional<Vec3> lengths = square_to_both(a.ex, b.ex),
                            faces = square_to_both(a.ez, b.ez);
  std::vector<Vec3> directions;
  if (const auto line = trench_line(assembly, joint)) {
    directions = {*line};
  } else if (interlocks(assembly, joint) && lengths) {
    directions = {*lengths, unit(cross(*lengths, a.ex))};
  } else if (faces || lengths) {
    directions = {faces ? *faces : *lengths};
  } else {
    directions = {a.ex};
  }
  const Cutter cutter(assembly, joint);
  std::vector<JointCut> cuts;
  // Boards round a corner, their ends cut into each other.
  if (directions.size() == 2 && faces && norm(cross(*faces, *lengths)) < parallel) {
    directions.pop_back();
    if (auto cut = cutter.along(directions.front())) cuts.push_back(std::move(*cut));
    if (auto cut = cutter.fingers(a.ez, b.ez)) cuts.push_back(std::move(*cut));
    return cuts;
  }
  for (const Vec3 direction : directions)
    if (auto cut = cutter.along(direction)) cuts.push_back(std::move(*cut));
  // The usual direction shows nothing where the surfaces lie square to it.
  for (const Vec3 direction : {a.ex, a.ey, a.ez}) {
    if (!cuts.empty()) break;
    if (auto cut = cutter.along(direction)) cuts.push_back(std::move(*cut));
  }
  return cuts;
}

}  // namespace splay::sheets
