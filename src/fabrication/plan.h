// The plan: an assembly turned into what a maker needs to know of each part.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "fabrication/glue_up.h"
#include "fabrication/layouts.h"
#include "fabrication/soundness.h"
#include "fabrication/steps.h"
#include "model/project.h"
#include "parts/part.h"

namespace splay::fabrication {

enum class Hand { none, left, right };
std::string_view word(Hand hand);

// One end or edge of a part that isn't a plain square cut of the blank, as a saw sees it: board
// flat on the table; for a face (side z_low or z_high) standing on its edge. Angles are off a
// square cut, radians, never negative.
struct CutReport {
  parts::Side side = parts::Side::x_low;  // which end or edge
  std::string name;
  double face_angle = 0;  // mitre gauge: how far the line on the face is off square
  double bevel = 0;       // blade tilt
  // The arris that stands furthest out: on which face (z_low or z_high) and which edge; `any` when
  // the cut is square to that direction.
  bool on_face = false, on_edge = false;
  parts::Side long_face = parts::Side::z_high;
  parts::Side long_edge = parts::Side::y_high;
};

// All parts that are alike: one row of the cut list.
struct PartRow {
  std::string mark;  // "A", "B-L", "B-R"
  Hand hand = Hand::none;
  std::vector<int> members;  // indices into Assembly::parts; never empty, the first is drawn
  int pair = -1;             // the row of its mirror image
  std::string name;          // of the first member, or what the members share
  std::string stock;
  Vec3 finished;  // length, width, thickness
  Vec3 blank;
  double long_point = 0;  // greatest and least length between the two ends, along x
  double short_point = 0;
  double volume = 0;  // mm3
  double mass = 0;    // kg, from the stock's density
  std::vector<CutReport> cuts;
  // How far faces are off the designed ones at the most when every step is set as printed, mm;
  // negative: a printed step can't be carried out.
  double deviation_printed = 0;
  std::size_t quantity() const { return members.size(); }
};

struct JointReport {
  std::string name, kind;
  std::vector<std::string> between;  // marks
  double dihedral = 0;
  double gap = 0;       // mm, of the parts as designed
  double gap_cut = -1;  // of the parts as their exact steps cut them; negative: not measured
  // Of the parts as the printed settings cut them; infinite where they don't meet at all.
  double gap_printed = -1;
};

// A loop's lengths as they must measure on the finished work.
struct LoopReport {
  std::string name;
  std::vector<double> sides;
  double diagonal_1 = 0, diagonal_2 = 0;  // four corners only, else 0
  double check = 0;  // one more length that fixes the lean: the height square to the first side
};

struct StockUse {
  std::string name, kind, material;
  double thickness = 0;
  double area = 0;    // mm2 of finished bounding rectangles
  double length = 0;  // mm
  int pieces = 0;
};

struct Plan {
  const model::Project* project = nullptr;  // outlives the plan
  parts::Assembly assembly;
  std::map<int, parts::Part> edged;  // by index: parts as they are cut with edging on (edging.h)
  std::vector<PartRow> rows;
  std::vector<int> row_of_part;
  std::vector<JointReport> joints;
  std::vector<LoopReport> loops;
  std::vector<StockUse> stock;
  std::vector<Step> steps;  // row by row, each row's in the order of work
  std::vector<ChainReport> chains;
  std::vector<StockLayout> layouts;
  Soundness soundness;
  GlueUpPlan glue_up;
  std::vector<Finding> findings;  // the assembly's and the plan's, worst first

  bool stopped() const;
  const std::string& mark_of(int part) const;
  // A part as its steps cut it: one that is edged before that with its edging.
  const parts::Part& as_cut(int part) const;
  // The one that a row's steps are found for.
  const parts::Part& sample(int row) const;
};

// `effort` goes to the layouts of sheets and boards; with no steps their first layout is taken.
Plan make_plan(const model::Project& project, parts::Assembly assembly,
               const packing::Effort& effort = {});

}  // namespace splay::fabrication
