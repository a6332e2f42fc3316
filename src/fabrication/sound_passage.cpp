// The way in: what the piece passes whole, and what it needs to be turned up.
#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "base/figure.h"
#include "fabrication/plan.h"
#include "fabrication/soundness.h"

namespace splay::fabrication {

namespace {

std::string opening_text(const model::Way& way, const FigureStyle& figures) {
  std::string text =
      figures.with_unit(way.width->mm) + " by " + figures.with_unit(way.height->mm) + " clear";
  if (way.turns_into.given) text += " and turning into " + figures.with_unit(way.turns_into->mm);
  return text;
}

std::string count_text(std::size_t count, const char* one, const char* more) {
  return std::to_string(count) + " " + (count == 1 ? one : more);
}

// What helps: the break found, or why none is.
std::string remedy(const Plan& plan) {
  const KnockDown& apart = plan.soundness.knock_down;
  if (!apart.too_large.empty())
    return "No joint left dry helps: " + plan.mark_of(apart.too_large.front()) +
           " does not pass by itself. Make it of two lengths, or find another way in.";
  if (!apart.found()) return "No way found to take it apart. Find another way in.";
  if (apart.joints.empty())
    return "Nothing joins its " + std::to_string(apart.pieces.size()) +
           " pieces: carried one by one they pass.";
  std::string text = "Leave dry ";
  constexpr std::size_t named = 3;
  for (std::size_t i = 0; i < std::min(named, apart.joints.size()); ++i)
    text += (i == 0 ? "" : ", ") +
            plan.assembly.joints[static_cast<std::size_t>(apart.joints[i].joint)].name;
  if (apart.joints.size() > named)
    text += " and " + std::to_string(apart.joints.size() - named) + " more";
  return text + " (" + count_text(apart.joints.size(), "joint", "joints") + "): the " +
         std::to_string(apart.pieces.size()) +
         " sub-assemblies pass; the page \"Hardware, finish, balance\" has them.";
}

}  // namespace

double out_of_square(double diagonal_1, double diagonal_2, double side_1, double side_2) {
  return std::asin((diagonal_2 * diagonal_2 - diagonal_1 * diagonal_1) / (4 * side_1 * side_2));
}

double turning_height(double height, double depth) { return std::hypot(height, depth); }

double longest_round_corner(double width, double passage_a, double passage_b) {
  if (width > std::min(passage_a, passage_b)) return -1;
  // Its outer side touches both outer walls, its inner side the corner; the turn's tightest place.
  const auto room = [&](double turned) {
    const double s = std::sin(turned), c = std::cos(turned);
    return (passage_a * c + passage_b * s - width) / (s * c);
  };
  double low = 1e-6, high = std::numbers::pi / 2 - 1e-6;
  while (high - low > 1e-10) {
    const double a = low + (high - low) / 3, b = high - (high - low) / 3;
    (room(a) < room(b) ? high : low) = room(a) < room(b) ? b : a;
  }
  return room((low + high) / 2);
}

Passage best_passage(const model::Way& way, const std::vector<Vec3>& boxes) {
  constexpr std::array<std::array<int, 3>, 6> orders{
      {{0, 1, 2}, {0, 2, 1}, {1, 0, 2}, {1, 2, 0}, {2, 0, 1}, {2, 1, 0}}};
  Passage best;
  best.name = way.name;
  double most = -1e300;
  for (const Vec3& box : boxes) {
    const std::array<double, 3> size{box.x, box.y, box.z};
    for (const auto& [i, j, k] : orders) {
      const double across = size[static_cast<std::size_t>(i)],
                   up = size[static_cast<std::size_t>(j)],
                   along = size[static_cast<std::size_t>(k)];
      double left = std::min(way.width->mm - across, way.height->mm - up);
      // Turned round the corner, or sideways on from there.
      if (way.turns_into.given)
        left =
            std::min(left, std::max(longest_round_corner(across, way.width->mm, way.turns_into->mm),
                                    way.turns_into->mm) -
                               along);
      if (left <= most) continue;
      most = left;
      best = {way.name, across, up, along, left >= 0};
    }
  }
  return best;
}

bool turns_up(const model::Room& room, double height) {
  return !room.ceiling.given || height <= room.ceiling->mm;
}

void judge_passage(Plan& plan) {
  if (plan.soundness.balances.empty()) return;
  const Balance& whole = plan.soundness.balances.front();
  const Vec3 size = whole.high - whole.low;
  const FigureStyle figures = plan.project->job.figures();
  const model::Room& room = plan.project->room;
  for (std::size_t i = 0; i < room.ways.size(); ++i)
    plan.soundness.passages.push_back(best_passage(room.ways[i], {size}));
  plan.soundness.turned_up = turning_height(size.z, std::min(size.x, size.y));
  plan.soundness.knock_down = find_knock_down(plan);
  for (std::size_t i = 0; i < room.ways.size(); ++i) {
    const Passage& passage = plan.soundness.passages[i];
    if (passage.passes) continue;
    plan.findings.push_back(
        {Level::caution,
         "too-large-for-way",
         {},
         "It does not pass " + passage.name + " straight, " + opening_text(room.ways[i], figures) +
             ": at best it takes " + figures.with_unit(passage.across) + " by " +
             figures.with_unit(passage.up) + ", " + figures.with_unit(passage.along) + " long.",
         remedy(plan)});
  }
  if (turns_up(room, plan.soundness.turned_up)) return;
  plan.findings.push_back({Level::caution,
                           "too-high-to-turn-up",
                           {},
                           "To be turned up from lying it needs " +
                               figures.with_unit(plan.soundness.turned_up) +
                               " under a ceiling of " + figures.with_unit(room.ceiling->mm) + ".",
                           "Bring it in upright. " + remedy(plan)});
}

}  // namespace splay::fabrication
