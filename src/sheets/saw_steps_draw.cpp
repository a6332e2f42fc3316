#include "sheets/saw_steps_draw.h"

#include <cmath>

#include "drafting/dimension.h"

namespace splay::sheets {

using fabrication::Machine;

Stance stance_of(const fabrication::Step& step) {
  const Vec3 x{1, 0, 0}, y{0, 1, 0}, z{0, 0, 1};
  switch (step.machine) {
    case Machine::mitre_saw:
      // Its fence is away from the one who cuts, and is the machine frame's gauge.
      return {false, true, {-x, z, y}, {-x, -y, z}};
    case Machine::track_saw:
    case Machine::router:
    case Machine::drill:
    case Machine::hand:
      return {true, true, {-x, -z, -y}, {-x, y, -z}};
    default:
      return {false, false, {x, z, -y}, {x, y, z}};
  }
}

std::string side_seen(const Stance& stance, bool machine_right) {
  return machine_right != stance.mirrored ? "right" : "left";
}

std::vector<std::vector<Vec2>> section_seen(const StepWork& work, const Stance& stance,
                                            const Solid& solid) {
  const Vec3 toward = stance.end.toward;
  const double middle = (work.bite.low.y + work.bite.high.y) / 2;
  std::vector<std::vector<Vec2>> loops;
  for (const Face& face : solid.section(work.machine.plane({toward, toward.y * middle})))
    for (const std::vector<Vec3>& points : face.loops) {
      std::vector<Vec2>& loop = loops.emplace_back();
      for (const Vec3 p : points) loop.push_back(stance.end.project(work.machine.local_point(p)));
    }
  return loops;
}

double machine_part(const drafting::Kit& kit) { return 1.84 * kit.look.lettering; }

ink::Group named_part(const drafting::Kit& kit, Vec2 corner, Vec2 along, Vec2 across,
                      const std::string& word) {
  ink::Group group{"view", {}};
  ink::Path box;
  box.polygon({corner, corner + along, corner + along + across, corner + across});
  group.items.emplace_back(ink::Fill{box, 1});
  group.items.emplace_back(ink::Stroke{std::move(box), {kit.look.middle}});
  const double letter = kit.look.lettering;
  if (norm(along) < kit.width(word, letter) + 1) return group;
  // Read from below or from the right.
  Vec2 reading = unit(along);
  if (reading.x < -1e-6 || (std::abs(reading.x) <= 1e-6 && reading.y < 0)) reading = -reading;
  const Vec2 middle = corner + along * 0.5 + across * 0.5;
  group.items.emplace_back(ink::Text{middle - left_of(reading) * (letter / 2), word, letter,
                                     std::atan2(reading.y, reading.x), ink::Align::centre});
  return group;
}

ink::Group set_distance(const drafting::Kit& kit, Vec2 from, Vec2 to, Vec2 out, double clear,
                        double off, double mm) {
  constexpr double head = 2.2, beyond = 1.2, air = 0.9;
  ink::Group group{"dimension", {}};
  const Vec2 along = unit(to - from);
  const Vec2 a = from + out * off, b = to + out * off;
  const bool outside = norm(to - from) < 3 * head;
  ink::Path lines;
  lines.move(from + out * clear).line(a + out * beyond);
  lines.move(to + out * clear).line(b + out * beyond);
  if (outside) {
    lines.move(a - along * (head + 2)).line(b + along * (head + 2));
  } else {
    lines.move(a).line(b);
  }
  group.items.emplace_back(ink::Stroke{std::move(lines), kit.thin()});
  group.items.emplace_back(drafting::arrow_head(a, outside ? along : -along, head));
  group.items.emplace_back(drafting::arrow_head(b, outside ? -along : along, head));
  Vec2 reading = along;
  if (reading.x < -1e-6 || (std::abs(reading.x) <= 1e-6 && reading.y < 0)) reading = -reading;
  const double letter = kit.look.figures;
  const bool above = dot(left_of(reading), out) > 0;
  const Vec2 base = (a + b) * 0.5 + out * (air + beyond) + (above ? Vec2{} : out * letter);
  const Figure figure = kit.figures.round(mm);
  group.items.emplace_back(ink::Text{base, kit.figures.text(figure), letter,
                                     std::atan2(reading.y, reading.x), ink::Align::centre});
  ink::DimensionClaim claim;
  claim.from = from;
  claim.to = to;
  claim.along = along;
  claim.scale = norm(to - from) / mm;
  claim.exact_mm = mm;
  claim.step_mm = kit.figures.step_mm();
  claim.steps = figure.steps;
  group.items.emplace_back(claim);
  return group;
}

}  // namespace splay::sheets
