#include "model/hardware.h"

namespace splay::model {

void Hardware::fields(FieldVisitor& visit) {
  visit.text(may("what",
                 "what it is: \"knob\", \"leveller\", \"shelf pin\"; a \"wall anchor\" answers the "
                 "caution that the piece tips",
                 "the table's name"),
             what);
  visit.text(may("size", "as it is bought, in its own unit: \"32 mm\", \"#8 x 1 1/4 in\""), size);
  visit.count(may("count", "how many for each of `per`; with `at` one stands at every point"),
              count, Range::between(1, 1000));
  visit.text(may("per",
                 "what the count is for: piece, part (each of `on`), door, drawer, or the kind of "
                 "another fitting: \"butt hinge\"",
                 "part when `on` is given, else piece"),
             per);
  visit.texts(may("on", "names of the parts it goes on"), on);
  visit.text(may("face", "the face of these parts it goes on, as their part view names it"), face);
  visit.points(may("at",
                   "its places on the face, from the datums its part view measures from: [[along, "
                   "across], ...]",
                   "counted, not placed"),
               at);
  visit.length(may("hole", "diameter of the hole drilled at each place", "none is drilled"), hole,
               Range::size());
  visit.length(may("depth", "of the hole", "through"), depth, Range::size());
  visit.count(may("spare", "how many more to have ready"), spare, Range::between(0, 1000));
  visit.number(
      may("price", "of a pack, in the currency of [buying]; else as [buying.hardware] has it",
          "not in the sums"),
      price, Range::between(0, 1e7));
  visit.count(may("pack", "how many are in a pack"), pack, Range::between(1, 100000));
}

void Hardware::check(Complaints& complaints) const {
  if (at.given && (!on.given || !face.given))
    complaints.complain({at.span, "not-on-a-face", "places, and no part and face they are on",
                         "on = [\"...\"] and face = \"...\" beside them", ""});
  if (at.given && count.given)
    complaints.complain({count.span, "counted-twice", "a count beside places",
                         "one or the other: every point takes one", ""});
  if (hole.given && !at.given)
    complaints.complain({hole.span, "hole-nowhere", "a hole, and no places for it",
                         "at = [[along, across], ...]", ""});
  if (pack.given && !price.given)
    complaints.complain(
        {pack.span, "pack-without-price", "a pack without its price", "price = of the pack", ""});
  if (depth.given && !hole.given)
    complaints.complain(
        {depth.span, "depth-of-nothing", "a depth without a hole", "hole = its diameter", ""});
}

}  // namespace splay::model
