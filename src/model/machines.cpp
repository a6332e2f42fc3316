#include "model/machines.h"

namespace splay::model {

namespace {

constexpr std::array<std::string_view, 2> scale_words{"0 is square", "90 is square"};
constexpr std::array<std::string_view, 2> tilts_words{"left", "right"};
constexpr std::array<std::string_view, 4> beyond_words{"propose", "track saw", "hand", "split"};
constexpr Range scale_steps() { return Range::degrees(0.01, 5); }

}  // namespace

void Saw::fields(FieldVisitor& visit) {
  visit.angle(may("tilt", "the furthest the blade tilts from upright"), tilt,
              Range::degrees(1, 60));
  choose(visit, may("tilts", "the side the top of the blade leans to, seen by the sawyer"), tilts,
         tilts_words);
  visit.length(may("kerf", "the width of cut, measured from a test cut"), kerf, Range{0, 12, true});
  visit.length(may("longest_on_end", "the longest part that can stand on end against the fence"),
               longest_on_end, Range::size());
  visit.length(may("widest_on_end", "the widest part that can stand on end against the fence"),
               widest_on_end, Range::size());
  visit.length(may("longest_crosscut", "the longest cut across a part"), longest_crosscut,
               Range::size());
  visit.length(may("height", "the blade's greatest height over the table, upright"), height,
               Range::size());
  visit.length(may("height_at_45", "the same with the blade at 45 degrees"), height_at_45,
               Range::size());
  visit.length(may("rip_right", "furthest from the blade to the fence on the right"), rip_right,
               Range::size());
  visit.length(may("rip_left", "furthest from the blade to the fence on the left"), rip_left,
               Range::allowance());
  visit.length(
      may("tall_fence", "height of the fence a part stands against; 0 where there is none"),
      tall_fence, Range::allowance());
  visit.length(may("narrowest_stack", "the narrowest dado stack"), narrowest_stack, Range::size());
  visit.length(may("widest_stack", "the widest dado stack; 0 where there is none"), widest_stack,
               Range::allowance());
  visit.angle(may("gauge", "the furthest the mitre gauge turns from square"), gauge,
              Range::degrees(0, 80));
  choose(visit, may("tilt_scale", "what the tilt scale reads with the blade upright"), tilt_scale,
         scale_words);
  choose(visit, may("gauge_scale", "what the mitre gauge reads for a square cut"), gauge_scale,
         scale_words);
  visit.angle(may("reads_to",
                  "the smallest angle that can be set: 0.1 with an angle gauge, 0.5 by "
                  "a bare scale"),
              reads_to, scale_steps());
  choose(visit, may("beyond", "what to do with a cut that no position on the saw makes"), beyond,
         beyond_words);
}

void MitreSaw::fields(FieldVisitor& visit) {
  visit.angle(may("mitre", "the furthest it turns from square, either way"), mitre,
              Range::degrees(0, 70));
  visit.angle(may("bevel", "the furthest it tilts, either way"), bevel, Range::degrees(0, 60));
  visit.length(may("widest", "the widest board it cuts across, upright and square"), widest,
               Range::size());
  visit.length(may("thickest", "the thickest board it cuts"), thickest, Range::size());
  visit.length(may("kerf", "the width of cut"), kerf, Range{0, 12, true});
  choose(visit, may("scale", "what its scales read for a square cut"), scale, scale_words);
  visit.angle(may("reads_to", "the smallest angle that can be set"), reads_to, scale_steps());
}

void TrackSaw::fields(FieldVisitor& visit) {
  visit.angle(may("tilt", "the furthest it tilts from upright"), tilt, Range::degrees(0, 60));
  visit.length(may("depth", "its depth of cut, upright"), depth, Range::size());
  visit.length(may("longest", "the longest cut along its tracks"), longest, Range::size());
  visit.length(may("kerf", "the width of cut"), kerf, Range{0, 12, true});
  visit.angle(may("reads_to", "the smallest angle that can be set"), reads_to, scale_steps());
}

void BandSaw::fields(FieldVisitor& visit) {
  visit.length(may("height", "the thickest work it cuts"), height, Range::size());
  visit.length(may("throat", "from the blade to its frame"), throat, Range::size());
  visit.length(may("kerf", "the width of cut"), kerf, Range{0, 12, true});
}

void Router::fields(FieldVisitor& visit) {
  visit.length(may("deepest", "the deepest it cuts"), deepest, Range::size());
  visit.length(may("widest_bit", "the widest straight bit"), widest_bit, Range::size());
  visit.length(may("narrowest_bit", "the narrowest straight bit"), narrowest_bit, Range::size());
}

void Drill::fields(FieldVisitor& visit) {
  visit.angle(may("tilt", "the furthest its table tilts"), tilt, Range::degrees(0, 90));
}

void Jointer::fields(FieldVisitor& visit) {
  visit.length(may("widest", "the widest face it flattens"), widest, Range::size());
}

void Planer::fields(FieldVisitor& visit) {
  visit.length(may("widest", "the widest board it takes"), widest, Range::size());
}

}  // namespace splay::model
