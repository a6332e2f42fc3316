// What is set on the machine for a step.
#include <cmath>
#include <numbers>

#include "sheets/part_view_facts.h"
#include "sheets/saw_steps_draw.h"
#include "sheets/saw_steps_words.h"

namespace splay::sheets {

namespace {

using fabrication::Flag;
using fabrication::Machine;
using fabrication::Step;
using fabrication::Tool;

double reads_to(const Context& context, const Step& step) {
  const model::Shop& shop = context.plan.project->shop;
  if (step.machine == Machine::mitre_saw) return shop.mitre_saw.reads_to->rad;
  if (step.machine == Machine::track_saw) return shop.track_saw.reads_to->rad;
  return shop.saw.reads_to->rad;
}

bool from_ninety(const Context& context, const Step& step, bool gauge) {
  const model::Shop& shop = context.plan.project->shop;
  if (step.machine == Machine::mitre_saw)
    return *shop.mitre_saw.scale == model::Scale::ninety_is_square;
  if (step.machine != Machine::table_saw) return false;
  return *(gauge ? shop.saw.gauge_scale : shop.saw.tilt_scale) == model::Scale::ninety_is_square;
}

// The angle as it is set, its rise over the set run, and what the scale then shows.
SettingField angle_field(const Context& context, const Step& step, const std::string& what,
                         bool gauge) {
  const double exact = std::abs(gauge ? step.exact.gauge : step.exact.tilt);
  const double printed = std::abs(gauge ? step.printed.gauge : step.printed.tilt);
  const bool ninety = from_ninety(context, step, gauge);
  const double reading = ninety ? std::numbers::pi / 2 - printed : printed;
  const std::string scale = "scale " + scale_angle(context, step, reading);
  if (exact < square_within) return {what, "square 0°", scale};
  return {what, scale_angle(context, step, printed),
          "check " + rise_words(context.kit, exact) + ", " + scale};
}

bool slants(const Step& step) {
  return step.exact.tilt > square_within || std::abs(step.exact.gauge) > square_within;
}

SettingField distance_field(const Context& context, const Step& step) {
  const std::string figure = context.kit.figures.text(step.printed.distance);
  std::string note = "to the line of cut";
  if (slants(step)) note = step.to_long_point ? "to the long point" : "to the short point";
  return {step.at_gauge() ? "Stop to line" : "Fence to line", figure, note};
}

SettingField height_field(const Context& context, const StepWork& work) {
  const Step& step = *work.step;
  const bool bit = step.tool == Tool::bore;
  const std::string what = bit ? "Depth of hole" : stance_of(step).led ? "Depth" : "Blade height";
  if (step.printed.height > 0)
    return {what, context.kit.figures.text(step.printed.height),
            bit                   ? "along the bit"
            : stance_of(step).led ? "from the face"
                                  : "over the table"};
  return {what, "through", ""};
}

std::string tool_words(const Step& step) {
  if (step.tool == Tool::edging) return "Edging, glued on";
  return capitalised(std::string(fabrication::word(step.machine))) +
         (step.tool == Tool::stack ? ", dado stack" : "");
}

// What the angle is that the machine itself turns the work or the blade by.
std::string turned_word(const Step& step, bool heads_a_field) {
  if (step.machine == Machine::mitre_saw) return heads_a_field ? "Mitre" : "mitre";
  return heads_a_field ? "Gauge" : "gauge";
}

// Which way the gauge is turned: the frame's right end moves forward when the angle is positive.
std::string gauge_side(const Step& step) {
  if (std::abs(step.exact.gauge) < square_within) return {};
  const bool right = step.exact.gauge > 0;
  if (step.machine == Machine::mitre_saw)
    return right ? ", near end to the left" : ", near end to the right";
  return right ? ", right end forward" : ", left end forward";
}

// Where only one wall stands the stack runs out past the wood.
bool runs_out(const StepWork& work) {
  const fabrication::Setting& set = work.step->exact;
  const double taken = work.bite.high.x - work.bite.low.x;
  return work.why.empty() && taken < set.width * std::cos(set.tilt) - 0.1;
}

}  // namespace

std::string scale_angle(const Context& context, const Step& step, double radians) {
  const double degrees = Angle{reads_to(context, step)}.degrees();
  int places = 0;
  for (double rest = degrees; places < 2 && std::abs(rest - std::round(rest)) > 1e-6; rest *= 10)
    ++places;
  return degrees_text(Angle{radians}.degrees(), places);
}

std::vector<SettingField> setting_fields(const Context& context, const StepWork& work) {
  const Step& step = *work.step;
  const FigureStyle& figures = context.kit.figures;
  std::vector<SettingField> fields;
  if (step.tool == Tool::thickness) {
    const bool planes = step.machine == Machine::planer;
    fields.push_back({planes ? "Leaves" : "Takes off", figures.text(step.printed.width),
                      planes ? "thick" : "in light passes"});
    return fields;
  }
  if (step.tool == Tool::edging) {
    const fabrication::PartRow& strip = context.plan.rows[static_cast<std::size_t>(step.glued)];
    fields.push_back({"Edging", strip.mark, strip.name});
    fields.push_back({"Thickness", figures.text(step.exact.width), "as glued on"});
    return fields;
  }
  if (sawn(step) || (step.tool == Tool::bore && step.exact.tilt > square_within)) {
    const std::string side = step.exact.tilt > square_within
                                 ? ", to the " + side_seen(stance_of(step), step.tilts_right)
                                 : "";
    fields.push_back(angle_field(context, step, "Tilt" + side, false));
  }
  if (step.has(Flag::sloped_jig)) {
    const bool drilled = step.machine == Machine::drill;
    fields.push_back(angle_field(context, step, drilled ? "Table tilted" : "Wedge", false));
  }
  if (step.at_gauge())
    fields.push_back(angle_field(context, step, turned_word(step, true) + gauge_side(step), true));
  if (step.at_fence() || step.at_gauge()) fields.push_back(distance_field(context, step));
  if (step.exact.jig_offset != 0)
    fields.push_back(
        {"Taper", figures.text(std::abs(step.printed.jig_offset)), "off over the taper's length"});
  if (step.tool != Tool::clear && step.tool != Tool::follow)
    fields.push_back(height_field(context, work));
  if (step.tool == Tool::stack)
    fields.push_back({"Stack width", figures.text(step.exact.width),
                      runs_out(work) ? "or wider: it runs out" : "fit it to the piece"});
  if (step.tool == Tool::bore)
    fields.push_back({"Bit", figures.text(step.exact.width), "diameter"});
  return fields;
}

std::string group_words(const Context& context, const StepWork& first) {
  const Step& step = *first.step;
  std::string words = tool_words(step);
  if (sawn(step) && step.exact.tilt > square_within)
    words += ", blade tilted " + scale_angle(context, step, step.printed.tilt) + " " +
             side_seen(stance_of(step), step.tilts_right);
  else if (sawn(step) && !stance_of(step).led)
    words += ", blade upright";
  if (step.at_gauge() && std::abs(step.exact.gauge) > square_within)
    words += ", " + turned_word(step, false) + " " +
             scale_angle(context, step, std::abs(step.printed.gauge)) + gauge_side(step);
  return words;
}

}  // namespace splay::sheets
