#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/figure.h"
#include "fabrication/hardware.h"
#include "fabrication/plan.h"
#include "fabrication/sound_shared.h"
#include "fabrication/soundness.h"

namespace splay::fabrication {

namespace {

constexpr double gravity = 9.80665;                     // m/s2
constexpr double easily = 10 * std::numbers::pi / 180;  // our own line, common practice, no source

// Does it stand open, as far as the author says?
bool stands_open(const Plan& plan, const std::string& name) {
  const auto& open = plan.project->room.open;
  return !open.given || std::ranges::find(*open, name) != open->end();
}

// How a part stands when what may be open is: doors square to the front at most.
Rigid opened(const Plan& plan, int part) {
  for (const parts::Swing& swing : plan.assembly.swings)
    if (std::ranges::find(swing.parts, part) != swing.parts.end() && stands_open(plan, swing.name))
      return swing.motion(std::min(swing.opens, std::numbers::pi / 2));
  for (const parts::Slide& slide : plan.assembly.slides)
    if (std::ranges::find(slide.parts, part) != slide.parts.end() && stands_open(plan, slide.name))
      return {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}, slide.way * slide.travel};
  return {};
}

// The part that the others of a drawer stand round: the largest that lies level.
int floor_of(const Plan& plan, const parts::Slide& slide) {
  int floor = -1;
  double largest = 0;
  for (const int index : slide.parts) {
    const parts::Part& part = plan.assembly.parts[static_cast<std::size_t>(index)];
    const double area = part.size.x * part.size.y;
    if (std::abs(part.place.ez.z) < 0.995 || area <= largest) continue;
    largest = area;
    floor = index;
  }
  return floor;
}

// The underside of the lowest thing over a drawer's bottom that isn't part of it; else the lowest
// of its own sides.
double obstruction(const Plan& plan, const parts::Slide& slide, int floor, const Box& bottom) {
  double over = 1e300, side = 1e300;
  constexpr double wide = 20;  // mm: what laps over the bottom by less stands beside it
  for (std::size_t i = 0; i < plan.assembly.parts.size(); ++i) {
    const int index = static_cast<int>(i);
    const Box box = plan.assembly.parts[i].world.bounds();
    const bool own = std::ranges::find(slide.parts, index) != slide.parts.end();
    const auto laps = [&](double low, double high, double from, double to) {
      return std::min(high, to) - std::max(low, from) > wide;
    };
    if (own && index != floor) side = std::min(side, box.high.z);
    if (!own && box.low.z > bottom.high.z &&
        laps(box.low.x, box.high.x, bottom.low.x, bottom.high.x) &&
        laps(box.low.y, box.high.y, bottom.low.y, bottom.high.y))
      over = std::min(over, box.low.z);
  }
  return over < 1e300 ? over : side;
}

// Its inside from the solids: the room over the bottom less what its sides take of it.
void fill(Plan& plan) {
  constexpr double less = 25.4 / 8;  // mm under what is over it: 16 CFR 1261
  for (const parts::Slide& slide : plan.assembly.slides) {
    const int floor = floor_of(plan, slide);
    if (floor < 0) continue;
    const auto& parts = plan.assembly.parts;
    const Box bottom = parts[static_cast<std::size_t>(floor)].world.bounds();
    const double high = obstruction(plan, slide, floor, bottom) - less;
    if (high <= bottom.high.z) continue;
    const Vec3 low{bottom.low.x, bottom.low.y, bottom.high.z};
    const Solid room = Solid::box(low, {bottom.high.x, bottom.high.y, high});
    DrawerLoad load{slide.name, room.volume(), 0, room.centroid()};
    for (const int index : slide.parts)
      if (index != floor)
        load.volume -= overlap_volume(room, parts[static_cast<std::size_t>(index)].world);
    load.mass = load.volume * 1e-9 * *plan.project->room.drawer_load;
    plan.soundness.loads.push_back(std::move(load));
  }
}

enum class State { shut, open, loaded };

Balance weigh(const Plan& plan, State state, double& foremost) {
  const bool open = state != State::shut;
  Balance balance;
  balance.open = open;
  balance.loaded = state == State::loaded;
  Box box;
  Vec3 moment;
  foremost = 1e300;
  for (std::size_t i = 0; i < plan.assembly.parts.size(); ++i) {
    const parts::Part& part = plan.assembly.parts[i];
    if (part.world.empty()) continue;
    const double mass = plan.rows[static_cast<std::size_t>(plan.row_of_part[i])].mass;
    const Rigid motion = open ? opened(plan, static_cast<int>(i)) : Rigid{};
    balance.mass += mass;
    moment = moment + motion.point(part.world.centroid()) * mass;
    for (const Vec3 corner : part.world.vertices())
      foremost = std::min(foremost, motion.point(corner).y);
    const Box own = part.world.bounds();
    box.add(own.low);
    box.add(own.high);
  }
  if (balance.loaded) {
    for (const DrawerLoad& load : plan.soundness.loads) {
      const auto slide = std::ranges::find(plan.assembly.slides, load.name, &parts::Slide::name);
      balance.mass += load.mass;
      moment = moment + opened(plan, slide->parts.front()).point(load.centre) * load.mass;
    }
  }
  if (balance.mass > 0) balance.centre = moment * (1 / balance.mass);
  balance.low = box.low;
  balance.high = box.high;
  return balance;
}

// Where the piece stands: the level points of its solids that are lowest.
Box feet(const Plan& plan, double lowest) {
  Box box;
  for (const parts::Part& part : plan.assembly.parts)
    for (const Vec3 p : part.world.vertices())
      if (p.z < lowest + sole) box.add(p);
  return box;
}

void add_edges(Balance& balance, const Box& feet) {
  const double height = balance.centre.z - balance.low.z;
  const double top = balance.high.z - balance.low.z;
  const auto add = [&](const char* way, double reach) {
    TippingEdge edge;
    edge.way = way;
    edge.reach = reach;
    edge.angle = std::atan2(reach, height);
    edge.top = top;
    edge.force = std::max(0.0, balance.mass * gravity * reach / top);
    balance.edges.push_back(std::move(edge));
  };
  add("forwards", balance.centre.y - feet.low.y);
  add("backwards", feet.high.y - balance.centre.y);
  add("to the left", balance.centre.x - feet.low.x);
  add("to the right", feet.high.x - balance.centre.x);
}

const char* words_of(const Balance& balance) {
  if (balance.loaded) return "With its doors and drawers open and its drawers full the";
  return balance.open ? "With its doors and drawers open the empty" : "The empty";
}

// Each way once, in the state in which it falls soonest.
void report(Plan& plan) {
  const std::vector<Balance>& all = plan.soundness.balances;
  for (std::size_t way = 0; way < all.front().edges.size(); ++way) {
    const Balance& worst = *std::ranges::min_element(
        all, {}, [&](const Balance& balance) { return balance.edges[way].angle; });
    const TippingEdge& edge = worst.edges[way];
    if (edge.angle >= easily) continue;
    const bool held = has_wall_anchor(*plan.project);
    plan.findings.push_back(
        {held ? Level::note : Level::caution,
         "tips-easily",
         {},
         std::string(words_of(worst)) + " piece falls " + edge.way +
             (edge.angle <= 0
                  ? " by itself."
                  : " when it is tipped by " + degrees_text(Angle{edge.angle}.degrees()) + "."),
         held ? "Its wall anchors hold it: set them before anything is put in."
              : "Fix it to the wall (a \"wall anchor\" in [hardware] says so), widen its feet, or "
                "bring its weight down."});
  }
}

// 16 CFR part 1261 takes in ASTM F2057-23: free-standing storage for clothing with drawers or
// hinged doors, 27 in high or more and 30 lb or more (the third measure is its enclosed space).
void report_clothing(Plan& plan, const Balance& balance) {
  constexpr double height = 686, mass = 13.6;
  if ((plan.assembly.swings.empty() && plan.assembly.slides.empty()) ||
      balance.high.z - balance.low.z < height || balance.mass < mass)
    return;
  plan.findings.push_back(
      {Level::note,
       "clothing-storage",
       {},
       "It has doors or drawers, is 686 mm (27 in) high or more and weighs 13.6 kg (30 lb) or "
       "more: should it "
       "store clothing with 90.6 dm³ (3.2 cu ft) or more enclosed, ASTM F2057-23 (16 CFR part 1261 "
       "in the United States) may apply.",
       "These figures don't show that it passes: ask what the local rules are and have it tested; "
       "fix it to the wall in any case."});
}

}  // namespace

void judge_balance(Plan& plan) {
  const bool stands = *plan.project->room.standing == model::Standing::on_the_floor;
  const auto weigh_and_add = [&](State state) {
    double foremost = 0;
    Balance balance = weigh(plan, state, foremost);
    if (balance.mass <= 0) return;
    if (stands) {
      const Box sole_of = feet(plan, balance.low.z);
      add_edges(balance, sole_of);
      balance.pulled = std::max(0.0, sole_of.low.y - foremost);
      if (balance.pulled > sole)
        balance.hangs = std::max(0.0, balance.mass * balance.edges.front().reach / balance.pulled);
    }
    plan.soundness.balances.push_back(std::move(balance));
  };
  weigh_and_add(State::shut);
  if (plan.soundness.balances.empty()) return;
  fill(plan);
  if (!plan.assembly.swings.empty() || !plan.assembly.slides.empty()) weigh_and_add(State::open);
  if (!plan.soundness.loads.empty()) weigh_and_add(State::loaded);
  if (!stands) return;
  report(plan);
  report_clothing(plan, plan.soundness.balances.front());
}

}  // namespace splay::fabrication
