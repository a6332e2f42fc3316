#include "constructs/stand.h"

namespace splay::constructs {

using model::choose;
using model::may;
using model::need;
using model::Range;

void StandLeg::fields(model::FieldVisitor& visit) {
  visit.text(need("stock", "what the legs are made of"), stock, model::Refers::to_stock);
  visit.length(need("top_width", "width at the top"), top_width, Range::size());
  visit.length(may("foot_width", "width at the foot", "as at the top"), foot_width, Range::size());
  visit.length(may("thickness", "from face to face", "the stock's thickness"), thickness,
               Range::size());
  choose<LegTaper, 3>(visit,
                      may("taper", "which edge is tapered; the outside keeps its lean in any case"),
                      taper, {"inside", "outside", "both"});
  choose<LegWidths, 2>(visit,
                       may("widths",
                           "measured along the level foot and top, or square to the blank "
                           "at the ends of the outer edge"),
                       widths, {"level", "square"});
  choose<LegFaces, 2>(visit,
                      may("faces",
                          "where the broad faces look: the legs make a front and a "
                          "back frame, or two side frames"),
                      faces, {"front and back", "left and right"});
}

void StandBrace::fields(model::FieldVisitor& visit) {
  visit.text(need("stock", "what it is made of"), stock, model::Refers::to_stock);
  visit.length(need("width", "across its face"), width, Range::size());
  visit.length(may("thickness", "through its face", "the stock's thickness"), thickness,
               Range::size());
  visit.length(need("at",
                    "height of its centre line over the foot, at the middle of the first leg: "
                    "the left or front one"),
               at, Range::size());
  visit.length(may("other_at", "the same at the other leg", "level"), other_at, Range::size());
  choose<BraceRun, 6>(visit, may("runs", "where braces run, one in each place, alike"), runs,
                      {"front and back", "left and right", "front", "back", "left", "right"});
  choose<BraceCross, 3>(visit,
                        may("crossed",
                            "none: parallel braces; in elevation: a second one mirrored "
                            "in each place; in plan: two level ones from corner to "
                            "corner"),
                        crossed, {"none", "in elevation", "in plan"});
  choose<BraceLies, 2>(visit, may("lies", "crossed in plan: its width upright or level"), lies,
                       {"on edge", "flat"});
  visit.length(may("inset", "how far its outside face stands in from the outside of the legs"),
               inset, Range::allowance());
  visit.length(may("proud", "how far its ends stand out of the legs", "they are flush"), proud,
               Range::size());
  choose<BraceWalls, 2>(visit,
                        may("walls",
                            "sides of the laps in the legs: along the brace, or "
                            "parallel to the floor"),
                        walls, {"along the brace", "parallel to the floor"});
  visit.number(may("share", "part of the common thickness that the legs lose"), share,
               Range::between(0.05, 0.95));
  visit.length(may("within",
                   "crossed: the most that the crossing may be off the middle of either "
                   "brace",
                   "any"),
               within, Range::allowance());
}

void StandBrace::check(model::Complaints& complaints) const {
  const auto complain = [&](SourceSpan where, std::string found, std::string allowed,
                            std::string hint) {
    complaints.complain(
        {where, "not-together", std::move(found), std::move(allowed), std::move(hint)});
  };
  if (crossed.value == BraceCross::in_elevation && second_height() == at->mm)
    complain(crossed.span, "braces that cross in elevation and are level",
             "two heights: at and other_at", "give other_at");
  if (crossed.value == BraceCross::in_plan && (other_at.given || runs.given || inset.given))
    complain(crossed.span, "braces crossed in plan with other_at, runs or inset",
             "level braces through the middle of the legs, from corner to corner",
             "leave the others out");
  if (crossed.value != BraceCross::in_plan && lies.given)
    complain(lies.span, "lies for a brace that isn't crossed in plan",
             "a brace along a side stands in that side's plane", "leave it out");
  if (crossed.value == BraceCross::none && within.given)
    complain(within.span, "within for braces that don't cross", "crossed braces",
             "leave it out, or say how they cross");
}

void Stand::fields(model::FieldVisitor& visit) {
  visit.length(need("height", "plumb, from the floor to the top of the legs"), height,
               Range::size());
  visit.text(may("under",
                 "the item that stands on it, built before it: its outside and the lean of "
                 "its sides are taken over",
                 "width, depth and lean_in say it"),
             under, model::Refers::to_item);
  visit.length(may("width", "outside, left to right, level"), width, Range::size());
  visit.length(may("depth", "outside, front to back, level"), depth, Range::size());
  choose<StandLevel, 2>(visit, may("stated_at", "where width and depth hold"), stated_at,
                        {"foot", "top"});
  visit.angles(may("lean_in",
                   "how far the outside of the legs leans in from plumb, going up, seen "
                   "from the front: one for both or [left, right]; negative leans out",
                   "plumb, or the lean of the item on it"),
               lean_in, Range::degrees(-60, 60));
  visit.angles(may("lean_in_depth", "the same seen from the side: one or [front, back]", "plumb"),
               lean_in_depth, Range::degrees(-60, 60));
  visit.lengths(may("at", "where the left front corner of the stated rectangle stands, [x, y, z]",
                    "at 0, 0 with the foot on the floor"),
                at, Range::place());
  visit.table(need("leg", "the four legs"), legs);
  visit.tables(may("brace", "a set of braces"), braces);
}

void Stand::check(model::Complaints& complaints) const {
  check_point(at, complaints);
  if (under.given) {
    if (width.given || depth.given || stated_at.given || at.given)
      complaints.complain({under.span, "not-together",
                           "a stand under an item that also has width, depth, stated_at or at",
                           "either under, or sizes of its own", "keep one"});
  } else if (!width.given || !depth.given) {
    complaints.complain({span, "missing-field", "a stand without a width or a depth",
                         "width and depth, or under = the item that stands on it",
                         "give the outside of the legs"});
  }
  for (const auto* angles : {&lean_in, &lean_in_depth})
    if (angles->given && (*angles)->size() != 1 && (*angles)->size() != 2)
      complaints.complain({angles->span, "wrong-count",
                           std::to_string((*angles)->size()) + " angles", "one angle or two",
                           "write [\"8 deg\"] or [\"8 deg\", \"10 deg\"]"});
}

}  // namespace splay::constructs
