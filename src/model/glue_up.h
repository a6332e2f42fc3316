// What an author says of gluing up: [glue_up], the glue, the clamps he owns, the order he wants.
#pragma once

#include <string>
#include <vector>

#include "model/field.h"

namespace splay::model {

enum class GlueKind {
  white,             // polyvinyl acetate
  yellow,            // aliphatic, or cross-linking polyvinyl acetate
  long_open,         // polyvinyl acetate made to stay open
  liquid_hide,       // ready to use from the bottle
  polyurethane,      // cures with the wood's moisture
  epoxy,             // slow, two parts
  urea_formaldehyde  // powder mixed with water
};

// Minutes at 21 °C, 50 % relative humidity and a film of 0.15 mm, and °C.
struct GlueTimes {
  double open = 0;    // from spreading until the faces meet
  double closed = 0;  // from there until the last clamp is tight
  double cure = 0;    // in the clamps
  double coldest = 0;
};
// The short end of the ranges that makers of each kind publish for open and closed time, the long
// end for the time in the clamps (ranges across makers' guides, from memory).
GlueTimes times_of(GlueKind kind);
std::string_view word(GlueKind kind);

enum class ClampKind { parallel, pipe, bar, screw, spring, band };
std::string_view word(ClampKind kind);
// Newtons a clamp of the kind gives: 370 lb parallel-jaw, 1,050 lb pipe of 3/4 in, 1,350 lb I-bar,
// as measured in a published test of clamping pressure (Fine Woodworking, November 2007, quoted at
// second hand); the others common practice, no source.
double usual_force(ClampKind kind);

// Clamps of one kind and reach.
struct Clamp : Fields {
  std::string name;
  Given<ClampKind> kind{ClampKind::parallel};
  Given<Length> reach;  // between the jaws wide open; of a band its length
  Given<int> count{1};
  Given<double> force{0.0};  // N; 0: the usual one of its kind
  void fields(FieldVisitor& visit) override;
  double newtons() const { return *force > 0 ? *force : usual_force(*kind); }
};

struct GlueUp : Fields {
  Given<GlueKind> glue{GlueKind::yellow};
  Given<std::string> product;                       // as its label names it
  Given<double> open{0.0}, closed{0.0}, cure{0.0};  // minutes from its data sheet; 0: the kind's
  Given<double> temperature{21.0};                  // °C while it is glued
  Given<double> pace{1.0};                          // times the usual minutes of the hands
  Given<double> pressure{0.0};                      // MPa on the glue; 0: by the wood
  Given<std::vector<std::string>> order;            // parts or items by name, first one first
  Given<std::vector<std::string>> undone;           // joints that come apart again, see fields()
  Tables<Clamp> clamps;
  void fields(FieldVisitor& visit) override;
  void check(Complaints& complaints) const override;
  // As given, else the kind's, for the temperature while gluing: half for every 10 °C over 21 and
  // double for every 10 °C under (rule of thumb, from memory); what is given is taken as it is.
  GlueTimes times() const;
};

}  // namespace splay::model
