// What to mind at a step.
#include "sheets/saw_steps_words.h"

namespace splay::sheets {

using fabrication::Flag;

std::vector<std::string> caution_words(const StepWork& work) {
  std::vector<std::string> cautions;
  for (const Flag flag : work.step->flags) {
    switch (flag) {
      case Flag::try_first:
        cautions.emplace_back("Cut one and try it: other cuts use this setting.");
        break;
      case Flag::tall_fence:
        cautions.emplace_back("Tall fence and a hold-down; keep the work square to the table.");
        break;
      case Flag::sacrificial:
        cautions.emplace_back("The blade meets the fence: cover it with waste wood.");
        break;
      case Flag::guard_off:
        cautions.emplace_back(
            "Not a through cut: push blocks and feather boards; guard and riving knife go back on "
            "after it.");
        break;
      case Flag::narrow_offcut:
        cautions.emplace_back("Narrow piece beside the blade: push it with a push stick.");
        break;
      case Flag::small_piece:
        cautions.emplace_back(
            "Too small to hold by hand: cut it off a longer piece or hold it in a sled.");
        break;
      case Flag::stop_behind:
        cautions.emplace_back(
            "Wood would be trapped between blade and fence: set the length with a stop block "
            "ahead of the blade.");
        break;
      case Flag::square_corners:
        cautions.emplace_back("Square the inside corners by hand.");
        break;
      case Flag::sloped_jig:
        cautions.emplace_back("Screw the wedge down and clamp the work to it: nothing may slide.");
        break;
      case Flag::block:
        cautions.emplace_back(
            "The side is not flat: pack it level with its furthest point, clamp it, and mark on "
            "that.");
        break;
      default:
        break;
    }
  }
  return cautions;
}

}  // namespace splay::sheets
