// A slab with beams along its edges: against published plates, an independent reckoning of the
// plate, and beams worked by hand.
#include <array>
#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>

#include "fabrication/bending.h"

using namespace splay::fabrication;

namespace {

// A slab of E = 1 and t3 / 12 = 1: per width E I = 1, G J = 4 G.
Slab slab(double width, double shear, std::vector<EdgeBeam> beams = {}) {
  return {width, width, 4 * shear * width, std::move(beams)};
}

constexpr double unmoved = 1e9;

double alone(double span) { return sag_spread(1, span, 1, 1); }

// An orthotropic plate on two ends, without Poisson's ratio: the least of its energy over sines
// along and powers up to the fifth across, by elimination. `across`: E across the grain over that
// along it. The middle of its low and high edges.
constexpr int powers = 6;
std::array<double, 2> plate(const Slab& of, double span, double shear, double across) {
  std::array<double, 2> edges{};
  const double a = of.width;
  for (int m = 1; m < 20; m += 2) {
    const double k = m * std::numbers::pi / span, k2 = k * k;
    double rows[powers][powers + 1] = {};
    for (int i = 0; i < powers; ++i) {
      rows[i][powers] = 4 / (m * std::numbers::pi) * a / (i + 1);
      for (int j = 0; j < powers; ++j) {
        double& each = rows[i][j];
        each = k2 * k2 * a / (i + j + 1);
        if (i > 1 && j > 1) each += across * i * (i - 1) * j * (j - 1) / (a * a * a) / (i + j - 3);
        if (i > 0 && j > 0) each += 4 * shear * k2 * i * j / a / (i + j - 1);
        for (const EdgeBeam& beam : of.beams)
          each += beam.stiffness * k2 * k2 * std::pow(beam.at / a, i + j);
      }
    }
    for (int c = 0; c < powers; ++c)
      for (int r = 0; r < powers; ++r) {
        if (r == c) continue;
        const double part = rows[r][c] / rows[c][c];
        for (int s = c; s <= powers; ++s) rows[r][s] -= part * rows[c][s];
      }
    const double sign = m % 4 == 1 ? 1 : -1;
    for (int i = 0; i < powers; ++i) {
      const double term = sign * rows[i][powers] / rows[i][i];
      edges[1] += term;
      if (i == 0) edges[0] += term;
    }
  }
  return {edges[0], edges[1]};
}

}  // namespace

TEST_CASE("a slab without beams, or with the same along both edges, is a plain beam") {
  const EdgeSags plain = sag_of_slab(2, 30, slab(10, 0.06));
  CHECK(plain.low == Approx(2 * alone(30) / 10));
  CHECK(plain.high == Approx(2 * alone(30) / 10));
  // Both strips add their E I: 10 + 4 + 4.
  const EdgeSags both = sag_of_slab(2, 30, slab(10, 0.06, {{0, 4}, {10, 4}}));
  CHECK(both.low == Approx(2 * alone(30) / 18));
  CHECK(both.high == Approx(2 * alone(30) / 18));
}

// Without torsion one edge that never gives way leaves half of the load to a section whose E I
// about it is a third: the other edge sags 1.5 times as far as with none; with a strip of n times
// the slab's E I along that, 1.5 / (1 + 3 n). By hand, from moments about the edge.
TEST_CASE("one edge carried, worked by hand") {
  const double free = alone(40) / 10;
  CHECK(sag_of_slab(1, 40, slab(10, 1e-12, {{0, unmoved}})).high == Approx(1.5 * free));
  CHECK(sag_of_slab(1, 40, slab(10, 1e-12, {{0, unmoved}, {10, 20}})).high ==
        Approx(1.5 / 7 * free));
  CHECK(sag_of_slab(1, 40, slab(10, 0.06, {{0, unmoved}})).low == Approx(0).margin(1e-4));
}

// Roark's Formulas for Stress and Strain, rectangular plates, three edges simply supported and one
// free, load over the entire plate: the free edge sags alpha q b4 / (E t3), b its length, Poisson's
// ratio 0.3; from memory. Here E t3 = 12.
TEST_CASE("a plate on three edges, as published") {
  for (const auto& [ratio, alpha] : {std::pair{0.5, 0.080}, std::pair{2.0 / 3, 0.106}}) {
    CAPTURE(ratio);
    const double b = 30, a = ratio * b;
    const double sag = sag_of_slab(a, b, slab(a, 1 / 2.6, {{0, unmoved}})).high;
    CHECK(sag == Approx(alpha * std::pow(b, 4) / 12).epsilon(0.09));
    CHECK(sag > alpha * std::pow(b, 4) / 12);
  }
}

// Wood is far weaker across than along: staying straight across, the slab errs to the safe side,
// and by little for the widths that shelves have.
TEST_CASE("a plate of wood with strips and a back") {
  for (const double width : {0.2, 0.25, 0.3, 0.35})
    for (const double across : {0.05, 0.3, 1.0})
      for (const double back : {0.0, 2.0, unmoved})
        for (const double strip : {0.0, 0.5, 3.0}) {
          CAPTURE(width, across, back, strip);
          const Slab of = slab(width, 0.06, {{0, back * width}, {width, strip * width}});
          const EdgeSags sags = sag_of_slab(width, 1, of);
          const auto exact = plate(of, 1, 0.06, across);
          const double worst = std::max(exact[0], exact[1]);
          CHECK(sags.worst() > worst * 0.999);
          CHECK(sags.worst() < worst * (width < 0.3 ? 1.08 : 1.16));
        }
}

// The angle's equation solved by differences over 2,000 steps.
TEST_CASE("the twist of a slab by differences") {
  const double span = 3, width = 1, shear = 0.06, strip = 0.7;
  const double whole = 1 + strip, centre = (0.5 + strip) / whole, off = 0.5 - centre;
  const double warping = 1.0 / 12 + off * off + strip * (1 - centre) * (1 - centre),
               torsion = 4 * shear;
  // Two equations of the second order, C u'' - T u = m and a'' = u, both with ends at 0.
  constexpr int steps = 2000;
  const double h = span / steps;
  const auto solve = [&](double stiff, double spring, const std::vector<double>& load) {
    std::vector<double> upper(steps + 1, 0.0), value(steps + 1, 0.0);
    const double side = stiff / (h * h);
    for (int i = 1; i < steps; ++i) {
      const double middle = -2 * side - spring - side * upper[static_cast<std::size_t>(i - 1)];
      upper[static_cast<std::size_t>(i)] = side / middle;
      value[static_cast<std::size_t>(i)] =
          (load[static_cast<std::size_t>(i)] - side * value[static_cast<std::size_t>(i - 1)]) /
          middle;
    }
    for (int i = steps - 1; i > 0; --i)
      value[static_cast<std::size_t>(i)] -=
          upper[static_cast<std::size_t>(i)] * value[static_cast<std::size_t>(i + 1)];
    return value;
  };
  const std::vector<double> moment(steps + 1, off);
  const double twist = solve(1, 0, solve(warping, torsion, moment))[steps / 2];
  const EdgeSags sags = sag_of_slab(1, span, slab(width, shear, {{width, strip}}));
  CHECK(sags.high - sags.low == Approx(twist * width).epsilon(1e-5));
  CHECK(sags.low + (sags.high - sags.low) * centre == Approx(alone(span) / whole));
}

// Wood Handbook, Eq. 9-2, from memory: a beam 1 by 10, span 50, E 1,000, G 60, load 1 on each unit:
// bending 5 x 50^4 / (384 x 1,000 x 83.33) = 0.9766, shear 50^2 / (8 x 60 x 8.333) = 0.625.
TEST_CASE("a deep beam sags by its shear too") {
  const double stiffness = beam_stiffness(1000, 60, 1, 10, 50);
  CHECK(sag_spread(1, 50, stiffness, 1) == Approx(0.9766 + 0.625).epsilon(1e-4));
}
