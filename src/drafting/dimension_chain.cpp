#include <algorithm>
#include <cmath>

#include "drafting/dimension_layout.h"

namespace splay::drafting {

namespace {

constexpr double arrow = 3, least_for_arrows = 8;  // a gap that holds two arrow heads
constexpr double off_line = 0.9;                   // figure over its line
constexpr double beside = 0.9;                     // free at either side of a figure

// One figure of a chain: between stops i and i + 1.
struct Space {
  double low, high;
  std::string words;
  double width;  // of the words with the air beside them
  bool narrow() const { return width > high - low; }
  double mid() const { return (low + high) / 2; }
};

std::vector<Space> spaces_of(const RowFrame& frame, const std::vector<Stop>& stops) {
  std::vector<Space> spaces;
  for (std::size_t i = 0; i + 1 < stops.size(); ++i) {
    std::string words =
        frame.row().sign + frame.kit().figures.text(stops[i + 1].figure - stops[i].figure);
    if (!frame.row().note.empty()) words += " " + frame.row().note;
    const double width = frame.kit().width(words, frame.height()) + 2 * beside;
    spaces.push_back({stops[i].s, stops[i + 1].s, std::move(words), width});
  }
  return spaces;
}

void terminators(const RowFrame& frame, const std::vector<Stop>& stops, bool arrows, bool outside,
                 DrawnRow& drawn) {
  const Vec2 along = frame.row().along;
  ink::Path ticks;
  for (std::size_t i = 0; i < stops.size(); ++i) {
    const Vec2 tip = frame.point(stops[i].s, frame.at());
    if (!arrows) {
      const Vec2 half = unit(frame.reading() + left_of(frame.reading())) * 1.5;
      ticks.move(tip - half).line(tip + half);
      continue;
    }
    const double inwards = outside ? -1 : 1;
    if (i > 0) drawn.group.items.emplace_back(arrow_head(tip, along * inwards, arrow));
    if (i + 1 < stops.size())
      drawn.group.items.emplace_back(arrow_head(tip, -along * inwards, arrow));
  }
  if (!ticks.verbs.empty())
    drawn.group.items.emplace_back(ink::Stroke{std::move(ticks), {frame.kit().look.wide}});
}

// Figures too wide for their gaps stand further out, in order, each with a line to its gap.
void raised(const RowFrame& frame, const std::vector<Space>& spaces, ink::Path& path,
            DrawnRow& drawn) {
  std::vector<double> wanted, widths;
  for (const Space& space : spaces) {
    if (!space.narrow()) continue;
    wanted.push_back(space.mid());
    widths.push_back(space.width + 0.8);
  }
  if (wanted.empty()) return;
  double total = 0;
  for (const double width : widths) total += width;
  const double low = spaces.front().low, high = spaces.back().high;
  const double beyond = std::max(0.0, (total - (high - low)) / 2);
  const std::vector<double> centres = spread(wanted, widths, low - beyond, high + beyond);
  const double bend =
      frame.at() + (frame.text_inside() ? overshoot + 0.6 : off_line + frame.height() + 0.8);
  const double foot = bend + 1.8;
  std::size_t k = 0;
  for (const Space& space : spaces) {
    if (!space.narrow()) continue;
    const double half = space.width / 2 - beside - 0.3;
    const double end = std::clamp(space.mid(), centres[k] - half, centres[k] + half);
    frame.line(space.mid(), frame.at(), space.mid(), bend, path);
    frame.line(space.mid(), bend, end, foot - 0.6, path);
    frame.figure(space.words, centres[k], foot, drawn);
    ++k;
  }
}

}  // namespace

void draw_chain(const RowFrame& frame, const std::vector<Stop>& stops, std::span<const Quad> avoid,
                DrawnRow& drawn) {
  if (stops.size() < 2) return;
  const std::vector<Space> spaces = spaces_of(frame, stops);
  double least = 1e300;
  for (const Space& space : spaces) least = std::min(least, space.high - space.low);
  const bool single = spaces.size() == 1;
  const bool outside = single && least < least_for_arrows;
  ink::Path lines;
  frame.extensions(stops, avoid, lines);
  const double tail = outside ? arrow + 3 : 0;
  frame.line(stops.front().s - tail, frame.at(), stops.back().s + tail, frame.at(), lines);
  // Words have descenders, figures none.
  const double off = off_line + (frame.row().note.empty() ? 0 : 0.3 * frame.height());
  const double beside_line =
      frame.text_inside() ? frame.at() - off - frame.height() : frame.at() + off;
  for (const Space& space : spaces)
    if (!space.narrow()) frame.figure(space.words, space.mid(), beside_line, drawn);
  raised(frame, spaces, lines, drawn);
  terminators(frame, stops, single || least >= least_for_arrows, outside, drawn);
  drawn.group.items.emplace_back(ink::Stroke{std::move(lines), frame.kit().thin()});
  for (std::size_t i = 0; i + 1 < stops.size(); ++i)
    drawn.group.items.emplace_back(frame.claim(stops[i], stops[i + 1]));
  drawn.reach = frame.at() + overshoot;
}

// Figures stand at the ends of their extension lines, turned along them; where stops are close
// together the lines bend so that the figures stay a line apart.
void draw_running(const RowFrame& frame, const std::vector<Stop>& stops,
                  std::span<const Quad> avoid, DrawnRow& drawn) {
  const double height = frame.height(), at = frame.at();
  const Vec2 out = frame.row().out, reading = RowFrame::readable(out);
  const bool outward = dot(reading, out) > 0;
  std::vector<double> wanted(stops.size());
  std::ranges::transform(stops, wanted.begin(), &Stop::s);
  const std::vector<double> widths(stops.size(), height * 1.45);
  const double reserve = height * static_cast<double>(stops.size());
  const std::vector<double> slots =
      spread(wanted, widths, wanted.front() - reserve, wanted.back() + reserve);
  const Stop* zero = nullptr;
  for (const Stop& stop : stops)
    if (stop.figure.steps == 0) zero = &stop;
  const Stop datum = zero ? *zero : Stop{stops.front().s, stops.front().t, 0, {}};
  ink::Path lines;
  constexpr double bend_low = 5, bend_high = 1.5;
  for (std::size_t i = 0; i < stops.size(); ++i) {
    const Stop& stop = stops[i];
    const double start = std::min(stop.t + feature_gap, at - bend_low);
    frame.line(stop.s, start, stop.s, at - bend_low, lines, avoid);
    frame.line(stop.s, at - bend_low, slots[i], at - bend_high, lines, avoid);
    frame.line(slots[i], at - bend_high, slots[i], at, lines, avoid);
    const Vec2 foot = frame.point(slots[i], at + 0.9) - left_of(reading) * (height / 2);
    ink::Text text{foot, frame.kit().figures.text(stop.figure), height, RowFrame::turn(reading),
                   outward ? ink::Align::left : ink::Align::right};
    drawn.texts.push_back(frame.kit().fonts->box(text));
    drawn.group.items.emplace_back(std::move(text));
    if (&stop == zero) {
      ink::Path dot_mark;
      dot_mark.arc(frame.point(stop.s, at - bend_low), 0.9, 0, 6.283185307179586).close();
      drawn.group.items.emplace_back(ink::Fill{std::move(dot_mark)});
    } else if (zero) {
      drawn.group.items.emplace_back(frame.claim(datum, stop));
    }
  }
  drawn.group.items.emplace_back(ink::Stroke{std::move(lines), frame.kit().thin()});
}

}  // namespace splay::drafting
