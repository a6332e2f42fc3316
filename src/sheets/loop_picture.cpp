#include "sheets/loop_picture.h"

#include <algorithm>

namespace splay::sheets {

namespace {

// Square to the loop's middle plane, on the side from which it runs anticlockwise (Newell's
// method).
Vec3 normal_of(const std::vector<Vec3>& corners) {
  Vec3 sum;
  for (std::size_t i = 0; i < corners.size(); ++i)
    sum = sum + cross(corners[i], corners[(i + 1) % corners.size()]);
  return unit(sum);
}

std::vector<Vec2> laid_flat(const std::vector<Vec3>& corners) {
  const Vec3 ex = unit(corners[1] - corners[0]);
  const Vec3 ey = unit(cross(normal_of(corners), ex));
  std::vector<Vec2> flat;
  flat.reserve(corners.size());
  for (const Vec3 p : corners) flat.push_back({dot(p, ex), dot(p, ey)});
  return flat;
}

ink::Rect rect_round(const std::vector<Vec2>& points) {
  ink::Rect box = drafting::no_rect();
  for (const Vec2 p : points) box = drafting::joined(box, {p, p});
  return box;
}

}  // namespace

std::vector<LoopMeasure> measures_of(const parts::CheckLoop& loop) {
  const std::size_t n = loop.corners.size();
  std::vector<LoopMeasure> measures;
  const auto add = [&](std::size_t i, std::size_t j, bool diagonal) {
    measures.push_back({i + 1, j + 1, norm(loop.corners[j] - loop.corners[i]), diagonal});
  };
  for (std::size_t i = 0; i < n; ++i) add(i, (i + 1) % n, false);
  for (std::size_t i = 0; n > 3 && i < n; ++i) {
    const std::size_t j = i + n / 2;
    if (j < n) add(i, j, true);
    if (n % 2 == 1 && j + 1 < n) add(i, j + 1, true);
  }
  return measures;
}

namespace {

// Outside the corners; those of a short side give way to each other along it.
std::vector<Vec2> number_places(const std::vector<Vec2>& corners, Vec2 centre, double number) {
  std::vector<Vec2> places;
  places.reserve(corners.size());
  for (const Vec2 corner : corners)
    places.push_back(corner + unit(corner - centre) * (0.9 * number));
  const double apart = 1.2 * number;
  for (std::size_t i = 0; i < places.size(); ++i) {
    const std::size_t next = (i + 1) % places.size();
    const Vec2 along = unit(corners[next] - corners[i]);
    const double missing = apart - dot(places[next] - places[i], along);
    if (missing <= 0) continue;
    places[i] = places[i] - along * (missing / 2);
    places[next] = places[next] + along * (missing / 2);
  }
  return places;
}

}  // namespace

drafting::Picture loop_picture(const drafting::Kit& kit, const parts::CheckLoop& loop, double width,
                               double height) {
  const double number = kit.look.figures, room = 2 * number;  // round the outline
  std::vector<Vec2> corners = laid_flat(loop.corners);
  const ink::Rect box = rect_round(corners);
  const double scale = std::min((width - 2 * room) / std::max(box.width(), 1e-6),
                                (height - 2 * room) / std::max(box.height(), 1e-6));
  drafting::Picture picture{{}, width, box.height() * scale + 2 * room};
  const Vec2 centre{width / 2, -picture.height / 2};
  for (Vec2& p : corners) p = centre + (p - drafting::middle(box)) * scale;
  ink::Group group{"view", {}};
  ink::Path diagonals;
  for (const LoopMeasure& m : measures_of(loop))
    if (m.diagonal) diagonals.move(corners[m.from - 1]).line(corners[m.to - 1]);
  if (!diagonals.verbs.empty())
    group.items.emplace_back(ink::Stroke{std::move(diagonals), kit.centre()});
  group.items.emplace_back(ink::Stroke{ink::Path{}.polygon(corners), kit.visible()});
  const std::vector<Vec2> places = number_places(corners, centre, number);
  for (std::size_t i = 0; i < places.size(); ++i)
    group.items.emplace_back(ink::Text{places[i] - Vec2{0, number / 2}, std::to_string(i + 1),
                                       number, 0, ink::Align::centre, ink::Face::bold});
  picture.items.emplace_back(std::move(group));
  return picture;
}

}  // namespace splay::sheets
