#include "drafting/text_block.h"

#include <algorithm>
#include <array>

#include "base/utf8.h"

namespace splay::drafting {

namespace {

constexpr double descent = 0.35;  // of the capital height: room below a base line

// How much of a word fits, at least one character.
std::size_t fitting_bytes(const Kit& kit, std::string_view word, double width, double height,
                          ink::Face face) {
  std::size_t fits = 0;
  for (std::size_t at = 0; at < word.size();) {
    const std::size_t next = at + std::max<std::size_t>(first_character(word.substr(at)).bytes, 1);
    if (fits > 0 && kit.width(word.substr(0, next), height, face) > width) break;
    fits = at = next;
  }
  return fits;
}

void wrap_line(const Kit& kit, std::string_view text, double width, double height, ink::Face face,
               std::vector<std::string>& lines) {
  std::string line;
  bool started = false;
  while (!text.empty()) {
    const std::size_t space = text.find(' ');
    std::string_view word = text.substr(0, space);
    text = space == std::string_view::npos ? std::string_view{} : text.substr(space + 1);
    const std::string longer = started ? line + " " + std::string(word) : std::string(word);
    if (kit.width(longer, height, face) <= width) {
      line = longer;
      started = true;
      continue;
    }
    if (started) lines.push_back(line);
    while (kit.width(word, height, face) > width) {
      const std::size_t bytes = fitting_bytes(kit, word, width, height, face);
      if (bytes >= word.size()) break;
      lines.emplace_back(word.substr(0, bytes));
      word.remove_prefix(bytes);
    }
    line = std::string(word);
    started = true;
  }
  lines.push_back(line);
}

double start_x(double low, double high, ink::Align align) {
  if (align == ink::Align::left) return low;
  return align == ink::Align::right ? high : (low + high) / 2;
}

}  // namespace

double widest_line(const Kit& kit, std::string_view text, double height, ink::Face face) {
  double width = 0;
  for (;;) {
    const std::size_t end = text.find('\n');
    width = std::max(width, kit.width(text.substr(0, end), height, face));
    if (end == std::string_view::npos) return width;
    text.remove_prefix(end + 1);
  }
}

// A text may be as wide as the room made for it, added up in whatever order.
constexpr double rounding = 1e-6;  // mm

std::vector<std::string> wrap(const Kit& kit, std::string_view text, double width, double height,
                              ink::Face face) {
  std::vector<std::string> lines;
  for (;;) {
    const std::size_t end = text.find('\n');
    wrap_line(kit, text.substr(0, end), width + rounding, height, face, lines);
    if (end == std::string_view::npos) return lines;
    text.remove_prefix(end + 1);
  }
}

std::string shortened(const Kit& kit, std::string_view text, double width, double height,
                      ink::Face face) {
  if (kit.width(text, height, face) <= width + rounding) return std::string(text);
  std::string best = "…";
  for (std::size_t at = 0; at < text.size();) {
    at += std::max<std::size_t>(first_character(text.substr(at)).bytes, 1);
    std::string cut = std::string(text.substr(0, at)) + "…";
    if (kit.width(cut, height, face) > width) break;
    best = std::move(cut);
  }
  return best;
}

Picture paragraph(const Kit& kit, std::string_view text, double width, TextStyle style) {
  const double pitch = line_pitch * style.height;
  Picture picture{{}, width, 0};
  ink::Group group{"note", {}};
  double base = -style.height;
  for (std::string& line : wrap(kit, text, width, style.height, style.face)) {
    group.items.emplace_back(ink::Text{{start_x(0, width, style.align), base},
                                       std::move(line),
                                       style.height,
                                       0,
                                       style.align,
                                       style.face});
    base -= pitch;
  }
  picture.height = -(base + pitch) + descent * style.height;
  picture.items.emplace_back(std::move(group));
  return picture;
}

ink::Group fitted(const Kit& kit, std::string_view text, ink::Rect box, TextStyle style) {
  constexpr std::array<double, 7> series{14, 10, 7, 5, 3.5, 3, 2.5};
  double height = style.height;
  const auto too_large = [&] {
    return widest_line(kit, text, height, style.face) > box.width() ||
           height * (1 + descent) > box.height() + 1e-9;
  };
  for (const double smaller : series)
    if (smaller < height && too_large()) height = smaller;
  std::vector<std::string> lines = wrap(kit, text, box.width(), height, style.face);
  const double pitch = 1.5 * height;
  const auto room = static_cast<std::size_t>(
      std::max(1.0, (box.height() - height * (1 + descent)) / pitch + 1 + 1e-9));
  if (lines.size() > room) {
    std::string rest = lines[room - 1];
    for (std::size_t i = room; i < lines.size(); ++i) rest += " " + lines[i];
    lines.resize(room);
    lines.back() = shortened(kit, rest, box.width(), height, style.face);
  }
  const double block = height + pitch * static_cast<double>(lines.size() - 1);
  double base = middle(box).y + (block + descent * height) / 2 - height;
  ink::Group group{"note", {}};
  for (std::string& line : lines) {
    group.items.emplace_back(ink::Text{{start_x(box.low.x, box.high.x, style.align), base},
                                       std::move(line),
                                       height,
                                       0,
                                       style.align,
                                       style.face});
    base -= pitch;
  }
  return group;
}

}  // namespace splay::drafting
