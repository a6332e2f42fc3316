#include "constructs/stick.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "joinery/butt.h"
#include "joinery/stick.h"

namespace splay::constructs {

using model::choose;
using model::may;
using model::need;
using model::Range;

namespace {

constexpr std::array<std::string_view, 4> side_words = {"left edge", "right edge", "face", "back"};

// Distances of two opposite sides from the line, when the broader end stands on the line as asked
// and each tapered side takes its share of the difference. `stands`: -1 the line is on the low
// side, 0 in the middle, 1 on the high side.
struct Pair {
  SquareSection::Distance low, high;
};
Pair distances(double at_from, double at_to, int stands, bool low_tapers, bool high_tapers) {
  const double broad = std::max(at_from, at_to);
  const double low = stands < 0 ? 0 : stands == 0 ? broad / 2 : broad;
  const double high = broad - low;
  const double share = low_tapers == high_tapers ? 0.5 : low_tapers ? 1 : 0;
  const auto side = [&](double from_axis, double part) {
    return SquareSection::Distance{from_axis - (broad - at_from) * part,
                                   from_axis - (broad - at_to) * part};
  };
  return {side(low, share), side(high, 1 - share)};
}

// How far past the line's end the blank must run so that the face of `host` can end it; less than
// zero when the line doesn't meet it.
double reach_past(const parts::Builder& builder, const Rigid& line, double length, bool at_to,
                  int host, double section) {
  const joinery::Stick other = joinery::stick(builder, host);
  const Vec3 way = at_to ? line.ex : -line.ex;
  const Vec3 start = at_to ? line.origin + line.ex * length : line.origin;
  if (other.body.empty()) return -1;
  const double far = other.body.extent(way)[1] - dot(way, start);
  return far < -length ? -1 : std::max(far, 0.0) + section;
}

}  // namespace

void StickEnd::fields(model::FieldVisitor& visit) {
  CutChoice::fields(visit);
  visit.text(may("against",
                 "a part built before, by name: the stick runs on or stops short and ends "
                 "on its face",
                 "it ends at its point"),
             against);
}

void StickEnd::check(model::Complaints& complaints) const {
  CutChoice::check(complaints);
  if (against.given && cut.given)
    complaints.complain({span, "not-together", "an end with a cut that also ends against a part",
                         "either cut or against", "keep one"});
}

void Stick::fields(model::FieldVisitor& visit) {
  visit.lengths(need("from", "first end of its line, [x, y, z]: to the right, to the back, up"),
                from, Range::place());
  visit.lengths(need("to", "second end of its line, [x, y, z]"), to, Range::place());
  visit.text(need("stock", "what it is made of"), stock, model::Refers::to_stock);
  visit.length(need("width", "from edge to edge, at the first end, square to the line"), width,
               Range::size());
  visit.length(may("thickness", "from face to back, at the first end", "the stock's thickness"),
               thickness, Range::size());
  visit.length(may("to_width", "width at the second end", "as at the first"), to_width,
               Range::size());
  visit.length(may("to_thickness", "thickness at the second end", "as at the first"), to_thickness,
               Range::size());
  visit.texts(may("taper_on",
                  "which sides taper: left edge, right edge, face, back, as seen with "
                  "the face in front and the first end down",
                  "both edges or faces, half on each"),
              taper_on);
  visit.length(may("straight", "length at the broader end that doesn't taper"), straight,
               Range::allowance());
  choose<LineAcross, 3>(visit,
                        may("line_across",
                            "where its line runs between the edges, before "
                            "tapering"),
                        line_across, {"centre", "left edge", "right edge"});
  choose<LineThrough, 3>(visit,
                         may("line_through",
                             "where its line runs between face and back, "
                             "before tapering"),
                         line_through, {"centre", "face", "back"});
  orientation.fields(visit);
  visit.table(may("from_end", "how its first end is cut", "square"), from_end);
  visit.table(may("to_end", "how its second end is cut", "square"), to_end);
}

bool Stick::tapers(std::string_view side) const {
  return std::find(taper_on->begin(), taper_on->end(), side) != taper_on->end();
}

void Stick::check(model::Complaints& complaints) const {
  check_point(from, complaints);
  check_point(to, complaints);
  if (from->size() == 3 && to->size() == 3 && norm(point_of(to) - point_of(from)) < 1)
    complaints.complain({to.span, "no-length", "both ends of the stick are in the same place",
                         "two points at least 1 mm apart", "move one of them"});
  for (const std::string& side : *taper_on) {
    if (std::find(side_words.begin(), side_words.end(), side) != side_words.end()) {
      const bool edge = side.ends_with("edge");
      if (edge ? to_width.given : to_thickness.given) continue;
      complaints.complain({taper_on.span, "missing-field", "a taper on the " + side,
                           edge ? "to_width = the width at the second end"
                                : "to_thickness = the thickness at the second end",
                           "give the other size, or leave this side out"});
      continue;
    }
    const std::string_view near = nearest_word(side, {side_words.begin(), side_words.end()});
    complaints.complain({taper_on.span, "unknown-side", "a side named \"" + side + "\"",
                         "left edge, right edge, face, back",
                         near.empty() ? "" : "did you mean \"" + std::string(near) + "\"?"});
  }
}

SquareSection Stick::section(double thick) const {
  const double end_width = to_width.given ? to_width->mm : width->mm;
  const double end_thick = to_thickness.given ? to_thickness->mm : thick;
  // With the face in front and the line upwards, y runs to the left.
  const int across = line_across.value == LineAcross::centre      ? 0
                     : line_across.value == LineAcross::left_edge ? 1
                                                                  : -1;
  const int through = line_through.value == LineThrough::centre ? 0
                      : line_through.value == LineThrough::face ? 1
                                                                : -1;
  const Pair edges =
      distances(width->mm, end_width, across, tapers("right edge"), tapers("left edge"));
  const Pair faces = distances(thick, end_thick, through, tapers("back"), tapers("face"));
  return {edges.low, edges.high, faces.low, faces.high, straight->mm};
}

bool Stick::lay_end(parts::Builder& builder, const Rigid& line, bool at_to, Member& member,
                    int& host) const {
  const StickEnd& choice = at_to ? to_end : from_end;
  MemberEnd& end = at_to ? member.to_end : member.from_end;
  end.name = member.side_names[at_to];
  if (!choice.against.given) {
    end.plane = choice.plane(line, at_to ? member.to : member.from, at_to ? line.ex : -line.ex);
    if (!end.plane)
      refuse(builder,
             {"no-cut", name, "The cut of " + name + "'s " + end.name + " runs along its length.",
              "Choose another kind of cut or another angle.", choice.span});
    return end.plane.has_value();
  }
  host = find_part(builder, *choice.against, name, choice.against.span);
  if (host < 0) return false;
  const double length = norm(member.to - member.from);
  end.past = reach_past(builder, line, length, at_to, host, broadest(builder));
  if (end.past < 0)
    refuse(builder, {"no-joint", name, name + " doesn't run towards " + *choice.against + ".",
                     "Turn its line so that it meets the part.", choice.against.span});
  return end.past >= 0;
}

double Stick::broadest(const parts::Builder& builder) const {
  const double thick = thickness.given ? thickness->mm : stock_thickness(builder, *stock);
  return std::max({width->mm, to_width->mm, thick, to_thickness->mm});
}

void Stick::finish_end(parts::Builder& builder, int part, const MemberEnd& end, bool at_to,
                       int host) const {
  if (end.plane) {
    state_end_lines(builder, part, *end.plane, end.name);
    return;
  }
  const std::string fault = joinery::ButtKind().make(builder, host, part);
  if (!fault.empty())
    refuse(builder, {"no-joint", name, fault, "Change its line, or leave `against` out.",
                     (at_to ? to_end : from_end).against.span});
}

void Stick::build(parts::Builder& builder) const {
  const Vec3 a = point_of(from), b = point_of(to);
  const std::optional<Rigid> line = orientation.place(a, b);
  if (!line) {
    refuse(builder, {"facing-along", name, "The face of " + name + " looks along its own length.",
                     "Choose another `facing`.", orientation.facing.span});
    return;
  }
  const double length = norm(b - a);
  const std::array<std::string, 2> ends = end_names(b - a);
  Member member{name, *stock, a, b, line->ex, line->ez, {}, {}, {}, {}};
  member.side_names = {ends[0], ends[1], "right edge", "left edge", "back", "face"};
  member.sides = square_sides(
      *line, length, section(thickness.given ? thickness->mm : stock_thickness(builder, *stock)),
      member.side_names);
  int hosts[2] = {-1, -1};
  if (!lay_end(builder, *line, false, member, hosts[0])) return;
  if (!lay_end(builder, *line, true, member, hosts[1])) return;
  const int part = add_member(builder, member);
  if (part < 0) {
    refuse(builder, {"nothing-left", name, "The tapers and end cuts of " + name + " leave nothing.",
                     "Check its widths, its thickness and its end cuts.", span});
    return;
  }
  finish_end(builder, part, member.from_end, false, hosts[0]);
  finish_end(builder, part, member.to_end, true, hosts[1]);
  builder.measure(part, "line, end to end", length);
  if (std::abs(b.z - a.z) > std::hypot(b.x - a.x, b.y - a.y))
    state_lean(builder, part, a.z < b.z ? a : b, a.z < b.z ? b : a);
}

}  // namespace splay::constructs
