#include "joinery/loose_tenon.h"

#include <algorithm>
#include <cmath>

#include "base/tolerance.h"

namespace splay::joinery {

using model::may;
using model::Range;

namespace {

struct Walls {
  std::vector<Plane> planes;
  std::vector<std::vector<Plane>> rounds;  // each the facets of one curved end
};

// The sides of a slot of the given size along `row` and across it, about `way`.
Walls slot_walls(Vec3 at, Vec3 row, Vec3 way, double width, double thickness, bool round_ends) {
  const Vec3 across = unit(cross(way, row)), along = cross(across, way);
  Walls walls;
  for (const double side : {1.0, -1.0}) {
    walls.planes.push_back(Plane::through(at + across * (side * thickness / 2), across * side));
    const Vec3 out = along * side;
    if (!round_ends) {
      walls.planes.push_back(Plane::through(at + out * (width / 2), out));
      continue;
    }
    std::vector<Plane> facets;
    for (const Plane& facet : cylinder(at + out * ((width - thickness) / 2), way, thickness / 2))
      if (dot(facet.n, out) > tolerance::weld) facets.push_back(facet);
    walls.planes.insert(walls.planes.end(), facets.begin(), facets.end());
    walls.rounds.push_back(std::move(facets));
  }
  return walls;
}

}  // namespace

void LooseTenonKind::fields(model::FieldVisitor& visit) {
  visit.length(may("thickness", "thickness of the tenon", "a third of the stock, common practice"),
               thickness, Range::size());
  visit.length(may("width", "width of the tenon",
                   "its share of the joint's length less 1/4 in at both ends, at most six times "
                   "its thickness, common practice"),
               width, Range::size());
  visit.length(may("embed", "how deep it goes into either part",
                   "three times its thickness, common practice"),
               embed, Range::size());
  visit.length(may("bottom_gap", "room at the bottom of a mortise, common practice"), bottom_gap,
               Range::allowance());
  visit.flag(may("round_ends", "mortises with round ends, as a router leaves them"), round_ends);
  row_fields(visit);
  bed_field(visit);
}

std::string LooseTenonKind::shape(parts::Builder& builder, int host, int guest) const {
  const Stick h = stick(builder, host), g = stick(builder, guest);
  Draft draft(builder, "loose tenon", host, guest);
  Bed bed;
  if (std::string fault = lay_bed(builder, h, g, draft, bed); !fault.empty()) return fault;
  const double thick = thickness.given ? thickness->mm : bed.width / 3;
  const double share = (bed.reach[1] - bed.reach[0]) / count.value;
  const double broad =
      width.given ? width->mm : std::min(share - Length::inches(0.5).mm, 6 * thick);
  const double deep = embed.given ? embed->mm : 3 * thick;
  if (thick > bed.width)
    return "A loose tenon of " + figure(builder, thick) + " is thicker than the joint of " +
           g.name + " and " + h.name + ", " + figure(builder, bed.width) + ".";
  if (broad < thick)
    return "No width is left for the loose tenon of " + g.name + " and " + h.name + ".";
  std::vector<Vec3> at;
  if (std::string fault = places(builder, bed, broad, at); !fault.empty()) return fault;
  const Vec3 way = axis(g, bed);
  const FigureStyle style = builder.project().job.figures();
  for (const Vec3 point : at) {
    const Walls walls = slot_walls(point, bed.row, way, broad, thick, round_ends.value);
    for (const int side : {1, -1}) {
      const Stick& part = side > 0 ? g : h;
      const Region mortise = pocket(walls.planes, bed, point, way, side, deep + bottom_gap->mm);
      if (!inside(mortise, draft.body(part.index)))
        return "The mortise for the loose tenon would break out of " + part.name + ".";
      draft.remove(part.index, parts::OperationKind::mortise, mortise,
                   "mortise for the loose tenon to " + (side > 0 ? h : g).name, walls.rounds);
    }
    draft.fit({"loose tenon",
               style.text(thick) + " x " + style.text(broad) + " x " + style.with_unit(2 * deep),
               point + way * deep,
               -way,
               thick,
               2 * deep,
               {guest, host},
               ""});
  }
  return draft.carry_out(builder);
}

}  // namespace splay::joinery
