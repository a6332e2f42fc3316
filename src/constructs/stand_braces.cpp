// Braces of a stand and their laps.
#include <algorithm>
#include <cmath>

#include "base/tolerance.h"
#include "constructs/lap_angles.h"
#include "constructs/member.h"
#include "constructs/orientation.h"
#include "constructs/stand_build.h"

namespace splay::constructs {

namespace {

enum Corner : std::size_t { left_front, right_front, left_back, right_back };

double thickness_of(const parts::Builder& builder, const StandBrace& choice) {
  return choice.thickness.given ? choice.thickness->mm : stock_thickness(builder, *choice.stock);
}

// The point of one line nearest to the other.
Vec3 nearest_on(Vec3 a, Vec3 u, Vec3 b, Vec3 v) {
  const double c = dot(u, v);
  return a + u * ((dot(b - a, u) - dot(b - a, v) * c) / (1 - c * c));
}

}  // namespace

std::vector<StandBay> StandBuild::bays(BraceRun runs) const {
  const Vec3 right{1, 0, 0}, back{0, 1, 0};
  const StandBay front_bay{"front", left_front, right_front, right, body_.face(false)};
  const StandBay back_bay{"back", left_back, right_back, right, body_.face(true)};
  const StandBay left_bay{"left", left_front, left_back, back, body_.side(false)};
  const StandBay right_bay{"right", right_front, right_back, back, body_.side(true)};
  switch (runs) {
    case BraceRun::front_and_back:
      return {front_bay, back_bay};
    case BraceRun::left_and_right:
      return {left_bay, right_bay};
    case BraceRun::front:
      return {front_bay};
    case BraceRun::back:
      return {back_bay};
    case BraceRun::left:
      return {left_bay};
    default:
      return {right_bay};
  }
}

// The middle of a leg's section by the level plane at a height over the foot.
Vec3 StandBuild::leg_middle(std::size_t leg, double height) const {
  const Plane level{{0, 0, 1}, body_.foot + height};
  const joinery::Stick& stick = legs_[leg].stick;
  const auto x = joinery::section_extent(stick, level, {1, 0, 0});
  const auto y = joinery::section_extent(stick, level, {0, 1, 0});
  return {(x[0] + x[1]) / 2, (y[0] + y[1]) / 2, level.d};
}

void StandBuild::add_braces(const StandBrace& choice) {
  for (const double height : {choice.at->mm, choice.second_height()})
    if (height >= spec_.height->mm) {
      stop("brace-too-high",
           "The brace " + choice.name + " of " + spec_.name +
               " would meet the legs above their top.",
           "Lower it.", choice.span);
      return;
    }
  if (choice.between.given) {
    add_between(choice);
    return;
  }
  if (choice.crossed.value == BraceCross::in_plan) {
    add_in_plan(choice);
    return;
  }
  for (const StandBay& bay : bays(choice.runs.value)) add_in_bay(choice, bay);
}

void StandBuild::add_in_bay(const StandBrace& choice, const StandBay& bay) {
  const double depth = choice.inset->mm + thickness_of(builder_, choice) / 2;
  // In the bay's plane, `depth` behind the outside, at a height over the foot.
  const auto point = [&](std::size_t leg, double height) {
    const Vec3 middle = leg_middle(leg, height);
    const Vec3 across = cross(bay.along, {0, 0, 1});
    const double off = bay.outside.d - depth - dot(bay.outside.n, middle);
    return middle + across * (off / dot(bay.outside.n, across));
  };
  const double one = choice.at->mm, other = choice.second_height();
  const auto add = [&](const std::string& name, double first, double second) {
    PlacedBrace brace{-1, point(bay.first, first), point(bay.second, second), bay.first,
                      bay.second};
    return add_brace(choice, bay.name + " " + choice.name + name, brace, bay.outside.n);
  };
  if (choice.crossed.value == BraceCross::none) {
    lap_ends(choice, add("", one, other));
    return;
  }
  const PlacedBrace a = add(" rising", std::min(one, other), std::max(one, other));
  const PlacedBrace b = add(" falling", std::max(one, other), std::min(one, other));
  lap_crossing(choice, a, b);
  lap_ends(choice, a);
  lap_ends(choice, b);
}

void StandBuild::add_in_plan(const StandBrace& choice) {
  const auto add = [&](const std::string& name, std::size_t first, std::size_t second) {
    const PlacedBrace brace{-1, leg_middle(first, choice.at->mm), leg_middle(second, choice.at->mm),
                            first, second};
    const Vec3 along = brace.to - brace.from;
    const bool flat = choice.lies.value == BraceLies::flat;
    return add_brace(choice, choice.name + name, brace,
                     flat ? Vec3{0, 0, 1} : cross(along, {0, 0, 1}));
  };
  const PlacedBrace a = add(" left", left_front, right_back);
  PlacedBrace b = add(" right", left_back, right_front);
  lap_crossing(choice, a, b);
  lap_ends(choice, a);
  lap_ends(choice, b);
}

PlacedBrace StandBuild::add_brace(const StandBrace& choice, const std::string& name,
                                  PlacedBrace brace, Vec3 facing) {
  const double broad = choice.width->mm, thick = thickness_of(builder_, choice);
  const Vec3 across = frame(brace.from, brace.to - brace.from, facing).ey;
  const bool upright = std::abs(across.z) > 1e-9;
  const bool high_up = upright ? across.z > 0 : across.y > 0;
  const std::string low = upright ? "lower edge" : "front edge";
  const std::string high = upright ? "upper edge" : "back edge";
  Member member = bar_member({part_name(builder_, spec_, name),
                              *choice.stock,
                              brace.from,
                              brace.to,
                              facing,
                              broad,
                              thick,
                              {high_up ? low : high, high_up ? high : low,
                               upright ? "inside" : "underside", upright ? "outside" : "top"}});
  // Far enough past both legs for any lap between them.
  const auto past = [&](std::size_t leg, std::size_t end) {
    const joinery::Stick host =
        leg < legs_.size() ? legs_[leg].stick : joinery::stick(builder_, host_brace(choice, end));
    const Box box = builder_.part(host.index).body.bounds();
    const double sine = std::sin(joinery::crossing_angle(host.along, member.axis));
    const double reach = box.size().y + box.size().z + broad + thick + choice.proud->mm;
    // A joint takes the shorter piece beside the leg for the waste.
    return std::min(reach / std::max(sine, 0.08), 0.8 * norm(brace.to - brace.from));
  };
  member.from_end.past = past(brace.first, 0);
  member.to_end.past = past(brace.second, 1);
  brace.part = add_member(builder_, member);
  const bool to_leg = brace.second < legs_.size();
  builder_.measure(brace.part,
                   to_leg ? "between the middles of the legs"
                          : "from the middle of the leg to the middle of " + choice.between->back(),
                   norm(brace.to - brace.from));
  return brace;
}

void StandBuild::lap_crossing(const StandBrace& choice, const PlacedBrace& one,
                              const PlacedBrace& other) {
  const std::string fault = joinery::HalfLapKind().make(builder_, one.part, other.part);
  if (!fault.empty()) {
    stop("no-joint", fault, "Change the heights or the widths of the braces.", choice.span);
    return;
  }
  state_lap(builder_, one.part, other.part);
  state_lap(builder_, other.part, one.part);
  const Vec3 u = unit(one.to - one.from), v = unit(other.to - other.from);
  const double angle = joinery::crossing_angle(u, v);
  const Vec3 at = nearest_on(one.from, u, other.from, v);
  builder_.add_angle(
      {"crossing of " + builder_.part(one.part).name + " and " + builder_.part(other.part).name, at,
       u, dot(u, v) < 0 ? -v : v, angle});
  state_crossing(choice, one, other, at, angle);
  state_crossing(choice, other, one, at, angle);
}

void StandBuild::state_crossing(const StandBrace& choice, const PlacedBrace& brace,
                                const PlacedBrace& other, Vec3 at, double angle) {
  const std::string name = builder_.part(brace.part).name;
  const double off = std::abs(dot(at - (brace.from + brace.to) * 0.5, unit(brace.to - brace.from)));
  builder_.measure(brace.part, "crossing, off the middle", off);
  builder_.remark(brace.part,
                  "Crosses " + builder_.part(other.part).name + " at " + degrees_of(angle) + ".");
  if (!choice.within.given || off <= choice.within->mm + tolerance::weld) return;
  const FigureStyle figures = builder_.project().job.figures();
  stop("crossing-off-centre",
       name + " is crossed " + figures.with_unit(off) + " off its middle; at most " +
           figures.with_unit(choice.within->mm) + " is asked for.",
       "Bring the leans or the heights nearer to each other, or allow more.", choice.within.span);
}

void StandBuild::lap_ends(const StandBrace& choice, const PlacedBrace& brace) {
  for (const std::size_t leg : {brace.first, brace.second}) lap_leg(choice, brace, leg);
}

void StandBuild::lap_leg(const StandBrace& choice, const PlacedBrace& brace, std::size_t leg) {
  joinery::HalfLapKind lap;
  lap.form.value = choice.proud.given ? joinery::LapForm::cross : joinery::LapForm::tee;
  lap.share.value = *choice.share;
  // The edges of a level brace are parallel to the floor as they are.
  const bool sloping = choice.at->mm != choice.second_height();
  lap.walls.value = choice.walls.value == BraceWalls::floor && sloping
                        ? joinery::LapWalls::floor
                        : joinery::LapWalls::other_part;
  const std::string fault = lap.make(builder_, legs_[leg].part, brace.part);
  if (!fault.empty()) {
    stop("no-joint", fault,
         "Change the height, the size or the inset of the brace, or let the walls run along it.",
         choice.span);
    return;
  }
  const Vec3 way = leg == brace.second ? brace.to - brace.from : brace.from - brace.to;
  if (choice.proud.given) trim_proud(choice, brace, leg, unit(way));
  state_lap(builder_, legs_[leg].part, brace.part);
  state_lap(builder_, brace.part, legs_[leg].part);
  warn_of_neck(choice, brace, leg);
}

// Level walls leave a sloping brace only what lies between them all through the leg.
void StandBuild::warn_of_neck(const StandBrace& choice, const PlacedBrace& brace, std::size_t leg) {
  const std::string& name = builder_.part(brace.part).name;
  for (const parts::Operation& operation : builder_.part(legs_[leg].part).operations) {
    const std::vector<Plane>& walls = operation.trench.walls;
    if (operation.name != "lap for " + name || walls.size() != 2) continue;
    if (dot(walls[0].n, walls[1].n) > -1 + 1e-9) continue;
    const double neck = std::abs(walls[0].d + walls[1].d);
    if (neck >= choice.width->mm / 2) continue;
    builder_.report({Level::caution,
                     "thin-neck",
                     {name},
                     "Between the level walls in " + builder_.part(legs_[leg].part).name +
                         " only " + builder_.project().job.figures().with_unit(neck) + " of " +
                         name + "'s width is left.",
                     "Make the walls run along the brace, or the brace broader or less steep.",
                     choice.span});
  }
}

void StandBuild::trim_proud(const StandBrace& choice, const PlacedBrace& brace, std::size_t leg,
                            Vec3 way) {
  const Vec3 at = leg == brace.first ? brace.from : brace.to;
  Plane end = joinery::side_at(legs_[leg].stick, at, way);
  end.d += choice.proud->mm;
  builder_.cut_end(brace.part, end, "end proud of " + builder_.part(legs_[leg].part).name, "");
}

}  // namespace splay::constructs
