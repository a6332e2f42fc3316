#include "geometry/line_union.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>

#include "base/tolerance.h"

namespace splay {
namespace {

constexpr double one_angle = 1e-9;                           // radians between lines of one carrier
constexpr double one_carrier = tolerance::hidden_side;       // mm sideways
constexpr double touching = tolerance::shortest_line / 100;  // mm along

struct Span {
  double from = 0, to = 0;  // along the carrier
  Vec2 a, b;
  double angle = 0, offset = 0;
  bool hidden = false;
  int solid = 0;
  std::size_t order = 0;
};

Span directed(const ViewLine& line, std::size_t order) {
  Span span{0, 0, line.a, line.b, 0, 0, line.hidden, line.solid, order};
  const Vec2 along = line.b - line.a;
  span.angle = std::atan2(along.y, along.x);
  if (span.angle < -one_angle || span.angle > std::numbers::pi - one_angle) {
    std::swap(span.a, span.b);
    span.angle += span.angle < 0 ? std::numbers::pi : -std::numbers::pi;
  }
  return span;
}

void append(Span& to, const Span& more) {
  if (more.to > to.to) {
    to.to = more.to;
    to.b = more.b;
  }
  to.order = std::min(to.order, more.order);
  to.solid = std::min(to.solid, more.solid);
}

// The union of spans sorted by their starts. Spans that only touch stay apart when not of one solid
// unless `close` is set.
std::vector<Span> unite(const std::vector<Span>& spans, bool close) {
  std::vector<Span> result;
  for (const Span& span : spans) {
    if (!result.empty()) {
      Span& last = result.back();
      const bool may_touch = close || span.solid == last.solid;
      if (span.from <= last.to + (may_touch ? touching : -touching)) {
        append(last, span);
        continue;
      }
    }
    result.push_back(span);
  }
  return result;
}

// What of each hidden span no visible span covers.
std::vector<Span> less(const std::vector<Span>& hidden, const std::vector<Span>& visible) {
  std::vector<Span> result;
  for (Span rest : hidden) {
    for (const Span& cover : visible) {
      if (cover.to <= rest.from || cover.from >= rest.to) continue;
      if (cover.from - rest.from > tolerance::shortest_line) {
        Span before = rest;
        before.to = cover.from;
        before.b = cover.a;
        result.push_back(before);
      }
      rest.from = cover.to;
      rest.a = cover.b;
    }
    if (rest.to - rest.from > tolerance::shortest_line) result.push_back(rest);
  }
  return result;
}

void unite_carrier(std::vector<Span>& spans, std::vector<Span>& result) {
  std::sort(spans.begin(), spans.end(), [](const Span& s, const Span& t) {
    return s.from != t.from ? s.from < t.from : s.order < t.order;
  });
  std::vector<Span> visible, hidden;
  for (const Span& span : spans) (span.hidden ? hidden : visible).push_back(span);
  const std::vector<Span> cover = unite(visible, true);
  for (const Span& span : unite(visible, false)) result.push_back(span);
  for (const Span& span : less(unite(hidden, false), cover)) result.push_back(span);
}

// Spans of one direction: shares them out to their carriers.
void unite_parallel(std::vector<Span> spans, std::vector<Span>& result) {
  const auto longest = std::max_element(
      spans.begin(), spans.end(),
      [](const Span& s, const Span& t) { return norm(s.b - s.a) < norm(t.b - t.a); });
  const Vec2 along = unit(longest->b - longest->a);
  for (Span& span : spans) {
    span.from = dot(along, span.a);
    span.to = dot(along, span.b);
    span.offset = cross(along, (span.a + span.b) * 0.5);
  }
  std::sort(spans.begin(), spans.end(), [](const Span& s, const Span& t) {
    return s.offset != t.offset ? s.offset < t.offset : s.order < t.order;
  });
  std::vector<Span> carrier;
  for (const Span& span : spans) {
    if (!carrier.empty() && span.offset - carrier.back().offset > one_carrier) {
      unite_carrier(carrier, result);
      carrier.clear();
    }
    carrier.push_back(span);
  }
  unite_carrier(carrier, result);
}

}  // namespace

std::vector<ViewLine> unite_lines(const std::vector<ViewLine>& lines) {
  std::vector<Span> spans, united;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (norm(lines[i].b - lines[i].a) > 0) spans.push_back(directed(lines[i], i));
  }
  std::sort(spans.begin(), spans.end(), [](const Span& s, const Span& t) {
    return s.angle != t.angle ? s.angle < t.angle : s.order < t.order;
  });
  for (std::size_t first = 0; first < spans.size();) {
    std::size_t last = first + 1;
    while (last < spans.size() && spans[last].angle - spans[last - 1].angle <= one_angle) ++last;
    unite_parallel({spans.begin() + static_cast<std::ptrdiff_t>(first),
                    spans.begin() + static_cast<std::ptrdiff_t>(last)},
                   united);
    first = last;
  }
  std::sort(united.begin(), united.end(), [](const Span& s, const Span& t) {
    if (s.solid != t.solid) return s.solid < t.solid;
    return s.order != t.order ? s.order < t.order : s.from < t.from;
  });
  std::vector<ViewLine> result;
  for (const Span& s : united) {
    if (s.to - s.from >= tolerance::shortest_line) result.push_back({s.a, s.b, s.hidden, s.solid});
  }
  return result;
}

}  // namespace splay
