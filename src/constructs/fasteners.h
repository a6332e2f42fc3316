// What holds a top to the level parts under it and lets it move: figure-8s, clips, slotted blocks.
#pragma once

#include <string>
#include <vector>

#include "constructs/construct.h"

namespace splay::constructs {

enum class FastenerType { figure_eight, clip, block };
enum class HeldFace { inside, front, back, left, right };
struct TopFastener : model::Fields {
  std::string name;
  model::Given<FastenerType> type{FastenerType::figure_eight};
  model::Given<std::string> to;
  model::Given<HeldFace> face{HeldFace::inside};
  model::Given<int> count{2};
  model::Given<Length> margin;
  void fields(model::FieldVisitor& visit) override;
};

// Where the parts under a top meet it.
struct HeldTop {
  std::string name;  // of the item, for what is refused
  int panel = -1;    // the top itself, built
  double under = 0;  // height of its underside, mm
};

// Lets them into the parts that the choices name and joins these to the top. Refused with
// "no-fastener" where there is no room for them or no face to stand at. The parts that hold it.
std::vector<int> add_fasteners(parts::Builder& builder, const model::Tables<TopFastener>& choices,
                               const HeldTop& top);

}  // namespace splay::constructs
