// A step in a maker's words: what is set, how the work lies, what to mind, whether it is proven.
// Internal to src/sheets.
#pragma once

#include <string>
#include <vector>

#include "sheets/saw_steps_work.h"
#include "sheets/sheet.h"

namespace splay::sheets {

// A box of the strip of settings: its name, the figure to set, what helps to set it.
struct SettingField {
  std::string name, value, note;
};

// Tilt with its scale and rise, gauge with its scale and rise, fence or stop, height or depth,
// width. What is not set on the machine is not among them.
std::vector<SettingField> setting_fields(const Context& context, const StepWork& work);

// "On edge: front edge down, outside face against the fence, which is on the right."
std::string laid_words(const Context& context, const StepWork& work);
// The same, after what carries it where that is neither fence nor gauge: "On the taper sled."
std::string lying_words(const Context& context, const StepWork& work);
// Where the face mark is, with a blank before it; "" when there is no one face to show.
std::string mark_side_words(const Context& context, const fabrication::Step& step);
const std::string& side_name_of(const Context& context, const fabrication::Step& step,
                                parts::Side side);
std::string waste_words(const StepWork& work);
std::string turn_words(const StepWork& work);  // "Turn end for end since B-L.2."
// Marks and lines to draw on the work, "" when there are none.
std::string mark_words(const Context& context, const StepWork& work);
// Which earlier setting is kept, why this way.
std::string way_words(const Context& context, const StepWork& work);
// A step that is rounded off by no more than this, mm, is not worth a word.
double quiet_deviation(const Context& context);
std::string proved_words(const Context& context);  // of all steps, for the first page
// That a step is not proven, or off by more than the quiet deviation; else "".
std::string proof_words(const Context& context, const fabrication::Step& step);
// A sentence for each thing to mind.
std::vector<std::string> caution_words(const StepWork& work);
// Of one of its flags; "" for one that is no caution.
std::string caution_words(const fabrication::Step& step, fabrication::Flag flag);
// A few words for a row: "small: hold it in a sled".
std::string short_caution(const fabrication::Step& step, fabrication::Flag flag);

// "Table saw, blade tilted 37.5° left": what all steps of a group share.
std::string group_words(const Context& context, const StepWork& first);

// "37.5°", with as many places as the machine's scale can be set to.
std::string scale_angle(const Context& context, const fabrication::Step& step, double radians);

}  // namespace splay::sheets
