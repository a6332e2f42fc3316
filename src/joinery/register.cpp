#include <algorithm>

#include "joinery/box_joint.h"
#include "joinery/bridle.h"
#include "joinery/butt.h"
#include "joinery/dovetail.h"
#include "joinery/dowel.h"
#include "joinery/glued.h"
#include "joinery/groove.h"
#include "joinery/half_lap.h"
#include "joinery/housing.h"
#include "joinery/kinds.h"
#include "joinery/loose_tenon.h"
#include "joinery/mitre.h"
#include "joinery/rabbet.h"
#include "joinery/screw.h"
#include "joinery/spline.h"
#include "joinery/tenon.h"

namespace splay::joinery {

namespace {

template <class T>
std::unique_ptr<JointKind> make() {
  return std::make_unique<T>();
}

}  // namespace

const std::vector<JointEntry>& registry() {
  static const std::vector<JointEntry> joints = {
      {"butt", "one part ends against the face of another", &make<ButtKind>},
      {"mitre", "two ends cut on the plane from the outer corner to the inner one",
       &make<MitreKind>},
      {"housing", "a trench across a face that takes another part's end", &make<HousingKind>},
      {"rabbet", "a step along an edge that takes another part's edge", &make<RabbetKind>},
      {"groove", "a trench along a face that takes another part's edge", &make<GrooveKind>},
      {"glued", "faces or edges that touch, glued as they are", &make<GluedKind>},
      {"half lap", "two crossing parts, each cut away on the plane between them",
       &make<HalfLapKind>},
      {"mortise and tenon", "a tongue on one part's end in a pocket of the other",
       &make<TenonKind>},
      {"loose tenon", "a separate tenon in a mortise of either part", &make<LooseTenonKind>},
      {"bridle", "a tongue of full width in an open slot", &make<BridleKind>},
      {"box joint", "square fingers of two boards' ends between each other", &make<BoxJointKind>},
      {"dovetail", "tails of one board's end between the pins of the other's", &make<DovetailKind>},
      {"dowel", "round pins in holes of both parts", &make<DowelKind>},
      {"spline", "a thin strip in a slot along the joint, half in either part", &make<SplineKind>},
      {"screw", "screws through one part into the other", &make<ScrewKind>},
  };
  return joints;
}

const JointEntry* find_joint(std::string_view word) {
  const auto found = std::find_if(registry().begin(), registry().end(),
                                  [word](const JointEntry& joint) { return joint.word == word; });
  return found == registry().end() ? nullptr : &*found;
}

}  // namespace splay::joinery
