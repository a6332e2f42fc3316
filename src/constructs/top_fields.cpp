#include <algorithm>

#include "constructs/corners.h"
#include "constructs/top.h"

namespace splay::constructs {

using model::choose;
using model::may;
using model::need;
using model::Range;

void Overhang::fields(model::FieldVisitor& visit) {
  visit.length(may("all", "on every side that has none of its own"), all, Range::allowance());
  for (const auto& [word, field] :
       {std::pair{"front", &front}, {"back", &back}, {"left", &left}, {"right", &right}})
    visit.length(may(word, "on this side of a four-sided top", "all"), *field, Range::allowance());
}

void EdgeBevel::fields(model::FieldVisitor& visit) {
  visit.angle(need("angle", "off the plumb edge"), angle, Range::degrees(1, 85));
  visit.length(need("height", "how much of the edge's height it takes"), height, Range::size());
  choose<BevelAt, 2>(visit, may("at", "at the underside or at the top"), at, {"underside", "top"});
  visit.texts(may("sides", "sides that have it", "all of them, rounded corners too"), sides);
}

void Breadboard::fields(model::FieldVisitor& visit) {
  visit.text(may("stock", "what the end boards are made of", "the top's stock"), stock,
             model::Refers::to_stock);
  visit.length(need("width", "of an end board; the top's outline includes it"), width,
               Range::size());
  visit.length(may("tongue_thickness", "thickness of the tongue", "a third, common practice"),
               tongue_thickness, Range::size());
  visit.length(may("tongue_length", "from the shoulder into the end board, common practice"),
               tongue_length, Range::size());
  visit.length(may("bottom_gap", "room in the groove past the tongue, common practice"), bottom_gap,
               Range::allowance());
  visit.length(may("stopped", "how far from the edges the tongue stops", "it runs out"), stopped,
               Range::size());
  visit.length(may("movement", "how much longer the slots are than their pins",
                   "what the whole width moves from the shop to the room's driest or dampest, at "
                   "least 1/8 in for every 12 in of width"),
               movement, Range::allowance());
  visit.length(may("pin", "diameter of the pins"), pin, Range::size());
  visit.count(may("pins", "pins at an end, an odd number: the middle one holds, the others slide"),
              pins, Range::between(1, 15));
  visit.texts(may("ends", "ends that have one", "both"), ends);
}

void Breadboard::check(model::Complaints& complaints) const {
  if (pins.value % 2 == 0)
    complaints.complain({pins.span, "wrong-count", std::to_string(pins.value) + " pins",
                         "an odd number, so that one stands in the middle", "one more, or less"});
}

void Top::fields(model::FieldVisitor& visit) {
  visit.table(may("outline", "the outline seen from above, unless the top is round"), outline);
  visit.length(may("diameter", "of a round top"), diameter, Range::size());
  visit.table(may("overhang", "past the outline or diameter, then of what it rests on"), overhang);
  visit.text(need("stock", "what it is made of"), stock, model::Refers::to_stock);
  visit.lengths(may("at", "where the outline's low corner (its [0, 0]) stands, at the underside"),
                at, Range::place());
  choose<TopGrain, 2>(visit, may("grain", "runs across the front, or deep, front to back"), grain,
                      {"across", "deep"});
  visit.length(may("corner_radius", "of every corner", "sharp corners"), corner_radius,
               Range::size());
  visit.table(may("bevel", "a bevelled edge"), bevel);
  visit.table(may("breadboard", "boards across the ends"), breadboard);
  visit.tables(may("fastener", "what holds it to a part under it"), fasteners);
}

void Top::check(model::Complaints& complaints) const {
  check_point(at, complaints);
  if (diameter.given == outline.given) {
    complaints.complain({diameter.given ? diameter.span : span, "wrong-count",
                         diameter.given ? "an outline and a diameter" : "a top without an outline",
                         "either outline or diameter", "give one of them"});
    return;
  }
  if (diameter.given && (corner_radius.given || breadboard.given))
    complaints.complain({corner_radius.given ? corner_radius.span : breadboard.span, "not-together",
                         "corners or ends of a round top", "a top with sides", "leave it out"});
  if (diameter.given) return;
  const std::vector<std::string> names = outline.edge_names();
  const bool four = names == std::vector<std::string>{"front", "right", "back", "left"};
  for (const auto* field : {&overhang.front, &overhang.back, &overhang.left, &overhang.right})
    if (field->given && !four)
      complaints.complain({field->span, "unknown-side", "an overhang of one side",
                           "sides named front, right, back and left", "use all = ..."});
  if (bevel.sides.given)
    for (const std::string& side : *bevel.sides)
      check_side(names, side, bevel.sides.span, complaints);
  if (!breadboard.ends.given) return;
  const std::vector<std::string> ends = grain.value == TopGrain::across
                                            ? std::vector<std::string>{"left", "right"}
                                            : std::vector<std::string>{"front", "back"};
  for (const std::string& end : *breadboard.ends)
    check_side(ends, end, breadboard.ends.span, complaints);
}

}  // namespace splay::constructs
