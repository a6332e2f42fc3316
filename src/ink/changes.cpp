#include "ink/changes.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "ink/outline.h"

namespace splay::ink {

namespace {

// An item as a word that is the same for items that look the same, to 1/100 mm.
class Likeness {
 public:
  explicit Likeness(char kind) : word_(1, kind) {}
  void add(double value) { word_ += std::to_string(std::lround(value * 100)) + " "; }
  void add(const std::string& text) { word_ += text + "\n"; }
  void add(const Path& path) {
    for (const Path::Verb verb : path.verbs)
      word_ += static_cast<char>('a' + static_cast<int>(verb));
    for (const Vec2 p : path.points) {
      add(p.x);
      add(p.y);
    }
  }
  std::string take() { return std::move(word_); }

 private:
  std::string word_;
};

struct Inked {
  int count = 0;
  Span span;
};
using Inks = std::map<std::string, Inked>;

Span heights(const std::vector<Vec2>& points) {
  const Rect box = bounds(points);
  return {box.low.y, box.high.y};
}

// What leaves no ink (an empty path, blanks) is nowhere and changes nothing.
void add(const Item& item, const FontSet& fonts, Inks& inks) {
  Likeness word(static_cast<char>('A' + item.index()));
  std::vector<Vec2> points;
  if (const auto* stroke = std::get_if<Stroke>(&item)) {
    word.add(stroke->pen.width);
    word.add(stroke->pen.grey);
    word.add(static_cast<double>(stroke->pen.dash));
    word.add(stroke->path);
    points = stroke->path.points;
  } else if (const auto* fill = std::get_if<Fill>(&item)) {
    word.add(fill->grey);
    word.add(fill->path);
    points = fill->path.points;
  } else if (const auto* text = std::get_if<Text>(&item)) {
    for (const double each : {text->at.x, text->at.y, text->height, text->turn, text->grey})
      word.add(each);
    word.add(static_cast<double>(text->face));
    word.add(text->utf8);
    if (text->utf8.find_first_not_of(' ') != std::string::npos)
      for (const Vec2 corner : fonts.box(*text)) points.push_back(corner);
  } else {
    return;
  }
  if (points.empty()) return;
  Inked& inked = inks[word.take()];
  ++inked.count;
  inked.span = heights(points);
}

Inks inks_of(const Page& page, const FontSet& fonts) {
  Inks inks;
  int left_out = 0;
  const auto counts = [](const Group& group) {
    return group.role == "title block" || group.role == "frame" ? 1 : 0;
  };
  walk(
      page.items,
      [&](const Item& item) {
        if (left_out == 0) add(item, fonts, inks);
      },
      [&](const Group& group) { left_out += counts(group); },
      [&](const Group& group) { left_out -= counts(group); });
  return inks;
}

void add_missing(const Inks& from, const Inks& in, std::vector<Span>& spans) {
  for (const auto& [word, inked] : from) {
    const auto found = in.find(word);
    if (found == in.end() || found->second.count != inked.count) spans.push_back(inked.span);
  }
}

}  // namespace

std::vector<Span> changed_spans(const Page& before, const Page& now, const FontSet& fonts) {
  constexpr double near = 6;  // mm
  const Inks old = inks_of(before, fonts), fresh = inks_of(now, fonts);
  std::vector<Span> spans;
  add_missing(old, fresh, spans);
  add_missing(fresh, old, spans);
  std::ranges::sort(spans, [](const Span& a, const Span& b) { return a.high > b.high; });
  std::vector<Span> joined;
  for (const Span& span : spans) {
    if (!joined.empty() && span.high > joined.back().low - near)
      joined.back().low = std::min(joined.back().low, span.low);
    else
      joined.push_back(span);
  }
  return joined;
}

}  // namespace splay::ink
