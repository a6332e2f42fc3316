#include "writers/fixed.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "base/figure.h"
#include "writers/pens.h"

using namespace splay;
using writers::append_fixed;

namespace {

std::string fixed(double value, int decimals) {
  std::string out;
  append_fixed(out, value, decimals);
  return out;
}

}  // namespace

TEST_CASE("drawing code numbers are rounded, without zeros at the end, never minus nought") {
  CHECK(fixed(0, 3) == "0");
  CHECK(fixed(-0.0, 3) == "0");
  CHECK(fixed(-0.0004, 3) == "0");
  CHECK(fixed(-0.0005, 3) == "-0.001");
  CHECK(fixed(12.5, 3) == "12.5");
  CHECK(fixed(-12.05, 3) == "-12.05");
  CHECK(fixed(0.001, 3) == "0.001");
  CHECK(fixed(0.9996, 3) == "1");
  CHECK(fixed(123456.789, 2) == "123456.79");
  CHECK(fixed(0.000001, 6) == "0.000001");
  CHECK(fixed(10, 1) == "10");
}

TEST_CASE("drawing code numbers are those that figures print") {
  std::uint32_t state = 7;
  for (int i = 0; i < 20000; ++i) {
    state = state * 1664525u + 1013904223u;
    const double value = (static_cast<double>(state) - 2147483648.0) / 1000003.0;
    const double off = std::abs(value * 1000 - std::floor(value * 1000) - 0.5);
    if (off < 1e-6) continue;  // a half may be rounded either way
    REQUIRE(fixed(value, 3) == plain_number(value, 3));
  }
}

TEST_CASE("dashes are as many line widths long as the standard says") {
  using ink::Dash;
  CHECK(writers::dash_lengths({0.5, Dash::continuous, 0}).empty());
  CHECK(writers::dash_lengths({0.5, Dash::dashed, 0}) == std::vector<double>{6, 1.5});
  CHECK(writers::dash_lengths({0.25, Dash::chain, 0}) == std::vector<double>{6, 0.75, 0.125, 0.75});
  CHECK(writers::dash_lengths({1, Dash::double_chain, 0}) ==
        std::vector<double>{24, 3, 0.5, 3, 0.5, 3});
  CHECK(writers::dash_lengths({1, Dash::dotted, 0}) == std::vector<double>{0.5, 3});
}
