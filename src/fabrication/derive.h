// From a part's operations to steps: which machine and position makes each surface, and with what
// setting. Internal to src/fabrication.
//
// The derivation follows the part as it should be after every step (`work`); it never asks the
// simulator, which is its witness.
#pragma once

#include <optional>

#include "fabrication/edging.h"
#include "fabrication/steps.h"
#include "model/project.h"

namespace splay::fabrication {

struct Derivation {
  const model::Shop* shop = nullptr;
  const parts::Part* part = nullptr;
  int row = 0;
  Solid work;  // what should be left after the steps so far, part frame
  std::vector<Step> steps;
  std::vector<std::string> without;  // names of cuts no position on the saw makes

  double high(Vec3 way) const { return work.extent(way)[1]; }
  void add(Step step, const Region& removed);  // and takes the region off the work
};

// All steps of a part, in the order of work, with exact settings. `edging` goes on before the ends
// are cut; the part is then as as_cut() has it, and Step::glued the strip's index in the assembly.
Derivation derive_steps(const model::Project& project, const parts::Part& part, int row,
                        const std::vector<Edging>& edging = {});
// Of a strip of edging: what makes it ready to be glued to its panel.
Derivation derive_strip(const model::Project& project, const parts::Part& part, int row);

// From the blank to thickness and width, with the cuts of edges that need no square edge after
// them.
void mill(const model::Project& project, Derivation& at);
// Then to length, with the cuts of the ends.
void cut_ends(const model::Project& project, Derivation& at);
// Glues a strip on as the work then is.
void glue_edging(Derivation& at, const Edging& edging);
// The end or edge cut that an operation is, where wood is left beyond its plane.
void cut_flat(Derivation& at, std::size_t operation);

// How a piece may lie for a guided cut.
struct Lying {
  Machine machine = Machine::table_saw;
  Guide guide = Guide::fence;
  parts::Side face = parts::Side::z_low, against = parts::Side::y_low;
  bool reference_right = true;  // fence only; a gauge's stop is on the side of what is kept
};

// The setting that makes `plane` (normal out of the wood that stays) so lying: geometry only, with
// no regard to what the machine can do. Nothing when no setting does.
std::optional<Step> set_blade(const Derivation& at, const Lying& lying, const Plane& plane);
// Along two marks on a face.
std::optional<Step> set_marks(const Derivation& at, Machine machine, parts::Side face,
                              const Plane& plane, bool backwards);
// Whether the machine can: 0 and up, the lower the better; negative when it can't.
double fitness(const Derivation& at, const Step& step);

// A plane right through, by the best way there is.
Step cut_through(Derivation& at, const Plane& plane, const std::string& name, parts::Side own);

// Where a region opens: which face it is cut from and the planes that bound it there.
struct Pocket {
  parts::Side open = parts::Side::z_low;
  std::optional<Plane> floor;
  std::vector<Plane> walls;
};
Region planes_of(const Pocket& pocket);
// What it takes of the space that the work is in, as one convex solid.
Solid hollow_of(const Derivation& at, const Pocket& pocket);
std::optional<Pocket> open_pocket(const Derivation& at, const Region& removed);
// A pocket on its way, in stages: the saw's line of a shoulder, what a machine takes, what the hand
// pares. Each adds its step and takes it off the work; the last makes `operation`.
struct PocketJob {
  Pocket pocket;
  std::string name;
  int operation = 0;
  bool begun = false;
};
void begin_pocket(Derivation& at, PocketJob& job);
bool machine_pocket(Derivation& at, PocketJob& job);  // true: nothing is left to pare
void pare_pocket(Derivation& at, const PocketJob& job);
// With a stack in one setting, or nothing; along lines on the face, by hand where nothing else can.
std::optional<Step> by_stack(const Derivation& at, const Pocket& pocket);
// A slot of two walls and a bottom as passes of the blade side by side, each a pocket of one kerf;
// nothing where one of them can't be cut, or there are too many.
std::vector<Pocket> by_passes(const Derivation& at, const Pocket& slot);
Step by_lines(const Derivation& at, const Pocket& pocket);
std::optional<Step> bore(const Derivation& at, const Region& removed);
// Lines along the outline, each right through.
std::optional<Step> follow_lines(const Derivation& at, const std::vector<Plane>& lines);

// mm: a narrower piece is not pushed through between a fence and a blade. Common practice, no
// source.
inline constexpr double least_at_fence = 6;
// The piece that a rip keeps, lying flat or on edge, is narrower than that beside the fence.
bool too_near_fence(const Step& step);

// mm: a shorter piece that is kept jams between a stop that stays and the blade. Common practice,
// no source.
inline constexpr double short_at_stop = 100;
inline constexpr double least_bearing = 2.0;  // mm: a shorter contact lets the work rock
// How long the work's furthest surface towards `out` is along a direction.
double bearing(const Derivation& at, Vec3 out, Vec3 along);
// The work lies firmly with this side on a table, or a tool's shoe on it.
bool firm(const Derivation& at, parts::Side face);
// Where `mark`'s place is counted from: fills stopped and across_from for a face, and whether they
// are the arrises of that face.
void count_marks_from(const Derivation& at, Step& step);
Mark mark_at(const Derivation& at, const Step& step, Vec3 point);
// The stretch of a plane's trace on a face of the work, inside the work's box; nothing where it
// misses it.
std::optional<std::array<Vec3, 2>> trace(const Derivation& at, parts::Side face,
                                         const Plane& plane);

}  // namespace splay::fabrication
