// Texts with the sizes they say.
#include <catch2/catch.hpp>
#include <cmath>
#include <locale>
#include <random>

#include "base/quantity.h"
#include "reading/expression.h"

using namespace splay;
using namespace splay::reading;

namespace {

struct Case {
  std::string_view text;
  double value;  // inches, degrees or plain
};

Sizes some_sizes() {
  return {{"width", Amount{48 * 25.4, length_kind}},
          {"overhang", Amount{25.4, length_kind}},
          {"cant", Amount{Angle::degrees(12).rad, angle_kind}},
          {"shelves", Amount{3, plain_kind}},
          {"in_side", Amount{254, length_kind}}};
}

double as(Kind kind, std::string_view text, Unit unit = Unit::inch) {
  try {
    return Evaluator(unit).evaluate_as(kind, text, some_sizes());
  } catch (const Trouble& trouble) {
    FAIL(text << ": " << trouble.code << ": " << trouble.found);
    return 0;
  }
}

std::string trouble_of(Kind kind, std::string_view text) {
  try {
    Evaluator(Unit::inch).evaluate_as(kind, text, some_sizes());
  } catch (const Trouble& trouble) {
    return trouble.code;
  }
  return "";
}

}  // namespace

TEST_CASE("texts that say a length") {
  const std::vector<Case> cases{
      {"23", 23},
      {"23.5", 23.5},
      {"23 1/4", 23.25},
      {"23  1/4", 23.25},
      {" 3/8 ", 0.375},
      {"3/8 in", 0.375},
      {"23 1/4 in", 23.25},
      {"23 1/4in", 23.25},
      {"23 inches", 23},
      {"1 inch", 1},
      {"590 mm", 590 / 25.4},
      {"590mm", 590 / 25.4},
      {"59 cm", 590 / 25.4},
      {"1.2 m", 1200 / 25.4},
      {"2 ft", 24},
      {"1 foot", 12},
      {"2 feet 6 inches", 30},
      {"2 ft 6 1/2 in", 30.5},
      {"2 ft 1/2 in", 24.5},
      {"6\"", 6},
      {"6 1/2\"", 6.5},
      {"2' 6 1/2\"", 30.5},
      {"2'6\"", 30},
      {"2\xE2\x80\xB2 6\xE2\x80\xB3", 30},
      {"23\xC2\xBD", 23.5},
      {"23 \xC2\xBE in", 23.75},
      {"\xC2\xBC", 0.25},
      {"23 1/4 - 3/8 in", 22.875},
      {"width", 48},
      {"width - 2*overhang", 46},
      {"width-2*overhang", 46},
      {"-width + 50", 2},
      {"(width - 2 * overhang) / 2", 23},
      {"width / shelves", 16},
      {"width / shelves + 1/4", 16.25},
      {"width * 1/4", 12},
      {"1/4 * width", 12},
      {"width - 2 1/2", 45.5},
      {"2*3 + width", 54},
      {"3 + 25.4 mm", 4},
      {"min(width, 30)", 30},
      {"max(1 ft, width / 6, 200 mm)", 12},
      {"abs(3 in - width)", 45},
      {"sqrt(width*width + 14*14*overhang*overhang)", 50},
      {"sqrt(3*3 + 4*4)", 5},
      {"width * sin(30)", 24},
      {"width * cos(60 deg)", 24},
      {"width * tan(45)", 48},
      {"width * tan(1 in 6)", 8},
      {"width * (overhang / 2 in)", 24},
      {"--3", 3},
      {"-(3 - 5)", 2},
      {"48 / (2/3)", 72},
      {"in_side + 1", 11},
      {"12 \xE2\x88\x92 2", 10},
      {"3 \xC3\x97 4", 12},
  };
  for (const Case& c : cases) {
    INFO(c.text);
    CHECK(as(length_kind, c.text) / 25.4 == Approx(c.value).epsilon(1e-12));
  }
}

TEST_CASE("texts that say an angle") {
  const std::vector<Case> cases{
      {"12.5", 12.5},
      {"12.5 deg", 12.5},
      {"12.5deg", 12.5},
      {"12 1/2 degrees", 12.5},
      {"12.5\xC2\xB0", 12.5},
      {"1 in 6", 9.462322208},
      {"3 7/32 in 12", 15.0150},
      {"10 %", 5.710593137},
      {"100%", 45},
      {"cant", 12},
      {"cant / 2", 6},
      {"2 * cant - 4", 20},
      {"90 - cant", 78},
      {"cant + 1 in 6", 21.462322208},
      {"-cant", -12},
      {"atan(overhang / (6 in))", 9.462322208},
      {"asin(0.5)", 30},
      {"acos(1/2)", 60},
      {"atan(1)", 45},
  };
  for (const Case& c : cases) {
    INFO(c.text);
    CHECK(Angle{as(angle_kind, c.text)}.degrees() == Approx(c.value).margin(1e-4));
  }
}

// 5:1 is 11.31°: https://woodworkingmasterclasses.com/videos/floor-lamp/floor-lamp-episode-2/
// 10 % is 5.71°, not 10: a slope in percent is the tangent (definition).
TEST_CASE("a slope is not its number in degrees") {
  CHECK(Angle{as(angle_kind, "1 in 5")}.degrees() == Approx(11.31).margin(0.005));
  CHECK(Angle{as(angle_kind, "10 %")}.degrees() == Approx(5.71).margin(0.005));
  CHECK(Angle{as(angle_kind, "5.1")}.degrees() == Approx(5.1));
}

TEST_CASE("texts that say a plain number") {
  const std::vector<Case> cases{{"3", 3},
                                {"2 1/2", 2.5},
                                {"3 times", 3},
                                {"shelves", 3},
                                {"shelves + 1", 4},
                                {"width / overhang", 48},
                                {"width / 24 in", 2},
                                {"sin(30)", 0.5},
                                {"max(1, 2, shelves)", 3}};
  for (const Case& c : cases) {
    INFO(c.text);
    CHECK(as(plain_kind, c.text) == Approx(c.value));
  }
}

TEST_CASE("a number without a unit is what the job says") {
  CHECK(as(length_kind, "10", Unit::millimetre) == 10);
  CHECK(as(length_kind, "10", Unit::inch) == 254);
  CHECK(as(length_kind, "10 + 1 in", Unit::millimetre) == Approx(35.4));
  CHECK(as(length_kind, "2 * 5 + overhang", Unit::millimetre) == Approx(35.4));
}

TEST_CASE("texts that mean nothing, or two things, are refused") {
  const std::vector<std::pair<std::string_view, std::string_view>> cases{
      {"23-1/4", "ambiguous-dash"},
      {"width/1/4", "ambiguous-fraction"},
      {"1/2/2", "ambiguous-fraction"},
      {"23,25", "decimal-comma"},
      {"2 width", "missing-operator"},
      {"2 ft 6 mm", "missing-operator"},
      {"12 13", "missing-operator"},
      {"width width", "missing-operator"},
      {"3 furlongs", "unknown-unit"},
      {"1e3", "unknown-unit"},
      {"inf", "unknown-name"},
      {"nan", "unknown-name"},
      {"pi", "unknown-name"},
      {"mm", "unknown-name"},
      {"", "empty-text"},
      {"width cant", "missing-operator"},
      {"width + cant", "mixed-kinds"},
      {"width * width", "wrong-kind"},
      {"width / 0", "zero-division"},
      {"1 / (1 - 1) * width", "zero-division"},
      {"1 / width", "wrong-kind"},
      {"cant * cant / cant", "wrong-kind"},
      {"1 in 6", "wrong-kind"},
      {"10 %", "wrong-kind"},
      {"width ^ 2", "bad-expression"},
      {"width > 2", "bad-expression"},
      {"a = 3", "bad-expression"},
      {"()", "bad-expression"},
      {"min(1, 2", "bad-expression"},
      {"min 1", "bad-expression"},
      {"(1, 2)", "bad-expression"},
      {"5 %%", "bad-expression"},
      {"3 in in", "missing-operator"},
      {"0/0", "zero-division"}};
  for (const auto& [text, code] : cases) {
    INFO(text);
    CHECK(trouble_of(length_kind, text) == code);
  }
}

TEST_CASE("no locale changes what a number says") {
  struct Comma : std::numpunct<char> {
    char do_decimal_point() const override { return ','; }
    char do_thousands_sep() const override { return '.'; }
    std::string do_grouping() const override { return "\3"; }
  };
  const std::locale before = std::locale::global(std::locale(std::locale::classic(), new Comma));
  const double value = as(length_kind, "1234.5 mm + 2 * 0.25 mm");
  std::locale::global(before);
  CHECK(value == Approx(1235));
}

namespace {

// A random sum over plain numbers as text, with its value from ordinary C++ arithmetic.
struct Grown {
  std::string text;
  double value;
};

Grown grow(std::mt19937& random, int depth) {
  const auto pick = [&](int n) { return static_cast<int>(random() % static_cast<unsigned>(n)); };
  if (depth == 0 || pick(4) == 0) {
    const int number = 1 + pick(40);
    switch (pick(3)) {
      case 0:
        return {std::to_string(number), static_cast<double>(number)};
      case 1:
        return {std::to_string(number) + " 3/8", number + 0.375};
      default:
        return {std::to_string(number) + ".25", number + 0.25};
    }
  }
  const Grown a = grow(random, depth - 1);
  const Grown b = grow(random, depth - 1);
  switch (pick(6)) {
    case 0:
      return {"(" + a.text + " + " + b.text + ")", a.value + b.value};
    case 1:
      return {"(" + a.text + " - " + b.text + ")", a.value - b.value};
    case 2:
      return {"(" + a.text + ") * (" + b.text + ")", a.value * b.value};
    case 3:
      if (std::abs(b.value) < 1e-6) return a;
      return {"(" + a.text + ") / (" + b.text + ")", a.value / b.value};
    case 4:
      return {"max(" + a.text + ", " + b.text + ")", std::max(a.value, b.value)};
    default:
      return {"-(" + a.text + ")", -a.value};
  }
}

}  // namespace

TEST_CASE("random arithmetic agrees with the compiler's") {
  std::mt19937 random(11);
  Evaluator evaluator(Unit::inch);
  int compared = 0;
  for (int i = 0; i < 3000; ++i) {
    // A part that is multiplied or divided stands in parentheses of its own.
    const Grown grown = grow(random, 3);
    if (grown.text.size() > longest_text) continue;
    INFO(grown.text);
    const Amount amount = evaluator.evaluate("(" + grown.text + ")", {});
    CHECK(amount.kind.bare);
    CHECK(amount.value == Approx(grown.value).epsilon(1e-9).margin(1e-9));
    ++compared;
  }
  CHECK(compared > 2000);
}
