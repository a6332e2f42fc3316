#include <cmath>

#include "constructs/door.h"

namespace splay::constructs {

using model::choose;
using model::may;
using model::need;
using model::Range;

void EdgeAmounts::fields(model::FieldVisitor& visit) {
  visit.length(may("all", "at every edge that has none of its own", when_left_out_), all,
               Range::allowance());
  visit.length(may("left", "at edges that look to the left", "as at all"), left,
               Range::allowance());
  visit.length(may("right", "at edges that look to the right", "as at all"), right,
               Range::allowance());
  visit.length(may("top", "at edges that look up", "as at all"), top, Range::allowance());
  visit.length(may("bottom", "at edges that look down", "as at all"), bottom, Range::allowance());
}

const model::Given<Length>& EdgeAmounts::given_for(Vec2 out) const {
  const bool sideways = std::abs(out.x) >= std::abs(out.y);
  const model::Given<Length>& own =
      sideways ? (out.x < 0 ? left : right) : (out.y < 0 ? bottom : top);
  return own.given ? own : all;
}

void DoorSlab::fields(model::FieldVisitor& visit) {
  visit.text(need("stock", "what it is made of"), stock, model::Refers::to_stock);
  choose<SlabGrain, 2>(visit, may("grain", "which way it runs"), grain, {"up", "across"});
}

void DoorHinges::fields(model::FieldVisitor& visit) {
  choose<HingeKind, 3>(visit,
                       may("kind",
                           "butt hinges let into the edge, cup hinges drilled into the back, or a "
                           "pin at head and foot; each is tried as a plain turn about one line, "
                           "though the arms of a cup hinge carry the door outwards as well"),
                       kind, {"butt", "cup", "pivot"});
  visit.count(may("count", "how many on a leaf; pivots are always two",
                  "two, and one more for every 760 mm over the first 760, common practice"),
              count, Range::between(2, 8));
  visit.length(may("from_ends",
                   "from the ends of the leaf's hinge edge to the nearest hinge: to "
                   "the end of a butt hinge, to the middle of a cup",
                   "a butt hinge's own length, 100 mm for a cup, common practice"),
               from_ends, Range::size());
  visit.lengths(may("at",
                    "the middle of each hinge over the leaf's lowest point, instead of count "
                    "and from_ends",
                    "spread evenly"),
                at, Range::size());
  visit.length(may("length", "of a butt hinge along its pin", "2 1/2 in, common practice"), length,
               Range::size());
  visit.length(may("leaf", "butt: how far a hinge leaf goes in from the face",
                   "three quarters of the door's thickness, common practice"),
               leaf, Range::size());
  visit.length(may("let_in", "butt: depth of the recess for each hinge leaf", "2 mm"), let_in,
               Range::allowance());
  visit.length(may("barrel", "diameter of a butt hinge's barrel or of a pivot's pin", "6 mm"),
               barrel, Range::size());
  visit.length(may("cup", "diameter of the cup", "35 mm, common practice"), cup, Range::size());
  visit.length(may("cup_depth", "how deep the cup is drilled", "13 mm, common practice"), cup_depth,
               Range::size());
  visit.length(may("tab", "wood between the cup and the leaf's edge", "5 mm, common practice"), tab,
               Range::size());
  visit.length(may("plate",
                   "cup: from the back of the leaf to the row of two screw holes, 5 mm wide, 12 mm "
                   "deep and 32 mm apart, for the hinge's plate in the wood beside it; 0: none",
                   "37 mm, common practice"),
               plate, Range::allowance());
  visit.length(
      may("pin", "pivot: how deep a pin goes into the leaf and into the wood beyond it", "12 mm"),
      pin, Range::size());
  visit.length(may("line_out",
                   "from the leaf's edge outwards to the line the door turns about; "
                   "negative lies inside the leaf",
                   "butt: the middle of the gap, over an opening half a barrel; cup: the edge; "
                   "pivot: 20 mm inside"),
               line_out, Range::place());
  visit.length(may("line_in_front", "from the leaf's face to the front; negative lies behind it",
                   "butt: half a barrel, over an opening the leaf's back; cup: the face; pivot: "
                   "the middle of the thickness"),
               line_in_front, Range::place());
  visit.flag(may("may_lean", "the line may lean: the door then swings by its own weight"),
             may_lean);
}

void DoorHinges::check(model::Complaints& complaints) const {
  const auto only = [&](const model::Given<Length>& field, bool fits, const char* of) {
    if (field.given && !fits)
      complaints.complain({field.span, "not-together", "a size of another kind of hinge",
                           std::string("it belongs to ") + of, "leave it out, or change the kind"});
  };
  const bool butt = kind.value == HingeKind::butt, cups = kind.value == HingeKind::cup;
  only(length, butt, "kind = \"butt\"");
  only(leaf, butt, "kind = \"butt\"");
  only(let_in, butt, "kind = \"butt\"");
  only(barrel, !cups, "kind = \"butt\" or \"pivot\"");
  only(cup, cups, "kind = \"cup\"");
  only(cup_depth, cups, "kind = \"cup\"");
  only(tab, cups, "kind = \"cup\"");
  only(plate, cups, "kind = \"cup\"");
  only(pin, kind.value == HingeKind::pivot, "kind = \"pivot\"");
  if (at.given && (count.given || from_ends.given))
    complaints.complain({at.span, "not-together", "hinges placed in two ways",
                         "either at, or count and from_ends", "keep one way"});
  if (at.given && at->size() < 2)
    complaints.complain({at.span, "wrong-count", std::to_string(at->size()) + " hinge",
                         "two or more", "a door hangs on two hinges at least"});
  if (kind.value == HingeKind::pivot && (at.given || count.given || from_ends.given))
    complaints.complain({at.given      ? at.span
                         : count.given ? count.span
                                       : from_ends.span,
                         "not-together", "places for pivots", "none: they stand at head and foot",
                         "leave them out"});
}

void Door::fields(model::FieldVisitor& visit) {
  opening_fields(visit);
  choose<DoorFit, 2>(visit, may("fit", "inset in the opening, or over its edges"), fit,
                     {"inset", "over"});
  visit.length(may("set_back", "inset: from the front to its face"), set_back, Range::allowance());
  visit.table(may("gap",
                  "inset: between the opening and the door; where none is given 1/16 in, common "
                  "practice, or what its swelling and the shop's accuracy need"),
              gap);
  visit.table(may("overlap", "over: past the edges of the opening"), overlap);
  visit.count(may("leaves", "a single door, or a pair that meets in the middle"), leaves,
              Range::between(1, 2));
  visit.length(may("meeting_gap", "between the leaves of a pair",
                   "1/8 in, common practice, or more for swelling and accuracy"),
               meeting_gap, Range::allowance());
  choose<HungOn, 2>(visit, may("hung", "single door: the side its hinges are on, from the front"),
                    hung, {"left", "right"});
  visit.table(may("slab", "one flat piece"), slab);
  visit.table(may("frame", "stiles and rails with a panel; slab or frame, one of them"), frame);
  visit.length(may("corner_radius", "its outside corners rounded", "sharp"), corner_radius,
               Range::size());
  visit.angle(may("closing_bevel",
                  "how far the closing edge is bevelled back from square, so that "
                  "it clears as it swings",
                  "square"),
              closing_bevel, Range::degrees(0, 30));
  visit.table(may("hinges", "what it hangs on"), hinges);
  visit.angle(may("opens", "how far it must turn without touching anything"), opens,
              Range::degrees(1, 180));
}

void Door::check(model::Complaints& complaints) const {
  const auto complain = [&](SourceSpan where, const char* code, const char* found,
                            const char* allowed, const char* hint) {
    complaints.complain({where, code, found, allowed, hint});
  };
  check_opening(span, complaints);
  if (slab.given == frame.given)
    complain(slab.given ? frame.span : span, slab.given ? "not-together" : "missing-field",
             slab.given ? "a slab and a frame" : "a door without a slab or a frame",
             "slab = { stock = ... } or [door.NAME.frame]", "give one of them");
  const bool over = fit.value == DoorFit::over;
  if (over && !overlap.given)
    complain(fit.span, "missing-field", "a door over its opening without an overlap",
             "overlap = { all = ... }", "say how far it lies over each edge");
  if (over ? gap.given || set_back.given : overlap.given)
    complain(over ? (gap.given ? gap.span : set_back.span) : overlap.span, "not-together",
             over ? "a gap or set_back of a door over its opening" : "an overlap of an inset door",
             "gap and set_back with fit = \"inset\", overlap with fit = \"over\"",
             "leave it out, or change the fit");
  if (leaves.value == 2 && hung.given)
    complain(hung.span, "not-together", "a side for a pair", "leaves = 1",
             "a pair hangs on both sides");
}

}  // namespace splay::constructs
