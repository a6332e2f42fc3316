#include "base/figure.h"

#include <array>
#include <bit>
#include <charconv>
#include <cmath>
#include <numbers>
#include <numeric>
#include <stdexcept>

#include "base/tolerance.h"

namespace splay {

namespace {

constexpr double largest_step_count = 9.0e15;  // below 2^53: every whole number is a double

void refuse_non_finite(double value) {
  if (!std::isfinite(value)) throw std::invalid_argument("a figure must be a finite number");
}

double decimal_step(int decimals) {
  constexpr std::array<double, 4> steps{1.0, 0.1, 0.01, 0.001};
  if (decimals < 0 || decimals > 3)
    throw std::invalid_argument("millimetres are printed with 0 to 3 decimals");
  return steps[static_cast<std::size_t>(decimals)];
}

std::string whole(std::int64_t value) {
  std::array<char, 24> buffer{};
  const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value).ptr;
  return {buffer.data(), end};
}

std::string fixed(double value, int decimals) {
  refuse_non_finite(value);
  std::array<char, 400> buffer{};  // the largest double has 309 digits
  const auto result = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value,
                                    std::chars_format::fixed, decimals);
  if (result.ec != std::errc{}) throw std::invalid_argument("too many decimals for a figure");
  std::string text(buffer.data(), result.ptr);
  if (text.find_first_not_of("-0.") == std::string::npos && text.front() == '-') text.erase(0, 1);
  return text;
}

std::string inch_text(std::int64_t steps, int fraction) {
  const std::string sign = steps < 0 ? "-" : "";
  const std::int64_t count = steps < 0 ? -steps : steps;
  const std::int64_t inches = count / fraction;
  const std::int64_t rest = count % fraction;
  if (rest == 0) return sign + whole(inches);
  const std::int64_t shared = std::gcd(rest, static_cast<std::int64_t>(fraction));
  const std::string part = whole(rest / shared) + "/" + whole(fraction / shared);
  return sign + (inches == 0 ? part : whole(inches) + " " + part);
}

std::string decimal_text(std::int64_t steps, int decimals) {
  const std::string sign = steps < 0 ? "-" : "";
  std::string digits = whole(steps < 0 ? -steps : steps);
  const auto places = static_cast<std::size_t>(decimals);
  if (digits.size() <= places) digits.insert(0, places + 1 - digits.size(), '0');
  std::string tail = digits.substr(digits.size() - places);
  digits.resize(digits.size() - places);
  tail.erase(tail.find_last_not_of('0') + 1);
  return sign + digits + (tail.empty() ? "" : "." + tail);
}

}  // namespace

double FigureStyle::step_mm() const {
  if (unit == Unit::millimetre) return decimal_step(decimals);
  if (fraction < 1 || fraction > 128 || !std::has_single_bit(static_cast<unsigned>(fraction)))
    throw std::invalid_argument("the smallest fraction is a power of two up to 128");
  return Length::mm_per_inch / fraction;
}

Figure FigureStyle::round(double mm) const {
  refuse_non_finite(mm);
  const double step = step_mm();
  // A half that arithmetic left a hair short is still a half: two computations of one length must
  // not print differently.
  const double count = std::floor((std::abs(mm) + tolerance::weld) / step + 0.5);
  if (count > largest_step_count) throw std::invalid_argument("a figure is too large to print");
  const auto steps = static_cast<std::int64_t>(count);
  return {mm < 0 ? -steps : steps};
}

double FigureStyle::mm(Figure figure) const {
  return static_cast<double>(figure.steps) * step_mm();
}

std::string FigureStyle::text(Figure figure) const {
  step_mm();  // refuses a style that can't be printed
  return unit == Unit::inch ? inch_text(figure.steps, fraction)
                            : decimal_text(figure.steps, decimals);
}

std::string FigureStyle::with_unit(double mm) const {
  return text(mm) + (unit == Unit::inch ? " in" : " mm");
}

std::string other_unit_text(double mm, Unit unit) {
  const auto decimal = [](double value, int places) {
    return FigureStyle{.unit = Unit::millimetre, .decimals = places}.text(value);
  };
  if (unit == Unit::inch) return decimal(mm, 1) + " mm";
  return decimal(mm / Length::mm_per_inch, 3) + " in";
}

std::string degrees_text(double degrees, int decimals) { return fixed(degrees, decimals) + "°"; }

std::string rise_text(double degrees, const FigureStyle& style) {
  constexpr double least = 0.005;
  refuse_non_finite(degrees);
  const double slope = std::remainder(degrees, 180.0);  // -90 to 90
  const double size = std::abs(slope);
  if (size < least) return "level";
  if (90 - size < least) return "plumb";
  const double run = style.unit == Unit::inch ? 12 * Length::mm_per_inch : 300;
  const double from_leg = size > 45 ? 90 - size : size;
  const Figure rise = style.round(run * std::tan(from_leg * std::numbers::pi / 180));
  const std::string short_leg =
      rise.steps == 0 ? "under " + style.text(Figure{1}) : style.text(rise);
  const std::string sign = slope < 0 ? "-" : "";
  if (size > 45) return sign + style.text(run) + " in " + short_leg;
  return sign + short_leg + " in " + style.text(run);
}

std::string plain_number(double value, int decimals) {
  std::string text = fixed(value, decimals);
  if (text.find('.') == std::string::npos) return text;
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text;
}

}  // namespace splay
