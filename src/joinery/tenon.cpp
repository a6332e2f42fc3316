#include "joinery/tenon.h"

#include <algorithm>
#include <cmath>

#include "base/tolerance.h"
#include "joinery/draft.h"
#include "joinery/stick.h"

namespace splay::joinery {

using model::may;
using model::Range;

namespace {

constexpr double nothing = tolerance::weld;

// Everything of a tenon in the world. Ranges are along `across` (the tenon's width) and `through`
// (its thickness); lengths and gaps along the guest, depths square to the host's face.
struct Layout {
  Meeting meeting;
  Vec3 across, through;
  std::array<double, 2> stock_across{}, stock_through{};  // the guest's section at the shoulder
  std::array<double, 2> width{}, thickness{};
  double length = 0, gap = 0;
  double slope = 1;   // depth gained for each mm along the guest
  double strip = 0;   // width of the haunch, 0 without one
  double haunch = 0;  // its length
  bool haunch_high = true;
  std::optional<Plane> limit;

  Plane beyond(double along) const {  // parallel to the face, out of the guest
    const Plane& face = meeting.face;
    return Plane{face.n, face.d - along * slope}.flipped();
  }
  Region between(std::array<double, 2> w) const {
    return {{across, w[1]}, {-across, -w[0]}, {through, thickness[1]}, {-through, -thickness[0]}};
  }
  Region mortise() const {
    Region region = between(width);
    if (limit) region.push_back(*limit);
    return region;
  }
  std::optional<Plane> mitred_end() const {
    if (!limit) return std::nullopt;
    return Plane{limit->n, limit->d - gap * dot(limit->n, meeting.in)};
  }
  Region tenon() const {
    Region region = between(width);
    if (limit) region.push_back(*mitred_end());
    return region;
  }
  std::array<double, 2> haunch_range() const {
    return haunch_high ? std::array<double, 2>{width[1], stock_across[1]}
                       : std::array<double, 2>{stock_across[0], width[0]};
  }
};

Region with(Region region, std::initializer_list<Plane> more) {
  region.insert(region.end(), more);
  return region;
}

double size(std::array<double, 2> range) { return range[1] - range[0]; }

// Each of these gives "" or what is wrong with what was asked for.
std::string lay_thickness(const TenonKind& kind, const parts::Builder& builder, const Stick& guest,
                          Layout& layout) {
  const std::array<double, 2>& stock = layout.stock_through;
  const double thick = kind.thickness.given ? kind.thickness->mm : size(stock) / 3;
  if (thick > size(stock) + nothing)
    return "The tenon of " + guest.name + " is " + figure(builder, thick) +
           " thick, its stock only " + figure(builder, size(stock)) + ".";
  const double middle = (stock[0] + stock[1]) / 2 + kind.offset.value.mm;
  layout.thickness = {middle - thick / 2, middle + thick / 2};
  if (layout.thickness[0] < stock[0] - nothing || layout.thickness[1] > stock[1] + nothing)
    return "Moved aside by " + figure(builder, std::abs(kind.offset.value.mm)) + " the tenon of " +
           guest.name + " stands out of its stock.";
  return "";
}

// A haunch takes the place of one edge shoulder; a width asked for is taken from the other then.
void divide_width(const TenonKind& kind, Layout& layout) {
  const std::array<double, 2>& stock = layout.stock_across;
  const double shoulder =
      kind.shoulder.given ? kind.shoulder->mm : std::min(Length::inches(0.25).mm, size(stock) / 6);
  double low = shoulder, high = shoulder;
  if (kind.haunch.given) {
    layout.haunch = kind.haunch->mm;
    layout.strip = kind.haunch_width.given ? kind.haunch_width->mm : size(stock) / 3;
    layout.haunch_high = kind.haunch_at.value == HaunchAt::high_edge;
    (layout.haunch_high ? high : low) = layout.strip;
  }
  layout.width = {stock[0] + low, stock[1] - high};
  if (!kind.width.given) return;
  const double spare = size(layout.width) - kind.width->mm;
  const double from_low = !kind.haunch.given ? spare / 2 : layout.haunch_high ? spare : 0;
  layout.width = {layout.width[0] + from_low, layout.width[1] - (spare - from_low)};
}

std::string lay_width(const TenonKind& kind, const parts::Builder& builder, const Stick& guest,
                      Layout& layout) {
  divide_width(kind, layout);
  const std::array<double, 2>& stock = layout.stock_across;
  const double width = size(layout.width);
  if (width < nothing)
    return "No width is left for the tenon of " + guest.name + ": " + figure(builder, size(stock)) +
           " less its shoulders.";
  if (layout.width[0] < stock[0] - nothing || layout.width[1] > stock[1] + nothing)
    return "The tenon of " + guest.name + " is " + figure(builder, width) +
           " wide, its stock only " + figure(builder, size(stock)) + ".";
  if (size(layout.stock_through) - size(layout.thickness) < nothing &&
      size(stock) - width < nothing)
    return "The tenon of " + guest.name + " has no shoulder: a housing takes a whole end.";
  return "";
}

void find_section(const TenonKind& kind, const Stick& guest, Layout& layout) {
  const bool edges = kind.cheeks.value == Cheeks::edges;
  layout.across = edges ? guest.place.ez : guest.place.ey;
  layout.through = edges ? guest.place.ey : guest.place.ez;
  layout.stock_across = section_extent(guest, layout.meeting.face, layout.across);
  layout.stock_through = section_extent(guest, layout.meeting.face, layout.through);
}

std::string lay_length(const TenonKind& kind, const parts::Builder& builder, const Stick& host,
                       const Stick& guest, Layout& layout) {
  const Meeting& meeting = layout.meeting;
  layout.slope = std::abs(dot(meeting.in, meeting.face.n));
  if (kind.through.value) return "";
  layout.gap = kind.bottom_gap.value.mm;
  const double floor = Length::inches(1.0 / 8).mm;  // wood that must stay under a mortise
  const double least = std::min(Length::inches(1).mm, meeting.room - layout.gap - floor);
  layout.length = kind.length.given ? kind.length->mm : std::max(meeting.room * 2 / 3, least);
  if (layout.length + layout.gap > meeting.room - nothing)
    return "The mortise for " + guest.name + " would come out of the far side of " + host.name +
           ": " + figure(builder, layout.length + layout.gap) + " of " +
           figure(builder, meeting.room) + ".";
  if (layout.haunch > layout.length - nothing)
    return "The haunch of " + guest.name + " is as long as its tenon.";
  return "";
}

Plane tenon_end(const TenonKind& kind, const Layout& layout) {
  if (!kind.through.value) return layout.beyond(layout.length);
  return {layout.meeting.far_face.n, layout.meeting.far_face.d + kind.proud.value.mm};
}

// The whole tenon must be wood of the guest, and its mortise must stay inside the host.
std::string check_wood(const TenonKind& kind, const Stick& host, const Stick& guest,
                       const Layout& layout) {
  const Plane& face = layout.meeting.face;
  const Plane end = tenon_end(kind, layout);
  const Region tenon = with(layout.tenon(), {face, end});
  const double volume = Solid::convex(tenon).volume();
  if (volume_outside(tenon, guest.body) > volume * 1e-9 + nothing)
    return guest.name + " has not enough wood for its tenon into " + host.name +
           ": it stops short or is cut away there.";
  const Plane bottom =
      kind.through.value ? layout.meeting.far_face : layout.beyond(layout.length + layout.gap);
  Region mortise = with(layout.mortise(), {face, bottom});
  for (const Plane& side : host.sides) {
    const bool open = dot(side.n, face.n) > 1 - 1e-9 ||
                      (kind.through.value && dot(side.n, layout.meeting.far_face.n) > 1 - 1e-9);
    if (open) continue;
    if (Solid::convex(mortise).extent(side.n)[1] > side.d - nothing)
      return "The mortise for " + guest.name + " would break out of a side of " + host.name + ".";
  }
  if (volume_outside(mortise, host.body) > volume * 1e-9 + nothing)
    return "The mortise for " + guest.name + " would run into another cut in " + host.name +
           " or out of its end.";
  return "";
}

void cut_guest(const TenonKind& kind, const Stick& host, const Stick& guest, const Layout& layout,
               Draft& draft) {
  const Plane shoulder = layout.meeting.face.flipped();
  const std::string name = "shoulder against " + host.name;
  draft.cut_end(guest.index, tenon_end(kind, layout), "end of the tenon into " + host.name);
  if (const auto mitred = layout.mitred_end())
    draft.shape(guest.index, {parts::OperationKind::end_cut,
                              "mitred end of the tenon into " + host.name,
                              "",
                              {mitred->flipped(), layout.meeting.face},
                              *mitred,
                              {}});
  const auto beside = [&](Vec3 direction, double from, double to) {
    if (to - from > nothing)
      draft.shoulder(guest.index, {Plane{direction, from}.flipped()}, shoulder, name);
  };
  beside(layout.through, layout.thickness[1], layout.stock_through[1]);
  beside(-layout.through, -layout.thickness[0], -layout.stock_through[0]);
  const bool strip = layout.strip > 0;
  if (!strip || !layout.haunch_high) beside(layout.across, layout.width[1], layout.stock_across[1]);
  if (!strip || layout.haunch_high)
    beside(-layout.across, -layout.width[0], -layout.stock_across[0]);
  if (!strip) return;
  const Plane inner = layout.haunch_high ? Plane{layout.across, layout.width[1]}
                                         : Plane{-layout.across, -layout.width[0]};
  draft.remove(guest.index, parts::OperationKind::notch,
               {inner.flipped(), layout.beyond(layout.haunch).flipped()},
               "haunch of the tenon into " + host.name);
}

void cut_host(const TenonKind& kind, const Stick& host, const Stick& guest, const Layout& layout,
              Draft& draft) {
  const Plane& face = layout.meeting.face;
  Region mortise = with(layout.mortise(), {face});
  if (!kind.through.value) mortise.push_back(layout.beyond(layout.length + layout.gap));
  draft.remove(host.index, parts::OperationKind::mortise, mortise, "mortise for " + guest.name);
  if (layout.strip <= 0) return;
  // The haunch's outer side is the guest's own edge, which a tapered guest doesn't have square.
  Region groove = layout.between(layout.haunch_range());
  const Plane edge =
      side_at(guest, layout.meeting.at, layout.haunch_high ? layout.across : -layout.across);
  groove[layout.haunch_high ? 0 : 1] = edge;
  draft.remove(host.index, parts::OperationKind::mortise,
               with(groove, {face, layout.beyond(layout.haunch + layout.gap)}),
               "mortise for the haunch of " + guest.name);
}

}  // namespace

void TenonKind::fields(model::FieldVisitor& visit) {
  visit.length(may("thickness", "thickness of the tenon", "a third of the stock, common practice"),
               thickness, Range::size());
  visit.length(may("width", "width of the tenon", "the stock less the two edge shoulders"), width,
               Range::size());
  visit.length(may("shoulder", "edge shoulder on either side of the width",
                   "1/4 in, at most a sixth of the width, common practice"),
               shoulder, Range::allowance());
  visit.length(may("length", "from shoulder to end, along the tenon",
                   "two thirds of the mortised part and at least 1 in, common practice"),
               length, Range::size());
  visit.length(may("offset", "how far the tenon stands out of the middle of the stock"), offset,
               Range::place());
  visit.length(may("bottom_gap", "room under a blind tenon, common practice"), bottom_gap,
               Range::allowance());
  visit.flag(may("through", "the tenon goes right through"), through);
  visit.length(may("proud", "how far a through tenon stands out of the far face"), proud,
               Range::allowance());
  visit.length(may("haunch", "length of the haunch", "no haunch"), haunch, Range::size());
  visit.length(may("haunch_width", "width of the haunch", "a third of the width, common practice"),
               haunch_width, Range::size());
  model::choose<HaunchAt, 2>(visit, may("haunch_at", "the edge of the tenoned part it stands at"),
                             haunch_at, {"low edge", "high edge"});
  model::choose<Cheeks, 2>(visit, may("cheeks", "sides of the tenoned part its cheeks follow"),
                           cheeks, {"faces", "edges"});
}

std::string TenonKind::shape(parts::Builder& builder, int host, int guest) const {
  const Stick h = stick(builder, host), g = stick(builder, guest);
  Layout layout;
  layout.limit = limit;
  std::string fault = find_meeting(h, g, Lines::length_only, layout.meeting);
  if (!fault.empty()) return fault;
  find_section(*this, g, layout);
  fault = lay_thickness(*this, builder, g, layout);
  if (fault.empty()) fault = lay_width(*this, builder, g, layout);
  if (fault.empty()) fault = lay_length(*this, builder, h, g, layout);
  if (fault.empty()) fault = check_wood(*this, h, g, layout);
  if (!fault.empty()) return fault;

  Draft draft(builder, "mortise and tenon", host, guest);
  cut_guest(*this, h, g, layout, draft);
  cut_host(*this, h, g, layout, draft);
  draft.must_meet(host, guest, layout.meeting.face, "shoulders");
  for (const Plane& side : layout.between(layout.width))
    draft.must_meet(host, guest, side.flipped(), "cheeks");
  draft.dihedral(crossing_angle(h.along, g.along));
  return draft.carry_out(builder);
}

}  // namespace splay::joinery
