#include "constructs/outline.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/figure.h"

namespace splay::constructs {

namespace {

using model::Given;
using model::may;
using model::Range;

constexpr double agreement = 0.01;  // mm: what an author's rounded figures may differ by

std::string mm_text(double mm) {
  return plain_number(mm, 2) + " mm (" + plain_number(mm / Length::mm_per_inch, 4) + " in)";
}

// The four numbers of a four-sided outline once those left out are filled in.
struct Trapezoid {
  double bottom = 0, top = 0, height = 0, left = 0, right = 0;  // left and right: tangent of lean
};

struct Leans {
  int given = 0;  // 0, 1 for both sides, 2
  double left = 0, right = 0;
};

Leans leans(const Given<std::vector<Angle>>& lean_in) {
  Leans result;
  result.given = lean_in.given ? static_cast<int>(lean_in->size()) : 0;
  if (result.given >= 1) result.left = result.right = std::tan((*lean_in)[0].rad);
  if (result.given == 2) result.right = std::tan((*lean_in)[1].rad);
  return result;
}

std::optional<Trapezoid> resolve(const Outline& o) {
  const Leans lean = leans(o.lean_in);
  const double sum = lean.left + lean.right;
  Trapezoid t{o.bottom->mm, o.top->mm, o.height->mm, lean.left, lean.right};
  const int sizes = int{o.bottom.given} + int{o.top.given} + int{o.height.given};
  if (sizes + (lean.given > 0 ? 1 : 0) < 3) {
    if (!(o.bottom.given && o.height.given)) return std::nullopt;
    t.top = t.bottom;  // nothing leans
    return t;
  }
  if (!o.top.given) t.top = t.bottom - t.height * sum;
  if (!o.bottom.given) t.bottom = t.top + t.height * sum;
  if (!o.height.given) {
    if (std::abs(sum) < 1e-9) return std::nullopt;
    t.height = (t.bottom - t.top) / sum;
  }
  if (lean.given == 0) t.left = t.right = (t.bottom - t.top) / (2 * t.height);
  return t;
}

Polygon corners_of(const Trapezoid& t) {
  const double shift = std::max(0.0, -t.left * t.height);  // a side that leans out to the left
  return {{shift, 0},
          {shift + t.bottom, 0},
          {shift + t.bottom - t.right * t.height, t.height},
          {shift + t.left * t.height, t.height}};
}

Polygon regular_polygon(const Outline& o) {
  const int n = o.sides.value;
  const double half = std::numbers::pi / n;
  double radius = 0;
  if (o.side.given) radius = o.side->mm / (2 * std::sin(half));
  if (o.across_flats.given) radius = o.across_flats->mm / (2 * std::cos(half));
  if (o.across_corners.given) radius = o.across_corners->mm / 2;
  // The first corner is the left end of the lowest side, or the lowest corner.
  const double start = -std::numbers::pi / 2 - (o.rests.value == Resting::on_a_side ? half : 0);
  Polygon polygon;
  for (int i = 0; i < n; ++i)
    polygon.push_back(
        {radius * std::cos(start + 2 * half * i), radius * std::sin(start + 2 * half * i)});
  Vec2 low = polygon.front();
  for (const Vec2 p : polygon) low = {std::min(low.x, p.x), std::min(low.y, p.y)};
  for (Vec2& p : polygon) p = p - low;
  return polygon;
}

void complain_disagreement(const Outline& o, const Trapezoid& t, const std::string& four, bool plan,
                           model::Complaints& complaints) {
  // Which of them is odd can't be known; the last one is named, with what the others make it.
  const double from_rest = t.bottom - t.height * (t.left + t.right);
  complaints.complain({o.top.span, "over-determined",
                       (plan ? "back is " : "top is ") + mm_text(o.top->mm) +
                           ", but the others make it " + mm_text(from_rest) + ": off by " +
                           mm_text(std::abs(o.top->mm - from_rest)),
                       "three of " + four + " fix the outline; a fourth must agree within 0.01 mm",
                       "leave out the one you trust least"});
}

}  // namespace

void Outline::fields(model::FieldVisitor& visit) {
  using model::choose;
  const bool plan = seen_from_above;
  const std::string_view open = "found from the others";
  visit.length(plan ? may("front", "width at the front", open)
                    : may("bottom", "level width at the foot", open),
               bottom, Range::size());
  visit.length(
      plan ? may("back", "width at the back", open) : may("top", "level width at the top", open),
      top, Range::size());
  visit.length(plan ? may("deep", "front to back", open) : may("height", "plumb height", open),
               height, Range::size());
  visit.angles(plan ? may("taper_in",
                          "how far the left and right sides turn in towards the back; one "
                          "angle for both, negative turns out",
                          open)
                    : may("lean_in",
                          "how far the left and right sides lean in from plumb; one angle "
                          "for both, negative leans out",
                          open),
               lean_in, Range::degrees(-75, 75));
  visit.points(plan ? may("corners",
                          "every corner as [x, y], anticlockwise as seen from above, from "
                          "the front left",
                          "the outline is four-sided or regular")
                    : may("corners",
                          "every corner as [x, z], anticlockwise as the front is seen, from "
                          "the lowest left",
                          "the outline is four-sided or regular"),
               corners);
  visit.count(may("sides", "number of sides of a regular outline"), sides, Range::between(3, 60));
  visit.length(may("side", "length of one side of a regular outline"), side, Range::size());
  visit.length(may("across_flats", "regular outline: twice the distance from the centre to a side"),
               across_flats, Range::size());
  visit.length(
      may("across_corners", "regular outline: twice the distance from the centre to a corner"),
      across_corners, Range::size());
  choose<Resting, 2>(visit, may("rests", "what a regular outline stands on"), rests,
                     {"on a side", "on a corner"});
  if (has_rebate)
    choose<Measured, 3>(visit,
                        may("measured",
                            "whether these sizes are outside the members, inside them (the sight "
                            "size) or in the rebate"),
                        measured, {"outside", "inside", "rebate"});
  else
    choose<Measured, 2>(visit,
                        may("measured", "whether these sizes are outside or inside the panels"),
                        measured, {"outside", "inside"});
  visit.texts(may("names", "a name for each side, in the order of the corners",
                  plan ? "front, right, back, left; or side 1, side 2, ..."
                       : "bottom, right, top, left; or side 1, side 2, ..."),
              names);
}

std::string Outline::four_words() const {
  return seen_from_above ? "front, back, deep and taper_in" : "bottom, top, height and lean_in";
}

bool Outline::regular() const { return side.given || across_flats.given || across_corners.given; }
bool Outline::four_sided() const { return !corners.given && !regular(); }

Polygon Outline::polygon() const {
  if (corners.given) {
    Polygon polygon = *corners;
    if (signed_area(polygon) < 0) std::reverse(polygon.begin() + 1, polygon.end());
    return polygon;
  }
  if (regular()) return regular_polygon(*this);
  const std::optional<Trapezoid> t = resolve(*this);
  return t ? corners_of(*t) : Polygon{};
}

std::vector<std::string> Outline::edge_names() const {
  if (names.given) return *names;
  const std::size_t n = corners.given ? corners->size() : static_cast<std::size_t>(sides.value);
  const bool square = regular() && n == 4 && rests.value == Resting::on_a_side;
  if (four_sided() || square)
    return seen_from_above ? std::vector<std::string>{"front", "right", "back", "left"}
                           : std::vector<std::string>{"bottom", "right", "top", "left"};
  std::vector<std::string> result;
  for (std::size_t i = 1; i <= n; ++i) result.push_back("side " + std::to_string(i));
  return result;
}

void Outline::check(model::Complaints& complaints) const {
  if (!given) return;
  const auto complain = [&](SourceSpan at, std::string code, std::string found, std::string allowed,
                            std::string hint) {
    complaints.complain(
        {at, std::move(code), std::move(found), std::move(allowed), std::move(hint)});
  };
  const int regular_sizes = int{side.given} + int{across_flats.given} + int{across_corners.given};
  const bool trapezoid_size = bottom.given || top.given || height.given || lean_in.given;
  if (int{corners.given} + int{regular_sizes > 0} + int{trapezoid_size} > 1 || regular_sizes > 1) {
    complain(span, "mixed-outline", "an outline stated in more than one way",
             "corners; or sides with one of side, across_flats, across_corners; or " + four_words(),
             "keep one way and leave the others out");
    return;
  }
  if (lean_in.given && (lean_in->empty() || lean_in->size() > 2)) {
    complain(lean_in.span, "wrong-count", std::to_string(lean_in->size()) + " leans",
             "one angle for both sides, or two: left, right",
             "write lean_in = [\"12 deg\", \"8 deg\"]");
    return;
  }
  if (four_sided()) {
    const std::optional<Trapezoid> t = resolve(*this);
    if (!t) {
      complain(span, "missing-size", "an outline that is not fixed yet",
               "two of them when nothing leans, or three of " + four_words(),
               "add the size that is missing");
      return;
    }
    if (bottom.given && top.given && height.given && lean_in.given &&
        std::abs(t->bottom - t->height * (t->left + t->right) - t->top) > agreement) {
      complain_disagreement(*this, *t, four_words(), seen_from_above, complaints);
      return;
    }
    if (t->top <= 0 || t->height <= 0 || t->bottom <= 0) {
      complain(span, "impossible-outline",
               "a top width of " + mm_text(t->top) + " and a height of " + mm_text(t->height),
               "sizes above zero", "less lean or less height: the sides meet before the top");
      return;
    }
  }
  const Polygon shape = polygon();
  if (shape.size() < 3 || !is_simple(shape))
    complain(corners.given ? corners.span : span, "impossible-outline",
             "an outline that crosses itself or has fewer than three corners",
             "a closed polygon whose sides touch only at corners",
             "check the order of the corners");
  if (names.given && names->size() != shape.size())
    complain(names.span, "wrong-count", std::to_string(names->size()) + " names",
             std::to_string(shape.size()) + " names, one for each side", "name every side once");
}

}  // namespace splay::constructs
