#include "model/glue_up.h"

#include <cmath>
#include <set>

namespace splay::model {

namespace {

constexpr std::array<std::string_view, 7> glue_words{
    "white", "yellow", "long open", "liquid hide", "polyurethane", "epoxy", "urea formaldehyde"};
constexpr std::array<std::string_view, 6> clamp_words{"parallel", "pipe",   "bar",
                                                      "screw",    "spring", "band"};
constexpr double room = 21;  // °C that the published times hold for

}  // namespace

GlueTimes times_of(GlueKind kind) {
  static constexpr std::array<GlueTimes, 7> times{{{4, 10, 60, 10},
                                                   {3, 10, 60, 10},
                                                   {8, 20, 60, 10},
                                                   {10, 20, 480, 10},
                                                   {15, 30, 240, 10},
                                                   {20, 30, 720, 10},
                                                   {10, 20, 720, 18}}};
  return times[static_cast<std::size_t>(kind)];
}

std::string_view word(GlueKind kind) { return glue_words[static_cast<std::size_t>(kind)]; }
std::string_view word(ClampKind kind) { return clamp_words[static_cast<std::size_t>(kind)]; }

double usual_force(ClampKind kind) {
  constexpr double pound = 4.4482216152605;  // N (NIST SP 811)
  static constexpr std::array<double, 6> pounds{370, 1050, 1350, 400, 30, 150};
  return pounds[static_cast<std::size_t>(kind)] * pound;
}

void Clamp::fields(FieldVisitor& visit) {
  choose(visit,
         may("kind",
             "parallel: parallel jaws; bar: I-bar or sash cramp; screw: hand screw, C or F; "
             "band: a strap round the work"),
         kind, clamp_words);
  visit.length(need("reach", "the widest it opens; of a band its length"), reach, Range::size());
  visit.count(may("count", "how many there are"), count, Range::between(0, 500));
  visit.number(
      may("force", "what it gives with a hard turn, in newtons", "the usual one of its kind"),
      force, Range::between(0, 50000));
}

void GlueUp::fields(FieldVisitor& visit) {
  choose(visit, may("glue", "the kind of glue"), glue, glue_words);
  visit.text(may("product", "the glue as its label names it", "its kind"), product);
  const Range minutes = Range::between(0, 10000);
  visit.number(may("open", "minutes from spreading until the faces must meet, from its data sheet",
                   "the kind's, for the temperature"),
               open, minutes);
  visit.number(may("closed", "minutes from then until the last clamp must be tight",
                   "the kind's, for the temperature"),
               closed, minutes);
  visit.number(may("cure", "minutes in the clamps", "the kind's, for the temperature"), cure,
               minutes);
  visit.number(may("temperature", "of glue, wood and air while gluing, in degrees Celsius"),
               temperature, Range::between(-10, 45));
  visit.number(
      may("pace", "how long your hands take: 2 is twice the usual time, as in a first try"), pace,
      Range::between(0.2, 10));
  visit.number(may("pressure", "on the glue, in megapascals (150 psi is 1.03)", "by the wood"),
               pressure, Range::between(0, 10));
  visit.texts(
      may("order", "parts, or items as sub-assemblies, in the order they are brought together",
          "computed"),
      order);
  visit.texts(may("undone",
                  "what comes apart again, held by bolts or screws and not by glue: a joint by its "
                  "name, two parts as \"A to B\", or a part or item for all its joints to the rest",
                  "none; where the piece doesn't pass its way whole, the break proposed"),
              undone);
  visit.tables(may("clamp", "clamps you own, by names of your own", "nothing is said of them"),
               clamps);
}

void GlueUp::check(Complaints& complaints) const {
  std::set<std::string> seen;
  for (const std::string& name : *order)
    if (!seen.insert(name).second)
      complaints.complain({order.span, "repeated-name",
                           "\"" + name + "\" stands twice in the order", "each part or item once",
                           ""});
}

GlueTimes GlueUp::times() const {
  GlueTimes times = times_of(*glue);
  const double slower = std::exp2((room - *temperature) / 10);
  times.open = *open > 0 ? *open : times.open * slower;
  times.closed = *closed > 0 ? *closed : times.closed * slower;
  times.cure = *cure > 0 ? *cure : times.cure * slower;
  return times;
}

}  // namespace splay::model
