// Slips that leave most of a project file sound, so that they reach further than its reading.
#include <algorithm>
#include <array>
#include <cctype>
#include <random>
#include <vector>

#include "fuzz/target.h"

namespace {

using Random = std::mt19937;

std::size_t below(Random& random, std::size_t count) { return random() % count; }

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find('\n', at), text.size() - 1);
    lines.push_back(text.substr(at, end - at + 1));
    at = end + 1;
  }
  return lines;
}

struct Stretch {
  std::size_t at, length;
};

template <class Test>
std::vector<Stretch> stretches(const std::string& text, Test test) {
  std::vector<Stretch> found;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (!test(text[i])) continue;
    std::size_t end = i;
    while (end < text.size() && test(text[end])) ++end;
    found.push_back({i, end - i});
    i = end;
  }
  return found;
}

bool is_digit(char c) { return std::isdigit(static_cast<unsigned char>(c)) != 0 || c == '.'; }
bool is_letter(char c) { return std::isalpha(static_cast<unsigned char>(c)) != 0 || c == '_'; }

std::string figure(Random& random, const std::string& old) {
  static constexpr std::array<const char*, 18> odd{"0",     "1",    "2",    "3",  "0.001", "0.5",
                                                   "1e-9",  "89.9", "90",   "7",  "1e300", "99999",
                                                   "0.703", "45",   "1e-6", "12", "360",   "2.54"};
  if (below(random, 2) == 0) return odd[below(random, odd.size())];
  const double value = std::atof(old.c_str());
  static constexpr std::array<double, 7> factors{0.5, 0.9, 0.999, 1.001, 1.1, 2, -1};
  return std::to_string(value * factors[below(random, factors.size())]);
}

void change_figure(std::string& text, Random& random) {
  const std::vector<Stretch> all = stretches(text, is_digit);
  if (all.empty()) return;
  const Stretch one = all[below(random, all.size())];
  text.replace(one.at, one.length, figure(random, text.substr(one.at, one.length)));
}

void change_word(std::string& text, Random& random) {
  const std::vector<Stretch> all = stretches(text, is_letter);
  if (all.empty()) return;
  const Stretch one = all[below(random, all.size())], other = all[below(random, all.size())];
  text.replace(one.at, one.length, text.substr(other.at, other.length));
}

void change_lines(std::string& text, Random& random) {
  std::vector<std::string> lines = lines_of(text);
  if (lines.empty()) return;
  const auto one = static_cast<std::ptrdiff_t>(below(random, lines.size()));
  const auto other = static_cast<std::ptrdiff_t>(below(random, lines.size()));
  switch (below(random, 3)) {
    case 0:
      lines.erase(lines.begin() + one);
      break;
    case 1:
      lines.insert(lines.begin() + other, lines[static_cast<std::size_t>(one)]);
      break;
    default:
      std::swap(lines[static_cast<std::size_t>(one)], lines[static_cast<std::size_t>(other)]);
  }
  text.clear();
  for (const std::string& line : lines) text += line;
}

void change_byte(std::string& text, Random& random) {
  if (text.empty()) return;
  text[below(random, text.size())] = static_cast<char>(random() & 0xff);
}

}  // namespace

std::string with_slip(const std::string& project, std::uint32_t seed) {
  Random random(seed);
  std::string text = project;
  const std::size_t slips = 1 + below(random, 3);
  for (std::size_t i = 0; i < slips; ++i) {
    const std::size_t kind = below(random, 16);
    if (kind < 9)
      change_figure(text, random);
    else if (kind < 12)
      change_word(text, random);
    else if (kind < 15)
      change_lines(text, random);
    else
      change_byte(text, random);
  }
  return text;
}
