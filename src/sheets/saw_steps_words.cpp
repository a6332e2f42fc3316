#include "sheets/saw_steps_words.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "sheets/part_view_facts.h"
#include "sheets/saw_steps_draw.h"

namespace splay::sheets {

namespace {

using fabrication::Flag;
using fabrication::Guide;
using fabrication::Machine;
using fabrication::Position;
using fabrication::Step;
using fabrication::Tool;
using fabrication::Turned;
using parts::Side;

constexpr double square_to = 1e-6;  // radians

const parts::Part& part_of(const Context& context, const Step& step) {
  const fabrication::PartRow& row = context.plan.rows[static_cast<std::size_t>(step.row)];
  return context.plan.assembly.parts[static_cast<std::size_t>(row.members.front())];
}

const std::string& name(const Context& context, const Step& step, Side side) {
  return parts::side_name(part_of(context, step), side);
}

// "outside face", but "front edge" and "foot" as they are.
std::string side_words(const Context& context, const Step& step, Side side) {
  std::string words = name(context, step, side);
  const bool face = side == Side::z_low || side == Side::z_high;
  return face && words.find("face") == std::string::npos ? words + " face" : words;
}

// Where the face mark is, when there is one face to show.
std::string mark_side_words(const Context& context, const Step& step) {
  if (part_of(context, step).show != parts::ShowFace::high_z) return {};
  const bool led = stance_of(step).led;
  if (step.face == Side::z_high) return led ? " Face mark up." : " Face mark down.";
  if (step.face == Side::z_low) return led ? " Face mark down." : " Face mark up.";
  return {};
}

bool sawn(const Step& step) { return step.tool == Tool::blade || step.tool == Tool::stack; }
bool fenced(const Step& step) { return step.guide == Guide::fence && step.tool != Tool::thickness; }
bool gauged(const Step& step) { return step.guide == Guide::gauge && step.tool != Tool::thickness; }

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
  if (exact < square_to) return {what, "square 0°", scale};
  return {what, scale_angle(context, step, printed),
          "check " + rise_words(context.kit, exact) + ", " + scale};
}

bool slants(const Step& step) {
  return step.exact.tilt > square_to || std::abs(step.exact.gauge) > square_to;
}

SettingField distance_field(const Context& context, const Step& step) {
  const std::string figure = context.kit.figures.text(step.printed.distance);
  std::string note = "to the line of cut";
  if (slants(step)) note = step.to_long_point ? "to the long point" : "to the short point";
  return {gauged(step) ? "Stop to line" : "Fence to line", figure, note};
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

std::string uncapitalised(std::string text) {
  if (!text.empty() && text[0] >= 'A' && text[0] <= 'Z')
    text[0] = static_cast<char>(text[0] - 'A' + 'a');
  return text;
}

std::string tool_words(const Step& step) {
  return capitalised(std::string(fabrication::word(step.machine))) +
         (step.tool == Tool::stack ? ", dado stack" : "");
}

std::string machine_words(const Step& step) {
  std::string words = tool_words(step);
  if (gauged(step))
    words += step.machine == Machine::mitre_saw ? ", at its fence" : ", mitre gauge";
  if (fenced(step)) words += step.position() == Position::on_end ? ", tall fence" : ", rip fence";
  if (step.guide == Guide::marks && sawn(step))
    words += step.machine == Machine::table_saw ? ", taper sled" : ", along the line";
  return words;
}

// To the thousandth of a millimetre, whatever the job's unit.
std::string in_words(const Context& context, double mm) {
  if (context.kit.figures.unit == Unit::millimetre) return plain_number(mm, 3) + " mm";
  return plain_number(mm / Length::mm_per_inch, 4) + " in";
}

// Which way the gauge is turned: the frame's right end moves forward when the angle is positive.
std::string gauge_side(const Step& step) {
  if (std::abs(step.exact.gauge) < square_to) return {};
  const bool right = step.exact.gauge > 0;
  if (step.machine == Machine::mitre_saw)
    return right ? ", near end to the left" : ", near end to the right";
  return right ? ", right end forward" : ", left end forward";
}

// Under the least that prints, or the figure. Rounded figures need a tenth of the places.
std::string off_words(const Context& context, double mm, bool rounded) {
  const double least =
      (context.kit.figures.unit == Unit::millimetre ? 0.001 : 0.0001 * Length::mm_per_inch) *
      (rounded ? 10 : 1);
  const double shown = rounded ? std::round(mm / least) * least : mm;
  return shown < least ? "under " + in_words(context, least) : in_words(context, shown);
}

bool last_of_its_part(const Context& context, const Step& step) {
  const auto next = static_cast<std::size_t>(&step - context.plan.steps.data()) + 1;
  return next >= context.plan.steps.size() || context.plan.steps[next].row != step.row;
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
  if (sawn(step) || (step.tool == Tool::bore && step.exact.tilt > square_to)) {
    const std::string side = step.exact.tilt > square_to
                                 ? ", to the " + side_seen(stance_of(step), step.tilts_right)
                                 : "";
    fields.push_back(angle_field(context, step, "Tilt" + side, false));
  }
  if (step.has(Flag::sloped_jig)) {
    const bool drilled = step.machine == Machine::drill;
    fields.push_back(angle_field(context, step, drilled ? "Table tilted" : "Wedge", false));
  }
  if (gauged(step)) {
    const std::string what = step.machine == Machine::mitre_saw ? "Mitre" : "Gauge";
    fields.push_back(angle_field(context, step, what + gauge_side(step), true));
  }
  if (fenced(step) || gauged(step)) fields.push_back(distance_field(context, step));
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

std::string laid_words(const Context& context, const StepWork& work) {
  const Step& step = *work.step;
  const Stance stance = stance_of(step);
  if (stance.led)
    return capitalised(side_words(context, step, step.face)) + " up, clamped down." +
           mark_side_words(context, step);
  std::string words = capitalised(std::string(fabrication::word(step.position()))) + ": " +
                      side_words(context, step, step.face) + " down";
  const std::string against = side_words(context, step, step.against);
  if (fenced(step))
    words += ", " + against + " against the fence, which is on the " +
             side_seen(stance, step.reference_right);
  if (gauged(step))
    words += ", " + against + " against the " +
             (step.machine == Machine::mitre_saw ? "fence" : "gauge") + ", " +
             name(context, step, step.stopped) + " at the stop on the " +
             side_seen(stance, step.reference_right);
  words += ".";
  if (step.machine != Machine::mitre_saw)
    words += " " + capitalised(name(context, step, step.leads)) + " leads.";
  return words + mark_side_words(context, step);
}

std::string lying_words(const Context& context, const StepWork& work) {
  return machine_words(*work.step) + ". " + laid_words(context, work);
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
    if (fenced(step) || gauged(step)) {
      const SettingField distance = distance_field(context, step);
      words += ": " + uncapitalised(distance.name) + " " + distance.value;
    }
    words += ".";
  }
  if (step.has(Flag::complement))
    words += (words.empty() ? "" : " ") + std::string(
                                              "Stands because the saw does not tilt far "
                                              "enough with the board flat.");
  if (!step.remark.empty()) words += (words.empty() ? "" : " ") + step.remark;
  return words;
}

std::string proof_words(const Context& context, const Step& step) {
  if (!step.proven) return "NOT PROVEN: " + step.unproven_why;
  const auto rounded = [&](double mm) { return off_words(context, mm, true); };
  std::string words = "Proven in the model: off by " +
                      off_words(context, step.deviation_exact, false) + " set exactly, by " +
                      rounded(step.deviation_printed) + " as rounded";
  const double part = context.plan.rows[static_cast<std::size_t>(step.row)].deviation_printed;
  if (last_of_its_part(context, step) && part >= 0)
    words += "; all cuts rounded, the part by " + rounded(part);
  return words + ".";
}

std::string group_words(const Context& context, const StepWork& first) {
  const Step& step = *first.step;
  std::string words = tool_words(step);
  if (sawn(step) && step.exact.tilt > square_to)
    words += ", blade tilted " + scale_angle(context, step, step.printed.tilt) + " " +
             side_seen(stance_of(step), step.tilts_right);
  else if (sawn(step) && !stance_of(step).led)
    words += ", blade upright";
  if (gauged(step) && std::abs(step.exact.gauge) > square_to)
    words +=
        ", gauge " + scale_angle(context, step, std::abs(step.printed.gauge)) + gauge_side(step);
  return words;
}

}  // namespace splay::sheets
