#include "constructs/corners.h"
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
                          "four legs: where the broad faces look: the legs make a front and a "
                          "back frame, or two side frames; on a ring they look along the ring"),
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
  visit.texts(
      may("between",
          "a single brace: the legs it joins, or a leg and the brace before it whose middle "
          "takes its other end: left front leg, ..., on a ring leg 1 onwards from the front, "
          "anticlockwise from above",
          "it runs where runs or crossed say"),
      between);
  visit.texts(may("crosses", "with between: braces before it that it is lapped over on its way"),
              crosses);
  choose<BraceRun, 6>(visit, may("runs", "four legs: where braces run, one in each place, alike"),
                      runs, {"front and back", "left and right", "front", "back", "left", "right"});
  choose<BraceCross, 3>(visit,
                        may("crossed",
                            "none: parallel braces; in elevation: a second one mirrored "
                            "in each place; in plan: two level ones from corner to "
                            "corner"),
                        crossed, {"none", "in elevation", "in plan"});
  choose<BraceLies, 2>(visit,
                       may("lies", "crossed in plan, or between: its width upright or level"), lies,
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

void StandBrace::check_between(model::Complaints& complaints) const {
  if (crosses.given && !between.given)
    complaints.complain({crosses.span, "not-together", "crosses without between",
                         "between = [one leg, another], crosses = [braces before it]",
                         "give between, or use crossed"});
  if (!between.given) return;
  if (between->size() != 2 || between->front() == between->back())
    complaints.complain({between.span, "wrong-count",
                         std::to_string(between->size()) + " ends of a brace",
                         "two different ones: a leg, then a leg or a brace before it",
                         "write [\"leg 1\", \"leg 2\"]"});
  if (runs.given || crossed.given || inset.given)
    complaints.complain({between.span, "not-together", "between with runs, crossed or inset",
                         "a brace from the middle of one leg to the middle of another",
                         "leave the others out"});
}

void StandBrace::check(model::Complaints& complaints) const {
  check_between(complaints);
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
  if (crossed.value != BraceCross::in_plan && !between.given && lies.given)
    complain(lies.span, "lies for a brace that isn't crossed in plan or between named legs",
             "a brace along a side stands in that side's plane", "leave it out");
  if (crossed.value == BraceCross::none && within.given)
    complain(within.span, "within for braces that don't cross", "crossed braces",
             "leave it out, or say how they cross");
}

std::vector<std::string> Stand::leg_names() const {
  if (!on_ring()) return {"left front leg", "right front leg", "left back leg", "right back leg"};
  std::vector<std::string> names;
  for (int i = 1; i <= *count; ++i) names.push_back("leg " + std::to_string(i));
  return names;
}

void Stand::fields(model::FieldVisitor& visit) {
  visit.length(need("height", "plumb, from the floor to the top of the legs"), height,
               Range::size());
  visit.count(may("legs", "how many legs: four at the corners of a rectangle, others on a ring"),
              count, Range::between(3, 12));
  visit.text(may("under",
                 "the item that stands on it, built before it: its outside and the lean of "
                 "its sides are taken over; with legs on a ring only its middle and its foot",
                 "width, depth and lean_in say it"),
             under, model::Refers::to_item);
  visit.length(may("width", "four legs: outside, left to right, level"), width, Range::size());
  visit.length(may("depth", "four legs: outside, front to back, level"), depth, Range::size());
  visit.length(
      may("radius", "legs on a ring: from the middle of the plan to their outer edges, level"),
      radius, Range::size());
  choose<StandLevel, 2>(visit, may("stated_at", "where width and depth, or the radius, hold"),
                        stated_at, {"foot", "top"});
  visit.angles(may("lean_in",
                   "how far the outside of the legs leans in from plumb, going up, seen "
                   "from the front: one for both or [left, right]; negative leans out; on a ring "
                   "one, towards the middle",
                   "plumb, or the lean of the item on it"),
               lean_in, Range::degrees(-60, 60));
  visit.angles(
      may("lean_in_depth", "four legs: the same seen from the side: one or [front, back]", "plumb"),
      lean_in_depth, Range::degrees(-60, 60));
  visit.lengths(may("at",
                    "where the left front corner of the stated rectangle stands, or the middle of "
                    "the ring, [x, y, z]",
                    "at 0, 0 with the foot on the floor"),
                at, Range::place());
  visit.table(need("leg", "the legs"), legs);
  visit.tables(may("brace", "a set of braces"), braces);
}

void Stand::check_plan(model::Complaints& complaints) const {
  const auto complain = [&](SourceSpan where, const char* code, std::string found,
                            std::string allowed, std::string hint) {
    complaints.complain({where, code, std::move(found), std::move(allowed), std::move(hint)});
  };
  const std::string legs_words = std::to_string(*count) + " legs";
  if (under.given && (width.given || depth.given || stated_at.given || at.given))
    complain(under.span, "not-together",
             "a stand under an item that also has width, depth, stated_at or at",
             "either under, or sizes of its own", "keep one");
  if (!on_ring()) {
    if (!under.given && (!width.given || !depth.given))
      complain(span, "missing-field", "a stand without a width or a depth",
               "width and depth, or under = the item that stands on it",
               "give the outside of the legs");
    if (radius.given)
      complain(radius.span, "not-together", "a radius for four legs", "width and depth",
               "leave it out, or give another number of legs");
    return;
  }
  if (!radius.given)
    complain(span, "missing-field", legs_words + " without a ring",
             "radius to the outer edge of each leg", "give the radius");
  if (width.given || depth.given || lean_in_depth.given || legs.faces.given)
    complain(span, "not-together", legs_words + " with width, depth, lean_in_depth or leg.faces",
             "a ring: radius and one lean_in", "leave the others out");
  if (lean_in.given && lean_in->size() != 1)
    complain(lean_in.span, "wrong-count", std::to_string(lean_in->size()) + " angles",
             "one: all legs of a ring lean alike", "write [\"8 deg\"]");
}

void Stand::check_braces(model::Complaints& complaints) const {
  const std::vector<std::string> names = leg_names();
  std::vector<std::string> ends = names;
  for (std::size_t i = 0; i < braces.size(); ++i) {
    const StandBrace& brace = braces[i];
    if (on_ring() && !brace.between.given)
      complaints.complain({brace.span, "missing-field",
                           "a brace of legs on a ring without its ends",
                           "between = [\"leg 1\", \"leg 2\"]", "name what it joins"});
    for (std::size_t end = 0; end < brace.between->size(); ++end)
      check_side(end == 0 ? names : ends, (*brace.between)[end], brace.between.span, complaints);
    for (const std::string& other : *brace.crosses)
      check_side({ends.begin() + static_cast<std::ptrdiff_t>(names.size()), ends.end()}, other,
                 brace.crosses.span, complaints);
    if (brace.between.given) ends.push_back(brace.name);
  }
}

void Stand::check(model::Complaints& complaints) const {
  check_point(at, complaints);
  check_plan(complaints);
  check_braces(complaints);
  for (const auto* angles : {&lean_in, &lean_in_depth})
    if (angles->given && (*angles)->size() != 1 && (*angles)->size() != 2)
      complaints.complain({angles->span, "wrong-count",
                           std::to_string((*angles)->size()) + " angles", "one angle or two",
                           "write [\"8 deg\"] or [\"8 deg\", \"10 deg\"]"});
}

}  // namespace splay::constructs
