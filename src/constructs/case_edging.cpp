// Bands and nosings on front edges.
#include "constructs/case_build.h"

namespace splay::constructs {

int CaseBuild::add_edging(const FrontEdge& edge, int core, double y, const Polygon& section) {
  if (edge.edge.value == Edging::none || y <= 0) return -1;
  const parts::Part& behind = builder_.part(core);
  const double t = edge.thickness.given ? edge.thickness->mm : thickness(*edge.stock);
  parts::Blank blank;
  const bool band = edge.edge.value == Edging::band;
  blank.name = behind.name + (band ? " edge band" : " nosing");
  blank.stock = *edge.stock;
  // Along the edge; its show face looks forward and its breadth runs through the core's thickness.
  blank.place = frame(behind.place.point({0, 0, 0}), behind.place.ex, world_front);
  blank.place.origin.y = y;
  Polygon flat;
  for (const Vec2 p : section) {
    const Vec3 local = blank.place.local_point(lift(p, y));
    flat.push_back({local.x, local.y});
  }
  blank.body = Solid::prism(flat, 0, t);
  const bool turned = dot(blank.place.ey, behind.place.ez) < 0;
  blank.side_names = {behind.side_names[0],
                      behind.side_names[1],
                      behind.side_names[turned ? 5 : 4],
                      behind.side_names[turned ? 4 : 5],
                      "back, glued",
                      "front"};
  const int strip = builder_.add(std::move(blank));
  const bool before = edge.when.value == EdgingWhen::before;
  joinery::glued(builder_, core, strip, {world_front, -y}, "glued",
                 before ? parts::Made::before_cuts : parts::Made::before_assembly);
  const std::string when = before
                               ? "glued on before the ends are cut: core and edging are cut as one"
                               : "glued on after the ends are cut, then trimmed flush to them";
  builder_.remark(core,
                  std::string(band ? "Edge band" : "Nosing") + " on the front edge " + when + ".");
  builder_.remark(strip,
                  "Goes on the front edge of " + builder_.part(core).name + ": " + when + ".");
  return strip;
}

}  // namespace splay::constructs
