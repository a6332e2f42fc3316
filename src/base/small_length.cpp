#include "base/small_length.h"

#include <cmath>

namespace splay {

std::string small_length(double mm, Unit unit) {
  const bool metric = unit == Unit::millimetre;
  const double one = metric ? 1 : Length::mm_per_inch;
  const int places = metric ? 2 : 3;
  const double least = std::pow(10.0, -places);
  const std::string word = metric ? " mm" : " in";
  if (mm < least * one / 2) return "under " + plain_number(least, places) + word;
  return plain_number(mm / one, places) + word;
}

}  // namespace splay
