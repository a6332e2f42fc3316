#include "oracle/line_cover.h"

#include <algorithm>
#include <cmath>
#include <iterator>

namespace oracle {

using splay::Interval;
using splay::Vec2;
using splay::ViewLine;

namespace {

// Where along `line`, in mm from its start, `other` lies within `aside` of it; from > to: nowhere.
Interval beside(const ViewLine& line, const ViewLine& other, double aside) {
  const Vec2 along = splay::unit(line.b - line.a), a = other.a - line.a, b = other.b - line.a;
  const double off_a = cross(along, a), off_b = cross(along, b);
  double from = 0, to = 1;  // along `other`
  if (std::abs(off_b - off_a) < 1e-12) {
    if (std::abs(off_a) > aside) return {1, 0};
  } else {
    const double p = (aside - off_a) / (off_b - off_a), q = (-aside - off_a) / (off_b - off_a);
    from = std::max(from, std::min(p, q));
    to = std::min(to, std::max(p, q));
    if (from > to) return {1, 0};
  }
  const double start = dot(along, a + (b - a) * from), end = dot(along, a + (b - a) * to);
  return {std::max(0.0, std::min(start, end)),
          std::min(norm(line.b - line.a), std::max(start, end))};
}

}  // namespace

std::vector<ViewLine> visible_ones(const std::vector<ViewLine>& lines) {
  std::vector<ViewLine> visible;
  std::copy_if(lines.begin(), lines.end(), std::back_inserter(visible),
               [](const ViewLine& line) { return !line.hidden; });
  return visible;
}

double longest_uncovered(const std::vector<ViewLine>& lines, const std::vector<ViewLine>& by,
                         double aside) {
  double longest = 0;
  for (const ViewLine& line : lines) {
    const double length = norm(line.b - line.a);
    if (length < aside) continue;
    std::vector<Interval> covers;
    for (const ViewLine& other : by) covers.push_back(beside(line, other, aside));
    std::sort(covers.begin(), covers.end(),
              [](const Interval& i, const Interval& j) { return i.from < j.from; });
    double reached = 0;
    for (const Interval& cover : covers) {
      if (cover.from > cover.to) continue;
      longest = std::max(longest, cover.from - reached);
      reached = std::max(reached, cover.to);
    }
    longest = std::max(longest, length - reached);
  }
  return longest;
}

double longest_repeated(const std::vector<ViewLine>& lines, double aside) {
  double longest = 0;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    for (std::size_t j = 0; j < lines.size(); ++j) {
      if (i == j || norm(lines[i].b - lines[i].a) < aside) continue;
      const Interval twice = beside(lines[i], lines[j], aside);
      longest = std::max(longest, twice.to - twice.from);
    }
  }
  return longest;
}

}  // namespace oracle
