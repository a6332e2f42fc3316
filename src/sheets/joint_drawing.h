// One cut through a joint on paper: each part hatched its own way, sizes, angles, marks. Internal
// to src/sheets.
#pragma once

#include "drafting/scale.h"
#include "sheets/joint_cut.h"
#include "sheets/sheet.h"

namespace splay::sheets {

// At the largest standard scale at which the stretch worth drawing fits into `room`, enlarged if
// need be; larger than the room only where the wood would be smaller than what is written about it.
// Its scale is returned with it.
struct JointPicture {
  drafting::Picture picture;
  drafting::Scale scale;
};
JointPicture joint_picture(const Context& context, const parts::Joint& joint, const JointCut& cut,
                           drafting::Room2 room, const std::string& title);

}  // namespace splay::sheets
