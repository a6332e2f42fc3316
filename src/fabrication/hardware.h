// The hardware list: everything bought or made loose for the piece, counted from the fittings and
// joints of the model and from what the author adds; and what must be so of screws and fasteners.
#pragma once

#include <string>
#include <vector>

#include "geometry/solid.h"
#include "model/project.h"

namespace splay::fabrication {

struct Plan;

// All that are alike.
struct HardwareLine {
  std::string what, size;  // size in its native unit
  int count = 0, spare = 0;
  std::vector<std::string> on;  // marks of the parts they touch, each once
  std::string why;              // what they are counted by: "the model", "one for each door"
  bool priced = false;
  double price = 0;  // of a pack
  int pack = 1;      // how many are in it
  int packs() const { return (count + spare + pack - 1) / pack; }
};

struct EdgeBand {
  std::string stock, material;
  double length = 0;  // mm, of the finished strips
  int strips = 0;
};

struct HardwareList {
  std::vector<HardwareLine> lines;
  std::vector<EdgeBand> bands;
  double glue_area = 0;  // mm2 of surfaces that meet and are glued
  double glue_kg = 0;
  bool empty() const { return lines.empty() && bands.empty() && glue_area <= 0; }
};
HardwareList list_hardware(const Plan& plan);

// Does the author list a "wall anchor"? It holds what would tip.
bool has_wall_anchor(const model::Project& project);

// Surfaces that meet in joints that are glued, mm2: not those that must move or come apart.
double glued_area(const Plan& plan);

// What is drilled for a wood screw of a gauge, mm. The shank is 0.060 + 0.013 N in (ANSI/ASME
// B18.6.1, from memory), the root of its thread two thirds of that (Wood Handbook, FPL-GTR-190,
// chapter 8); the pilot hole is 70 % of the root in softwood and 90 % in hardwood (American Wood
// Council's rule, from memory).
struct ScrewHoles {
  int gauge = 0;
  double shank = 0, root = 0, clearance = 0, pilot_soft = 0, pilot_hard = 0;
};
ScrewHoles screw_holes(int gauge);
int gauge_of(const std::string& size);        // "#8 x 1 1/4 in" gives 8; 0 when it has none
double native_length(std::string_view text);  // mm: "1 1/4 in", "25 mm"; 0 when it is none
double length_of(const std::string& size);    // mm: "#8 x 1 1/4 in" gives 31.75; 0 when it has none
std::vector<int> screw_gauges(const Plan&);   // that the list has, ascending

// How far there is wood without a gap from a point on, mm.
double wood_run(const Solid& solid, Vec3 at, Vec3 way);
// How far there is none; 1e9 when never any.
double free_run(const Solid& solid, Vec3 at, Vec3 way);
// And how much wood a whole line through the point meets.
double wood_on_line(const Solid& solid, Vec3 at, Vec3 way);

// What holds a top to one rail, and what the top does there: held in its middle it moves so far
// towards either side from where it was made. Along the rail a slot has to let it; square to it the
// fastener has to slide, its shoulder so far off the rail.
struct TopFastening {
  int rail = 0, top = 0;  // indices into Assembly::parts
  std::string kind;
  int count = 0;
  bool along_rail = false;         // which way the top moves
  double shrinks = 0, swells = 0;  // mm, at the fastener furthest from the top's middle
  double slot = 0;      // mm of the slot along the rail, from the solid; 0 for a figure-8
  double needs = 0;     // mm it has to be, 0 where the top doesn't move along it
  double set_back = 0;  // mm between the fastener's shoulder and the rail; 0 for a figure-8
};
std::vector<TopFastening> top_fastenings(const Plan& plan);

// How far a figure-8 may carry a top to one side, mm: swinging, it draws itself in by no more than
// its screws have play in their holes (1/64 in, common practice, no source).
double figure_eight_swing(double between_holes);

// Findings: "screw-comes-out" (stop; screws of hinges, fasteners and placed hardware too),
// "screw-hole-tight", "pilot-hole-size", "fastener-held" (stop: it can't follow the top's
// movement), "fastener-too-small", "top-lies-loose", "hardware-for-nothing", "unknown-part" (stop).
void judge_hardware(Plan& plan);

}  // namespace splay::fabrication
