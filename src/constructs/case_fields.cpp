#include "constructs/case_fields.h"

#include "constructs/case.h"

namespace splay::constructs {

using model::choose;
using model::FieldVisitor;
using model::Given;
using model::may;
using model::need;
using model::Range;
using model::Refers;

namespace {

constexpr std::array<std::string_view, 2> corner_words = {"mitre", "butt"};

void stock_field(FieldVisitor& visit, const model::Field& field, Given<std::string>& stock) {
  visit.text(field, stock, Refers::to_stock);
}

void complain(model::Complaints& complaints, SourceSpan span, std::string code, std::string found,
              std::string allowed, std::string hint) {
  complaints.complain(
      {span, std::move(code), std::move(found), std::move(allowed), std::move(hint)});
}

void check_between(const Given<std::vector<std::string>>& between, model::Complaints& complaints) {
  if (between.given && between->size() != 2)
    complain(complaints, between.span, "wrong-count", std::to_string(between->size()) + " names",
             "two names: what it runs from and what it runs to",
             "write between = [\"left\", \"right\"]");
}

void need_stock(const model::Fields& table, const Given<std::string>& stock, std::string_view what,
                model::Complaints& complaints) {
  if (table.given && !stock.given)
    complain(complaints, table.span, "missing-field", std::string(what) + " without a stock",
             "stock = the name of a [stock.NAME] table", "say what it is made of");
}

}  // namespace

void FrontEdge::fields(FieldVisitor& visit) {
  choose<Edging, 3>(visit, may("edge", "what covers the front edge"), edge,
                    {"none", "band", "nosing"});
  stock_field(visit, may("stock", "stock of the band or nosing"), stock);
  visit.length(may("thickness", "front to back, as glued on", "the thickness of its stock"),
               thickness, Range::size());
  choose<EdgingWhen, 2>(visit, may("glued", "before or after the ends are cut and bevelled"), when,
                        {"before the cuts", "after the cuts"});
}

void FrontEdge::check(model::Complaints& complaints) const {
  if (given && edge.value != Edging::none && !stock.given)
    complain(complaints, span, "missing-field", "an edging without a stock",
             "stock = the name of a [stock.NAME] table", "say what the edging is made of");
}

void PanelChoice::fields(FieldVisitor& visit) {
  stock_field(visit, may("stock", "stock of this panel", "the case's stock"), stock);
  choose<PanelEnds, 2>(visit,
                       may("ends",
                           "butted corners: ends level with the neighbour's outside, or "
                           "square to this panel"),
                       ends, {"level", "square"});
  visit.table(may("front", "front edge of this panel", "as the case's front"), front);
}

void EndChoice::fields(FieldVisitor& visit) {
  visit.length(may("housing", "depth of the housing, square to the face at its shallower wall",
                   "the end butts, without a housing"),
               housing, Range::size());
  choose<joinery::HousingFloor, 2>(
      visit,
      may("floor",
          "floor of a tilted housing: square to its walls leaves the end of the shelf "
          "square; parallel to the face keeps one depth and bevels the end"),
      floor, {"square to walls", "parallel to face"});
  visit.length(may("stopped", "how far behind the front edge the housing stops", "it runs through"),
               stopped, Range::size());
}

void EndChoice::check(model::Complaints& complaints) const {
  if (!housing.given && (floor.given || stopped.given))
    complain(complaints, span, "missing-field", "a floor or stop without a housing",
             "housing = its depth", "give the depth, or leave the others out");
}

void Slab::common_fields(FieldVisitor& visit) {
  stock_field(visit, may("stock", "what it is made of", "the case's stock"), stock);
  visit.texts(may("between", "what its two ends run to: panels, shelves or partitions by name",
                  "the panels it meets"),
              between);
  visit.length(may("set_back", "front edge behind the case's front"), set_back, Range::allowance());
  visit.length(may("depth", "front to back, with its edging", "to the back"), depth, Range::size());
  visit.table(may("front", "its front edge"), front);
}

void Slab::check_common(model::Complaints& complaints) const { check_between(between, complaints); }

void Shelf::fields(FieldVisitor& visit) {
  visit.length(
      need("top_at", "height of its top face above the lowest point of the case's outside"), top_at,
      Range::size());
  common_fields(visit);
  visit.table(may("ends", "how both ends are held", "they butt"), ends);
}
void Shelf::check(model::Complaints& complaints) const { check_common(complaints); }

void Blocks::fields(FieldVisitor& visit) {
  stock_field(visit, may("stock", "what they are made of"), stock);
  choose<BlockEnd, 2>(visit, may("at", "which end of the partition they hold"), at,
                      {"lower", "upper"});
  choose<BlockSides, 3>(visit, may("sides", "which sides of the partition"), sides,
                        {"both", "left", "right"});
  visit.length(may("along_host", "breadth on the panel", "the thickness of their stock"),
               along_host, Range::size());
  visit.length(may("along_partition", "breadth on the partition", "the thickness of their stock"),
               along_partition, Range::size());
  visit.length(may("length", "front to back", "three quarters of the partition"), length,
               Range::size());
}

void Partition::fields(FieldVisitor& visit) {
  const Range place = Range::allowance();
  visit.length(may("left_at", "where its left face stands, from the leftmost point of the case"),
               left_at, place);
  visit.length(may("centre_at", "where its middle stands"), centre_at, place);
  visit.length(may("right_at", "where its right face stands"), right_at, place);
  common_fields(visit);
  visit.table(may("lower", "its lower end", "it butts"), lower);
  visit.table(may("upper", "its upper end", "it butts"), upper);
  visit.table(may("blocks", "fixed blocks glued beside an end that has no housing"), blocks);
}

void Partition::check(model::Complaints& complaints) const {
  check_common(complaints);
  const int places = int{left_at.given} + int{centre_at.given} + int{right_at.given};
  if (places != 1)
    complain(complaints, span, "wrong-count", std::to_string(places) + " places for a partition",
             "exactly one of left_at, centre_at, right_at", "keep one");
  need_stock(blocks, blocks.stock, "blocks", complaints);
}

void Back::fields(FieldVisitor& visit) {
  stock_field(visit, may("stock", "what it is made of"), stock);
  choose<BackFit, 3>(visit, may("fit", "how it is held"), fit, {"rabbet", "groove", "applied"});
  visit.length(
      may("into", "how deep the rabbet or groove goes into the panels, square to their faces"),
      into, Range::size());
  visit.length(may("set_in",
                   "groove: from the back of the case to the back's rear face; applied: how "
                   "far it stays inside the outline"),
               set_in, Range::allowance());
  visit.length(may("clearance", "room left between its edges and the rabbet or groove, each side"),
               clearance, Range::allowance());
}

void Back::check(model::Complaints& complaints) const {
  need_stock(*this, stock, "a back", complaints);
  if (given && fit.value != BackFit::applied && !into.given)
    complain(complaints, span, "missing-field", "a back in a rabbet or groove without its depth",
             "into = how deep it goes into the panels",
             "a third of the panel's thickness is usual");
}

void FrameMember::fields(FieldVisitor& visit) {
  visit.length(may("width", "width of this member", "the frame's width"), width, Range::size());
  visit.table(may("arch", "its inside edge hollowed by an arc", "straight"), arch);
}

void FrameBar::fields(FieldVisitor& visit) {
  visit.length(need("at", rail ? "height of its top edge above the lowest point of the case"
                               : "where its middle stands, from the leftmost point of the case"),
               at, Range::allowance());
  visit.length(may("width", "its width", "the frame's width"), width, Range::size());
  if (rail) visit.table(may("arch", "its lower edge hollowed by an arc", "straight"), arch);
  visit.texts(may("between", "the members its ends run to",
                  rail ? "the two it meets, left and right" : "the two it meets, below and above"),
              between);
}

void FaceFrame::fields(FieldVisitor& visit) {
  stock_field(visit, may("stock", "what it is made of"), stock);
  visit.length(may("width", "width of every member that has none of its own"), width,
               Range::size());
  visit.length(may("overhang", "how far the frame stands past the outside of the case"), overhang,
               Range::allowance());
  choose(visit, may("corners", "joint of its corners"), corners.kind, corner_words);
  visit.texts(may("through", "butted corners: the members that run through"), through);
  visit.tables(may("member", "a member of the outline with a width of its own, by the side's name"),
               members);
  visit.tables(may("rail", "a mid rail"), rails);
  visit.tables(may("stile", "a mid stile"), stiles);
}

void FaceFrame::check(model::Complaints& complaints) const {
  need_stock(*this, stock, "a face frame", complaints);
  if (given && !width.given)
    complain(complaints, span, "missing-field", "a face frame without a width",
             "width = the width of its members",
             "give the usual width; members may have their own");
}

void Case::fields(FieldVisitor& visit) {
  visit.table(need("outline", "the closed outline that the panels follow"), outline);
  visit.length(need("depth",
                    "front to back over the panels and their edging, without an applied back or "
                    "a face frame"),
               depth, Range::size());
  visit.text(need("stock", "stock of every panel that has none of its own"), stock,
             Refers::to_stock);
  choose(visit, may("corners", "joint of the corners"), corners.kind, corner_words);
  visit.texts(may("through", "butted corners: the panels that run through"), through);
  visit.table(may("front", "front edges of the panels"), front);
  visit.tables(may("panel", "a panel that differs, by its side's name"), panels);
  visit.tables(may("corner", "a corner that differs, by its sides' names: left-top"),
               corner_choices);
  visit.table(may("back", "the back"), back);
  visit.tables(may("shelf", "a level shelf"), shelves);
  visit.tables(may("partition", "an upright partition"), partitions);
  visit.table(may("frame", "a face frame on the front, following the outline"), frame);
}

void Case::check(model::Complaints& complaints) const {
  const std::vector<std::string> sides = outline.edge_names();
  const auto known = [&](const std::string& side, SourceSpan at) {
    check_side(sides, side, at, complaints);
  };
  for (std::size_t i = 0; i < panels.size(); ++i) known(panels[i].name, panels[i].span);
  for (std::size_t i = 0; i < frame.members.size(); ++i)
    known(frame.members[i].name, frame.members[i].span);
  if (through.given)
    for (const std::string& side : *through) known(side, through.span);
  if (frame.through.given)
    for (const std::string& side : *frame.through) known(side, frame.through.span);
}

}  // namespace splay::constructs
