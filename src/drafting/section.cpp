#include <algorithm>
#include <array>

#include "drafting/dimension.h"
#include "drafting/hatch.h"
#include "drafting/room.h"

namespace splay::drafting {

namespace {

struct CutPart {
  std::vector<Loops> faces;  // paper
  ink::Rect box = no_rect();
};

constexpr double touching = 0.02;  // mm on paper

double distance(Vec2 p, Vec2 a, Vec2 b) {
  const Vec2 d = b - a;
  const double length2 = dot(d, d);
  const double t = length2 > 0 ? std::clamp(dot(p - a, d) / length2, 0.0, 1.0) : 0.0;
  return norm(p - (a + d * t));
}

// Some corner of one lies on an edge of the other.
bool corner_on_edge(const CutPart& corners, const CutPart& edges) {
  for (const Loops& face : edges.faces)
    for (const std::vector<Vec2>& loop : face)
      for (std::size_t i = 0; i < loop.size(); ++i)
        for (const Loops& other : corners.faces)
          for (const std::vector<Vec2>& points : other)
            for (const Vec2 p : points)
              if (distance(p, loop[i], loop[(i + 1) % loop.size()]) < touching) return true;
  return false;
}

bool neighbours(const CutPart& a, const CutPart& b) {
  return overlap(grown(a.box, touching), b.box) && (corner_on_edge(a, b) || corner_on_edge(b, a));
}

// Each the first style that no touching part before it has.
constexpr std::array<HatchStyle, 6> styles{
    {{45, 1.6}, {135, 1.6}, {45, 2.6}, {135, 2.6}, {20, 2}, {160, 2}}};

std::vector<std::size_t> choose_styles(const std::vector<CutPart>& parts) {
  std::vector<std::size_t> chosen;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    std::array<bool, styles.size()> taken{};
    for (std::size_t k = 0; k < i; ++k)
      if (neighbours(parts[i], parts[k])) taken[chosen[k]] = true;
    const auto free = std::ranges::find(taken, false);
    chosen.push_back(free == taken.end() ? i % styles.size()
                                         : static_cast<std::size_t>(free - taken.begin()));
  }
  return chosen;
}

CutPart on_paper(const std::vector<Loops>& faces, const Placement& placement) {
  CutPart part;
  for (const Loops& face : faces) {
    Loops loops = face;
    for (std::vector<Vec2>& loop : loops) {
      for (Vec2& corner : loop) {
        corner = placement.paper(corner);
        part.box = joined(part.box, {corner, corner});
      }
    }
    part.faces.push_back(std::move(loops));
  }
  return part;
}

std::vector<Loops> projected(const std::vector<Face>& faces, const View& view) {
  std::vector<Loops> result;
  for (const Face& face : faces) {
    Loops loops;
    for (const std::vector<Vec3>& loop : face.loops) {
      loops.emplace_back();
      for (const Vec3 p : loop) loops.back().push_back(view.project(p));
    }
    result.push_back(std::move(loops));
  }
  return result;
}

void draw_part(const CutPart& part, HatchStyle style, ink::Path& outlines, ink::Group& group) {
  constexpr double hatching_width = 0.18;
  for (const Loops& face : part.faces) {
    ink::Path lines = hatch(face, style);
    if (!lines.verbs.empty())
      group.items.emplace_back(ink::Stroke{std::move(lines), {hatching_width}});
    for (const std::vector<Vec2>& loop : face) outlines.polygon(loop);
  }
}

}  // namespace

SectionCut cut_section(std::span<const Solid> solids, const Plane& plane, const View& view) {
  SectionCut cut;
  std::vector<Solid> behind;
  for (const Solid& solid : solids) {
    const std::vector<Face> faces = solid.section(plane);
    if (!faces.empty()) cut.parts.push_back(projected(faces, view));
    const auto [nearest, furthest] = solid.extent(plane.n);
    if (nearest >= plane.d) continue;
    behind.push_back(solid);
    if (furthest > plane.d) behind.back().keep(plane);
    if (behind.back().empty()) behind.pop_back();
  }
  cut.beyond = hidden_lines(behind, view);
  return cut;
}

SectionDrawing draw_section(const Kit& kit, const SectionCut& cut, const Placement& placement) {
  std::vector<CutPart> parts;
  for (const std::vector<Loops>& faces : cut.parts) parts.push_back(on_paper(faces, placement));
  SectionDrawing drawing{{"hatching", {}}, {"view", {}}, no_rect()};
  drawing.box = placement.paper(view_box(cut.beyond));
  ink::Path beyond = joined_lines(cut.beyond, false, placement);
  if (!beyond.verbs.empty())
    drawing.beyond.items.emplace_back(ink::Stroke{std::move(beyond), {kit.look.middle}});
  const std::vector<std::size_t> style = choose_styles(parts);
  ink::Path outlines;
  for (std::size_t i = 0; i < parts.size(); ++i)
    draw_part(parts[i], styles[style[i]], outlines, drawing.cut);
  if (!outlines.verbs.empty())
    drawing.cut.items.emplace_back(ink::Stroke{std::move(outlines), kit.visible()});
  return drawing;
}

SectionDrawing draw_section(const Kit& kit, std::span<const Solid> solids, const Plane& plane,
                            const View& view, const Placement& placement) {
  return draw_section(kit, cut_section(solids, plane, view), placement);
}

ink::Group section_mark(const Kit& kit, Vec2 a, Vec2 b, Vec2 looking, std::string_view letter) {
  constexpr double end = 5, arrow = 7;
  const Vec2 along = unit(b - a), sight = unit(looking);
  ink::Group group{"dimension", {}};
  group.items.emplace_back(ink::Stroke{ink::Path{}.move(a).line(b), kit.centre()});
  const double height = kit.look.figures;
  for (const auto& [tip, outward] : {std::pair{a, -along}, std::pair{b, along}}) {
    const Vec2 foot = tip + outward * end;
    group.items.emplace_back(ink::Stroke{ink::Path{}.move(tip).line(foot), {2 * kit.look.middle}});
    group.items.emplace_back(
        ink::Stroke{ink::Path{}.move(foot).line(foot + sight * arrow), kit.thin()});
    group.items.emplace_back(arrow_head(foot + sight * arrow, sight));
    // The letter stands on the far side of the arrow's tail.
    const Vec2 centre = foot - sight * (0.5 * height + 1.5);
    group.items.emplace_back(ink::Text{centre - Vec2{0, height / 2}, std::string(letter), height, 0,
                                       ink::Align::centre, ink::Face::bold});
  }
  return group;
}

}  // namespace splay::drafting
