#include "base/figure.h"

#include "base/small_length.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <limits>
#include <random>
#include <stdexcept>

using namespace splay;

namespace {

FigureStyle inches(int fraction) { return {Unit::inch, fraction, 1}; }
FigureStyle millimetres(int decimals) { return {Unit::millimetre, 32, decimals}; }
double in(double value) { return Length::inches(value).mm; }

}  // namespace

TEST_CASE("inches print as whole and reduced fraction") {
  const FigureStyle style = inches(32);
  CHECK(style.text(in(23.25)) == "23 1/4");
  CHECK(style.text(in(0)) == "0");
  CHECK(style.text(in(-1.0 / 32)) == "-1/32");
  CHECK(style.text(in(-23.25)) == "-23 1/4");
  CHECK(style.text(in(7)) == "7");
  CHECK(style.text(in(0.713)) == "23/32");
  CHECK(style.with_unit(in(23.25)) == "23 1/4 in");
  CHECK(inches(128).text(in(1.0 / 128)) == "1/128");
  CHECK(inches(1).text(in(2.5)) == "3");
}

TEST_CASE("millimetres print without trailing zeros") {
  CHECK(millimetres(1).text(590.5) == "590.5");
  CHECK(millimetres(1).text(590.0) == "590");
  CHECK(millimetres(1).text(-0.04) == "0");
  CHECK(millimetres(3).text(0.012) == "0.012");
  CHECK(millimetres(0).text(1234.5) == "1235");
  CHECK(millimetres(2).text(-7.05) == "-7.05");
  CHECK(millimetres(1).with_unit(590.5) == "590.5 mm");
}

TEST_CASE("halves round away from zero, also when arithmetic fell a hair short") {
  for (const int fraction : {1, 2, 4, 8, 16, 32, 64, 128})
    for (int n = 0; n < 400; ++n) {
      const double half = in((n + 0.5) / fraction);
      CHECK(inches(fraction).round(half).steps == n + 1);
      CHECK(inches(fraction).round(-half).steps == -(n + 1));
      CHECK(inches(fraction).round(std::nextafter(half, 0.0)).steps == n + 1);
    }
}

TEST_CASE("a figure and its length agree") {
  std::mt19937 random(7);
  std::uniform_real_distribution<double> lengths(-5000, 5000);
  for (int i = 0; i < 2000; ++i)
    for (const FigureStyle& style : {inches(16), inches(64), millimetres(0), millimetres(2)}) {
      const double mm = lengths(random);
      const Figure figure = style.round(mm);
      CHECK(std::abs(style.mm(figure) - mm) <= style.step_mm() / 2 + 1e-6);
      CHECK(style.round(style.mm(figure)) == figure);
    }
}

// http://rusticgrain.com/accumulated-error/ : 14 spaces of 1.3671875 in, each rounded to the
// nearest 1/16 and laid end to end, miss the true length by 0.109 in.
TEST_CASE("a chain of running figures adds up where rounded spaces drift") {
  const FigureStyle style = inches(16);
  const double space = in(1.3671875);
  double rounded_spaces = 0;
  Figure chain;
  Figure before = style.round(0);
  for (int i = 1; i <= 14; ++i) {
    rounded_spaces += style.mm(style.round(space));
    const Figure running = style.round(space * i);
    CHECK(std::abs(style.mm(running) - space * i) <= style.step_mm() / 2 + 1e-6);
    chain = chain + (running - before);
    before = running;
  }
  CHECK(Length{rounded_spaces - 14 * space}.inches() == Approx(0.109).margin(0.0005));
  CHECK(chain == style.round(14 * space));
}

// 45 x 700 x 810 mm is 1.772 x 27.559 x 31.890 in:
// http://www.homeownershub.com/woodworking/converting-from-metric-to-inches-in-a-plan-430248-.htm
TEST_CASE("the other unit is computed from the exact length") {
  CHECK(other_unit_text(45, Unit::millimetre) == "1.772 in");
  CHECK(other_unit_text(700, Unit::millimetre) == "27.559 in");
  CHECK(other_unit_text(810, Unit::millimetre) == "31.89 in");
  CHECK(other_unit_text(in(23.25), Unit::inch) == "590.6 mm");
  CHECK(other_unit_text(in(24.75), Unit::inch) == "628.7 mm");
  CHECK(other_unit_text(590.55, Unit::millimetre) == "23.25 in");
}

TEST_CASE("degrees carry their sign and places") {
  CHECK(degrees_text(37.5) == "37.50°");
  CHECK(degrees_text(-0.001) == "0.00°");
  CHECK(degrees_text(-12.5, 1) == "-12.5°");
  CHECK(degrees_text(45, 0) == "45°");
}

// A slope of 5:1 is 11.31°, and 5.1° is 1 in 11.2; the two were taken for each other:
// https://woodworkingmasterclasses.com/videos/floor-lamp/floor-lamp-episode-2/
TEST_CASE("an angle and its rise say the same") {
  CHECK(degrees_text(std::atan(1.0 / 5) * 180 / 3.14159265358979) == "11.31°");
  CHECK(rise_text(11.31, millimetres(0)) == "60 in 300");
  CHECK(plain_number(1 / std::tan(5.1 * 3.14159265358979 / 180), 1) == "11.2");
  CHECK(rise_text(5.1, millimetres(1)) == "26.8 in 300");
  CHECK(rise_text(15, inches(32)) == "3 7/32 in 12");
  CHECK(rise_text(75, inches(32)) == "12 in 3 7/32");
  CHECK(rise_text(45, inches(32)) == "12 in 12");
  CHECK(rise_text(-15, inches(32)) == "-3 7/32 in 12");
  CHECK(rise_text(102, inches(16)) == "-12 in 2 9/16");
  CHECK(rise_text(0.004, inches(32)) == "level");
  CHECK(rise_text(180, inches(32)) == "level");
  CHECK(rise_text(90, inches(32)) == "plumb");
  CHECK(rise_text(0.02, inches(32)) == "under 1/32 in 12");
}

TEST_CASE("plain numbers have no exponent, no trailing zeros and no minus nought") {
  CHECK(plain_number(0.1, 6) == "0.1");
  CHECK(plain_number(1e-7, 6) == "0");
  CHECK(plain_number(1e-7, 9) == "0.0000001");
  CHECK(plain_number(-1e-7, 3) == "0");
  CHECK(plain_number(1e20, 2) == "100000000000000000000");
  CHECK(plain_number(-3.25, 3) == "-3.25");
  CHECK(plain_number(100, 0) == "100");
}

TEST_CASE("what is no number is refused, never printed") {
  const double inf = std::numeric_limits<double>::infinity();
  const double nan = std::numeric_limits<double>::quiet_NaN();
  for (const double bad : {inf, -inf, nan}) {
    CHECK_THROWS_AS(inches(32).round(bad), std::invalid_argument);
    CHECK_THROWS_AS(millimetres(1).text(bad), std::invalid_argument);
    CHECK_THROWS_AS(plain_number(bad, 2), std::invalid_argument);
    CHECK_THROWS_AS(degrees_text(bad), std::invalid_argument);
    CHECK_THROWS_AS(rise_text(bad, inches(32)), std::invalid_argument);
  }
  CHECK_THROWS_AS(millimetres(3).round(1e300), std::invalid_argument);
  CHECK_THROWS_AS(inches(24).round(1), std::invalid_argument);
  CHECK_THROWS_AS(inches(256).round(1), std::invalid_argument);
  CHECK_THROWS_AS(inches(0).text(Figure{1}), std::invalid_argument);
  CHECK_THROWS_AS(millimetres(4).round(1), std::invalid_argument);
}

TEST_CASE("lengths under the smallest printed step") {
  CHECK(small_length(0.508, Unit::inch) == "0.02 in");
  CHECK(small_length(0.508, Unit::millimetre) == "0.51 mm");
  CHECK(small_length(0.01, Unit::inch) == "under 0.001 in");
  CHECK(small_length(0, Unit::millimetre) == "under 0.01 mm");
}
