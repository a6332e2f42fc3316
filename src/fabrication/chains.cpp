#include "fabrication/chains.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>

#include "base/small_length.h"
#include "fabrication/derive.h"
#include "fabrication/hands.h"
#include "fabrication/proof.h"
#include "parts/audit.h"

namespace splay::fabrication {

namespace {

constexpr double tenth = 0.1 * std::numbers::pi / 180;

struct Link {
  int joint = 0;
  int from = 0, to = 0;  // parts
};

// The mitre joints at every part.
std::map<int, std::vector<int>> mitres_by_part(const parts::Assembly& assembly) {
  std::map<int, std::vector<int>> at;
  for (std::size_t j = 0; j < assembly.joints.size(); ++j) {
    const parts::Joint& joint = assembly.joints[j];
    if (joint.kind != "mitre" || joint.between.size() != 2 || joint.mates.empty()) continue;
    for (const int part : joint.between) at[part].push_back(static_cast<int>(j));
  }
  return at;
}

std::vector<std::vector<Link>> rings(const parts::Assembly& assembly) {
  const auto at = mitres_by_part(assembly);
  std::vector<std::vector<Link>> found;
  std::vector<bool> seen(assembly.joints.size(), false);
  for (const auto& [start, joints] : at) {
    if (joints.size() != 2 || seen[static_cast<std::size_t>(joints[0])]) continue;
    std::vector<Link> ring;
    int part = start, joint = joints[0];
    while (!seen[static_cast<std::size_t>(joint)]) {
      seen[static_cast<std::size_t>(joint)] = true;
      const std::vector<int>& between = assembly.joints[static_cast<std::size_t>(joint)].between;
      const int next = between[0] == part ? between[1] : between[0];
      ring.push_back({joint, part, next});
      part = next;
      const std::vector<int>& there = at.at(part);
      if (there.size() != 2) break;
      joint = there[0] == joint ? there[1] : there[0];
    }
    if (part == start && ring.size() >= 3) found.push_back(std::move(ring));
  }
  return found;
}

// One cut of a chain: the row's step that makes a part's side of a joint, and where it stands.
struct Cut {
  const Step* step = nullptr;
  std::span<const Step> steps;  // of the row
  const parts::Part* first = nullptr;
  Rigid place;   // the row's first part, turned onto this one, in the world
  Plane wanted;  // world, out of the part
};

std::optional<Cut> find_cut(const Plan& plan, int index, const Plane& world) {
  const parts::Part& part = plan.assembly.parts[static_cast<std::size_t>(index)];
  const int row = plan.row_of_part[static_cast<std::size_t>(index)];
  Cut cut;
  cut.first = &plan.sample(row);
  const parts::Part& whole = plan.as_cut(index);
  const std::optional<Rigid> turn =
      cut.first == &whole ? std::optional(Rigid{}) : turn_onto(*cut.first, whole);
  if (!turn) return {};
  cut.place = part.place * *turn;
  cut.wanted = world;
  const Plane local = cut.place.local_plane(world);
  const auto begin = std::find_if(plan.steps.begin(), plan.steps.end(),
                                  [&](const Step& step) { return step.row == row; });
  const auto end =
      std::find_if(begin, plan.steps.end(), [&](const Step& step) { return step.row != row; });
  cut.steps = {begin, end};
  for (const Step& step : cut.steps)
    for (const int op : step.operations) {
      const Plane& made = cut.first->operations[static_cast<std::size_t>(op)].cut;
      if (norm(made.n - local.n) < 1e-6 && std::abs(made.d - local.d) < 1e-4) cut.step = &step;
    }
  return cut.step != nullptr && cut.step->proven ? std::optional(cut) : std::nullopt;
}

// How the surface a cut makes is turned from the wanted one, as a small turn in the world.
Vec3 turn_of(const Cut& cut, const Solid& made) {
  constexpr double near = 5;  // mm: a surface further off is another one that is parallel
  Plane plane = cut.place.local_plane(cut.wanted);
  plane.d -= dot(plane.n, cut.first->body.bounds().low);  // what is made stands on its low corner
  const Vec3 wanted = plane.n;
  Vec3 nearest = wanted;
  double best = 0.99;
  for (const Cell& cell : made.cells())
    for (const CellFace& face : cell.faces) {
      const Vec3 n = made.planes()[static_cast<std::size_t>(face.plane)].n * face.side;
      const Vec3 corner = made.vertices()[static_cast<std::size_t>(face.loop.front())];
      if (dot(n, wanted) <= best || std::abs(plane.distance(corner)) > near) continue;
      best = dot(n, wanted);
      nearest = n;
    }
  return cut.place.direction(cross(wanted, nearest));
}

enum class Which { tilt, gauge };

Vec3 turn_when_off(const Plan& plan, const Cut& cut, Which which, double error) {
  std::vector<Step> steps(cut.steps.begin(), cut.steps.end());
  Setting& set = steps[static_cast<std::size_t>(cut.step - cut.steps.data())].exact;
  // A blade leans one way: an upright one is off to the same side as a leaning one leans more.
  (which == Which::tilt ? set.tilt : set.gauge) += error;
  Solid work = blank_of(*plan.project, *cut.first);
  return cut_part(steps, false, work).empty() ? turn_of(cut, work) : Vec3{};
}

Vec3 turn_as_printed(const Plan& plan, const Cut& cut) {
  Solid work = blank_of(*plan.project, *cut.first);
  return cut_part(cut.steps, true, work).empty() ? turn_of(cut, work) : Vec3{};
}

// How far a joint opens that one turn sets ajar and that touches at one point.
double opening(const Plan& plan, const Link& link, Vec3 turn) {
  const parts::Mate& mate =
      plan.assembly.joints[static_cast<std::size_t>(link.joint)].mates.front();
  const parts::Contact contact =
      parts::contact(mate, plan.assembly.parts[static_cast<std::size_t>(mate.a)].world,
                     plan.assembly.parts[static_cast<std::size_t>(mate.b)].world);
  const Vec3 lever = cross(mate.plane.n, turn);
  double low = 1e300, high = -1e300;
  for (const Polygon& piece : contact.pieces)
    for (const Vec2& p : piece) {
      const double at = dot(lever, contact.frame.point({p.x, p.y, 0}));
      low = std::min(low, at);
      high = std::max(high, at);
    }
  return high < low ? 0 : high - low;
}

// The turns of all cuts, each in the sense that adds to the others.
Vec3 worst_sum(const std::vector<Vec3>& turns) {
  Vec3 sum;
  for (const Vec3& turn : turns) sum = sum + (dot(sum, turn) < 0 ? -turn : turn);
  return sum;
}

// Both cuts of a link: the turn that closing the joint gives to the next part.
struct Pair {
  Cut here, there;
};

std::optional<std::vector<Pair>> cuts_of(const Plan& plan, const std::vector<Link>& ring) {
  std::vector<Pair> pairs;
  for (const Link& link : ring) {
    const parts::Mate& mate =
        plan.assembly.joints[static_cast<std::size_t>(link.joint)].mates.front();
    const Plane out = mate.a == link.from ? mate.plane : mate.plane.flipped();
    const auto here = find_cut(plan, link.from, out);
    const auto there = find_cut(plan, link.to, out.flipped());
    if (!here || !there) return {};
    pairs.push_back({*here, *there});
  }
  return pairs;
}

Vec3 worst_turn(const Plan& plan, const std::vector<Pair>& pairs, double error) {
  Vec3 worst;
  for (const Which which : {Which::tilt, Which::gauge}) {
    std::vector<Vec3> turns;
    for (const Pair& pair : pairs) {
      turns.push_back(turn_when_off(plan, pair.here, which, error));
      turns.push_back(turn_when_off(plan, pair.there, which, error));
    }
    const Vec3 sum = worst_sum(turns);
    if (norm(sum) > norm(worst)) worst = sum;
  }
  return worst;
}

double division_of(const Plan& plan, const Step& step) {
  const model::Shop& shop = plan.project->shop;
  return step.machine == Machine::mitre_saw ? shop.mitre_saw.reads_to->rad : shop.saw.reads_to->rad;
}

void warn(Plan& plan, const ChainReport& chain) {
  const Unit unit = *plan.project->job.units;
  const auto say = [&](Level level, const std::string& code, double gap, const std::string& how) {
    plan.findings.push_back(
        {level,
         code,
         {chain.name},
         chain.name + ": " + how + " opens the last joint by " + small_length(gap, unit) + "; " +
             small_length(chain.allowed, unit) + " is allowed.",
         "Set the saw with an angle gauge, within " +
             degrees_text(Angle{chain.tolerance}.degrees()) +
             " at every cut; close two halves of scrap first and true the last joints."});
  };
  if (chain.gap_printed > chain.allowed)
    say(Level::caution, "ring-open", chain.gap_printed, "cutting with the printed settings");
  const double half = chain.gap_per_division / 2;
  if (half <= chain.allowed) return;
  // Finer than an angle gauge reads nobody sets a saw: then only the scrap test helps.
  const bool fine = chain.division < 1.01 * tenth;
  say(fine ? Level::note : Level::caution, "ring-settings", half,
      "setting " + std::to_string(chain.cuts) + " cuts half a division of the scale (" +
          degrees_text(Angle{chain.division / 2}.degrees()) + ") off");
}

// Band is trimmed with what it is glued to.
bool of_band(const Plan& plan, const std::vector<Link>& ring) {
  return std::any_of(ring.begin(), ring.end(), [&](const Link& link) {
    const model::Stock* stock =
        plan.project->stocks.find(plan.assembly.parts[static_cast<std::size_t>(link.from)].stock);
    return stock != nullptr && stock->kind.value == model::StockKind::edge_band;
  });
}

}  // namespace

void report_chains(Plan& plan) {
  for (const std::vector<Link>& ring : rings(plan.assembly)) {
    const auto pairs = cuts_of(plan, ring);
    if (!pairs || of_band(plan, ring)) continue;
    ChainReport chain;
    for (const Link& link : ring) chain.parts.push_back(link.from);
    chain.name = "ring with " + plan.assembly.parts[static_cast<std::size_t>(chain.parts[0])].name;
    chain.cuts = static_cast<int>(2 * ring.size());
    const Vec3 worst = worst_turn(plan, *pairs, tenth);
    chain.turn = norm(worst);
    chain.gap_per_tenth = opening(plan, ring.back(), worst);
    chain.division = division_of(plan, *pairs->front().here.step);
    chain.gap_per_division = chain.gap_per_tenth * chain.division / tenth;
    Vec3 printed;
    for (const Pair& pair : *pairs)
      printed = printed + turn_as_printed(plan, pair.here) - turn_as_printed(plan, pair.there);
    chain.gap_printed = opening(plan, ring.back(), printed);
    chain.allowed = plan.project->shop.largest_gap->mm;
    chain.tolerance = chain.gap_per_tenth > 0 ? tenth * chain.allowed / chain.gap_per_tenth : 0;
    warn(plan, chain);
    plan.chains.push_back(std::move(chain));
  }
}

}  // namespace splay::fabrication
