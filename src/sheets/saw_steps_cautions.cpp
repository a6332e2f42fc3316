// What to mind at a step.
#include "sheets/saw_steps_words.h"

namespace splay::sheets {

using fabrication::Flag;

namespace {

// Over a jointer's knives or under a planer's rollers no sled holds a short piece.
bool led_through(const fabrication::Step& step) {
  return step.tool == fabrication::Tool::thickness;
}

}  // namespace

std::string caution_words(const fabrication::Step& step, Flag flag) {
  switch (flag) {
    case Flag::try_first:
      return "Cut one and try it: other cuts use this setting.";
    case Flag::tall_fence:
      return "Tall fence and a hold-down; keep the work square to the table.";
    case Flag::sacrificial:
      return "The blade meets the fence: cover it with waste wood.";
    case Flag::guard_off:
      return "Not a through cut: push blocks and feather boards; guard and riving knife go back on "
             "after it.";
    case Flag::narrow_offcut:
      return "Narrow piece beside the blade: push it with a push stick.";
    case Flag::small_piece:
      return led_through(step)
                 ? "Too short for the machine: while it is part of a longer piece, or "
                   "with a hand plane."
                 : "Too small to hold by hand: cut it off a longer piece or hold it "
                   "in a sled.";
    case Flag::stop_behind:
      return "Wood would be trapped between blade and fence: set the length with a stop block "
             "ahead of the blade.";
    case Flag::square_corners:
      return "Square the inside corners by hand.";
    case Flag::sloped_jig:
      return "Screw the wedge down and clamp the work to it: nothing may slide.";
    case Flag::block:
      return "The side is not flat: pack it level with its furthest point, clamp it, and mark on "
             "that.";
    default:
      return {};
  }
}

std::string short_caution(const fabrication::Step& step, Flag flag) {
  switch (flag) {
    case Flag::narrow_offcut:
      return "narrow: push stick";
    case Flag::small_piece:
      return led_through(step) ? "too short for it: on a longer piece, or with a hand plane"
                               : "small: hold it in a sled";
    case Flag::stop_behind:
      return "stop block ahead of the blade";
    case Flag::square_corners:
      return "square the corners by hand";
    default:
      return {};
  }
}

std::vector<std::string> caution_words(const StepWork& work) {
  std::vector<std::string> cautions;
  for (const Flag flag : work.step->flags)
    if (std::string words = caution_words(*work.step, flag); !words.empty())
      cautions.push_back(std::move(words));
  return cautions;
}

}  // namespace splay::sheets
