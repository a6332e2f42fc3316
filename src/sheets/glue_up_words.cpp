#include "sheets/glue_up_words.h"

#include <algorithm>
#include <cmath>

#include "base/index.h"
#include "fabrication/glue_up.h"
#include "fabrication/row_order.h"
#include "sheets/glue_up_picture.h"

namespace splay::sheets {

namespace {

using fabrication::Bond;
using fabrication::Clamping;
using fabrication::ClampWay;
using fabrication::GlueStage;

void put(std::string& text, const std::string& more, const char* between = ", ") {
  if (!more.empty()) text += (text.empty() ? "" : between) + more;
}

void put_once(std::vector<std::string>& list, const std::string& text) {
  if (std::ranges::find(list, text) == list.end()) list.push_back(text);
}

std::string listed(const std::vector<std::string>& list, const char* between = ", ") {
  std::string text;
  for (const std::string& each : list) put(text, each, between);
  return text;
}

std::string minutes_text(double minutes) { return plain_number(minutes, 1); }

const std::string& name_of(const Context& context, int part) {
  return context.plan.assembly.parts[index(part)].name;
}

std::string marked(const Context& context, int part) {
  return context.plan.mark_of(part) + " " + name_of(context, part);
}

const char* clamp_name(model::ClampKind kind) {
  static constexpr const char* names[] = {"parallel clamp", "pipe clamp",   "bar clamp",
                                          "screw clamp",    "spring clamp", "band"};
  return names[static_cast<std::size_t>(kind)];
}

std::string glue_name(const model::GlueUp& glue_up) {
  return glue_up.product.given ? *glue_up.product
                               : std::string(model::word(*glue_up.glue)) + " glue";
}

}  // namespace

std::vector<int> but_edging(const Context& context, std::vector<int> parts) {
  for (const parts::Joint& joint : context.plan.assembly.joints) {
    if (joint.made == parts::Made::in_turn || joint.between.size() < 2) continue;
    if (std::ranges::find(parts, joint.between.back()) != parts.end())
      std::erase(parts, joint.between.front());
  }
  return parts;
}

std::string force_text(const Context& context, double newtons) {
  constexpr double pound = 4.4482216152605;  // N (NIST SP 811)
  const bool inch = *context.job().units == Unit::inch;
  return std::to_string(std::lround(inch ? newtons / pound : newtons)) + (inch ? " lbf" : " N");
}

std::string marks_words(const Context& context, const std::vector<int>& parts) {
  return listed(fabrication::marks_in_order(context.plan, but_edging(context, parts)));
}

std::string parts_words(const Context& context, const std::vector<int>& parts) {
  const std::vector<int> panels = but_edging(context, parts);
  if (panels.size() != 1) return marks_words(context, panels) + " (made up before)";
  return marked(context, panels.front()) + (parts.size() > 1 ? ", edged" : "");
}

std::string joints_words(const Context& context, const std::vector<int>& joints) {
  std::vector<std::string> kinds;
  for (const int joint : joints) {
    const Bond bond = fabrication::bond_of(context.plan, joint);
    put_once(kinds, context.plan.assembly.joints[index(joint)].kind + (bond == Bond::glued ? ""
                                                                       : bond == Bond::undone
                                                                           ? ", comes apart"
                                                                           : ", dry"));
  }
  return kinds.empty() ? "none: it stands there" : listed(kinds, "; ");
}

std::string joint_marks(const Context& context, const std::vector<int>& joints) {
  std::vector<std::string> pairs;
  for (const int joint : joints)
    put_once(pairs, listed(context.plan.joints[index(joint)].between, " to "));
  return listed(pairs);
}

std::string time_words(const Context& context, const GlueStage& stage) {
  const model::GlueTimes& times = context.plan.glue_up.times;
  std::string text;
  if (!stage.needs.empty()) {
    text = "When out of the clamps: stage ";
    for (std::size_t i = 0; i < stage.needs.size(); ++i)
      text += (i == 0 ? "" : ", ") + std::to_string(stage.needs[i] + 1);
    text += ". ";
  }
  if (stage.undone)
    return text + "About " + minutes_text(stage.minutes) +
           " min, in the shop for a try and on the spot for good; no glue, no clamps, no wait: "
           "bolts or screws draw it home.";
  if (!stage.glued)
    return text + "About " + minutes_text(stage.minutes) + " min; nothing is glued.";
  return text + "Spreading " + minutes_text(stage.spreading) + " of " + minutes_text(times.open) +
         " min open time; last clamp after " + minutes_text(stage.minutes) + " of " +
         minutes_text(times.open + times.closed) + " min; then " + hours_text(stage.cure) +
         " in the clamps.";
}

std::string clamp_words(const Clamping& row) {
  if (row.how == ClampWay::screws) return "its screws hold it";
  if (row.how == ClampWay::hands) return "none: no head bears";
  if (row.how == ClampWay::tape)
    return std::to_string(row.count) + " strips of tape across each joint";
  std::string text = std::to_string(row.count) + " × " + clamp_name(row.kind);
  if (!row.clamp.empty()) text += " (" + row.clamp + ")";
  if (!row.enough) text += ": not enough of them";
  return text;
}

std::string caul_words(const Context& context, const Clamping& row) {
  const FigureStyle& figures = context.kit.figures;
  std::string text;
  std::vector<std::pair<std::string, std::vector<std::string>>> kinds;  // sizes, marks
  for (const fabrication::Caul& caul : row.cauls) {
    const std::string size = degrees_text(Angle{caul.angle}.degrees()) + ", " +
                             figures.text(caul.length) + " long, " + figures.text(caul.width) +
                             " wide, " + figures.text(caul.thick) + " at the thick edge";
    auto kind =
        std::ranges::find(kinds, size, &std::pair<std::string, std::vector<std::string>>::first);
    if (kind == kinds.end()) kind = kinds.insert(kinds.end(), {size, {}});
    put_once(kind->second, context.plan.mark_of(caul.part));
  }
  for (const auto& [size, marks] : kinds)
    put(text, "wedges on " + listed(marks) + ": " + size, "; ");
  constexpr double steep = 0.44;  // radians, some 25 degrees: steeper ones don't stay by friction
  if (std::ranges::any_of(row.cauls, [](const auto& caul) { return caul.angle > steep; }))
    put(text, "glued on with paper between, split off with a chisel", "; ");
  if (row.how == ClampWay::hands)
    return "press it home by hand and bind it with cord or tape until the glue holds";
  if (row.how == ClampWay::tape && row.reach <= 0)
    return "tape pulled tight over the strip; a straight batten under it keeps it from bowing";
  if (row.how == ClampWay::tape)
    return "lay the parts in a row, outer faces up and ends touching, tape over the joints, turn "
           "over, spread, fold up";
  if (row.how == ClampWay::band) {
    text = "blocks under the band at the corners";
    if (row.head_slide > 0)
      text += "; each band is driven " + force_text(context, row.head_slide) +
              " towards the narrow end: hold it with tape or hooked blocks";
    return text;
  }
  if (!row.cauls.empty())
    put(text, "a bare head would slide with " + force_text(context, row.head_slide), "; ");
  if (row.joint_slide > 0)
    put(text,
        "the joint itself wants to slide with " + force_text(context, row.joint_slide) +
            " a clamp: stop it with a pin or a block",
        "; ");
  if (text.empty()) text = "flat blocks under the heads";
  return text;
}

std::vector<std::string> stage_notes(const Context& context, const GlueStage& stage) {
  std::vector<std::string> notes;
  for (const int part : stage.one_end)
    notes.push_back(marked(context, part) +
                    " is held at one end only: set it by the angle below, clamp a block into the "
                    "corner on either side, and let it dry so before the next stage.");
  for (const fabrication::OutOfReach& surface : stage.finish_first)
    notes.push_back("Finish first: " + marked(context, surface.part) + ", " + surface.side + ". " +
                    marked(context, surface.before) + " will stand " +
                    context.kit.figures.with_unit(surface.gap) + " before it, too near for a pad.");
  std::vector<std::string> held;
  for (const int joint : stage.joints) {
    if (fabrication::bond_of(context.plan, joint) != Bond::undone) continue;
    const std::string& kind = context.plan.assembly.joints[index(joint)].kind;
    put_once(held, kind + ": " + fabrication::held_dry(kind));
  }
  if (!held.empty())
    notes.push_back("Left to come apart: " + listed(held, ". ") +
                    ". Mark both sides of every joint.");
  const bool winds = std::ranges::any_of(stage.checks, [](const fabrication::WetCheck& check) {
    return check.kind == fabrication::MeasureKind::diagonal;
  });
  if (winds)
    notes.emplace_back(
        "Sight over two straight sticks laid across its ends: they must not wind. Diagonals have "
        "each their own figure; on a leaning face they differ.");
  return notes;
}

std::string glue_words(const Context& context) {
  const model::GlueUp& asked = context.plan.project->glue_up;
  const fabrication::GlueUpPlan& plan = context.plan.glue_up;
  const bool any = std::ranges::any_of(plan.stages, &GlueStage::glued);
  const std::string taken =
      "The order is found by taking the finished piece apart along straight lines.";
  if (!any) return taken + " Nothing of it is glued.";
  std::string text =
      glue_name(asked) + " at " + plain_number(*asked.temperature, 1) + " °C: open " +
      minutes_text(plan.times.open) + " min, closed " + minutes_text(plan.times.closed) +
      " min more, in the clamps " + hours_text(plan.times.cure) +
      (*asked.open > 0 ? " (as given for it)" : " (short end of what is usual for its kind)") +
      ". All in all " + hours_text(plan.ends()) + " with one pair of hands" +
      (asked.clamps.empty() ? ", if there are clamps enough. " : " and the clamps listed. ") +
      taken +
      " Full strength takes a day; the label of the glue in hand comes before these figures.";
  text.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(text.front())));
  return text;
}

std::vector<std::string> dry_fit_lines(const Context& context) {
  const fabrication::GlueUpPlan& plan = context.plan.glue_up;
  std::vector<std::string> lines{
      "Every part marked, face marks agree with the pictures, mating surfaces clean and flat.",
      "Every stage put together dry in its order, along the ways shown; each joint closes by hand.",
      "Clamps opened to their reach, heads padded, laid out by rows; rule, sticks, bevel gauge and "
      "damp cloth at hand."};
  std::vector<std::string> kinds;
  for (const fabrication::Caul& caul : plan.cauls())
    put_once(kinds, degrees_text(Angle{caul.angle}.degrees()) + " " + plain_number(caul.length, 1));
  if (!kinds.empty())
    lines.push_back("Wedges sawn for faces that aren't square to their clamps (" +
                    std::to_string(kinds.size()) + (kinds.size() == 1 ? " kind" : " kinds") +
                    ", rows below), tried with a clamp: no head slides.");
  lines.emplace_back("All measures of the wet-glue tables taken once dry, and right.");
  std::vector<std::string> first;
  for (const GlueStage& stage : plan.stages)
    for (const auto& surface : stage.finish_first)
      put_once(first, context.plan.mark_of(surface.part) + " " + surface.side);
  if (!first.empty()) lines.push_back("Finished before they are closed in: " + listed(first) + ".");
  lines.emplace_back("The longest stage rehearsed against the clock.");
  return lines;
}

std::vector<std::string> glue_cautions(const Context& context) {
  using model::GlueKind;
  std::vector<std::string> cautions;
  const GlueKind kind = *context.plan.project->glue_up.glue;
  if (kind == GlueKind::polyurethane || kind == GlueKind::epoxy)
    cautions.emplace_back(
        "Resin and hardener may make one allergic by skin or breath: gloves, eye protection, fresh "
        "air, nothing of it on the skin.");
  if (kind == GlueKind::urea_formaldehyde)
    cautions.emplace_back(
        "The powder and the setting glue give off formaldehyde: mask against dust while mixing, "
        "gloves, fresh air.");
  cautions.emplace_back(
      "Eye protection when clamps are set and taken off: a head that slips flies. Keep fingers out "
      "of the line of a band and of closing joints. The glue maker's data sheet and local rules "
      "come before this page.");
  return cautions;
}

}  // namespace splay::sheets
