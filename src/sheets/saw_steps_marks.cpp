// What is marked on the work for a step.
#include <algorithm>
#include <cmath>

#include "sheets/part_view_facts.h"
#include "sheets/saw_steps_words.h"

namespace splay::sheets {

namespace {

using fabrication::Step;

constexpr double square_to = 1e-6;  // radians

const std::string& name(const Context& context, const Step& step, parts::Side side) {
  const fabrication::PartRow& row = context.plan.rows[static_cast<std::size_t>(step.row)];
  return parts::side_name(
      context.plan.assembly.parts[static_cast<std::size_t>(row.members.front())], side);
}

std::string place_words(const Context& context, const Step& step, const fabrication::Mark& mark) {
  const FigureStyle& figures = context.kit.figures;
  return figures.text(mark.along) + " from " + name(context, step, step.stopped) + ", " +
         figures.text(mark.across) + " from " + name(context, step, step.across_from);
}

std::string wall_words(const Context& context, double lean) {
  return angle_words(std::abs(lean)) + " (" + rise_words(context.kit, std::abs(lean)) + ") " +
         (lean > 0 ? "open" : "undercut");
}

// Where the lines run when they are few; else they are measured in the part view, and only what the
// walls are off square is told.
std::string line_words(const Context& context, const Step& step) {
  constexpr std::size_t most = 2;
  const std::vector<fabrication::Line>& lines = step.printed.lines;
  if (lines.empty()) return {};
  std::string words = "Lines as in the part view";
  std::vector<std::string> walls;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (lines.size() <= most)
      words = (i == 0 ? "Lines: from " : words + "; from ") +
              place_words(context, step, lines[i].a) + " to " +
              place_words(context, step, lines[i].b);
    const double lean = step.exact.lines[i].lean;
    if (std::abs(lean) < square_to) continue;
    std::string wall = wall_words(context, lean);
    if (std::ranges::find(walls, wall) == walls.end()) walls.push_back(std::move(wall));
  }
  for (std::size_t i = 0; i < walls.size(); ++i)
    words += (i == 0 ? ", wall off square " : ", ") + walls[i];
  return words + ". ";
}

// The side a tool on a sloped jig points to most as it goes into the wood.
parts::Side points_to(const Step& step) {
  const Vec3 up = -parts::outward(step.face), to = parts::outward(step.against);
  const Vec3 way = cross(up, to) * std::cos(step.exact.gauge) - to * std::sin(step.exact.gauge);
  parts::Side nearest = parts::Side::x_low;
  for (int i = 0; i < 6; ++i)
    if (const auto side = static_cast<parts::Side>(i);
        dot(parts::outward(side), way) > dot(parts::outward(nearest), way))
      nearest = side;
  return nearest;
}

std::string jig_words(const Context& context, const Step& step) {
  const bool drilled = step.machine == fabrication::Machine::drill;
  return (drilled ? std::string("Table tilted, the bit going in towards the ")
                  : std::string("Router on a wedge, the bit going in towards the ")) +
         name(context, step, points_to(step)) + ", along the walls as marked. ";
}

}  // namespace

std::string mark_words(const Context& context, const StepWork& work) {
  const Step& step = *work.step;
  const FigureStyle& figures = context.kit.figures;
  std::string words;
  const std::vector<fabrication::Mark>& marks = step.printed.marks;
  for (std::size_t i = 0; i < marks.size(); ++i)
    words += (i == 0 ? "Mark " : "; ") + (marks.size() > 1 ? std::to_string(i + 1) + ": " : "") +
             place_words(context, step, marks[i]);
  if (!words.empty()) words += ". ";
  words += line_words(context, step);
  const bool jig = step.has(fabrication::Flag::sloped_jig);
  if (jig) words += jig_words(context, step);
  const std::vector<fabrication::DepthMark>& depths = step.printed.depths;
  if (depths.size() == 1)
    words += figures.with_unit(depths[0].depth) + (jig ? " deep along the bit. " : " deep. ");
  if (depths.size() == 3) {
    words += "Depth ";
    for (std::size_t i = 0; i < 3; ++i)
      words += (i == 0 ? "" : "; ") + figures.text(depths[i].depth) + " at " +
               place_words(context, step, depths[i].at);
    words += ". ";
  }
  if (!words.empty()) words.pop_back();
  return words;
}

}  // namespace splay::sheets
