#include "fabrication/hardware.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include "base/figure.h"
#include "fabrication/plan.h"
#include "fabrication/sound_shared.h"
#include "parts/audit.h"

namespace splay::fabrication {

namespace {

constexpr double touch_within = 1e-6;  // mm
constexpr double screws_apart = 150;   // mm, at least two; common practice, no source
constexpr double skin = 3;             // mm of wood left over a screw's point; common practice

// Where a line is inside the cells of a solid, by the way from the point; ascending.
std::vector<Interval> runs_on_line(const Solid& solid, Vec3 at, Vec3 way) {
  std::vector<Interval> runs;
  for (std::size_t i = 0; i < solid.cells().size(); ++i) {
    Interval run{-1e9, 1e9};
    for (const Plane& plane : solid.cell_region(i)) {
      const double climb = dot(plane.n, way), away = plane.distance(at);
      if (std::abs(climb) < 1e-12) {
        if (away > touch_within) run.to = -1e9;
      } else if (climb > 0) {
        run.to = std::min(run.to, -away / climb);
      } else {
        run.from = std::max(run.from, -away / climb);
      }
    }
    if (run.to > run.from) runs.push_back(run);
  }
  std::ranges::sort(runs, {}, &Interval::from);
  return runs;
}

void note_part(const Plan& plan, int part, HardwareLine& line) {
  const std::string& mark = plan.mark_of(part);
  if (std::ranges::find(line.on, mark) == line.on.end()) line.on.push_back(mark);
}

HardwareLine& line_of(HardwareList& list, const std::string& what, const std::string& size,
                      const std::string& why) {
  for (HardwareLine& line : list.lines)
    if (line.what == what && line.size == size) return line;
  list.lines.push_back({what, size, 0, 0, {}, why});
  return list.lines.back();
}

void count_fittings(const Plan& plan, HardwareList& list) {
  for (const parts::Fitting& fitting : plan.assembly.fittings) {
    HardwareLine& line = line_of(list, fitting.kind, fitting.size, "from its places in the piece");
    ++line.count;
    for (const int part : fitting.parts) note_part(plan, part, line);
  }
}

// Screws that a joint asks for without saying where: how many, and how long they may be.
void count_screwed(const Plan& plan, HardwareList& list) {
  const FigureStyle figures = plan.project->job.figures();
  const auto& parts = plan.assembly.parts;
  for (const parts::Joint& joint : plan.assembly.joints) {
    if (joint.kind != "screwed") continue;
    for (const parts::Mate& mate : joint.mates) {
      const Solid& a = parts[static_cast<std::size_t>(mate.a)].world;
      const Solid& b = parts[static_cast<std::size_t>(mate.b)].world;
      const parts::Contact contact = parts::contact(mate, a, b);
      const auto reach = shared_reach(mate, mate.b, {1, 0, 0}, plan.assembly);
      if (contact.pieces.empty() || !reach) continue;
      Vec2 middle;
      for (const Vec2 p : contact.pieces.front())
        middle = middle + p * (1.0 / static_cast<double>(contact.pieces.front().size()));
      const Vec3 at = contact.frame.point({middle.x, middle.y, 0});
      const double through = wood_run(a, at, -mate.plane.n) + wood_run(b, at, mate.plane.n);
      HardwareLine& line =
          line_of(list, "screw", "at most " + figures.with_unit(std::max(0.0, through - skin)),
                  "one every " + figures.with_unit(screws_apart) + ", two at least");
      line.count +=
          std::max(2, static_cast<int>(std::ceil((reach->to - reach->from) / screws_apart)));
      note_part(plan, mate.a, line);
      note_part(plan, mate.b, line);
    }
  }
}

// How many of what a count is for.
int times(const Plan& plan, const model::Hardware& hardware) {
  const std::string per = hardware.per.given ? *hardware.per : hardware.on.given ? "part" : "piece";
  if (per == "piece") return 1;
  if (per == "part") return static_cast<int>(hardware.on->size());
  if (per == "door") return static_cast<int>(plan.assembly.swings.size());
  if (per == "drawer") return static_cast<int>(plan.assembly.slides.size());
  return static_cast<int>(std::ranges::count(plan.assembly.fittings, per, &parts::Fitting::kind));
}

void count_authors(const Plan& plan, HardwareList& list) {
  const auto& all = plan.project->hardware;
  for (std::size_t i = 0; i < all.size(); ++i) {
    const model::Hardware& hardware = all[i];
    std::string why = "as listed for the piece";
    if (hardware.per.given) why = std::to_string(*hardware.count) + " for each " + *hardware.per;
    HardwareLine& line = line_of(list, hardware.words(), *hardware.size, why);
    line.spare += *hardware.spare;
    if (hardware.at.given) continue;
    line.count += *hardware.count * times(plan, hardware);
    for (const std::string& name : *hardware.on)
      for (std::size_t p = 0; p < plan.assembly.parts.size(); ++p)
        if (plan.assembly.parts[p].name == name) note_part(plan, static_cast<int>(p), line);
  }
}

// The author's own price first, then one for the very size, then one for any size.
void price(const Plan& plan, HardwareLine& line) {
  const auto take = [&](double price, int pack) {
    line.priced = true;
    line.price = price;
    line.pack = pack;
  };
  const auto& own = plan.project->hardware;
  for (std::size_t i = 0; i < own.size(); ++i)
    if (own[i].price.given && own[i].words() == line.what && *own[i].size == line.size)
      return take(*own[i].price, *own[i].pack);
  const auto& prices = plan.project->buying.hardware;
  const model::HardwarePrice* any = nullptr;
  for (std::size_t i = 0; i < prices.size(); ++i) {
    if (*prices[i].fitting != line.what) continue;
    if (prices[i].size.given && *prices[i].size == line.size)
      return take(*prices[i].price, *prices[i].pack);
    if (!prices[i].size.given && any == nullptr) any = &prices[i];
  }
  if (any != nullptr) take(*any->price, *any->pack);
}

void add_anchors(const Plan& plan, HardwareList& list) {
  const auto tips = std::ranges::find_if(plan.findings, [](const Finding& finding) {
    return finding.code == "tips-easily" || finding.code == "clothing-storage";
  });
  if (tips == plan.findings.end() || plan.soundness.balances.empty() ||
      has_wall_anchor(*plan.project))
    return;
  const Balance& whole = plan.soundness.balances.front();
  constexpr double one_is_enough = 900;  // mm; common practice, no source
  HardwareLine& line = line_of(list, "wall anchor", "to suit the wall", "so that it cannot tip");
  line.count += whole.high.x - whole.low.x > one_is_enough ? 2 : 1;
}

}  // namespace

bool has_wall_anchor(const model::Project& project) {
  for (std::size_t i = 0; i < project.hardware.size(); ++i)
    if (project.hardware[i].words() == "wall anchor") return true;
  return false;
}

double wood_run(const Solid& solid, Vec3 at, Vec3 way) {
  double reached = 0;
  for (const Interval& run : runs_on_line(solid, at, way))
    if (run.from <= reached + touch_within) reached = std::max(reached, run.to);
  return reached;
}

double free_run(const Solid& solid, Vec3 at, Vec3 way) {
  for (const Interval& run : runs_on_line(solid, at, way))
    if (run.to > touch_within) return std::max(0.0, run.from);
  return 1e9;
}

double wood_on_line(const Solid& solid, Vec3 at, Vec3 way) {
  double wood = 0;
  for (const Interval& run : runs_on_line(solid, at, way)) wood += run.to - run.from;
  return wood;
}

double glued_area(const Plan& plan) {
  double area = 0;
  const auto& parts = plan.assembly.parts;
  for (std::size_t j = 0; j < plan.assembly.joints.size(); ++j) {
    if (bond_of(plan, static_cast<int>(j)) != Bond::glued) continue;
    for (const parts::Mate& mate : plan.assembly.joints[j].mates)
      area += parts::measure(mate, parts[static_cast<std::size_t>(mate.a)].world,
                             parts[static_cast<std::size_t>(mate.b)].world)
                  .area;
  }
  return area;
}

ScrewHoles screw_holes(int gauge) {
  ScrewHoles holes;
  holes.gauge = gauge;
  holes.shank = Length::inches(0.060 + 0.013 * gauge).mm;
  holes.root = holes.shank * 2 / 3;
  const double step = Length::inches(1.0 / 64).mm;
  holes.clearance = std::ceil(holes.shank / step - 1e-9) * step;
  holes.pilot_soft = 0.7 * holes.root;
  holes.pilot_hard = 0.9 * holes.root;
  return holes;
}

int gauge_of(const std::string& size) {
  if (size.empty() || size.front() != '#') return 0;
  int gauge = 0;
  std::from_chars(size.data() + 1, size.data() + size.size(), gauge);
  return gauge >= 2 && gauge <= 24 ? gauge : 0;
}

double native_length(std::string_view text) {
  constexpr double inch = 25.4;
  double sum = 0, number = 0;
  bool any = false;
  while (!text.empty()) {
    if (text.front() == ' ') {
      text.remove_prefix(1);
      continue;
    }
    const auto [after, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    if (error != std::errc{}) break;
    text.remove_prefix(static_cast<std::size_t>(after - text.data()));
    double under = 1;
    if (!text.empty() && text.front() == '/') {
      const auto [end, fault] = std::from_chars(text.data() + 1, text.data() + text.size(), under);
      if (fault != std::errc{} || under <= 0) return 0;
      text.remove_prefix(static_cast<std::size_t>(end - text.data()));
    }
    sum += number / under;
    any = true;
  }
  if (!any || sum <= 0) return 0;
  if (text.starts_with("in")) return sum * inch;
  return text.starts_with("mm") ? sum : 0;
}

double length_of(const std::string& size) {
  const std::size_t cross = size.rfind(" x ");
  return cross == std::string::npos ? 0 : native_length(std::string_view(size).substr(cross + 3));
}

std::vector<int> screw_gauges(const Plan& plan) {
  std::vector<int> gauges;
  for (const HardwareLine& line : list_hardware(plan).lines)
    if (const int gauge = gauge_of(line.size); gauge > 0) gauges.push_back(gauge);
  std::ranges::sort(gauges);
  gauges.erase(std::unique(gauges.begin(), gauges.end()), gauges.end());
  return gauges;
}

HardwareList list_hardware(const Plan& plan) {
  HardwareList list;
  count_fittings(plan, list);
  count_screwed(plan, list);
  count_authors(plan, list);
  add_anchors(plan, list);
  for (HardwareLine& line : list.lines) price(plan, line);
  for (const StockUse& use : plan.stock)
    if (use.kind == "edge band")
      list.bands.push_back({use.name, use.material, use.length, use.pieces});
  list.glue_area = glued_area(plan);
  list.glue_kg = list.glue_area * 1e-6 * *plan.project->buying.glue.spread / 1000;
  return list;
}

}  // namespace splay::fabrication
