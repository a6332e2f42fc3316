#include "sheets/saw_steps_words.h"

#include <algorithm>
#include <cmath>

#include "sheets/part_view_facts.h"
#include "sheets/saw_steps_draw.h"

namespace splay::sheets {

namespace {

using fabrication::Flag;
using fabrication::Guide;
using fabrication::Machine;
using fabrication::Step;
using fabrication::Tool;
using fabrication::Turned;
using parts::Side;

const parts::Part& part_of(const Context& context, const Step& step) {
  const fabrication::PartRow& row = context.plan.rows[static_cast<std::size_t>(step.row)];
  return context.plan.assembly.parts[static_cast<std::size_t>(row.members.front())];
}

// "outside face", but "front edge" and "foot" as they are.
std::string side_words(const Context& context, const Step& step, Side side) {
  std::string words = side_name_of(context, step, side);
  const bool face = side == Side::z_low || side == Side::z_high;
  return face && words.find("face") == std::string::npos ? words + " face" : words;
}

// To the thousandth of a millimetre, whatever the job's unit.
std::string in_words(const Context& context, double mm) {
  if (context.kit.figures.unit == Unit::millimetre) return plain_number(mm, 3) + " mm";
  return plain_number(mm / Length::mm_per_inch, 4) + " in";
}

// The least that is told of a deviation, mm.
double least_shown(const Context& context) {
  return context.kit.figures.unit == Unit::millimetre ? 0.001 : 0.0001 * Length::mm_per_inch;
}

// What rounding leaves: a tenth of the places will do.
std::string rounded_words(const Context& context, double mm) {
  const double least = 10 * least_shown(context);
  return in_words(context, std::max(least, std::round(mm / least) * least));
}

bool last_of_its_part(const Context& context, const Step& step) {
  const auto next = static_cast<std::size_t>(&step - context.plan.steps.data()) + 1;
  return next >= context.plan.steps.size() || context.plan.steps[next].row != step.row;
}

}  // namespace

std::string mark_side_words(const Context& context, const Step& step) {
  if (part_of(context, step).show != parts::ShowFace::high_z) return {};
  const bool led = stance_of(step).led;
  if (step.face == Side::z_high) return led ? " Face mark up." : " Face mark down.";
  if (step.face == Side::z_low) return led ? " Face mark down." : " Face mark up.";
  return {};
}

const std::string& side_name_of(const Context& context, const Step& step, Side side) {
  return parts::side_name(part_of(context, step), side);
}

std::string laid_words(const Context& context, const StepWork& work) {
  const Step& step = *work.step;
  const Stance stance = stance_of(step);
  if (step.tool == Tool::edging)
    return "Over all of the " + side_words(context, step, step.against) + ", from face to face.";
  if (stance.led)
    return capitalised(side_words(context, step, step.face)) + " up, clamped down." +
           mark_side_words(context, step);
  std::string words = capitalised(std::string(fabrication::word(step.position()))) + ": " +
                      side_words(context, step, step.face) + " down";
  const std::string against = side_words(context, step, step.against);
  if (step.at_fence())
    words += ", " + against + " against the fence, which is on the " +
             side_seen(stance, step.reference_right);
  if (step.at_gauge())
    words += ", " + against + " against the " +
             (step.machine == Machine::mitre_saw ? "fence" : "gauge") + ", " +
             side_name_of(context, step, step.stopped) + " at the stop on the " +
             side_seen(stance, step.reference_right);
  words += ".";
  if (step.machine != Machine::mitre_saw)
    words += " " + capitalised(side_name_of(context, step, step.leads)) + " leads.";
  return words + mark_side_words(context, step);
}

std::string lying_words(const Context& context, const StepWork& work) {
  const Step& step = *work.step;
  std::string words;
  if (step.guide == Guide::marks && sawn(step))
    words = step.machine == Machine::table_saw ? "On the taper sled. " : "Along the line. ";
  return words + laid_words(context, work);
}

std::string waste_words(const StepWork& work) {
  const Step& step = *work.step;
  if (!sawn(step)) return {};
  const Stance stance = stance_of(step);
  const std::string side = side_seen(stance, step.waste_right);
  return (step.tool == Tool::stack || step.exact.height > 0 ? "The cut is to the "
                                                            : "Waste to the ") +
         side + " of the line.";
}

std::string turn_words(const StepWork& work) {
  const Step& step = *work.step;
  if (work.before_it == nullptr) return "First step of this part.";
  const std::string since = " since " + work.before_it->id + ".";
  switch (step.turned) {
    case Turned::as_before:
      return "Not turned" + since;
    case Turned::end_for_end:
      return "Turned end for end, same side down," + since;
    case Turned::face_for_face:
      return "Rolled over about its length" + since;
    case Turned::over_ends:
      return "Turned over end for end, other side down," + since;
    case Turned::another_side:
      return "Another side comes down" + since;
    default:
      return "First step of this part.";
  }
}

std::string way_words(const Context& context, const StepWork& work) {
  const Step& step = *work.step;
  std::string words;
  if (step.same_as >= 0) {
    words = "As set for " + context.plan.steps[static_cast<std::size_t>(step.same_as)].id;
    if (step.at_fence() || step.at_gauge())
      words += (step.at_fence() ? ": fence " : ": stop ") +
               context.kit.figures.text(step.printed.distance);
    words += ".";
  }
  if (step.has(Flag::complement))
    words += (words.empty() ? "" : " ") + std::string(
                                              "Stands because the saw does not tilt far "
                                              "enough with the board flat.");
  if (!step.remark.empty()) words += (words.empty() ? "" : " ") + step.remark;
  return words;
}

double quiet_deviation(const Context& context) {
  // Half a step is what any rounding leaves, a little more where two meet.
  return std::max(context.plan.project->shop.largest_gap->mm / 10,
                  0.6 * context.kit.figures.step_mm());
}

std::string proved_words(const Context& context) {
  return "Every step is proven: the model, cut by these settings and nothing else, is the part to "
         "within " +
         in_words(context, least_shown(context)) +
         ". With the settings rounded as they are printed a step is off by no more than " +
         in_words(context, quiet_deviation(context)) + ", unless it says by how much.";
}

std::string proof_words(const Context& context, const Step& step) {
  if (!step.proven) return "NOT PROVEN: " + step.unproven_why;
  const double part = context.plan.rows[static_cast<std::size_t>(step.row)].deviation_printed;
  const double quiet = quiet_deviation(context);
  std::string words;
  if (step.deviation_printed > quiet)
    words = "Rounded, off by " + rounded_words(context, step.deviation_printed) + ".";
  if (last_of_its_part(context, step) && part > quiet)
    words += (words.empty() ? "With" : " With") +
             std::string(" all its cuts rounded the part is ") + "off by " +
             rounded_words(context, part) + ".";
  return words;
}

}  // namespace splay::sheets
