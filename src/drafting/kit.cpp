#include "drafting/kit.h"

#include <algorithm>
#include <iterator>
#include <utility>

#include "ink/outline.h"

namespace splay::drafting {

namespace {

struct Mover {
  Vec2 by;
  void path(ink::Path& path) const {
    for (Vec2& point : path.points) point = point + by;
  }
  void operator()(ink::Stroke& stroke) const { path(stroke.path); }
  void operator()(ink::Fill& fill) const { path(fill.path); }
  void operator()(ink::Text& text) const { text.at = text.at + by; }
  void operator()(ink::DimensionClaim& claim) const {
    claim.from = claim.from + by;
    claim.to = claim.to + by;
  }
  void operator()(ink::PartClaim&) const {}
  void operator()(ink::Anchor& anchor) const { anchor.at = anchor.at + by; }
  void operator()(ink::Link& link) const { link.area = {link.area.low + by, link.area.high + by}; }
  void operator()(ink::Group& group) const {
    for (ink::Item& item : group.items) std::visit(*this, item);
  }
};

void include(ink::Rect& box, const ink::Path& path) {
  for (const ink::Polyline& line : ink::flatten(path, 0.05))
    for (const Vec2 point : line.points) drafting::include(box, point);
}

}  // namespace

ink::Item moved(ink::Item item, Vec2 by) {
  std::visit(Mover{by}, item);
  return item;
}

Items moved(Items items, Vec2 by) {
  for (ink::Item& item : items) std::visit(Mover{by}, item);
  return items;
}

ink::Rect extent(const Kit& kit, const Items& items) {
  ink::Rect box = no_rect();
  ink::walk(items, [&](const ink::Item& item) {
    if (const auto* stroke = std::get_if<ink::Stroke>(&item)) {
      include(box, stroke->path);
    } else if (const auto* fill = std::get_if<ink::Fill>(&item)) {
      include(box, fill->path);
    } else if (const auto* text = std::get_if<ink::Text>(&item)) {
      for (const Vec2 corner : kit.fonts->box(*text)) include(box, corner);
    } else if (const auto* link = std::get_if<ink::Link>(&item)) {
      include(box, link->area.low);
      include(box, link->area.high);
    }
  });
  return box;
}

ink::Rect grown(ink::Rect r, double by) { return {r.low - Vec2{by, by}, r.high + Vec2{by, by}}; }

void include(ink::Rect& box, Vec2 point) {
  box.low = {std::min(box.low.x, point.x), std::min(box.low.y, point.y)};
  box.high = {std::max(box.high.x, point.x), std::max(box.high.y, point.y)};
}

ink::Rect joined(ink::Rect a, ink::Rect b) {
  return {{std::min(a.low.x, b.low.x), std::min(a.low.y, b.low.y)},
          {std::max(a.high.x, b.high.x), std::max(a.high.y, b.high.y)}};
}

bool overlap(ink::Rect a, ink::Rect b) {
  return a.low.x < b.high.x && b.low.x < a.high.x && a.low.y < b.high.y && b.low.y < a.high.y;
}

void append(Items& items, Items more) {
  items.insert(items.end(), std::make_move_iterator(more.begin()),
               std::make_move_iterator(more.end()));
}

void append(Items& items, std::vector<ink::Group> groups) {
  for (ink::Group& group : groups) items.emplace_back(std::move(group));
}

}  // namespace splay::drafting
