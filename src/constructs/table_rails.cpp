// Aprons and stretchers of a table.
#include <algorithm>
#include <cmath>

#include "base/tolerance.h"
#include "constructs/table_build.h"

namespace splay::constructs {

namespace {

constexpr double least_tenon = 5;   // mm: a shorter one holds nothing
constexpr double wood_between = 1;  // mm left between two mortises in a corner

}  // namespace

double TableBuild::thickness_of(const TableRail& choice) const {
  return choice.thickness.given ? choice.thickness->mm : stock_thickness(builder_, *choice.stock);
}

std::vector<std::size_t> TableBuild::sides_of(const TableRail& choice) const {
  const std::vector<std::string> names = spec_.side_names();
  std::vector<std::size_t> sides;
  for (std::size_t i = 0; i < count(); ++i)
    if (!choice.sides.given ||
        std::find(choice.sides->begin(), choice.sides->end(), names[i]) != choice.sides->end())
      sides.push_back(i);
  return sides;
}

void TableBuild::add_apron() {
  const TableApron& choice = spec_.apron;
  std::vector<PlacedRail> rails;
  for (const std::size_t side : sides_of(choice)) {
    const Vec3 slope = unit(legs_[side].along + legs_[(side + 1) % count()].along);
    const double steep = choice.face.value == RailFace::plumb ? 1 : slope.z;
    const double upper = head_ - choice.below_top->mm;
    const auto rail = add_rail(choice, spec_.side_names()[side] + " apron",
                               {side, upper, upper - choice.width->mm / 2 * steep, true});
    if (!rail) return;
    rails.push_back(*rail);
    aprons_.push_back(rail->part);
  }
  join_rails(choice, rails);
}

void TableBuild::add_stretcher(const TableStretcher& choice) {
  if (choice.between.given) {
    add_between(choice);
    return;
  }
  std::vector<PlacedRail> rails;
  for (const std::size_t side : sides_of(choice)) {
    const auto rail = add_rail(choice, spec_.side_names()[side] + " " + choice.name,
                               {side, 0, middle_.z + choice.at->mm, false});
    if (!rail) return;
    rails.push_back(*rail);
  }
  join_rails(choice, rails);
  stretchers_.push_back({choice.name, std::move(rails)});
}

// From the middle of one stretcher to the middle of another, square to the floor.
void TableBuild::add_between(const TableStretcher& choice) {
  const auto found = std::find_if(stretchers_.begin(), stretchers_.end(),
                                  [&](const Placed& each) { return each.name == *choice.between; });
  if (found == stretchers_.end() || found->rails.size() != 2) {
    stop("unknown-neighbour",
         "The stretcher " + choice.name + " of " + spec_.name + " runs between \"" +
             *choice.between + "\", which isn't a stretcher on two sides in front of it.",
         "Name a stretcher that has sides = [one, another].", choice.between.span);
    return;
  }
  const auto middle = [](const PlacedRail& rail) { return (rail.from + rail.to) * 0.5; };
  PlacedRail rail;
  rail.from = middle(found->rails[1]);
  rail.to = middle(found->rails[0]);
  if (std::abs(rail.to.x - rail.from.x) > std::abs(rail.to.y - rail.from.y)
          ? rail.to.x < rail.from.x
          : rail.to.y < rail.from.y)
    std::swap(rail.from, rail.to);
  rail.out = cross(unit(rail.to - rail.from), {0, 0, 1});
  const double thick = thickness_of(choice), broad = choice.width->mm;
  Member member = bar_member({part_name(builder_, spec_, choice.name),
                              *choice.stock,
                              rail.from,
                              rail.to,
                              rail.out,
                              broad,
                              thick,
                              {"lower edge", "upper edge", "back", "face"}});
  const double past = std::min(spec_.leg.width->mm + thick + broad + choice.tenon.proud.value.mm,
                               0.8 * norm(rail.to - rail.from));
  member.from_end.past = member.to_end.past = past;
  rail.part = add_member(builder_, member);
  for (const PlacedRail& host : found->rails) join(choice, host.part, rail, std::nullopt);
  state_shoulders(builder_, rail.part);
  arch(choice, rail);
}

// Moves the rail's line so that its outside stands in from the outside of its legs as asked.
void TableBuild::set_back(const TableRail& choice, PlacedRail& rail, Vec3 level_out) const {
  // A leaning rail is thicker when it is measured level.
  const double half = thickness_of(choice) / 2 / dot(rail.out, level_out);
  const Plane level{{0, 0, 1}, rail.from.z};
  for (auto [point, leg] : {std::pair{&rail.from, rail.first}, std::pair{&rail.to, rail.second}}) {
    const double outside = joinery::section_extent(legs_[leg].stick, level, level_out)[1];
    *point = *point + level_out * (outside - choice.set_back->mm - half - dot(*point, level_out));
  }
}

std::optional<PlacedRail> TableBuild::add_rail(const TableRail& choice, const std::string& name,
                                               const RailPlace& place) {
  PlacedRail rail;
  rail.first = place.side;
  rail.second = (place.side + 1) % count();
  const PlacedLeg& a = legs_[rail.first];
  const PlacedLeg& b = legs_[rail.second];
  const Plane level{{0, 0, 1}, place.middle};
  const auto middle_of = [&](const PlacedLeg& leg) {
    const auto x = joinery::section_extent(leg.stick, level, {1, 0, 0});
    const auto y = joinery::section_extent(leg.stick, level, {0, 1, 0});
    return Vec3{(x[0] + x[1]) / 2, (y[0] + y[1]) / 2, place.middle};
  };
  if (place.middle < middle_.z || place.middle > head_) {
    stop("rail-off-the-legs", name + " of " + spec_.name + " doesn't meet the legs.",
         "Bring it between the floor and the top of the legs.", choice.span);
    return std::nullopt;
  }
  rail.from = middle_of(a);
  rail.to = middle_of(b);
  const Vec3 along = unit(rail.to - rail.from);
  const Vec3 level_out = cross(along, {0, 0, 1});
  const Vec3 slope = unit(a.along + b.along);
  const bool plumb = choice.face.value == RailFace::plumb;
  rail.out = plumb ? level_out : unit(cross(along, slope));
  const double thick = thickness_of(choice), broad = choice.width->mm;
  if (choice.set_back.given) set_back(choice, rail, level_out);
  Member member = bar_member({part_name(builder_, spec_, name),
                              *choice.stock,
                              rail.from,
                              rail.to,
                              rail.out,
                              broad,
                              thick,
                              {"lower edge", "upper edge", "inside", "outside"}});
  // The upper edge of an apron is level, for the top to lie on.
  if (place.level_top) member.sides[1].plane = {{0, 0, 1}, place.upper};
  for (const PlacedLeg* leg : {&a, &b}) {
    const Vec3 size = builder_.part(leg->part).body.bounds().size();
    MemberEnd& end = leg == &a ? member.from_end : member.to_end;
    // A joint takes the shorter piece beside the leg for the waste.
    end.past = std::min(2 * (size.y + size.z) + thick + broad + choice.tenon.proud.value.mm,
                        0.8 * norm(rail.to - rail.from));
  }
  rail.part = add_member(builder_, member);
  return rail;
}

// The length is measured along the tenon's four arrises.
std::optional<TableBuild::Halving> TableBuild::halve(const TableRail& choice,
                                                     const PlacedRail& rail, std::size_t leg,
                                                     const std::vector<PlacedRail>& rails) const {
  const bool at_first = rail.first == leg;
  const auto other = std::find_if(rails.begin(), rails.end(), [&](const PlacedRail& each) {
    return each.part != rail.part && (at_first ? each.second : each.first) == leg;
  });
  if (other == rails.end()) return std::nullopt;
  joinery::Meeting meeting;
  if (!joinery::find_meeting(legs_[leg].stick, joinery::stick(builder_, rail.part),
                             joinery::Lines::length_only, meeting)
           .empty())
    return std::nullopt;
  const Vec3 in = meeting.in, across = cross(rail.out, in);
  const Plane mine = Plane::through(rail.from, rail.out);
  const Plane theirs = Plane::through(other->from, other->out);
  const Vec3 difference = mine.n - theirs.n;
  const double size = norm(difference);
  Plane half{difference * (1 / size), (mine.d - theirs.d) / size};
  if (dot(half.n, in) < 0) half = half.flipped();
  const double towards = dot(half.n, in);
  if (size < 1e-6 || towards < 1e-6) return std::nullopt;
  const double thick =
      choice.tenon.thickness.given ? choice.tenon.thickness->mm : thickness_of(choice) / 3;
  double most = 1e300;
  for (const double up : {-choice.width->mm / 2, choice.width->mm / 2})
    for (const double aside : {-thick / 2, thick / 2}) {
      const Vec3 arris = meeting.at + across * up + rail.out * aside;
      const Vec3 shoulder = arris - in * (meeting.face.distance(arris) / dot(meeting.face.n, in));
      most = std::min(most, -half.distance(shoulder) / towards);
    }
  return Halving{half, most - choice.tenon.bottom_gap.value.mm - wood_between / towards};
}

void TableBuild::join_rails(const TableRail& choice, const std::vector<PlacedRail>& rails) {
  for (const PlacedRail& rail : rails) {
    for (const std::size_t leg : {rail.first, rail.second})
      join(choice, legs_[leg].part, rail, halve(choice, rail, leg, rails));
    state_shoulders(builder_, rail.part);
    arch(choice, rail);
  }
  refuse_meeting(choice, rails);
}

// Thick rails at a sharp corner, or of thin legs, run into their neighbours before they end.
void TableBuild::refuse_meeting(const TableRail& choice, const std::vector<PlacedRail>& rails) {
  std::vector<Solid> bodies;
  bodies.reserve(rails.size());
  for (const PlacedRail& rail : rails) bodies.push_back(joinery::stick(builder_, rail.part).body);
  for (const Clash& clash : find_clashes(bodies)) {
    const int a = rails[static_cast<std::size_t>(clash.a)].part;
    const int b = rails[static_cast<std::size_t>(clash.b)].part;
    if (builder_.left_apart(a) && builder_.left_apart(b)) continue;  // not cut to length
    stop("rails-meet",
         builder_.part(a).name + " and " + builder_.part(b).name +
             " run into each other inside of the leg.",
         "Use thinner stock for them or thicker legs, or set them back less.", choice.span);
    builder_.leave_apart(a, b);
  }
}

void TableBuild::join(const TableRail& choice, int host, const PlacedRail& rail,
                      const std::optional<Halving>& halving) {
  joinery::TenonKind tenon = choice.tenon;
  const std::string remedy =
      "Change its tenon's length or thickness, its set_back, or the size of the legs.";
  if (halving && choice.tenons_meet.value == TenonsMeet::mitred) {
    tenon.limit = halving->plane;
  } else if (halving && !tenon.length.given && !tenon.through.value) {
    joinery::Meeting meeting;
    joinery::find_meeting(joinery::stick(builder_, host), joinery::stick(builder_, rail.part),
                          joinery::Lines::length_only, meeting);
    const double usual = std::max(meeting.room * 2 / 3, Length::inches(1).mm);
    if (halving->most < usual) {
      tenon.length.value.mm = halving->most;
      tenon.length.given = true;
    }
    if (halving->most < least_tenon) {
      builder_.leave_apart(host, rail.part);
      stop("no-joint",
           "The tenons of " + builder_.part(rail.part).name + " and its neighbour would meet in " +
               builder_.part(host).name + ".",
           remedy, choice.span);
      return;
    }
  }
  const std::string fault = tenon.make(builder_, host, rail.part);
  if (!fault.empty()) stop("no-joint", fault, remedy, choice.span);
}

void state_shoulders(parts::Builder& builder, int index) {
  const parts::Part& part = builder.part(index);
  const Plane* low = nullptr;
  const Plane* high = nullptr;
  for (const parts::Operation& operation : part.operations) {
    if (operation.kind != parts::OperationKind::shoulder) continue;
    (operation.cut.n.x < 0 ? low : high) = &operation.cut;
  }
  const Box box = part.body.bounds();
  const double over_all = box.size().x;
  if (low == nullptr || high == nullptr) return;
  const auto along = [](const Plane& plane, double y, double z) {
    return (plane.d - plane.n.y * y - plane.n.z * z) / plane.n.x;
  };
  const auto between = [&](double y, double z) { return along(*high, y, z) - along(*low, y, z); };
  const double z = (box.low.z + box.high.z) / 2;
  const double middle = between((box.low.y + box.high.y) / 2, z);
  // The upper edge of a leaning apron is bevelled: its arris on the face may lie lower.
  double top = box.high.y;
  for (const parts::Operation& operation : part.operations)
    if (operation.kind == parts::OperationKind::edge_cut && operation.cut.n.y > 0)
      top = std::min(top, (operation.cut.d - operation.cut.n.z * box.high.z) / operation.cut.n.y);
  const double lower = between(box.low.y, box.high.z), upper = between(top, box.high.z);
  const std::string low_name = part.side_names[2], high_name = part.side_names[3];
  builder.measure(index, "between shoulders", middle);
  if (std::abs(lower - upper) > tolerance::weld) {
    builder.measure(index, "between shoulders, " + low_name + " on the face", lower);
    builder.measure(index, "between shoulders, " + high_name + " on the face", upper);
  }
  builder.measure(index, "over the tenons", over_all);
}

}  // namespace splay::constructs
