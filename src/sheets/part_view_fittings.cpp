// Where the fittings of a part are: the centre, size and depth of what is drilled or let in for
// them, in running figures from the datums that the views measure from too.
#include <algorithm>
#include <cmath>
#include <map>

#include "sheets/part_view_wants.h"

namespace splay::sheets {

namespace {

using parts::Operation;
using parts::OperationKind;
using parts::Side;

constexpr double centred = 0.05;  // mm off a fitting's line that a hole for it may be
constexpr double on_face = 0.01;  // mm

struct Line {
  Vec3 at, along;
  Vec3 point(double where) const { return at + along * where; }
  double off(Vec3 p) const { return norm(cross(along, p - at)); }
  // Does it come within `reach` of the region?
  bool passes(const Region& region, double reach) const {
    double from = -1e300, to = 1e300;
    for (const Plane& plane : region) {
      const double rate = dot(plane.n, along), room = reach - plane.distance(at);
      if (rate > 1e-12)
        to = std::min(to, room / rate);
      else if (rate < -1e-12)
        from = std::max(from, room / rate);
      else if (room < 0)
        return false;
    }
    return from <= to;
  }
};

// What one operation takes out along a fitting's line.
struct Hole {
  OperationKind kind = OperationKind::hole;
  Solid body;
  double from = 0, to = 0;  // along the line
};

double bound(const PartSheet& sheet, Side side) {
  return std::max(0.0, dot(parts::outward(side), sheet.part.size));
}

// Those for a fitting of this length, which begins at the line's point: another one's may lie on
// the same line, at the part's other end. Length 0: not known.
std::vector<Hole> holes_on(const PartSheet& sheet, const Line& line, double length) {
  std::vector<Hole> holes;
  for (const Operation& operation : sheet.part.operations) {
    const bool pocket =
        operation.kind == OperationKind::hole || operation.kind == OperationKind::mortise;
    if (!pocket) continue;
    if (!line.passes(operation.removed, centred)) continue;
    Hole hole{operation.kind, Solid::box({0, 0, 0}, sheet.part.size), 0, 0};
    hole.body.keep(operation.removed);
    if (hole.body.empty() || line.off(hole.body.centroid()) > centred) continue;
    const double zero = dot(line.along, line.at);
    const auto [from, to] = hole.body.extent(line.along);
    hole.from = from - zero;
    hole.to = to - zero;
    const bool its_own = hole.to > on_face && hole.from < length - on_face;
    if (length > 0 && !its_own) continue;
    holes.push_back(std::move(hole));
  }
  return holes;
}

bool on_side(const PartSheet& sheet, Vec3 point, Side side) {
  return std::abs(dot(parts::outward(side), point) - bound(sheet, side)) < on_face;
}

// Where the line comes out of the part's box on one side of a hole.
struct Mouth {
  Side side = Side::z_high;
  Vec3 at;
};

std::optional<Mouth> mouth_of(const PartSheet& sheet, const Line& line,
                              const std::vector<Hole>& holes) {
  for (const Hole& hole : holes)
    for (const bool low : {true, false}) {
      const Side side = side_seen(low ? -line.along : line.along);
      const Vec3 out = parts::outward(side);
      // A slanting hole reaches the side at its furthest rim, its line a little before.
      if (std::abs(hole.body.extent(out)[1] - bound(sheet, side)) > on_face) continue;
      const double run = (bound(sheet, side) - dot(out, line.at)) / dot(out, line.along);
      return Mouth{side, line.point(run)};
    }
  return std::nullopt;
}

// The point lies over the side, not past its edges.
bool over(const PartSheet& sheet, Vec3 p, Side side) {
  const Vec3 out = parts::outward(side), size = sheet.part.size;
  const auto within = [](double at, double to) { return at > on_face && at < to - on_face; };
  return (std::abs(out.x) > 0.5 || within(p.x, size.x)) &&
         (std::abs(out.y) > 0.5 || within(p.y, size.y)) &&
         (std::abs(out.z) > 0.5 || within(p.z, size.z));
}

// For what lies on the part or beside it: its own place, on the nearest side that it runs along, or
// that it stands on.
Mouth nearest_mouth(const PartSheet& sheet, const Line& line) {
  Mouth best{Side::z_high, line.at};
  double least = 1e300;
  for (int i = 0; i < 6; ++i) {
    const auto side = static_cast<Side>(i);
    const bool runs_along = std::abs(dot(parts::outward(side), line.along)) <= 0.7;
    const bool stands_on = over(sheet, line.at, side) &&
                           dot(parts::outward(side), line.at) > bound(sheet, side) - on_face;
    if (!runs_along && !stands_on) continue;
    const double away = std::abs(dot(parts::outward(side), line.at) - bound(sheet, side));
    if (away >= least) continue;
    least = away;
    best.side = side;
  }
  return best;
}

std::string hole_words(const PartSheet& sheet, const Hole& hole, const Line& line, Side mouth) {
  const FigureStyle& figures = sheet.kit().figures;
  double radius = 0;
  for (const Vec3& vertex : hole.body.vertices()) radius = std::max(radius, line.off(vertex));
  std::string words;
  if (hole.kind == OperationKind::hole) {
    words = figures.text(2 * radius) + " wide";
  } else {
    const Vec3 size = hole.body.bounds().size();
    const Vec3 out = parts::outward(mouth);
    std::vector<double> sides;
    for (const Vec3 axis : {Vec3{1, 0, 0}, Vec3{0, 1, 0}, Vec3{0, 0, 1}})
      if (std::abs(dot(axis, out)) < 0.5) sides.push_back(dot(axis, size));
    words = figures.text(sides[0]) + " by " + figures.text(sides[1]);
  }
  const Vec3 far = line.point(dot(parts::outward(mouth), line.along) > 0 ? hole.from : hole.to);
  const bool through = on_side(sheet, far, parts::opposite(mouth));
  return words + (through ? ", through" : ", " + figures.text(hole.to - hole.from) + " deep");
}

// The two axes of a side, each from its datum: the low end of the length, the front edge, the show
// face.
struct Measured {
  Vec3 axis;
  std::string from;
};
std::vector<Measured> axes_of(const PartSheet& sheet, Side side) {
  std::vector<Measured> axes;
  for (const Side datum : {Side::x_low, front_edge(sheet.part), Side::z_high})
    if (std::abs(dot(parts::outward(datum), parts::outward(side))) < 0.5)
      axes.push_back({-parts::outward(datum), sheet.name(datum)});
  return axes;
}

using Place = std::pair<double, double>;

std::string figures_of(const FigureStyle& style, const std::vector<Place>& places, bool first) {
  std::string words;
  for (const Place& place : places) {
    const double at = first ? place.first : place.second;
    words += (words.empty() ? "" : ", ") + style.text(std::abs(at)) +
             (style.text(at).starts_with("-") ? " outside it" : "");
  }
  return words;
}

// Running figures; one for all where they agree.
std::string place_words(const PartSheet& sheet, Side side, std::vector<Place> places) {
  const FigureStyle& style = sheet.kit().figures;
  const std::vector<Measured> axes = axes_of(sheet, side);
  std::sort(places.begin(), places.end());
  const auto same = [&](bool first) {
    return std::all_of(places.begin(), places.end(), [&](const Place& each) {
      return style.round(first ? each.first : each.second) ==
             style.round(first ? places.front().first : places.front().second);
    });
  };
  const auto list = [&](bool first) {
    const std::vector<Place> one(places.begin(), places.begin() + 1);
    return axes[first ? 0 : 1].from + ": " + figures_of(style, same(first) ? one : places, first);
  };
  return "from the " + list(true) + "; from the " + list(false) + ".";
}

Line line_of(const PartSheet& sheet, const parts::Fitting& fitting) {
  return {sheet.part.place.local_point(fitting.at),
          unit(sheet.part.place.local_direction(fitting.axis))};
}

}  // namespace

std::vector<LaidFitting> laid_fittings(const PartSheet& sheet) {
  const int index = sheet.row.members.front();
  std::vector<LaidFitting> laid;
  for (const parts::Fitting& fitting : sheet.context.plan.assembly.fittings) {
    // A runner's place is its front end: its middle would mislead.
    if (std::ranges::find(fitting.parts, index) == fitting.parts.end() ||
        fitting.kind.ends_with("runner"))
      continue;
    const Line line = line_of(sheet, fitting);
    if (!holes_on(sheet, line, fitting.length).empty()) continue;
    const Mouth mouth = nearest_mouth(sheet, line);
    if (over(sheet, mouth.at, mouth.side)) laid.push_back({mouth.side, mouth.at, fitting.diameter});
  }
  return laid;
}

std::vector<std::string> fitting_lines(const PartSheet& sheet) {
  const int index = sheet.row.members.front();
  std::map<std::pair<std::string, Side>, std::vector<Place>> groups;
  std::vector<std::pair<std::string, Side>> order;
  for (const parts::Fitting& fitting : sheet.context.plan.assembly.fittings) {
    if (std::ranges::find(fitting.parts, index) == fitting.parts.end()) continue;
    const Line line = line_of(sheet, fitting);
    const std::vector<Hole> holes = holes_on(sheet, line, fitting.length);
    const std::optional<Mouth> open = mouth_of(sheet, line, holes);
    // A hole in an end that is cut at a slant doesn't reach the box: it opens where its fitting
    // enters, the first part along the axis, the others against it.
    const Vec3 way = index == fitting.parts.front() ? line.along : -line.along;
    const Mouth mouth = open            ? *open
                        : holes.empty() ? nearest_mouth(sheet, line)
                                        : Mouth{side_seen(-way), line.at};
    std::string words =
        capitalised(fitting.kind) + " " + fitting.size + ", " + sheet.name(mouth.side) + ": ";
    for (Hole hole : holes) {
      if (!open && index == fitting.parts.front()) hole.from = std::max(hole.from, 0.0);
      words += hole_words(sheet, hole, line, mouth.side) + "; ";
    }
    // A runner is given by where it begins.
    if (holes.empty())
      words +=
          fitting.kind.ends_with("runner") ? "its front end, at half its height, " : "its middle ";
    const std::vector<Measured> axes = axes_of(sheet, mouth.side);
    const auto along = [&](const Measured& each) {
      return dot(each.axis, mouth.at) +
             (each.axis.x + each.axis.y + each.axis.z < 0 ? -dot(each.axis, sheet.part.size) : 0);
    };
    const std::pair key{words, mouth.side};
    if (!groups.contains(key)) order.push_back(key);
    groups[key].emplace_back(along(axes[0]), along(axes[1]));
  }
  std::vector<std::string> lines;
  lines.reserve(order.size());
  for (const auto& key : order)
    lines.push_back(key.first + place_words(sheet, key.second, groups[key]));
  return lines;
}

}  // namespace splay::sheets
