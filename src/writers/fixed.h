// Numbers inside drawing code, where a page has thousands: plain_number for one buffer, without a
// string for each.
#pragma once

#include <array>
#include <charconv>
#include <cstdint>
#include <string>

namespace splay::writers {

// Appends `value` (finite, under 1e9) with at most `decimals` (1 to 6) places, the last rounded,
// zeros at the end dropped: "12.5", "-0.25", "3", never "-0".
inline void append_fixed(std::string& out, double value, int decimals) {
  constexpr std::array<std::int64_t, 7> powers{1, 10, 100, 1000, 10000, 100000, 1000000};
  const std::int64_t unit = powers[static_cast<std::size_t>(decimals)];
  const double scaled = value * static_cast<double>(unit);
  auto count = static_cast<std::int64_t>(scaled + (scaled < 0 ? -0.5 : 0.5));
  std::array<char, 32> buffer{};
  char* end = buffer.data();
  if (count < 0) {
    *end++ = '-';
    count = -count;
  }
  end = std::to_chars(end, buffer.data() + buffer.size(), count / unit).ptr;
  std::int64_t rest = count % unit;
  if (rest != 0) {
    *end++ = '.';
    for (std::int64_t place = unit / 10; rest != 0; place /= 10) {
      *end++ = static_cast<char>('0' + rest / place);
      rest %= place;
    }
  }
  out.append(buffer.data(), end);
}

}  // namespace splay::writers
