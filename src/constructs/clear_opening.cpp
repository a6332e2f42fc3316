#include <algorithm>
#include <cmath>

#include "constructs/clear_opening.h"
#include "constructs/section.h"
#include "joinery/draft.h"

namespace splay::constructs {

namespace {

constexpr double into = 0.5;       // mm behind the front plane where it is looked for
constexpr double room = 50;        // mm round the item
constexpr double straight = 1e-6;  // sine of a turn that is none

// Without the points in which parts meet along a straight line.
Polygon without_straight_points(const Polygon& polygon) {
  Polygon result;
  const std::size_t n = polygon.size();
  for (std::size_t i = 0; i < n; ++i) {
    const Vec2 in = polygon[i] - polygon[(i + n - 1) % n], on = polygon[(i + 1) % n] - polygon[i];
    if (norm(in) > 1e-9 && norm(on) > 1e-9 && std::abs(cross(unit(in), unit(on))) > straight)
      result.push_back(polygon[i]);
  }
  return result;
}

// Anticlockwise as the front is seen, from the lowest corner, of two the left one.
Polygon from_lowest_left(Polygon polygon) {
  if (signed_area(polygon) < 0) std::reverse(polygon.begin(), polygon.end());
  const auto first = std::min_element(polygon.begin(), polygon.end(), [](Vec2 a, Vec2 b) {
    return std::abs(a.y - b.y) > 1e-6 ? a.y < b.y : a.x < b.x;
  });
  std::rotate(polygon.begin(), first, polygon.end());
  return polygon;
}

std::vector<Polygon> clear_openings(const parts::Builder& builder, const std::vector<int>& parts,
                                    double front) {
  Box box;
  std::vector<Solid> bodies;
  for (const int part : parts) {
    bodies.push_back(builder.part(part).body.transformed(builder.part(part).place));
    box.add(bodies.back().bounds().low);
    box.add(bodies.back().bounds().high);
  }
  const Vec3 low{box.low.x - room, front, box.low.z - room};
  const Vec3 high{box.high.x + room, front + 2 * into, box.high.z + room};
  Solid air = Solid::box(low, high);
  for (const Solid& body : bodies) air.subtract(body);
  std::vector<Polygon> openings;
  for (const Face& face : air.section({world_front, -(front + into)})) {
    Polygon polygon;
    bool outside = false;
    for (const Vec3 p : face.loops.front()) {
      polygon.push_back({p.x, p.z});
      outside = outside || p.x < low.x + 1 || p.x > high.x - 1;
    }
    polygon = without_straight_points(polygon);
    if (!outside && polygon.size() >= 3) openings.push_back(from_lowest_left(polygon));
  }
  std::sort(openings.begin(), openings.end(), [](const Polygon& a, const Polygon& b) {
    return a.front().y != b.front().y ? a.front().y < b.front().y : a.front().x < b.front().x;
  });
  return openings;
}

Vec2 middle_of(const Polygon& polygon) {
  Vec2 sum;
  for (const Vec2 p : polygon) sum = sum + p;
  return sum * (1.0 / static_cast<double>(polygon.size()));
}

}  // namespace

void OpeningChoice::opening_fields(model::FieldVisitor& visit) {
  using model::may;
  using model::Range;
  visit.text(may("of", "the item whose clear opening it fills, built before it",
                 "the opening is stated by its sizes"),
             of, model::Refers::to_item);
  visit.lengths(may("within",
                    "of: a point inside the opening, [x, z], where there are more than "
                    "one",
                    "the only one"),
                within, Range::place());
  visit.table(may("opening", "the clear opening by its sizes, as the front is seen"), opening);
  visit.lengths(may("at", "opening: where its lowest left corner stands on the front, [x, y, z]"),
                at, Range::place());
}

void OpeningChoice::check_opening(SourceSpan owner, model::Complaints& complaints) const {
  check_point(at, complaints);
  if (of.given == opening.given)
    complaints.complain(
        {of.given ? opening.span : owner, of.given ? "not-together" : "missing-field",
         of.given ? "two openings" : "nothing says which opening",
         "either of = the name of a case, or opening = { ... }", "say what it fills"});
  if (of.given && at.given)
    complaints.complain({at.span, "not-together", "a place beside `of`",
                         "`at` belongs to opening = { ... }",
                         "leave it out: the opening stands where its item does"});
  if (within.given && (!of.given || within->size() != 2))
    complaints.complain({within.span, "wrong-count", "a point that names no opening",
                         "of = \"...\" beside within = [x, z]", "two lengths: to the right, up"});
}

std::optional<ClearOpening> find_opening(parts::Builder& builder, const OpeningChoice& choice,
                                         const model::Item& owner) {
  if (!choice.of.given)
    return ClearOpening{from_lowest_left(choice.opening.polygon()),
                        {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}, point_of(choice.at)},
                        -1};
  const auto& items = builder.project().items;
  int item = -1;
  for (std::size_t i = 0; i < items.size(); ++i)
    if (items[i]->name == *choice.of) item = static_cast<int>(i);
  std::vector<int> parts;
  double front = 1e300;
  for (int i = 0; i < builder.count(); ++i) {
    const parts::Part& part = builder.part(i);
    if (part.item != item || part.body.empty()) continue;
    parts.push_back(i);
    front = std::min(front, part.body.transformed(part.place).bounds().low.y);
  }
  const auto refused = [&](std::string code, std::string text, std::string remedy, SourceSpan at) {
    refuse(builder, {std::move(code), owner.name, std::move(text), std::move(remedy), at});
    return std::nullopt;
  };
  if (parts.empty())
    return refused("nothing-to-close",
                   owner.name + " closes " + *choice.of + ", and nothing of it was built before.",
                   "Put it behind " + *choice.of + " in the file.", choice.of.span);
  const std::vector<Polygon> openings = clear_openings(builder, parts, front);
  std::vector<Polygon> chosen;
  std::string list;
  for (const Polygon& each : openings) {
    const Vec2 middle = middle_of(each);
    list += (list.empty() ? "round " : "; ") + joinery::figure(builder, middle.x) + ", " +
            joinery::figure(builder, middle.y);
    if (!choice.within.given || contains(each, {(*choice.within)[0].mm, (*choice.within)[1].mm}))
      chosen.push_back(each);
  }
  if (openings.empty() || (choice.within.given && chosen.empty()))
    return refused("no-opening",
                   openings.empty() ? "The front of " + *choice.of + " has no clear opening."
                                    : "No clear opening of " + *choice.of + " is at that point.",
                   openings.empty() ? "State the opening by its sizes."
                                    : "Its openings lie " + list + " (to the right, up).",
                   choice.within.given ? choice.within.span : choice.of.span);
  if (chosen.size() > 1)
    return refused(
        "which-opening",
        "The front of " + *choice.of + " has " + std::to_string(chosen.size()) + " clear openings.",
        "Say within = [x, z]: they lie " + list + " (to the right, up).", choice.of.span);
  return ClearOpening{chosen.front(), {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}, {0, front, 0}}, item};
}

int part_at(const parts::Builder& builder, const std::vector<int>& among, Vec3 point) {
  constexpr double half = 0.2;
  for (const int i : among) {
    const parts::Part& part = builder.part(i);
    const Vec3 local = part.place.local_point(point), corner{half, half, half};
    if (overlap_volume(part.body, Solid::box(local - corner, local + corner)) > half * half * half)
      return i;
  }
  return -1;
}

}  // namespace splay::constructs
