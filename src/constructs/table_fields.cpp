#include "constructs/corners.h"
#include "constructs/table.h"

namespace splay::constructs {

using model::choose;
using model::may;
using model::need;
using model::Range;

void TableLeg::fields(model::FieldVisitor& visit) {
  visit.text(need("stock", "what the legs are made of"), stock, model::Refers::to_stock);
  visit.length(need("width", "at the top: along the front, or along the ring of legs"), width,
               Range::size());
  visit.length(may("depth", "at the top: the other way", "as wide"), depth, Range::size());
  visit.length(may("foot_width", "width at the foot", "as at the top"), foot_width, Range::size());
  visit.length(may("foot_depth", "depth at the foot", "tapered like the width"), foot_depth,
               Range::size());
  visit.length(may("straight", "length at the top that doesn't taper"), straight,
               Range::allowance());
  choose<TableLegTaper, 3>(
      visit,
      may("taper",
          "the faces that taper; the splay is that of the others, with all four tapered "
          "that of the middle; on a ring both sides taper alike"),
      taper, {"inside", "outside", "all"});
  choose<LegSection, 2>(
      visit,
      may("section",
          "square: right-angled, sizes square to the faces; trued: every level section "
          "is a rectangle true to the plan, sizes level"),
      section, {"square", "trued"});
  choose<LegRoll, 3>(visit,
                     may("roll",
                         "square section: the face that stays level along the plan, the "
                         "front or the side one, or faces square to the line of lean"),
                     roll, {"front", "side", "line of lean"});
}

void TableLeg::check(model::Complaints& complaints) const {
  if (section.value == LegSection::trued && roll.given)
    complaints.complain({roll.span, "not-together", "a roll for legs that are trued to the plan",
                         "section = \"square\", or no roll", "keep one"});
}

void TableRail::common_fields(model::FieldVisitor& visit) {
  visit.text(may("stock", "what it is made of"), stock, model::Refers::to_stock);
  visit.length(may("width", "its width, along its slope"), width, Range::size());
  visit.length(may("thickness", "its thickness", "the stock's thickness"), thickness,
               Range::size());
  visit.length(may("set_back",
                   "how far its outside stands in from the outside of the legs, level, halfway up",
                   "in the middle of the legs"),
               set_back, Range::allowance());
  choose<RailFace, 2>(visit, may("face", "its face leans with the legs, or stands plumb"), face,
                      {"with the legs", "plumb"});
  visit.texts(
      may("sides", "where it runs: front, right, back, left, or side 1 onwards", "all round"),
      sides);
  choose<TenonsMeet, 2>(visit,
                        may("tenons_meet",
                            "what tenons of two rails in one leg do: stop short of "
                            "each other, or have their ends mitred"),
                        tenons_meet, {"short of each other", "mitred"});
  visit.table(may("arch", "its lower edge hollowed by an arc between the shoulders", "straight"),
              arch);
  visit.table(may("tenon", "its mortise and tenon joints", "by the rules of the joint"), tenon);
}

void TableApron::fields(model::FieldVisitor& visit) {
  common_fields(visit);
  visit.length(may("below_top", "how far its upper edge stays under the top of the legs"),
               below_top, Range::allowance());
}

void TableStretcher::fields(model::FieldVisitor& visit) {
  common_fields(visit);
  visit.length(may("at", "height of its middle over the floor"), at, Range::size());
  visit.text(may("between",
                 "a stretcher that runs on two sides: this one joins the middles of the "
                 "two",
                 "it runs from leg to leg"),
             between);
}

void TableStretcher::check(model::Complaints& complaints) const {
  if (!stock.given || !width.given)
    complaints.complain({span, "missing-field", "a stretcher without a stock or a width",
                         "stock = the name of a [stock.NAME] table, width = its width",
                         "say what it is made of"});
  if (!at.given && !between.given)
    complaints.complain({span, "missing-field", "a stretcher without its height",
                         "at = the height of its middle", "give at"});
  if (between.given && (sides.given || at.given || set_back.given))
    complaints.complain({between.span, "not-together",
                         "a stretcher between two others with sides, at or set_back",
                         "its place is the middle of both", "leave the others out"});
}

void TableTop::fields(model::FieldVisitor& visit) {
  visit.text(may("stock", "what it is made of"), stock, model::Refers::to_stock);
  visit.length(may("thickness", "its thickness", "the stock's thickness"), thickness,
               Range::size());
  visit.length(may("overhang", "how far it stands out past the legs at their top"), overhang,
               Range::allowance());
  choose<TopShape, 2>(visit, may("shape", "a rectangle, or a regular polygon"), shape,
                      {"rectangle", "regular"});
  visit.count(may("sides", "regular: how many sides"), sides, Range::between(3, 64));
  visit.tables(may("fastener", "what holds it to an apron", "it lies loose"), fasteners);
}

void TableTop::check(model::Complaints& complaints) const {
  if (given && !stock.given)
    complaints.complain({span, "missing-field", "a top without a stock",
                         "stock = the name of a [stock.NAME] table", "say what it is made of"});
}

void Table::fields(model::FieldVisitor& visit) {
  visit.length(need("height", "from the floor, with the top"), height, Range::size());
  visit.count(may("legs", "how many legs"), legs, Range::between(3, 12));
  visit.length(may("width", "four legs: outside of the legs, left to right"), width, Range::size());
  visit.length(may("depth", "four legs: outside of the legs, front to back"), depth, Range::size());
  visit.length(may("radius",
                   "other than four legs: from the middle of the plan to the middle of "
                   "each leg"),
               radius, Range::size());
  choose<LegLevel, 2>(visit,
                      may("stated_at", "where these hold: at the top or the foot of the legs"),
                      stated_at, {"top", "foot"});
  visit.angles(may("splay",
                   "four legs: how far they lean from plumb, outwards going down: one angle "
                   "or [seen from the front, seen from the side]",
                   "plumb"),
               splay, Range::degrees(0, 60));
  visit.angle(may("lean", "the same as a true lean from plumb"), lean, Range::degrees(0, 60));
  visit.angle(may("direction",
                  "with lean: four legs: plan direction of the lean from the line of "
                  "the front; others: how far it turns from straight out",
                  "four legs: 45 degrees; others: straight out"),
              direction, Range::degrees(-90, 90));
  visit.lengths(may("at", "where the middle of the plan stands on the floor, [x, y, z]", "0, 0, 0"),
                at, Range::place());
  visit.table(need("leg", "the legs"), leg);
  visit.table(may("apron", "aprons between the legs, under the top"), apron);
  visit.tables(may("stretcher", "stretchers lower down"), stretchers);
  visit.table(may("top", "a plain top that lies on the legs and aprons"), top);
}

std::vector<std::string> Table::side_names() const {
  if (*legs == 4) return {"front", "right", "back", "left"};
  std::vector<std::string> names;
  for (int i = 1; i <= *legs; ++i) names.push_back("side " + std::to_string(i));
  return names;
}

void Table::check(model::Complaints& complaints) const {
  check_point(at, complaints);
  check_plan(complaints);
  check_lean(complaints);
  if (apron.given && (!apron.stock.given || !apron.width.given))
    complaints.complain({apron.span, "missing-field", "an apron without a stock or a width",
                         "stock = the name of a [stock.NAME] table, width = its width",
                         "say what it is made of"});
  const std::vector<std::string> names = side_names();
  for (const std::string& side : *apron.sides)
    check_side(names, side, apron.sides.span, complaints);
  for (std::size_t i = 0; i < stretchers.size(); ++i)
    for (const std::string& side : *stretchers[i].sides)
      check_side(names, side, stretchers[i].sides.span, complaints);
}

void Table::check_plan(model::Complaints& complaints) const {
  const bool four = *legs == 4;
  if (four && (!width.given || !depth.given || radius.given))
    complaints.complain({span, "missing-field", "four legs without a rectangle",
                         "width and depth over the outside of the legs, and no radius",
                         "give width and depth"});
  if (!four && (!radius.given || width.given || depth.given))
    complaints.complain({span, "missing-field", std::to_string(*legs) + " legs without a ring",
                         "radius to the middle of each leg, and no width or depth",
                         "give the radius"});
}

void Table::check_lean(model::Complaints& complaints) const {
  const auto wrong = [&](SourceSpan where, std::string found, std::string allowed) {
    complaints.complain({where, "not-together", std::move(found), std::move(allowed), "keep one"});
  };
  if (splay.given && splay->size() != 1 && splay->size() != 2)
    complaints.complain({splay.span, "wrong-count", std::to_string(splay->size()) + " angles",
                         "one angle or two: seen from the front, seen from the side", ""});
  if (splay.given && (lean.given || direction.given))
    wrong(splay.span, "splay beside lean and direction",
          "sight angles, or a true lean and its direction");
  if (splay.given && *legs != 4)
    wrong(splay.span, "sight angles for " + std::to_string(*legs) + " legs on a ring",
          "lean, and direction where it isn't straight out");
  if (direction.given && !lean.given)
    wrong(direction.span, "a direction without a lean", "lean and direction");
}

}  // namespace splay::constructs
