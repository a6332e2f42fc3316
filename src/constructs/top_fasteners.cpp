// What holds a top to the rails under it and lets it move.
#include <algorithm>
#include <cmath>

#include "constructs/top_build.h"
#include "joinery/bed.h"
#include "joinery/draft.h"
#include "joinery/joint.h"
#include "joinery/stick.h"
#include "model/movement.h"

namespace splay::constructs {

namespace {

// Sizes from project articles on fastening table tops and common practice; measure the hardware in
// hand. Millimetres.
constexpr double plate_diameter = 15.9;  // figure-8: 5/8 in
constexpr double plate_thickness = 3.2;  // and its recess as deep
constexpr double plate_inset = 7.6;      // its centre from the rail's face: just under 5/16 in
constexpr double clip_width = 19, clip_slot = 3.2, clip_deep = 9.5, clip_down = 12.7;
constexpr double block_width = 38, block_slot = 12.7, block_deep = 9.5, block_down = 9.5;

Vec3 direction(HeldFace face) {
  switch (face) {
    case HeldFace::front:
      return {0, -1, 0};
    case HeldFace::back:
      return {0, 1, 0};
    case HeldFace::left:
      return {-1, 0, 0};
    default:
      return {1, 0, 0};
  }
}

// How far the top moves to either side over a point between the shop and the room's extremes, held
// in its middle.
double moves_at(const parts::Builder& builder, int panel, Vec3 at) {
  const parts::Part& top = builder.part(panel);
  const model::Stock* stock = builder.project().stocks.find(top.stock);
  if (stock == nullptr || *stock->kind != model::StockKind::board) return 0;
  const auto [low, high] = top.body.extent({0, 1, 0});
  const double off = std::abs(top.place.local_point(at).y - (low + high) / 2);
  const model::Moistures moistures = model::moistures(builder.project().room);
  const double points =
      std::max({moistures.made - moistures.driest, moistures.dampest - moistures.made, 0.0});
  return model::movement(off, stock->timber.across_coefficient(), 0, points);
}

}  // namespace

void TopBuild::add_fasteners(const TopFastener& choice, int panel) {
  const int rail = find_part(builder_, *choice.to, spec_.name, choice.to.span);
  if (rail < 0) return;
  const joinery::Stick stick = joinery::stick(builder_, rail);
  if (stick.body.empty()) return;
  const Plane face = joinery::hull_towards(stick, direction(choice.face.value));
  if (dot(face.n, direction(choice.face.value)) < 0.7 || std::abs(stick.along.z) > 0.5) {
    stop("no-fastener", *choice.to + " has no such face along a level length.",
         "Choose another `face`, or another part.", choice.span);
    return;
  }
  const auto [from, to] = stick.body.extent(stick.along);
  const int n = *choice.count;
  const double margin = choice.margin.given ? choice.margin->mm : (to - from) / (2 * n);
  const bool eight = choice.type.value == FastenerType::figure_eight;
  const bool clip = choice.type.value == FastenerType::clip;
  const double wide = eight ? plate_diameter : clip ? clip_width : block_width;
  const double pitch = n > 1 ? (to - from - 2 * margin) / (n - 1) : to - from;
  if (pitch < 2 * wide || margin < wide / 2) {
    stop("no-fastener",
         std::to_string(n) + " fasteners have no room along " + *choice.to + ", " +
             joinery::figure(builder_, to - from) + " long.",
         "Fewer of them, or another margin.", choice.span);
    return;
  }
  const Vec3 along = stick.along;
  const Vec3 in = unit(Vec3{-face.n.x, -face.n.y, 0});  // into the rail, level
  const std::string joint = joinery::joint_name(builder_, panel, rail);
  for (int i = 0; i < n; ++i) {
    const double run = n > 1 ? from + margin + pitch * i : (from + to) / 2;
    // On the face, at the top's underside.
    Vec3 at = along * (run - dot(along, stick.centre)) + stick.centre;
    at = at + Vec3{0, 0, under_ - at.z};
    at = at + in * (face.distance(at) / -dot(face.n, in));
    parts::Fitting fitting{"figure-8 fastener", "5/8 in", {}, {0, 0, 1}, 0, 0,
                           {rail, panel},       joint};
    if (eight) {
      const Vec3 centre = at + in * plate_inset - Vec3{0, 0, plate_thickness};
      const std::vector<Plane> facets = joinery::cylinder(centre, {0, 0, 1}, plate_diameter / 2);
      Region recess = facets;
      recess.push_back({{0, 0, -1}, -centre.z});
      builder_.cut_region(rail, parts::OperationKind::hole, recess, "recess for a figure-8", joint,
                          facets);
      fitting.at = centre;
      fitting.diameter = plate_diameter;
      fitting.length = plate_thickness;
    } else {
      const double slot = clip ? clip_slot : block_slot, deep = clip ? clip_deep : block_deep;
      const double down = clip ? clip_down : block_down;
      // Where the rail lies across the top's grain, the top moves along it.
      const bool across = std::abs(dot(along, builder_.part(panel).place.ey)) > 0.7;
      const double half = wide / 2 + (across ? moves_at(builder_, panel, at) : 0);
      const Region mortise = {{along, dot(along, at) + half},
                              {-along, -(dot(along, at) - half)},
                              {{0, 0, 1}, under_ - down},
                              {{0, 0, -1}, -(under_ - down - slot)},
                              {in, dot(in, at) + deep}};
      builder_.cut_region(rail, parts::OperationKind::mortise, mortise,
                          clip ? "slot for a clip" : "slot for a block", joint);
      fitting.kind = clip ? "table clip" : "slotted block";
      fitting.size = clip ? "3/4 in wide" : "1 1/2 in wide, 3/8 in tongue";
      fitting.at = at - Vec3{0, 0, down + slot / 2};
      fitting.axis = in;
      fitting.diameter = slot;
      fitting.length = deep;
    }
    builder_.add_fitting(std::move(fitting));
  }
  builder_.add_joint({joint, "fasteners", {panel, rail}, 0, {{rail, panel, {{0, 0, 1}, under_}}}});
}

}  // namespace splay::constructs
