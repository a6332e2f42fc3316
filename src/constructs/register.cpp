#include <utility>

#include "constructs/board.h"
#include "constructs/case.h"
#include "constructs/construct.h"
#include "constructs/door.h"
#include "constructs/door_build.h"
#include "constructs/drawer.h"
#include "constructs/frame.h"
#include "constructs/named_joint.h"
#include "constructs/ring.h"
#include "constructs/stand.h"
#include "constructs/stick.h"
#include "constructs/table.h"
#include "constructs/top.h"
#include "joinery/hardware.h"

namespace splay::constructs {

namespace {

template <class T>
std::unique_ptr<model::Item> make() {
  return std::make_unique<T>();
}

}  // namespace

const model::Registry& registry() {
  static const model::Registry kinds = {
      {"case", "panels round a closed outline, with shelves, partitions, a back and a face frame",
       &make<Case>},
      {"ring", "leaning sides round a plan: trays, hoppers, planters, staved vessels",
       &make<RingOfSides>},
      {"frame", "members round any polygon, with a rebate or a panel", &make<Frame>},
      {"stand", "leaning legs held by braces, lapped into each other", &make<Stand>},
      {"table", "splayed legs, aprons, stretchers and a plain top: tables, stools, trestles",
       &make<Table>},
      {"top", "a top with overhangs, bevels, curves, breadboard ends and fasteners", &make<Top>},
      {"door", "a slab or framed door or a pair, hung on hinges, tried whether it opens",
       &make<Door>},
      {"drawer", "a box on runners in a square or leaning opening", &make<Drawer>},
      {"stick", "a straight member between two points, tapered or not", &make<Stick>},
      {"board", "a board or piece of sheet anywhere, cut along any planes", &make<Board>},
      {"joint", "a joint between two parts by their names, whatever built them", &make<NamedJoint>},
  };
  return kinds;
}

parts::Assembly build(const model::Project& project) {
  parts::Builder builder(project);
  for (std::size_t i = 0; i < project.items.size(); ++i) {
    builder.start_item(static_cast<int>(i));
    if (const auto* construct = dynamic_cast<const Construct*>(project.items[i].get()))
      construct->build(builder);
  }
  joinery::place_hardware(builder);
  check_swings(builder);
  return std::move(builder).finish();
}

}  // namespace splay::constructs
