#include <algorithm>
#include <cmath>

#include "base/tolerance.h"
#include "constructs/member.h"
#include "constructs/orientation.h"
#include "constructs/resting.h"
#include "constructs/stand_build.h"

namespace splay::constructs {

double StandBody::x(bool at_right, double z) const {
  return at_right ? right - (z - level) * std::tan(lean_right)
                  : left + (z - level) * std::tan(lean_left);
}
double StandBody::y(bool at_back, double z) const {
  return at_back ? back - (z - level) * std::tan(lean_back)
                 : front + (z - level) * std::tan(lean_front);
}
Plane StandBody::side(bool at_right) const {
  const double lean = at_right ? lean_right : lean_left;
  return Plane::through({x(at_right, level), 0, level},
                        {at_right ? std::cos(lean) : -std::cos(lean), 0, std::sin(lean)});
}
Plane StandBody::face(bool at_back) const {
  const double lean = at_back ? lean_back : lean_front;
  return Plane::through({0, y(at_back, level), level},
                        {0, at_back ? std::cos(lean) : -std::cos(lean), std::sin(lean)});
}

double StandBody::radius_at(double z) const { return radius - (z - level) * std::tan(lean_front); }

namespace {

// `in`: level, in the plane of the faces, towards the other leg. Square widths stand on the axis,
// which leaves the outer edge by all of the taper, half of it or none.
StandLegEdges lay_edges(const StandLeg& leg, Vec3 foot, Vec3 top, Vec3 in) {
  const double broad = leg.top_width->mm;
  const double narrow = leg.foot_width.given ? leg.foot_width->mm : broad;
  const Vec3 outer = unit(top - foot);
  if (leg.widths.value == LegWidths::level) {
    StandLegEdges edges{foot, top, foot + in * narrow, top + in * broad, {}};
    const Vec3 inner = unit(edges.inner_top - edges.inner_foot);
    edges.axis = leg.taper.value == LegTaper::inside    ? outer
                 : leg.taper.value == LegTaper::outside ? inner
                                                        : unit(outer + inner);
    return edges;
  }
  const double ratio = (broad - narrow) / norm(top - foot);
  const double turned = leg.taper.value == LegTaper::inside    ? 0
                        : leg.taper.value == LegTaper::outside ? std::asin(ratio)
                                                               : std::asin(ratio / 2);
  const Vec3 aside = unit(in - outer * dot(in, outer));
  const Vec3 axis = outer * std::cos(turned) + aside * std::sin(turned);
  const Vec3 across = aside * std::cos(turned) - outer * std::sin(turned);
  return {foot, top, foot + across * narrow, top + across * broad, axis};
}

double angle_at(const model::Given<std::vector<Angle>>& angles, std::size_t i) {
  if (angles->empty()) return 0;
  return (*angles)[std::min(i, angles->size() - 1)].rad;
}

}  // namespace

void Stand::build(parts::Builder& builder) const { StandBuild(*this, builder).run(); }

void StandBuild::stop(std::string code, std::string text, std::string remedy,
                      SourceSpan span) const {
  refuse(builder_, {std::move(code), spec_.name, std::move(text), std::move(remedy), span});
}

void StandBuild::run() {
  if (!lay_out()) return;
  if (spec_.on_ring()) {
    for (std::size_t i = 0; i < static_cast<std::size_t>(*spec_.count); ++i)
      if (!add_leg(ring_leg(i))) return;
  } else {
    for (const bool back : {false, true})
      for (const bool right : {false, true})
        if (!add_leg(corner_leg(right, back))) return;
  }
  for (std::size_t i = 0; i < spec_.braces.size(); ++i) add_braces(spec_.braces[i]);
  add_measures();
  rest_item();
}

bool StandBuild::lay_out() {
  const double high = spec_.height->mm;
  if (spec_.under.given) {
    if (!lay_under()) return false;
  } else {
    const bool top = spec_.stated_at.value == StandLevel::top;
    const Vec3 corner = spec_.at.given ? point_of(spec_.at) : Vec3{0, 0, top ? high : 0};
    body_.middle = {corner.x, corner.y};
    body_.level = corner.z;
    body_.foot = top ? corner.z - high : corner.z;
    body_.left = corner.x;
    body_.right = corner.x + spec_.width->mm;
    body_.front = corner.y;
    body_.back = corner.y + spec_.depth->mm;
  }
  body_.top = body_.foot + high;
  body_.radius = spec_.radius->mm;
  if (spec_.lean_in.given || !spec_.under.given) {
    body_.lean_left = angle_at(spec_.lean_in, 0);
    body_.lean_right = angle_at(spec_.lean_in, 1);
  }
  body_.lean_front = angle_at(spec_.on_ring() ? spec_.lean_in : spec_.lean_in_depth, 0);
  body_.lean_back = angle_at(spec_.lean_in_depth, 1);
  for (const double z : {body_.foot, body_.top})
    if (spec_.on_ring() ? body_.radius_at(z) < spec_.legs.top_width->mm
                        : body_.x(true, z) - body_.x(false, z) < tolerance::shortest_line ||
                              body_.y(true, z) - body_.y(false, z) < tolerance::shortest_line) {
      stop("no-inside", "The legs of " + spec_.name + " meet before they reach its full height.",
           "Less lean, less height, or a larger " +
               std::string(spec_.on_ring() ? "radius." : "width and depth."),
           spec_.span);
      return false;
    }
  return true;
}

// The outside of what stands on it, at its lowest level.
bool StandBuild::lay_under() {
  const auto& items = builder_.project().items;
  for (std::size_t i = 0; i < items.size(); ++i)
    if (items[i]->name == *spec_.under) carried_ = static_cast<int>(i);
  Box all;
  std::vector<Vec3> points;
  for (int i = 0; i < builder_.count(); ++i) {
    if (builder_.part(i).item != carried_) continue;
    for (const Vec3& v : builder_.part(i).body.vertices())
      points.push_back(builder_.part(i).place.point(v));
  }
  for (const Vec3 p : points) all.add(p);
  if (points.empty()) {
    stop("nothing-on-it",
         "Nothing of " + *spec_.under + " is built yet when " + spec_.name + " is to go under it.",
         "Put [stand." + spec_.name + "] after it in the file.", spec_.under.span);
    return false;
  }
  Box foot;
  for (const Vec3 p : points)
    if (p.z < all.low.z + 10 * tolerance::weld) foot.add(p);
  body_.left = foot.low.x;
  body_.right = foot.high.x;
  body_.front = foot.low.y;
  body_.back = foot.high.y;
  body_.level = all.low.z;
  body_.foot = all.low.z - spec_.height->mm;
  body_.middle = {(foot.low.x + foot.high.x) / 2, (foot.low.y + foot.high.y) / 2};
  if (spec_.lean_in.given || spec_.on_ring()) return true;
  return take_lean("left panel", body_.lean_left) && take_lean("right panel", body_.lean_right);
}

// The lean of a side of the carried item, from the way its show face looks.
bool StandBuild::take_lean(const std::string& side, double& lean) const {
  const model::Item& item = *builder_.project().items[static_cast<std::size_t>(carried_)];
  const int part = builder_.find(part_name(builder_, item, side));
  if (part >= 0) {
    const Vec3 out = builder_.part(part).place.ez;
    lean = std::atan2(out.z, std::abs(out.x));
    return true;
  }
  stop("no-lean", *spec_.under + " has no " + side + " whose lean the legs could follow.",
       "Give lean_in.", spec_.under.span);
  return false;
}

StandLegSetting StandBuild::corner_leg(bool right, bool back) const {
  const bool frames_in_front = spec_.legs.faces.value == LegFaces::front_and_back;
  return {std::string(right ? "right " : "left ") + (back ? "back" : "front") + " leg",
          {body_.x(right, body_.foot), body_.y(back, body_.foot), body_.foot},
          {body_.x(right, body_.top), body_.y(back, body_.top), body_.top},
          frames_in_front ? Vec3{right ? -1.0 : 1.0, 0, 0} : Vec3{0, back ? -1.0 : 1.0, 0},
          frames_in_front ? body_.face(back) : body_.side(right),
          "outside face",
          "inside face"};
}

double StandBuild::leg_thickness() const {
  const StandLeg& choice = spec_.legs;
  return choice.thickness.given ? choice.thickness->mm : stock_thickness(builder_, *choice.stock);
}

bool StandBuild::add_leg(const StandLegSetting& setting) {
  const StandLegEdges edges = lay_edges(spec_.legs, setting.foot, setting.top, setting.in);
  StandLegPlace leg;
  const Member member = leg_member(setting, edges);
  leg.part = add_member(builder_, member);
  if (leg.part < 0) {
    stop("nothing-left", "The leg of " + spec_.name + " has no wood left.",
         "Check its widths, its thickness and its lean.", spec_.legs.span);
    return false;
  }
  leg.stick = joinery::stick(builder_, leg.part);
  state_leg(leg, edges);
  state_end_lines(builder_, leg.part, *member.from_end.plane, "foot");
  state_end_lines(builder_, leg.part, *member.to_end.plane, "head");
  legs_.push_back(std::move(leg));
  return true;
}

Member StandBuild::leg_member(const StandLegSetting& setting, const StandLegEdges& edges) const {
  const Plane& face = setting.face;
  const Vec3 in = setting.in;
  Member member;
  member.name = part_name(builder_, spec_, setting.name);
  member.stock = *spec_.legs.stock;
  member.from = edges.foot;
  member.to = edges.top;
  member.axis = edges.axis;
  member.facing = face.n;
  member.sides = {{side_plane(edges.inner_foot, edges.inner_top, face.n, in), "inner edge"},
                  {side_plane(edges.foot, edges.top, face.n, -in), "outer edge"},
                  {{-face.n, leg_thickness() - face.d}, setting.other_face},
                  {face, setting.face_name}};
  member.from_end = {Plane{{0, 0, -1}, -body_.foot}, "foot", 0};
  member.to_end = {Plane{{0, 0, 1}, body_.top}, "head", 0};
  const bool inner_high = dot(cross(face.n, edges.axis), in) > 0;
  member.side_names = {"foot",
                       "head",
                       inner_high ? "outer edge" : "inner edge",
                       inner_high ? "inner edge" : "outer edge",
                       setting.other_face,
                       setting.face_name};
  return member;
}

void StandBuild::state_leg(const StandLegPlace& leg, const StandLegEdges& edges) {
  builder_.measure(leg.part, "outer edge, foot to head", norm(edges.top - edges.foot));
  builder_.measure(leg.part, "inner edge, foot to head", norm(edges.inner_top - edges.inner_foot));
  state_lean(builder_, leg.part, edges.foot, edges.top);
  const Lean inner = lean_of(edges.inner_top - edges.inner_foot);
  if (inner.from_plumb > 1e-9)
    builder_.remark(leg.part, "Its inner edge is " + degrees_of(inner.from_plumb) + " off plumb.");
}

void StandBuild::add_measures() {
  if (spec_.on_ring()) {
    add_ring_measures();
    return;
  }
  const auto corner = [this](bool right, bool back, double z) {
    return Vec3{body_.x(right, z), body_.y(back, z), z};
  };
  for (const bool top : {false, true}) {
    const double z = top ? body_.top : body_.foot;
    const std::string where = top ? "top" : "foot";
    builder_.add_loop({where + " of " + spec_.name + ", outside of the legs",
                       {corner(false, false, z), corner(true, false, z), corner(true, true, z),
                        corner(false, true, z)}});
    builder_.add_length({spec_.name + ", width at the " + where, corner(false, false, z),
                         corner(true, false, z), "width at the " + where, true});
    builder_.add_length({spec_.name + ", depth at the " + where, corner(true, false, z),
                         corner(true, true, z), "depth at the " + where, true});
  }
  builder_.add_loop({"front of " + spec_.name + ", outer edges of the legs",
                     {corner(false, false, body_.foot), corner(true, false, body_.foot),
                      corner(true, false, body_.top), corner(false, false, body_.top)}});
  const Vec3 low = corner(true, false, body_.foot);
  builder_.add_length({spec_.name + ", height", low, {low.x, low.y, body_.top}, "height", true});
}

void StandBuild::rest_item() {
  if (carried_ < 0) return;
  for (const StandLegPlace& leg : legs_) {
    bool rests = false;
    for (int i = 0; i < builder_.count() && !rests; ++i)
      rests = builder_.part(i).item == carried_ && rest(builder_, leg.part, i, body_.top);
    if (!rests)
      stop("nothing-on-it", *spec_.under + " doesn't rest on " + builder_.part(leg.part).name + ".",
           "Make the legs broader or thicker at the top.", spec_.legs.span);
  }
}

}  // namespace splay::constructs
