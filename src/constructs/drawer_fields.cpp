#include <cmath>

#include "constructs/drawer.h"

namespace splay::constructs {

using model::choose;
using model::may;
using model::need;
using model::Range;

void Runner::fields(model::FieldVisitor& visit) {
  choose<RunnerKind, 3>(visit, may("kind", "what the box runs on"), kind,
                        {"side", "undermount", "wooden"});
  visit.length(may("at", "height of the runner's middle over the opening's foot",
                   "side: the middle of the box; else as low as its own height lets it"),
               at, Range::allowance());
  visit.length(may("height", "of the runner itself; the box is measured where this is narrowest",
                   "45 mm, undermount 16 mm, wooden 20 mm, common practice"),
               height, Range::size());
  visit.length(may("length", "of the runner and the box, front to back",
                   "the longest whole 50 mm or 2 in that the depth takes"),
               length, Range::size());
  visit.length(may("each_side", "from the opening to the box on either side",
                   "side 1/2 in, undermount 21 mm less the box's side, wooden 1/16 in or more for "
                   "accuracy"),
               each_side, Range::allowance());
  visit.length(may("play", "taken off the box's width besides", "side 1/16 in, else none"), play,
               Range::allowance());
  visit.length(may("below", "from the opening's foot to the box",
                   "side 1/4 in, undermount 9/16 in, wooden none"),
               below, Range::allowance());
  visit.length(may("above", "from the box to the opening's top",
                   "side and undermount 1/4 in, wooden 3/32 in, or more for swelling and accuracy "
                   "of a box whose height isn't given"),
               above, Range::allowance());
}

void DrawerBox::fields(model::FieldVisitor& visit) {
  visit.text(need("stock", "of the box's four sides"), stock, model::Refers::to_stock);
  visit.length(may("height", "of the box", "what the opening leaves"), height, Range::size());
  choose<BoxCorner, 6>(
      visit,
      may("corners",
          "butt: front and back between the sides, screwed or nailed by the maker; rabbet and "
          "tongue: let into the sides, half of their thickness deep, the tongue half of its own "
          "thick; dowel: as deep in the sides as leaves 3 mm; box joint and dovetail: the sides' "
          "ends cut into those of front and back"),
      corners, {"butt", "rabbet", "tongue", "dowel", "box joint", "dovetail"});
  visit.length(may("lap", "dovetail: wood of the box's front over the ends of the tails", "none"),
               lap, Range::allowance());
  visit.text(need("bottom", "stock of the bottom"), bottom, model::Refers::to_stock);
  visit.length(may("into", "how deep the bottom goes into its grooves, common practice"), into,
               Range::size());
  visit.length(may("bottom_up", "from the box's lower edge to the bottom, common practice"),
               bottom_up, Range::allowance());
  visit.length(may("clearance", "room for the bottom at every edge"), clearance,
               Range::allowance());
}

void DrawerBox::check(model::Complaints& complaints) const {
  if (lap.given && corners.value != BoxCorner::dovetail)
    complaints.complain({lap.span, "not-together", "a lap without dovetails",
                         "corners = \"dovetail\" and lap = ... together",
                         "leave the lap out, or choose dovetails"});
}

void DrawerFront::fields(model::FieldVisitor& visit) {
  visit.text(need("stock", "what it is made of"), stock, model::Refers::to_stock);
  choose<FrontFit, 2>(visit, may("fit", "inset in the opening, or over its edges"), fit,
                      {"inset", "over"});
  visit.length(
      may("gap", "inset: all round", "1/16 in, common practice, or more for swelling and accuracy"),
      gap, Range::allowance());
  visit.length(may("overlap", "over: past the opening all round"), overlap, Range::size());
}

void DrawerFront::check(model::Complaints& complaints) const {
  if (given && (fit.value == FrontFit::over) != overlap.given)
    complaints.complain({overlap.given ? overlap.span : span, "not-together",
                         overlap.given ? "an overlap of an inset front" : "no overlap",
                         "fit = \"over\" and overlap = ... together", "give both or neither"});
}

void Packing::fields(model::FieldVisitor& visit) {
  visit.text(need("stock", "what packing pieces are made of"), stock, model::Refers::to_stock);
  visit.length(may("least", "thickness at their thin edge", "a feather edge"), least,
               Range::allowance());
}

void Drawer::fields(model::FieldVisitor& visit) {
  opening_fields(visit);
  visit.length(need("depth", "clear depth from the opening to the back"), depth, Range::size());
  visit.texts(may("beside", "names of the parts left and right of the opening, built before it",
                  "of: found there; else none"),
              beside);
  visit.table(may("runner", "what the box runs on"), runner);
  visit.table(need("box", "the box"), box);
  visit.table(may("front", "a front of its own, screwed to the box"), front);
  visit.table(may("packing", "pieces between leaning sides and plumb runners"), packing);
}

void Drawer::check(model::Complaints& complaints) const {
  check_opening(span, complaints);
  if (beside.given && beside->size() != 2)
    complaints.complain({beside.span, "wrong-count", std::to_string(beside->size()) + " names",
                         "two: the part on the left, the part on the right",
                         "the same name twice if it is one part"});
}

Polygon level_opening(parts::Builder& builder, const model::Item& owner, const Polygon& shape,
                      SourceSpan span) {
  const auto is_level = [&](std::size_t i, std::size_t j) {
    return std::abs(shape[i].y - shape[j].y) < 1e-6 && shape[i].x < shape[j].x;
  };
  if (shape.size() == 4 && is_level(0, 1) && is_level(3, 2)) return shape;
  refuse(builder, {"opening-shape", owner.name,
                   "The opening of " + owner.name + " is not four-sided with a level foot and top.",
                   "State it by bottom, top, height and lean_in.", span});
  return {};
}

}  // namespace splay::constructs
