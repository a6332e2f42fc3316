#include <algorithm>

#include "constructs/corners.h"
#include "constructs/frame.h"

namespace splay::constructs {

using model::choose;
using model::may;
using model::need;
using model::Range;

void FrameSide::fields(model::FieldVisitor& visit) {
  visit.length(may("width", "width of this member on the face", "as the others"), width,
               Range::size());
  visit.table(may("arch",
                  "its inside edge hollowed by an arc; a panel or rebate behind it stays straight "
                  "and lies deeper by the rise",
                  "straight"),
              arch);
}

void FrameRebate::fields(model::FieldVisitor& visit) {
  visit.length(need("width", "from the inside edge outwards, on the back"), width, Range::size());
  visit.length(need("depth", "from the back forwards"), depth, Range::size());
}

void FramePanel::fields(model::FieldVisitor& visit) {
  visit.text(need("stock", "what it is made of"), stock, model::Refers::to_stock);
  choose<PanelFit, 2>(visit, may("fit", "in the frame's rebate, or in grooves of its own"), fit,
                      {"rebate", "groove"});
  visit.length(may("clearance", "room left at every edge, common practice"), clearance,
               Range::allowance());
  visit.length(may("into", "groove: how deep it goes into the members", "3/8 in, common practice"),
               into, Range::size());
  visit.length(may("set_in", "groove: from the members' face to the panel's",
                   "the panel stands in the middle of their thickness"),
               set_in, Range::allowance());
}

void FramePanel::check(model::Complaints& complaints) const {
  if (fit.value == PanelFit::groove) return;
  for (const auto* field : {&into, &set_in})
    if (field->given)
      complaints.complain({field->span, "not-together", "the size of a groove, and no groove",
                           "fit = \"groove\" beside it", "leave it out, or choose a groove"});
}

void FrameChoice::fields(model::FieldVisitor& visit) {
  visit.text(need("stock", "what the members are made of"), stock, model::Refers::to_stock);
  visit.length(need("width", "width of the members on the face"), width, Range::size());
  choose<FrameCorner, 5>(visit, may("corners", "joint of the corners"), corners,
                         {"mitre", "butt", "half lap", "mortise and tenon", "loose tenon"});
  visit.texts(may("through", "corners that aren't mitred: the members that run through",
                  "left and right, where there are such"),
              through);
  visit.tables(may("member", "a member that differs, by its side's name"), members);
  visit.table(may("rebate", "a step along the inside edges, open to the back"), rebate);
  visit.table(may("panel", "a panel in the rebate or in grooves"), panel);
}

void FrameChoice::check_frame(const std::vector<std::string>& sides,
                              model::Complaints& complaints) const {
  for (std::size_t i = 0; i < members.size(); ++i)
    check_side(sides, members[i].name, members[i].span, complaints);
  if (through.given)
    for (const std::string& side : *through) check_side(sides, side, through.span, complaints);
  if (panel.given && panel.fit.value == PanelFit::rebate && !rebate.given)
    complaints.complain({panel.span, "missing-field", "a panel in a rebate that isn't there",
                         "a rebate = { width = ..., depth = ... }, or fit = \"groove\"",
                         "say how large the rebate is"});
}

void Frame::fields(model::FieldVisitor& visit) {
  visit.table(need("outline", "the frame's outline, as the face is seen"), outline);
  choice.fields(visit);
  visit.lengths(may("at", "where the outside's low left corner of the face stands, [x, y, z]"), at,
                Range::place());
  choose<Lies, 2>(visit, may("lies", "upright with its face to the front, or flat, face up"), lies,
                  {"upright", "flat"});
}

void Frame::check(model::Complaints& complaints) const {
  check_point(at, complaints);
  choice.check_frame(outline.edge_names(), complaints);
  if (outline.measured.value == Measured::rebate && !choice.rebate.given)
    complaints.complain({outline.measured.span, "missing-field",
                         "sizes of a rebate that isn't there",
                         "a rebate = { width = ..., depth = ... }",
                         "add the rebate, or measure outside or inside"});
}

}  // namespace splay::constructs
