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

CutPart cut_part(const std::vector<Face>& faces, const View& view, const Placement& placement) {
  CutPart part;
  for (const Face& face : faces) {
    Loops loops;
    for (const std::vector<Vec3>& loop : face.loops) {
      std::vector<Vec2> corners;
      for (const Vec3 p : loop) {
        corners.push_back(placement.paper(view.project(p)));
        part.box = joined(part.box, {corners.back(), corners.back()});
      }
      loops.push_back(std::move(corners));
    }
    part.faces.push_back(std::move(loops));
  }
  return part;
}

}  // namespace

SectionDrawing draw_section(const Kit& kit, std::span<const Solid> solids, const Plane& plane,
                            const View& view, const Placement& placement) {
  std::vector<CutPart> parts;
  std::vector<Solid> behind;
  for (const Solid& solid : solids) {
    const std::vector<Face> faces = solid.section(plane);
    if (!faces.empty()) parts.push_back(cut_part(faces, view, placement));
    Solid rest = solid;
    rest.keep(plane);
    if (!rest.empty()) behind.push_back(std::move(rest));
  }
  SectionDrawing drawing{{"hatching", {}}, {"view", {}}, no_rect()};
  const std::vector<ViewLine> lines = hidden_lines(behind, view);
  drawing.box = placement.paper(view_box(lines));
  drawing.beyond.items.emplace_back(
      ink::Stroke{joined_lines(lines, false, placement), {kit.look.middle}});
  const std::vector<std::size_t> style = choose_styles(parts);
  ink::Path outlines;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    for (const Loops& face : parts[i].faces) {
      ink::Path lines_in = hatch(face, styles[style[i]]);
      if (!lines_in.verbs.empty())
        drawing.cut.items.emplace_back(ink::Stroke{std::move(lines_in), {0.18}});
      for (const std::vector<Vec2>& loop : face) outlines.polygon(loop);
    }
  }
  if (!outlines.verbs.empty())
    drawing.cut.items.emplace_back(ink::Stroke{std::move(outlines), kit.visible()});
  return drawing;
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
