// What is marked on the work for a step.
#include <algorithm>
#include <cmath>

#include "fabrication/simulate.h"
#include "sheets/part_view_facts.h"
#include "sheets/saw_steps_words.h"

namespace splay::sheets {

namespace {

using fabrication::Step;

constexpr double on_it = 1e-5;  // mm

// Where a figure is counted from. The work's furthest point may lie on another face than the one
// that is marked: then the face with the arris it is counted from is named with it.
std::string datum_words(const Context& context, const StepWork& work, parts::Side side) {
  const Step& step = *work.step;
  const std::string& named = side_name_of(context, step, side);
  if (side == step.stopped ? step.stopped_on_face : step.across_on_face)
    return named + ", " + side_name_of(context, step, step.face);
  const Vec3 way = parts::outward(side);
  const double most = work.before.extent(way)[1];
  const auto reaches = [&](parts::Side face) {
    const Vec3 out = parts::outward(face);
    const double at = work.before.extent(out)[1];
    return std::ranges::any_of(work.before.vertices(), [&](const Vec3& p) {
      return dot(way, p) > most - on_it && dot(out, p) > at - on_it;
    });
  };
  const parts::Side other = parts::opposite(step.face);
  if (reaches(step.face) || !reaches(other)) return named;
  return named + ", " + side_name_of(context, step, other);
}

// "2 1/4 from foot", "at foot", and at the far side where it is one that is `named_far`.
std::string away_words(const Context& context, const StepWork& work, parts::Side side, double away,
                       bool named_far) {
  const FigureStyle& figures = context.kit.figures;
  const double half = figures.step_mm() / 2;
  const double low = work.before.extent(parts::outward(side))[0];
  const double start = fabrication::marks_start(*work.step, work.before, side);
  if (std::abs(away) < half) return "at " + datum_words(context, work, side);
  if (named_far && std::abs(start - low - away) < half)
    return "at " + side_name_of(context, *work.step, parts::opposite(side));
  return figures.text(away) + " from " + datum_words(context, work, side);
}

std::string place_words(const Context& context, const StepWork& work,
                        const fabrication::Mark& mark) {
  const Step& step = *work.step;
  return away_words(context, work, step.stopped, mark.along, false) + ", " +
         away_words(context, work, step.across_from, mark.across, true);
}

// Square across and along the work one figure says where a line is.
std::string line_place(const Context& context, const StepWork& work, const fabrication::Line& exact,
                       const fabrication::Line& printed) {
  const FigureStyle& figures = context.kit.figures;
  if (std::abs(exact.a.along - exact.b.along) < on_it)
    return figures.text(printed.a.along) + " from " +
           datum_words(context, work, work.step->stopped);
  if (std::abs(exact.a.across - exact.b.across) < on_it)
    return figures.text(printed.a.across) + " from " +
           datum_words(context, work, work.step->across_from);
  return "from " + place_words(context, work, printed.a) + " to " +
         place_words(context, work, printed.b);
}

// A wall that leans out of the waste on its way down leaves a hollow wider at its floor.
std::string wall_words(const Context& context, double lean) {
  return angle_words(std::abs(lean)) + " (" + rise_words(context.kit, std::abs(lean)) +
         ") off square, " + (lean > 0 ? "undercut" : "open");
}

// Where the lines run when they are few, each with its wall; else they are measured in the part
// view, and only what the walls are off square is told.
std::string line_words(const Context& context, const StepWork& work) {
  constexpr std::size_t most = 2;
  const std::vector<fabrication::Line>& exact = work.step->exact.lines;
  const std::vector<fabrication::Line>& printed = work.step->printed.lines;
  if (printed.empty()) return {};
  const bool few = printed.size() <= most;
  std::string words = few ? "Lines: " : "Lines as in the part view";
  std::vector<std::string> walls;
  for (std::size_t i = 0; i < printed.size(); ++i) {
    const double lean = std::abs(exact[i].lean) < square_within ? 0 : exact[i].lean;
    if (few) {
      words += (i == 0 ? "" : "; ") + line_place(context, work, exact[i], printed[i]);
      if (lean != 0) words += ", its wall " + wall_words(context, lean);
    } else if (lean != 0) {
      std::string wall = wall_words(context, lean);
      if (std::ranges::find(walls, wall) == walls.end()) walls.push_back(std::move(wall));
    }
  }
  for (std::size_t i = 0; i < walls.size(); ++i) words += (i == 0 ? ", walls " : "; ") + walls[i];
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
         side_name_of(context, step, points_to(step)) + ", along the walls as marked. ";
}

}  // namespace

std::string mark_words(const Context& context, const StepWork& work) {
  const Step& step = *work.step;
  const FigureStyle& figures = context.kit.figures;
  std::string words;
  const std::vector<fabrication::Mark>& marks = step.printed.marks;
  for (std::size_t i = 0; i < marks.size(); ++i)
    words += (i == 0 ? "Mark " : "; ") + (marks.size() > 1 ? std::to_string(i + 1) + ": " : "") +
             place_words(context, work, marks[i]);
  if (!words.empty()) words += ". ";
  words += line_words(context, work);
  const bool jig = step.has(fabrication::Flag::sloped_jig);
  if (jig) words += jig_words(context, step);
  const std::vector<fabrication::DepthMark>& depths = step.printed.depths;
  if (depths.size() == 1)
    words += figures.with_unit(depths[0].depth) + (jig ? " deep along the bit. " : " deep. ");
  if (depths.size() == 3) {
    words += "Depth ";
    for (std::size_t i = 0; i < 3; ++i)
      words += (i == 0 ? "" : "; ") + figures.text(depths[i].depth) + " at " +
               place_words(context, work, depths[i].at);
    words += ". ";
  }
  if (!words.empty()) words.pop_back();
  return words;
}

}  // namespace splay::sheets
