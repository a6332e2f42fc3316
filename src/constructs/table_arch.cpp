// Arched lower edges of aprons and stretchers.
#include <algorithm>

#include "constructs/table_build.h"

namespace splay::constructs {

void TableBuild::arch(const TableRail& choice, const PlacedRail& rail) {
  if (!choice.arch.given) return;
  const parts::Part& part = builder_.part(rail.part);
  const Box box = part.body.bounds();
  // Between the shoulders where they stand nearest on the lower edge.
  double from = box.low.x, to = box.high.x;
  for (const parts::Operation& operation : part.operations) {
    if (operation.kind != parts::OperationKind::shoulder) continue;
    const Plane& cut = operation.cut;
    for (const double z : {box.low.z, box.high.z}) {
      const double x = (cut.d - cut.n.y * box.low.y - cut.n.z * z) / cut.n.x;
      if (cut.n.x < 0)
        from = std::max(from, x);
      else
        to = std::min(to, x);
    }
  }
  const std::string fault =
      cut_arch(builder_, rail.part, choice.arch,
               {part.place.point({from, box.low.y, 0}), part.place.point({to, box.low.y, 0}),
                part.place.direction({0, 1, 0}), choice.width->mm, part.side_names[2]});
  if (!fault.empty())
    stop("no-arch", fault, "A smaller rise, or less that stays straight (arch.flat).",
         choice.arch.span);
}

}  // namespace splay::constructs
