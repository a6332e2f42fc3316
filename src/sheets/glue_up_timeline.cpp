#include <algorithm>
#include <cmath>

#include "fabrication/glue_up.h"
#include "sheets/glue_up_picture.h"

namespace splay::sheets {

using drafting::Picture;
using fabrication::GlueStage;

std::string hours_text(double minutes) {
  const auto whole = static_cast<long>(std::lround(minutes));
  if (whole < 90) return std::to_string(whole) + " min";
  const long rest = whole % 60;
  std::string text = std::to_string(whole / 60) + " h";
  if (rest > 0) text += (rest < 10 ? " 0" : " ") + std::to_string(rest) + " min";
  return text;
}

Picture timeline(const Context& context, double width, std::size_t first, std::size_t last) {
  const drafting::Kit& kit = context.kit;
  const fabrication::GlueUpPlan& glue_up = context.plan.glue_up;
  constexpr double pitch = 6, bar = 3.2, name = 18;
  const double ends = std::max(1.0, glue_up.ends());
  const double run = width - name - 4;
  const auto x = [&](double minutes) { return name + run * minutes / ends; };
  const double height = pitch * static_cast<double>(last - first) + 10;
  Picture picture{{}, width, height};
  ink::Group group{"table", {}};
  // A step of the axis that leaves room for its words.
  static constexpr double steps[] = {5, 10, 15, 30, 60, 120, 240, 480, 960, 1440, 2880, 10080};
  double step = steps[0];
  for (const double each : steps)
    if (step * run / ends < 24) step = each;
  ink::Path grid;
  for (double t = 0; t <= ends + 1e-9; t += step) {
    grid.move({x(t), -6.5}).line({x(t), -height});
    group.items.emplace_back(ink::Text{{x(t), -4},
                                       hours_text(t),
                                       kit.look.lettering,
                                       0,
                                       t == 0 ? ink::Align::left : ink::Align::centre});
  }
  group.items.emplace_back(ink::Stroke{std::move(grid), {0.13, ink::Dash::continuous, 0.5}});
  for (std::size_t s = first; s < last; ++s) {
    const GlueStage& stage = glue_up.stages[s];
    const double low = -9 - pitch * static_cast<double>(s - first) - bar;
    const auto box = [&](double from, double to) {
      return ink::Path{}.rect({{x(from), low}, {std::max(x(to), x(from) + 0.4), low + bar}});
    };
    group.items.emplace_back(ink::Fill{box(stage.starts + stage.minutes, stage.frees), 0.75});
    group.items.emplace_back(ink::Fill{box(stage.starts, stage.starts + stage.minutes), 0});
    group.items.emplace_back(ink::Stroke{box(stage.starts, stage.frees), kit.thin()});
    group.items.emplace_back(
        ink::Text{{0, low + 0.3}, "Stage " + std::to_string(s + 1), kit.look.lettering});
  }
  picture.items.emplace_back(std::move(group));
  return picture;
}

}  // namespace splay::sheets
