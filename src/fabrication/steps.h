// Steps: how each part is cut, as settings of the shop's machines.
//
// A step is plain data. A maker sets it up from it, and the simulator (simulate.h) replays it with
// nothing else: no step refers to the plane it should make.
//
// Machine frame: the tool's plane is z = 0 and +z goes into the wood. It is the top of a saw's
// table with the board lying on it; for a tool that is led over the work (track saw, router,
// drill, hand) it is the face under the shoe, so that the picture is the same upside down. The line
// of cut is x = 0, z = 0, and the work is fed along +y. Left is -x and right is +x.
//
// How the work lies: the part's side `face` is on the tool's plane. With a fence `against` turns to
// the fence, left or right of the line; with a gauge it turns to the gauge, which is at -y, and
// then the work is turned by the gauge's angle about z, anticlockwise seen towards -z. Nothing more
// is needed: the work is pushed until it touches table, fence, gauge and stop. Along marks it is
// moved until both marks lie on the line, the second at +y. A bore has one mark, on the spindle's
// line; the work lies as in a gauge, and the bit leans by the tilt to the right of the gauge's
// zero.
//
// Lengths are millimetres, angles radians. Marks and distances are measured on the work as it is
// when the step begins, from its furthest points.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "parts/part.h"

namespace splay::fabrication {

enum class Machine {
  table_saw,
  mitre_saw,
  band_saw,
  track_saw,
  router,
  drill,
  jointer,
  planer,
  hand
};
enum class Position { flat, on_edge, on_end };  // which kind of side is on the tool's plane
enum class Guide {
  fence,  // parallel to the line: a rip fence, tall when the work stands
  gauge,  // a mitre gauge, sled or the mitre saw's fence, with a stop
  marks   // a taper sled, a track or straight edge, or a line followed
};
enum class Tool {
  blade,      // one kerf
  stack,      // a dado stack of the width stated, or repeated passes that add up to it
  follow,     // along marked lines, one after another, right through: what is outside of each goes
  clear,      // everything between marked lines, down to the depth: a bit, a chisel
  bore,       // a round hole
  thickness,  // to a thickness: the jointer's and the planer's work
  edging      // a strip as thick as the width glued over all of the side `against`
};

// How the work is turned from the step before.
enum class Turned {
  first,  // of its part
  as_before,
  end_for_end,    // about the axis through the faces: same face down
  face_for_face,  // about its length: the other face down
  over_ends,      // about its width: the other face down, ends change places
  another_side    // another kind of side comes down: onto an edge, an end, a face
};

enum class Flag {
  try_first,       // cut one and try it: this setting serves several cuts
  same_setting,    // the setting of an earlier step (Step::same_as)
  complement,      // stands because the tilt is past the saw's with the board flat
  tall_fence,      // needs the tall fence and a hold-down
  sacrificial,     // the blade meets the fence: cover it with waste wood
  guard_off,       // a cut that doesn't go through: no guard or riving knife over it
  narrow_offcut,   // keep the off-cut free of fence and stop
  small_piece,     // too small to hold by hand: cut it off a longer piece or hold it in a sled
  stop_behind,     // wood left between blade and fence: use a stop block ahead of the blade
  square_corners,  // inside corners are squared by hand
  block,           // the side is not flat: pack it level with its furthest point, and mark on that
  chosen_way,      // not the first way: see Step::remark
  sloped_jig       // the work or the tool stands on a wedge of Setting::tilt
};

// A point on `face`: how far from the work's end and edge that the step names.
struct Mark {
  double along = 0, across = 0;
};

// A line to cut to for Tool::clear and Tool::follow: what goes is to the right of it as one goes
// from a to b, in the machine frame. `lean` is the wall's angle off square to the face, positive
// where the hollow widens with its depth; on a sloped jig every wall runs along the tool instead.
struct Line {
  Mark a, b;
  double lean = 0;
};

struct DepthMark {
  Mark at;
  double depth = 0;  // square to the face; on a sloped jig along the tool
};

// What is set on the machine and marked on the work.
struct Setting {
  double tilt = 0;      // blade off square to its table; 0 to pi/2
  double gauge = 0;     // signed, see above
  double distance = 0;  // fence: from it to the line. gauge: along it from the stop to the line
  // Of the tool's highest point over the tool's plane; a bore's is along the bit. 0: through.
  // On a sloped jig (Tool::clear) tilt and gauge say how the tool leans, as they do for a bore.
  double height = 0;
  double width = 0;  // kerf, stack or bit, square to the blade. planer: what it leaves, jointer:
                     // what it takes off
  // A bore stands in the solid model as a prism of so many sides, one of which is turned so far
  // from the right about the axis.
  int facets = 0;
  double facet_turn = 0;
  double jig_offset = 0;          // marks on a taper sled: across over the tapered length
  std::vector<Mark> marks;        // two on the line, or the centre of a bore
  std::vector<Line> lines;        // Tool::clear
  std::vector<DepthMark> depths;  // Tool::clear: one for a floor along the face, three for any
                                  // other, none: right through
};

struct Step {
  std::string id;               // "B-L.3": the row's mark and the place in its order
  int row = 0;                  // of Plan::rows
  std::vector<int> operations;  // that it finishes; empty: begins one, or cuts the blank's sides
  std::string name;             // "mitre to top", "rip to width"
  Machine machine = Machine::table_saw;
  Tool tool = Tool::blade;
  Guide guide = Guide::fence;

  parts::Side face = parts::Side::z_low;         // on the table or under the shoe
  parts::Side against = parts::Side::y_low;      // runs along the fence, or lies in the gauge
  parts::Side leads = parts::Side::x_high;       // goes first into the blade
  parts::Side stopped = parts::Side::x_low;      // gauge: at the stop; marks: `along` starts there
  parts::Side across_from = parts::Side::y_low;  // marks: `across` starts there
  // Marks start at the furthest point of `face` and not of the work, which lies under a bevel
  // there.
  bool stopped_on_face = false, across_on_face = false;
  bool reference_right = true;  // fence or stop to the right of the line
  bool waste_right = false;     // the kerf and the waste are to the right of the line
  bool tilts_right = false;     // with z: a blade's top leans to the right
  bool to_long_point = false;   // the distance ends at the longest point of the cut, else shortest
  bool cuts_through = true;     // nothing of the cut stays standing
  bool runs_out = false;  // stack: past the wood on its far side, so that a wider one serves too

  Setting exact, printed;  // printed: rounded to the machine's scales and the job's smallest step
  int same_as = -1;        // index into Plan::steps: the earlier step whose setting it keeps
  int group = 0;           // steps of one group share machine, tool, tilt and gauge
  Turned turned = Turned::first;
  std::vector<Flag> flags;
  std::string remark;  // why this way, in a plain sentence, or ""
  int glued = -1;      // Tool::edging: the row of the strip

  // The proof: of the whole part, cut by all its steps with the exact settings.
  bool proven = false;
  std::string unproven_why;      // when not proven
  double deviation_exact = 0;    // furthest the part is off the designed one, mm
  double volume_difference = 0;  // mm3 that is in one and not in the other
  // How far the faces of the designed part that this step makes are off the surfaces its printed
  // setting makes, at the most, when all other steps are set exactly; mm.
  double deviation_printed = 0;

  Position position() const;
  // Held by a fence or gauge that is set.
  bool at_fence() const;
  bool at_gauge() const;
  bool has(Flag flag) const;
};

// One closed chain of parts: what an error of each cut makes of the last joint.
struct ChainReport {
  std::string name;
  std::vector<int> parts;       // in order round the chain
  int cuts = 0;                 // angles that add up: two for each joint of a ring
  double turn = 0;              // what the joints' angles add up to, radians
  double gap_per_tenth = 0;     // mm the last joint opens when every cut is 0.1 degree off
  double gap_per_division = 0;  // the same for one division of the scale
  double division = 0;          // radians
  double gap_printed = 0;       // with the settings as they are printed
  double allowed = 0;           // mm, the job's figure
  double tolerance = 0;         // radians each cut may be off
};

std::string_view word(Machine machine);    // "table saw"
std::string_view word(Position position);  // "flat", "on edge", "on end"
std::string_view word(Tool tool);
std::string_view word(Guide guide);
std::string_view word(Turned turned);
std::string_view word(Flag flag);  // "try one first"

}  // namespace splay::fabrication
