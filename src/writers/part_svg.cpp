// Each part at its true size in millimetres: layers "visible edges", "hidden edges", "centres" and
// "lettering".
#include <algorithm>
#include <cmath>

#include "base/figure.h"
#include "writers/formats.h"
#include "writers/part_outline.h"
#include "writers/writers.h"

namespace splay::writers {

namespace {

constexpr double air = 10;  // mm round the part
constexpr double wide = 0.5, narrow = 0.25, mark_capitals = 5;

ink::Item stroke(const ViewLine& line, Vec2 origin, const ink::Pen& pen) {
  return ink::Stroke{ink::Path{}.move(origin + line.a).line(origin + line.b), pen};
}

// A cross over each round hole, drawn once where its mouth and floor lie over each other.
ink::Group centres(const PartOutline& outline, Vec2 origin) {
  ink::Group group{"centres", {}};
  std::vector<Vec2> done;
  const ink::Pen pen{narrow, ink::Dash::chain};
  for (const Round& round : outline.rounds) {
    const auto near = [&](Vec2 p) { return norm(p - round.centre) < 1e-4; };
    if (std::ranges::any_of(done, near)) continue;
    done.push_back(round.centre);
    const Vec2 c = origin + round.centre;
    const double reach = round.radius + 3;
    for (const Vec2 arm : {Vec2{reach, 0}, Vec2{0, reach}})
      group.items.emplace_back(ink::Stroke{ink::Path{}.move(c - arm).line(c + arm), pen});
  }
  return group;
}

std::string caption(const fabrication::Plan& plan, const fabrication::PartRow& row) {
  const FigureStyle figures = plan.project->job.figures();
  return row.mark + "   " + row.name + "   " + std::to_string(row.quantity()) + " off   " +
         figures.text(row.finished.x) + " × " + figures.text(row.finished.y) + " × " +
         figures.with_unit(row.finished.z);
}

ink::Page page_of(const Subject& subject, const fabrication::PartRow& row) {
  const parts::Part& part =
      subject.plan.assembly.parts[static_cast<std::size_t>(row.members.front())];
  const PartOutline outline = outline_of(part);
  const std::string text = caption(subject.plan, row);
  const double below = 2 * mark_capitals;
  ink::Page page;
  page.title = *subject.plan.project->job.title + ", revision " +
               *subject.plan.project->job.revision + ": " + row.mark;
  page.label = row.mark;
  page.paper.name = row.mark;
  page.paper.width = std::max(outline.size.x, subject.fonts.width(text, mark_capitals)) + 2 * air;
  page.paper.height = outline.size.y + 2 * air + below;
  const Vec2 origin{air, air + below};
  ink::Group visible{"visible edges", {}}, hidden{"hidden edges", {}};
  for (const ViewLine& line : outline.lines) {
    if (line.hidden)
      hidden.items.push_back(stroke(line, origin, {narrow, ink::Dash::dashed}));
    else
      visible.items.push_back(stroke(line, origin, {wide}));
  }
  page.items.emplace_back(std::move(hidden));
  page.items.emplace_back(std::move(visible));
  page.items.emplace_back(centres(outline, origin));
  page.items.emplace_back(ink::Group{
      "lettering", {ink::Text{.at = {air, air}, .utf8 = text, .height = mark_capitals}}});
  return page;
}

}  // namespace

Files write_part_svg(const Subject& subject) {
  Files files;
  for (const fabrication::PartRow& row : subject.plan.rows)
    files[subject.name + "-part-" + plain_file_name(row.mark) + ".svg"] =
        svg(page_of(subject, row), subject.fonts);
  return files;
}

}  // namespace splay::writers
