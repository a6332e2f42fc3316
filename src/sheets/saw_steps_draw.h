// The two small drawings of a step: what the eye sees along the line of cut, and from above.
// Internal to src/sheets.
//
// They are drawn from the step's own position and settings and from the wood as it then is, each at
// a scale that shows wood and tool; long stretches are left out. The machine's parts (table, fence,
// gauge, stop) are signs of our own, with their names in them.
#pragma once

#include "sheets/saw_steps_broken.h"
#include "sheets/saw_steps_work.h"
#include "sheets/sheet.h"

namespace splay::sheets {

// Where the one at the machine stands and how the machine frame looks from there.
struct Stance {
  bool led = false;       // the tool is led over the work: the work is seen under it
  bool mirrored = false;  // the machine frame's right is to the left as it is seen
  View end, plan;         // machine frame
};
Stance stance_of(const fabrication::Step& step);

// "left" or "right" as it is seen.
std::string side_seen(const Stance& stance, bool machine_right);

// Along the line of cut: table, tool at its tilt, the wood cut through, the fence. The wood that
// goes is hatched as waste.
drafting::Picture end_picture(const Context& context, const StepWork& work);
// From above: the wood with its ends named, the line of cut, fence or gauge with its angle, stop.
drafting::Picture plan_picture(const Context& context, const StepWork& work);

// What a solid in the part's axes shows where it is cut square to the line, in the middle of what
// the tool meets; on the plane of Stance::end.
std::vector<std::vector<Vec2>> section_seen(const StepWork& work, const Stance& stance,
                                            const Solid& solid);

// Shared by both.
// How thick a fence or a gauge is drawn, mm on paper: its name stands in it.
double machine_part(const drafting::Kit& kit);
// A long box of the machine with a word along it, `along` from corner to corner of its near side.
ink::Group named_part(const drafting::Kit& kit, Vec2 corner, Vec2 along, Vec2 across,
                      const std::string& word);
// What a fence or stop is set to, between two places on paper along `along`, with its claim; the
// line stands `off` mm away on the side of `out`, its extension lines begin `clear` mm away.
ink::Group set_distance(const drafting::Kit& kit, Vec2 from, Vec2 to, Vec2 out, double clear,
                        double off, double mm);

}  // namespace splay::sheets
