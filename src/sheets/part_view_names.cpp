#include "sheets/part_view_names.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "drafting/callout.h"
#include "drafting/conventions.h"
#include "ink/outline.h"

namespace splay::sheets {

namespace {

using parts::Side;

constexpr double descent = 0.3;  // of the capital height, below the base line

Vec2 text_size(const drafting::Kit& kit, const std::string& words, double height, ink::Face face) {
  return {kit.width(words, height, face), height * (1 + descent)};
}

ink::Text text_in(ink::Rect place, std::string words, double height, ink::Face face) {
  return {{drafting::middle(place).x, place.high.y - height},
          std::move(words),
          height,
          0,
          ink::Align::centre,
          face};
}

// The middle of a box's side in a direction on paper.
Vec2 side_middle(ink::Rect box, Vec2 to) {
  const Vec2 half{box.width() / 2, box.height() / 2};
  return drafting::middle(box) + Vec2{to.x * half.x, to.y * half.y};
}

// The strip of a box along its side in a direction, wide enough for a text of this size.
ink::Rect band_along(ink::Rect box, Vec2 to, Vec2 size) {
  constexpr double air = 5;
  if (to.x < 0) box.high.x = std::min(box.high.x, box.low.x + size.x + air);
  if (to.x > 0) box.low.x = std::max(box.low.x, box.high.x - size.x - air);
  if (to.y < 0) box.high.y = std::min(box.high.y, box.low.y + size.y + air);
  if (to.y > 0) box.low.y = std::max(box.low.y, box.high.y - size.y - air);
  return box;
}

}  // namespace

void Names::put(ink::Group group) {
  room_.take(sheet_.kit(), ink::Item(group));
  items_.emplace_back(std::move(group));
}

std::optional<ink::Rect> Names::find(Vec2 wanted, Vec2 size, ink::Rect within) const {
  // Square rings of places around the wanted one, the nearest of the first ring with a free one.
  const Vec2 half = size * 0.5;
  const ink::Rect centres{within.low + half, within.high - half};
  if (centres.width() < 0 || centres.height() < 0) return std::nullopt;
  const Vec2 start{std::clamp(wanted.x, centres.low.x, centres.high.x),
                   std::clamp(wanted.y, centres.low.y, centres.high.y)};
  const int rings = static_cast<int>(std::max(centres.width(), centres.height()));
  // Steps that may lead to a place inside.
  const auto steps = [](double length) { return static_cast<int>(std::ceil(length)); };
  const int left = steps(start.x - centres.low.x), right = steps(centres.high.x - start.x);
  const int down = steps(start.y - centres.low.y), up = steps(centres.high.y - start.y);
  for (int ring = 0; ring <= rings; ++ring) {
    std::optional<ink::Rect> best;
    double least = 1e300;
    for (int i = std::max(-ring, -left); i <= std::min(ring, right); ++i) {
      const bool side = std::abs(i) == ring;
      const int stride = side ? 1 : std::max(2 * ring, 1);
      const int first = side ? std::max(-ring, -down) : -ring;
      for (int k = first; k <= std::min(ring, up); k += stride) {
        const Vec2 centre = start + Vec2{static_cast<double>(i), static_cast<double>(k)};
        const ink::Rect place{centre - half, centre + half};
        const bool inside = place.low.x >= within.low.x && place.low.y >= within.low.y &&
                            place.high.x <= within.high.x && place.high.y <= within.high.y;
        if (!inside) continue;
        const Vec2 away = centre - wanted;
        const double off = dot(away, away);
        if (off >= least || !room_.free(place, 0.9)) continue;
        best = place;
        least = off;
      }
    }
    if (best) return best;
  }
  return std::nullopt;
}

bool Names::near(Vec2 place, const std::string& words, double reach) {
  const double height = sheet_.kit().look.lettering;
  const Vec2 size = text_size(sheet_.kit(), words, height, ink::Face::italic);
  const ink::Rect within{place - size * 0.5 - Vec2{reach + size.x / 2, reach},
                         place + size * 0.5 + Vec2{reach + size.x / 2, reach}};
  const auto found = find(place, size, within);
  if (!found) return false;
  put({"note", {text_in(*found, words, height, ink::Face::italic)}});
  return true;
}

void Names::on_face(const SideView& face, const drafting::Placement& placement) {
  const ink::Rect box = placement.paper(face.box);
  trenches(face, placement);
  title(face, box);
  sides(face, box);
  grain(face, box);
}

void Names::title(const SideView& face, ink::Rect box) {
  const drafting::Kit& kit = sheet_.kit();
  const bool show = face.side == Side::z_high || sheet_.part.show == parts::ShowFace::either;
  const double height = kit.look.figures, mark = show ? 8.0 : 0.0;
  const std::string& words = sheet_.name(face.side);
  const Vec2 text = text_size(kit, words, height, ink::Face::bold);
  const Vec2 size{text.x + mark, std::max(text.y, mark)};
  const auto place = find(drafting::middle(box), size, box);
  if (!place) return;
  const double base = drafting::middle(*place).y - height / 2;
  ink::Group group{"note", {}};
  group.items.emplace_back(
      ink::Text{{place->low.x + mark, base}, words, height, 0, ink::Align::left, ink::Face::bold});
  if (show)
    drafting::append(
        group.items,
        drafting::face_side_mark(kit, {place->low.x + 3, drafting::middle(*place).y}, 6).items);
  put(std::move(group));
}

void Names::sides(const SideView& face, ink::Rect box) {
  const drafting::Kit& kit = sheet_.kit();
  const double height = kit.look.lettering;
  for (const Vec2 to : {Vec2{-1, 0}, Vec2{1, 0}, Vec2{0, 1}, Vec2{0, -1}}) {
    const Side side = side_seen(face.view.right * to.x + face.view.up * to.y);
    const std::string& words = sheet_.name(side);
    if (words.empty()) continue;
    const Vec2 size = text_size(kit, words, height, ink::Face::italic);
    const Vec2 inwards{to.x * (size.x / 2 + 1.5), to.y * (size.y / 2 + 1.5)};
    // Two names across a narrow face could be taken for each other's.
    const bool narrow = to.x != 0 && box.width() < 2 * size.x + 2;
    auto place = narrow ? std::nullopt
                        : find(side_middle(box, to) - inwards, size, band_along(box, to, size));
    // Too narrow a face: the ends and the edges of one that stands are named outside it, the others
    // by their own view.
    if (!place && (narrow || side == Side::x_low || side == Side::x_high)) {
      const Vec2 outside = side_middle(box, to) + Vec2{to.x * (size.x / 2 + 3), to.y * size.y};
      place = find(outside, size, {outside - size - Vec2{12, 12}, outside + size + Vec2{12, 12}});
    }
    if (place) put({"note", {text_in(*place, words, height, ink::Face::italic)}});
  }
}

void Names::trenches(const SideView& face, const drafting::Placement& placement) {
  for (const Opening& opening : openings_on(sheet_, face.side)) {
    const std::string mark = neighbour_mark(sheet_, *opening.operation);
    const std::string words = operation_words(sheet_, *opening.operation);
    drafting::Callout callout;
    callout.tip = placement.paper(face.view.project(opening.at));
    callout.lines = {mark.empty() ? words : words + " (" + mark + ")"};
    if (!mark.empty()) callout.link = part_anchor(mark);
    label(callout, mark);
  }
}

// The label with its leader, if its words stand free and its dot on no others.
std::optional<ink::Group> Names::labelled(const drafting::Callout& callout) const {
  const Vec2 dot{1, 1};
  if (room_.over_text(drafting::quad({callout.tip - dot, callout.tip + dot}))) return std::nullopt;
  drafting::Room tried = room_;
  ink::Group group = drafting::place_labels(sheet_.kit(), tried, {&callout, 1}).front();
  const bool free = std::ranges::all_of(group.items, [&](const ink::Item& item) {
    const auto* text = std::get_if<ink::Text>(&item);
    return text == nullptr || room_.free(sheet_.kit().fonts->box(*text), 0.5);
  });
  return free ? std::optional(std::move(group)) : std::nullopt;
}

// A leader that runs far or over more than what it comes out of is taken for a line of the work.
bool Names::leads_clear(const ink::Group& group) const {
  constexpr double most_long = 16;  // mm
  constexpr int most_crossed = 2;
  for (const ink::Item& item : group.items) {
    const auto* stroke = std::get_if<ink::Stroke>(&item);
    if (stroke == nullptr) continue;
    for (const ink::Polyline& line : ink::flatten(stroke->path)) {
      const Vec2 from = line.points.front(), to = line.points.back();
      if (norm(to - from) > most_long || room_.lines_crossed(from, to) > most_crossed) return false;
    }
  }
  return true;
}

// Where the words have no place near by, the mark of what fits there says it. What finds no free
// place is left out: the detail of the opening has its name too.
void Names::label(const drafting::Callout& words, const std::string& mark) {
  std::optional<ink::Group> group = labelled(words);
  if (!mark.empty() && (!group || !leads_clear(*group))) {
    drafting::Callout brief = words;
    brief.lines = {mark};
    brief.height = sheet_.kit().look.figures;
    std::optional<ink::Group> other = labelled(brief);
    if (other && (!group || leads_clear(*other))) group = std::move(other);
  }
  if (group) put(std::move(*group));
}

void Names::grain(const SideView& face, ink::Rect box) {
  if (sheet_.part.grain != parts::Grain::along_x) return;
  const drafting::Kit& kit = sheet_.kit();
  const bool across = std::abs(face.view.right.x) > 0.5;
  constexpr double length = 16;
  const Vec2 size = across ? Vec2{length, 3} : Vec2{3, length};
  const auto place = find(drafting::middle(box) - Vec2{0, 6}, size, box);
  if (!place) return;
  const double turn = across ? 0 : std::numbers::pi / 2;
  put(drafting::grain_arrow(kit, drafting::middle(*place), length, turn));
}

void Names::beside(const SideView& side, ink::Rect box, Vec2 to) {
  const std::string& words = sheet_.name(side.side);
  if (words.empty()) return;
  const Vec2 size = text_size(sheet_.kit(), words, sheet_.kit().look.lettering, ink::Face::italic);
  near(side_middle(box, to) + Vec2{to.x * (size.x / 2 + 2), to.y * (size.y / 2 + 2)}, words, 14);
}

}  // namespace splay::sheets
