#include "properties/hold.h"

#include <algorithm>
#include <cstdlib>
#include <iostream>
#include <set>

#include "properties/laws.h"
#include "support/mirror.h"

namespace splay::test {

namespace {

// A whole number from the environment, 0 where it says none.
int environment(const char* name) {
  const char* said = std::getenv(name);
  return said == nullptr ? 0 : std::atoi(said);
}

struct Tally {
  int built = 0, tried = 0, steps = 0, machine = 0;
  std::set<std::string> joints;
  void add(const fabrication::Plan& plan) {
    ++built;
    steps += static_cast<int>(plan.steps.size());
    for (const fabrication::Step& step : plan.steps)
      machine += step.machine != fabrication::Machine::hand;
    for (const parts::Joint& joint : plan.assembly.joints) joints.insert(joint.kind);
  }
};

std::string written(const Kind& kind, unsigned seed, const char* unit, bool mirrored) {
  Pencil pencil(seed, unit, mirrored);
  return pencil.shop() + kind.write(pencil);
}

bool crossing(const parts::Part& part) {
  return (" " + part.name).find(" x ") != std::string::npos;
}
bool none(const parts::Part&) { return false; }

std::string not_mirrored(const Kind& kind, const Built& piece, const Built& mirror) {
  if (piece.plan.stopped() != mirror.plan.stopped())
    return "mirrored: " + (mirror.plan.stopped() ? mirror.stops() : "can be built\n");
  return piece.plan.stopped() ? "" : unmirrored(piece, mirror, kind.crosses ? crossing : none);
}

// Every other one in inches; of two such, one against the same in the other unit, one mirrored.
std::string tried_laws(const Kind& kind, unsigned seed, Tally& tally) {
  const bool imperial = seed % 2 != 0, mirrors = kind.mirrors && seed / 2 % 2 != 0;
  const char* unit = imperial ? "in" : "mm";
  const Built piece = build(written(kind, seed, unit, false));
  const Built twin = mirrors ? build(written(kind, seed, unit, true))
                             : build(written(kind, seed, imperial ? "mm" : "in", false));
  std::string text = unclear_findings(piece);
  text += mirrors ? not_mirrored(kind, piece, twin) : not_the_same(piece, twin);
  if (refused(piece)) return text;
  tally.add(piece.plan);
  return text + open_or_clashing(piece) + unproven_steps(piece) + unproven_steps(twin) +
         bad_layouts(piece) + bad_pages(piece);
}

std::string broken_laws(const Kind& kind, unsigned seed, Tally& tally) {
  try {
    return tried_laws(kind, seed, tally);
  } catch (const std::exception& error) {
    return std::string("throws: ") + error.what() + "\n";
  }
}

void show(const Kind& kind, unsigned seed) {
  Tally tally;
  for (const char* unit : {"mm", "in"})
    std::cout << "# in " << unit << "\n" << written(kind, seed, unit, false);
  FAIL_CHECK("only seed " << seed << ":\n" << broken_laws(kind, seed, tally));
}

}  // namespace

void hold(const Kind& kind) {
  if (const int seed = environment("SPLAYBOOK_SEED"); seed > 0)
    return show(kind, static_cast<unsigned>(seed));
  const int pieces = kind.pieces * std::max(1, environment("SPLAYBOOK_MORE"));
  Tally tally;
  std::string list;
  for (unsigned seed = kind.seed; tally.built < pieces && tally.tried < 4 * pieces; ++seed) {
    INFO("seed " << seed);
    ++tally.tried;
    const std::string broken = broken_laws(kind, seed, tally);
    if (!broken.empty()) list += "seed " + std::to_string(seed) + ":\n" + broken;
  }
  std::string kinds;
  for (const std::string& joint : tally.joints) kinds += (kinds.empty() ? "" : ", ") + joint;
  WARN(tally.built << " " << kind.what << " of " << tally.tried << " tried, " << tally.steps
                   << " steps, " << tally.machine << " by machine; joints: " << kinds);
  if (!list.empty()) FAIL_CHECK(list);
  CHECK(tally.built == pieces);
  CHECK(tally.machine >= kind.by_machine * tally.steps);
}

}  // namespace splay::test
