// Gluing up: the order of assembly cut into stages that the glue's open and closed time allow, with
// the minutes of each, its clamps, what is measured while the glue is wet, and a timeline.
//
// Minutes of the hands are common practice, no source; an author scales them by his own pace.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "fabrication/gluing.h"
#include "model/glue_up.h"

namespace splay::fabrication {

struct Plan;

// How a joint is treated when it is put together.
enum class Bond {
  glued,   // spread, closed and clamped
  dry,     // goes together with wet ones, without glue: a panel in its grooves
  undone,  // comes apart again: drawn home by bolts or screws when its pieces are made up
  fitted   // afterwards, when everything around it is dry: hinges, runners, fasteners, screws alone
};
// Knows which joints are undone once Plan::glue_up has them.
Bond bond_of(const Plan& plan, int joint);

// Joints that come apart again, ascending: as the author lists them; and these with the joints of
// the break that is proposed where the piece doesn't pass whole.
std::vector<int> undone_as_asked(const Plan& plan);
std::vector<int> undone_joints(const Plan& plan);
// "undone-unknown" for what the author lists and nothing is meant by.
void judge_undone(Plan& plan);
// Joints that ask for no glue and wait until everything glued is dry, ascending.
std::vector<int> fitted_or_undone(const Plan& plan);
// The parts that a word of the author's means: of that name, or of the item of that name.
std::vector<int> parts_meant(const Plan& plan, const std::string& name);

// What a joint asks of hands and clamps.
struct JointWork {
  Bond bond = Bond::glued;
  double spreading = 0;    // minutes at the usual pace
  double area = 0;         // mm2 of the surfaces that a clamp presses together
  double glued = 0;        // mm2 of all its surfaces
  double length = 0;       // mm, the longest way along its surfaces
  bool seats = false;      // walls hold it: a clamp only has to bring it home
  bool self_held = false;  // screws hold it until the glue does
  bool strip = false;      // a thin strip on an edge: tape holds it
  Vec3 middle, along;      // world: of the pressed surfaces, and their long direction, unit
  Vec3 pressed;            // world, unit: square to them
  Vec3 axis;               // world, unit: the clamps'; `pressed`, or along the part that ends here
  bool corner = false;     // both parts end here, at an angle to each other
  int ends = -1;           // the part whose end this joint is, -1 for a corner or a lap
};
// One for each joint of the assembly. `way`: along which each is brought together.
std::vector<JointWork> work_of_joints(const Plan& plan, const AssemblyOrder& order);

// Clamps that give a pressure on an area, rounded up, at least one: mm2, MPa, N.
int clamps_for(double area, double pressure, double force);
// MPa that a joint between parts wants: the low end of what makers of glue ask for softwoods,
// medium woods and hardwoods (100, 150 and 200 psi), by the harder of the two; as given when the
// author gives it.
double pressure_for(const Plan& plan, int joint);

// A wedge between a clamp's head and a face that isn't square to it.
struct Caul {
  int part = 0;
  double angle = 0;                         // radians
  double length = 0, width = 0, thick = 0;  // mm; `thick` at its thick edge
};

enum class ClampWay { clamps, band, tape, screws, hands };

// One row of clamps along a line, or a band round a ring.
struct Clamping {
  ClampWay how = ClampWay::clamps;
  model::ClampKind kind = model::ClampKind::parallel;
  std::string clamp;  // the author's name of them, "" when he lists none
  std::vector<int> joints;
  Vec3 axis;                               // world, unit; of a ring its own axis
  std::vector<std::array<Vec3, 2>> heads;  // world: of each clamp where it bears
  int count = 0;
  double reach = 0;  // mm between the heads with their cauls; of a band its girth
  double force = 0;  // N wanted in all
  double each = 0;   // N of one clamp
  std::vector<Caul> cauls;
  double head_slide =
      0;  // N along the outer face for each clamp without a caul; of a band along its axis
  double joint_slide = 0;  // N along the joint's faces for each clamp
  bool enough = true;      // the author's clamps do
};

enum class MeasureKind { side, diagonal, height, inside, angle };

// What is measured while the glue is wet.
struct WetCheck {
  MeasureKind kind = MeasureKind::side;
  std::string name;      // "front of body, outside: diagonal 1 to 3"
  double value = 0;      // mm; radians for an angle
  double tolerance = 0;  // the same
  int loop = -1;         // index into Assembly::loops
};

// A surface that nobody gets at once a stage is done.
struct OutOfReach {
  int part = 0;
  std::string side;  // its name
  double gap = 0;    // mm to what stands before it
  int before = 0;    // the part that stands there
};

struct GlueStage {
  std::vector<int> joinings;             // indices into the order's joinings
  std::vector<int> parts;                // all that it has to do with, ascending
  std::vector<std::vector<int>> pieces;  // those that are one when it is done, each ascending
  std::vector<int> joints;
  std::vector<int> needs;  // earlier stages that must be cured
  bool glued = false;
  bool undone = false;  // without glue, and every joint of it comes apart again
  double spreading = 0,
         minutes = 0;  // at the author's pace: of glue, and until the last clamp is on
  double cure = 0;
  double starts = 0, frees = 0;  // minutes from the first stage: begun, and out of the clamps
  std::vector<Clamping> clampings;
  std::vector<WetCheck> checks;
  std::vector<int> one_end;  // parts held by one joint at one end only: blocks fix them
  std::vector<OutOfReach> finish_first;
};

struct GlueUpPlan {
  std::vector<int> undone;  // joints that come apart again, ascending
  AssemblyOrder order;
  model::GlueTimes times;
  std::vector<GlueStage> stages;
  std::vector<Caul> cauls() const;
  double ends() const;  // minutes from the first stage to the last clamp off
};

// Minutes of the hands, at the usual pace.
inline constexpr double bringing_together = 0.5;  // for each joining
inline constexpr double setting_clamp = 0.4;      // for each clamp
inline constexpr double setting_band = 1.0;
inline constexpr double closing_tape = 0.3;  // for each joint
inline constexpr double fitting_dry = 3.0;   // for each joint that is fitted or drawn home dry

// The rows of clamps of a stage; `owned` may run out (Clamping::enough).
std::vector<Clamping> clamp(const Plan& plan, const std::vector<JointWork>& work,
                            const GlueStage& stage);
void find_wet_checks(const Plan& plan, const std::vector<JointWork>& work,
                     std::vector<GlueStage>& stages);
void find_out_of_reach(const Plan& plan, std::vector<GlueStage>& stages);
std::vector<GlueStage> stages_of(const Plan& plan, const AssemblyOrder& order,
                                 const std::vector<JointWork>& work);

// Fills Plan::glue_up. Findings: "no-way-in", "order-closed", "order-unknown", "order-loose",
// "undone-unknown", "undone-closed", "glue-too-fast", "too-few-clamps", "too-cold-for-glue".
void plan_glue_up(Plan& plan);

}  // namespace splay::fabrication
