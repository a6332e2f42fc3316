#include "fabrication/sound_shared.h"

#include <algorithm>

#include "fabrication/plan.h"
#include "parts/audit.h"

namespace splay::fabrication {

std::optional<Interval> shared_reach(const parts::Mate& mate, int index, Vec3 along,
                                     const parts::Assembly& all) {
  const Rigid& place = all.parts[static_cast<std::size_t>(index)].place;
  const parts::Contact contact =
      parts::contact(mate, all.parts[static_cast<std::size_t>(mate.a)].world,
                     all.parts[static_cast<std::size_t>(mate.b)].world);
  Interval reach{1e300, -1e300};
  for (const Polygon& piece : contact.pieces) {
    for (const Vec2 p : piece) {
      const double at = dot(along, place.local_point(contact.frame.point({p.x, p.y, 0})));
      reach = {std::min(reach.from, at), std::max(reach.to, at)};
    }
  }
  if (reach.from > reach.to) return std::nullopt;
  return reach;
}

bool lies_in_grooves(const Plan& plan, int part) {
  bool any = false;
  for (const parts::Joint& joint : plan.assembly.joints) {
    if (std::ranges::find(joint.between, part) == joint.between.end()) continue;
    if (joint.kind != "groove") return false;
    any = true;
  }
  return any;
}

double modulus_of(const Plan& plan, const parts::Part& part) {
  const model::Stock* stock = plan.project->stocks.find(part.stock);
  return stock == nullptr ? 0 : stock->timber.modulus_mpa();
}

}  // namespace splay::fabrication
