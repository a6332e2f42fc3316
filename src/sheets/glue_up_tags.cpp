#include "sheets/glue_up_tags.h"

#include <algorithm>
#include <cmath>

#include "drafting/dimension.h"

namespace splay::sheets {

Tags::Tags(const Context& context, const drafting::Picture& picture, std::vector<Polygon> wood)
    : kit_(context.kit), area_{{0, -picture.height}, {picture.width, 0}}, wood_(std::move(wood)) {}

void Tags::put(Vec2 tip, const std::string& words, std::ptrdiff_t own) {
  const double letter = kit_.look.lettering;
  const double air = 0.48 * letter;
  const Vec2 half{kit_.width(words, letter, ink::Face::bold) / 2 + air, letter / 2 + air};
  const Vec2 best = place_for(tip, half, own);
  const ink::Rect box{best - half, best + half};
  taken_.push_back(box);
  if (norm(best - tip) > 2) lines_.move(best).line(tip);
  ink::Group tag{"leader", {}};
  tag.items.emplace_back(ink::Fill{ink::Path{}.rect(box), 1});
  tag.items.emplace_back(ink::Stroke{ink::Path{}.rect(box), kit_.thin()});
  tag.items.emplace_back(ink::Text{
      {best.x, best.y - letter / 2}, words, letter, 0, ink::Align::centre, ink::Face::bold});
  tags_.push_back(std::move(tag));
}

void Tags::draw(drafting::Items& items) {
  if (!lines_.verbs.empty())
    items.emplace_back(ink::Group{"leader", {ink::Stroke{std::move(lines_), kit_.thin()}}});
  drafting::append(items, std::move(tags_));
}

bool Tags::free(ink::Rect box) const {
  const bool inside = box.low.x >= area_.low.x && box.high.x <= area_.high.x &&
                      box.low.y >= area_.low.y && box.high.y <= area_.high.y;
  return inside && std::ranges::none_of(taken_, [&](const ink::Rect& other) {
           return drafting::overlap(drafting::grown(box, 0.5), other);
         });
}

Vec2 Tags::place_for(Vec2 tip, Vec2 half, std::ptrdiff_t own) const {
  constexpr int rings = 14, around = 16;
  Vec2 best = tip;
  double least = 1e9;
  for (int ring = 0; ring <= rings && ring < least; ++ring)
    for (int k = 0; k < (ring == 0 ? 1 : around); ++k) {
      const double turn = 6.283185307179586 * k / around;
      const Vec2 at = tip + Vec2{std::cos(turn), std::sin(turn)} * (2.5 * ring);
      const ink::Rect box{at - half, at + half};
      if (!free(box)) continue;
      const double cost = ring + hidden(box, own);
      if (cost > least - 1e-9) continue;
      least = cost;
      best = at;
    }
  return best;
}

// What a box hides, in rings that it is worth to go further: other wood than its own, and its own
// where that is no larger than the box.
double Tags::hidden(ink::Rect box, std::ptrdiff_t own) const {
  constexpr int across = 5, up = 3;
  constexpr double of_others = 6, of_own = 4;
  int foreign = 0, inside = 0;
  for (int i = 0; i < across; ++i)
    for (int k = 0; k < up; ++k) {
      const Vec2 p = box.low + Vec2{box.width() * i / (across - 1), box.height() * k / (up - 1)};
      for (std::size_t w = 0; w < wood_.size(); ++w) {
        if (!contains(wood_[w], p)) continue;
        (static_cast<std::ptrdiff_t>(w) == own ? inside : foreign) += 1;
      }
    }
  const bool small = inside > 0 && inside < across * up;
  return of_others * foreign / (across * up) + (small ? of_own : 0);
}

}  // namespace splay::sheets
