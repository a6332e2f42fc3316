#include "geometry/painting_order.h"

#include <algorithm>
#include <functional>
#include <iterator>

#include "base/index.h"
#include "base/tolerance.h"

namespace splay {
namespace {

using Numbers = std::vector<std::size_t>;

// The fronts that lie on each plane of a solid's table, by plane and side.
class OnPlanes {
 public:
  OnPlanes(const Solid& solid, std::span<const Front> fronts, const Numbers& own)
      : fronts_(2 * solid.planes().size()) {
    for (const std::size_t f : own) {
      const Plane& merged = fronts[f].face->plane;
      for (std::size_t p = 0; p < solid.planes().size(); ++p) {
        const Plane& plane = solid.planes()[p];
        if (merged.n == plane.n && merged.d == plane.d) fronts_[2 * p].push_back(f);
        if (merged.n == -plane.n && merged.d == -plane.d) fronts_[2 * p + 1].push_back(f);
      }
    }
  }
  const Numbers& on(const CellFace& face) const {
    return fronts_[2 * index(face.plane) + (face.side > 0 ? 0 : 1)];
  }

 private:
  std::vector<Numbers> fronts_;
};

// What a cell has of a front: its own face, as its image.
struct Share {
  std::size_t front = 0;
  Polygon image;  // convex, anticlockwise
  Vec2 low{1e300, 1e300}, high{-1e300, -1e300};
};

Share share_of(std::size_t front, const CellFace& face, const Solid& solid, const View& view) {
  Share share{front, {}};
  for (const std::int32_t v : face.loop) {
    const Vec2 p = view.project(solid.vertices()[index(v)]);
    share.low = {std::min(share.low.x, p.x), std::min(share.low.y, p.y)};
    share.high = {std::max(share.high.x, p.x), std::max(share.high.y, p.y)};
    share.image.push_back(p);
  }
  return share;
}

// Does one of the share's edges, or its box, part it from an image?
bool apart(const Share& share, const FaceImage& image) {
  if (share.low.x >= image.high.x || image.low.x >= share.high.x || share.low.y >= image.high.y ||
      image.low.y >= share.high.y)
    return true;
  for (std::size_t i = 0; i < share.image.size(); ++i) {
    const Vec2 from = share.image[i], along = share.image[(i + 1) % share.image.size()] - from;
    const double on_edge = tolerance::on_plane * norm(along);
    if (std::ranges::all_of(image.loops[0],
                            [&](Vec2 p) { return cross(along, p - from) <= on_edge; }))
      return true;
  }
  return false;
}

// By solid and cell.
using Shares = std::vector<std::vector<std::vector<Share>>>;

Shares shares_of_cells(std::span<const Solid> solids, std::span<const Front> fronts,
                       const View& view) {
  std::vector<Numbers> own(solids.size());
  for (std::size_t f = 0; f < fronts.size(); ++f)
    if (!fronts[f].hidden) own[index(fronts[f].solid)].push_back(f);
  Shares result(solids.size());
  for (std::size_t s = 0; s < solids.size(); ++s) {
    const OnPlanes planes(solids[s], fronts, own[s]);
    for (const Cell& cell : solids[s].cells()) {
      std::vector<Share>& shares = result[s].emplace_back();
      for (const CellFace& face : cell.faces)
        for (const std::size_t f : planes.on(face))
          shares.push_back(share_of(f, face, solids[s], view));
    }
  }
  return result;
}

// A front that is to be painted later than another one so that what a hider hides of that one is
// painted over.
struct Later {
  std::int32_t hider = 0;
  std::size_t front = 0;
};
using Over = std::vector<std::vector<Later>>;  // by front

Over fronts_over(std::span<const Front> fronts, const Occluders& occluders, const Shares& shares) {
  Over over(fronts.size());
  for (std::size_t f = 0; f < fronts.size(); ++f) {
    if (fronts[f].hidden) continue;
    for (const std::int32_t hider : fronts[f].hiders) {
      const Occluder& cell = occluders[hider];
      for (const Share& share : shares[index(cell.solid)][index(cell.cell)])
        if (!apart(share, fronts[f].image)) over[f].push_back({hider, share.front});
    }
  }
  return over;
}

// Fronts that hide one another in a ring are found by Tarjan's algorithm (Depth-first search and
// linear graph algorithms, 1972); each ring goes before what is over it. In a ring the front that
// makes the least work is painted first, and the rest is ordered anew.
class Ordering {
 public:
  Ordering(std::span<const Front> fronts, const Over& over) : over_(over), seen_(fronts.size()) {
    for (const Front& front : fronts) work_.push_back(work_of(front.image));
    // Nearest first, so that of those in no order the furthest is painted first.
    Numbers all;
    for (std::size_t f = fronts.size(); f-- > 0;)
      if (!fronts[f].hidden) all.push_back(f);
    add(all);
  }
  const Numbers& order() const { return order_; }

 private:
  struct Seen {
    std::size_t group = 0;  // fronts of other groups are not looked at
    std::size_t number = 0, low = 0;
    bool open = false;
  };
  struct Step {
    std::size_t front = 0, next = 0;
  };

  // What a cut through it takes: a face with holes is slow to cut.
  static std::size_t work_of(const FaceImage& image) {
    std::size_t corners = 0;
    for (const Polygon& loop : image.loops) corners += loop.size();
    return corners * corners;
  }

  void begin(const Numbers& together) {
    ++group_;
    for (const std::size_t f : together) seen_[f] = {group_, 0, 0, false};
  }

  void add(const Numbers& together) {
    begin(together);
    std::vector<Numbers> rings;
    std::size_t count = 0;
    for (const std::size_t f : together)
      if (seen_[f].number == 0) search(f, count, rings);
    // The uppermost was found first.
    for (auto ring = rings.rbegin(); ring != rings.rend(); ++ring) {
      if (ring->size() == 1)
        order_.push_back(ring->front());
      else
        break_up(*ring);
    }
  }

  void search(std::size_t from, std::size_t& count, std::vector<Numbers>& rings) {
    std::vector<Step> steps;
    const auto enter = [&](std::size_t f) {
      seen_[f].number = seen_[f].low = ++count;
      seen_[f].open = true;
      open_.push_back(f);
      steps.push_back({f, 0});
    };
    enter(from);
    while (!steps.empty()) {
      Step& step = steps.back();
      const std::size_t f = step.front;
      if (step.next < over_[f].size()) {
        const std::size_t g = over_[f][step.next++].front;
        if (seen_[g].group != group_) continue;
        if (seen_[g].number == 0)
          enter(g);
        else if (seen_[g].open)
          seen_[f].low = std::min(seen_[f].low, seen_[g].number);
        continue;
      }
      steps.pop_back();
      if (!steps.empty()) {
        Seen& before = seen_[steps.back().front];
        before.low = std::min(before.low, seen_[f].low);
      }
      if (seen_[f].low == seen_[f].number) rings.push_back(closed_ring(f));
    }
  }

  Numbers closed_ring(std::size_t first) {
    Numbers ring;
    do {
      ring.push_back(open_.back());
      seen_[open_.back()].open = false;
      open_.pop_back();
    } while (ring.back() != first);
    std::sort(ring.begin(), ring.end(), std::greater<>());
    return ring;
  }

  void break_up(Numbers ring) {
    begin(ring);
    for (const std::size_t f : ring)
      for (const Later& later : over_[f])
        if (seen_[later.front].group == group_) seen_[later.front].number += work_[f];
    const auto first = std::min_element(
        ring.rbegin(), ring.rend(),
        [&](std::size_t f, std::size_t g) { return seen_[f].number < seen_[g].number; });
    order_.push_back(*first);
    seen_[*first].group = 0;
    ring.erase(std::next(first).base());
    add(ring);
  }

  const Over& over_;
  std::vector<Seen> seen_;
  std::size_t group_ = 0;
  Numbers work_, open_, order_;
};

}  // namespace

std::vector<std::size_t> order_of_painting(std::span<const Solid> solids, const View& view,
                                           const Occluders& occluders, std::vector<Front>& fronts) {
  const Over over = fronts_over(fronts, occluders, shares_of_cells(solids, fronts, view));
  Numbers order = Ordering(fronts, over).order();
  Numbers place(fronts.size(), 0);
  for (std::size_t i = 0; i < order.size(); ++i) place[order[i]] = i;
  for (const std::size_t f : order) {
    std::erase_if(fronts[f].hiders, [&](std::int32_t hider) {
      return std::ranges::none_of(over[f], [&](const Later& later) {
        return later.hider == hider && place[later.front] <= place[f];
      });
    });
  }
  return order;
}

}  // namespace splay
