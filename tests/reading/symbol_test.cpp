// Signs out of SVG files: what is drawn, and where what can't be drawn stands.
#include "reading/symbol_reader.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>
#include <sstream>

#include "reading/symbol_path.h"
#include "reading/symbol_scan.h"
#include "reading/symbol_transform.h"

using namespace splay;
using namespace splay::reading;

namespace {

constexpr double pi = std::numbers::pi;

std::string svg(const std::string& inside, const std::string& more = "") {
  return "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 100 100\"\n  fill=\"none\" "
         "stroke=\"black\" " +
         more + ">\n" + inside + "\n</svg>\n";
}

model::Symbol good(const std::string& text) {
  const SymbolReading reading = read_symbol(text);
  std::string faults;
  for (const Diagnostic& fault : reading.diagnostics) faults += describe(fault, "sign.svg", text);
  INFO(faults);
  REQUIRE(reading.symbol);
  return *reading.symbol;
}

model::SymbolPath path_of(const std::string& data) {
  SymbolPathMaker maker;
  const std::string fault = read_path_data(data, maker);
  INFO(data << ": " << fault);
  REQUIRE(fault.empty());
  return maker.path();
}

std::string fault_of(const std::string& data) {
  SymbolPathMaker maker;
  return read_path_data(data, maker);
}

void same(const model::SymbolPath& a, const model::SymbolPath& b) {
  REQUIRE(a.verbs == b.verbs);
  for (std::size_t i = 0; i < a.points.size(); ++i) {
    CHECK(a.points[i].x == Approx(b.points[i].x).margin(1e-9));
    CHECK(a.points[i].y == Approx(b.points[i].y).margin(1e-9));
  }
}

// Points along the curves of an outline, `each` on every piece.
std::vector<Vec2> along(const model::SymbolPath& path, int each) {
  std::vector<Vec2> points;
  Vec2 at{};
  std::size_t next = 0;
  for (const auto verb : path.verbs) {
    if (verb == model::SymbolPath::Verb::close) continue;
    if (verb != model::SymbolPath::Verb::curve) {
      at = path.points[next++];
      points.push_back(at);
      continue;
    }
    for (int i = 1; i <= each; ++i) {
      const double t = static_cast<double>(i) / each, u = 1 - t;
      points.push_back(at * (u * u * u) + path.points[next] * (3 * u * u * t) +
                       path.points[next + 1] * (3 * u * t * t) +
                       path.points[next + 2] * (t * t * t));
    }
    at = path.points[next + 2];
    next += 3;
  }
  return points;
}

// SVG 1.1 (second edition), appendix F.6.5, step by step as printed there: the centre and the
// angles of an arc; F.6.6 for radii that are too small.
struct Arc {
  double cx, cy, rx, ry, start, sweep;
};
Arc arc_by_the_notes(Vec2 p1, Vec2 p2, double rx, double ry, double phi, bool large, bool sweep) {
  const double c = std::cos(phi), s = std::sin(phi);
  const double x1 = c * (p1.x - p2.x) / 2 + s * (p1.y - p2.y) / 2;
  const double y1 = -s * (p1.x - p2.x) / 2 + c * (p1.y - p2.y) / 2;
  rx = std::abs(rx);
  ry = std::abs(ry);
  const double lambda = x1 * x1 / (rx * rx) + y1 * y1 / (ry * ry);
  if (lambda > 1) {
    rx *= std::sqrt(lambda);
    ry *= std::sqrt(lambda);
  }
  const double over = std::max(0.0, rx * rx * ry * ry - rx * rx * y1 * y1 - ry * ry * x1 * x1);
  const double root = std::sqrt(over / (rx * rx * y1 * y1 + ry * ry * x1 * x1));
  const double sign = large != sweep ? 1 : -1;
  const double cxp = sign * root * rx * y1 / ry, cyp = -sign * root * ry * x1 / rx;
  const auto angle = [](double ux, double uy, double vx, double vy) {
    const double cosine = (ux * vx + uy * vy) / (std::hypot(ux, uy) * std::hypot(vx, vy));
    const double size = std::acos(std::clamp(cosine, -1.0, 1.0));
    return ux * vy - uy * vx < 0 ? -size : size;
  };
  Arc arc{
      c * cxp - s * cyp + (p1.x + p2.x) / 2, s * cxp + c * cyp + (p1.y + p2.y) / 2, rx, ry, 0, 0};
  const double ux = (x1 - cxp) / rx, uy = (y1 - cyp) / ry;
  arc.start = angle(1, 0, ux, uy);
  arc.sweep = angle(ux, uy, (-x1 - cxp) / rx, (-y1 - cyp) / ry);
  if (!sweep && arc.sweep > 0) arc.sweep -= 2 * pi;
  if (sweep && arc.sweep < 0) arc.sweep += 2 * pi;
  return arc;
}

// How far a path is from an ellipse's arc, in parts of the larger radius, both ways.
double apart(const std::vector<Vec2>& points, const Arc& arc, double phi) {
  constexpr int steps = 720;
  double worst = 0;
  std::vector<Vec2> exact;
  for (int i = 0; i <= steps; ++i) {
    const double t = arc.start + arc.sweep * i / steps;
    const double x = arc.rx * std::cos(t), y = arc.ry * std::sin(t);
    exact.push_back({arc.cx + std::cos(phi) * x - std::sin(phi) * y,
                     arc.cy + std::sin(phi) * x + std::cos(phi) * y});
  }
  const auto to = [](Vec2 p, const std::vector<Vec2>& line) {
    double least = 1e300;
    for (std::size_t i = 1; i < line.size(); ++i) {
      const Vec2 d = line[i] - line[i - 1];
      const double length = dot(d, d);
      const double t = length == 0 ? 0 : std::clamp(dot(p - line[i - 1], d) / length, 0.0, 1.0);
      least = std::min(least, norm(p - line[i - 1] - d * t));
    }
    return least;
  };
  for (const Vec2 p : points) worst = std::max(worst, to(p, exact));
  for (const Vec2 p : exact) worst = std::max(worst, to(p, points));
  return worst / std::max(arc.rx, arc.ry);
}

}  // namespace

TEST_CASE("relative commands draw what absolute ones draw") {
  same(path_of(
           "M10 10L30 10H50V40C50 60 30 60 30 40S10 20 10 40Q20 50 30 40T50 40A5 9 30 0 1 60 40Z"),
       path_of("m10,10 20,0h20v30c0,20-20,20-20,0s-20-20-20,0q10,10,20,0t20 0a5 9 30 0 1 10 0z"));
}

TEST_CASE("numbers may stand as close as SVG 1.1 lets them") {
  // 8.3.9 of SVG 1.1: "M 0.6.5" is two numbers, "M 100-200" too; flags need no space (F.6.2's
  // arcs).
  same(path_of("M.6.5L1-2-.5.5e1"), path_of("M 0.6 0.5 L 1 -2 L -0.5 5"));
  same(path_of("M0 0a5 5 0 0110 0"), path_of("M0 0a5 5 0 0 1 10 0"));
  same(path_of("M+1 1.\n\t2,3"), path_of("M1 1L2 3"));
  same(path_of("M1e1 1E-1 L2 2"), path_of("M10 0.1 L2 2"));
}

TEST_CASE("after a close the next subpath starts where the last one did") {
  same(path_of("M1 1L5 1 5 5ZL9 9"), path_of("M1 1L5 1 5 5ZM1 1L9 9"));
  same(path_of("m1 1l4 0 0 4zm1 1l1 0"), path_of("M1 1L5 1 5 5ZM2 2L3 2"));
}

TEST_CASE("a smooth handle mirrors the last one of its kind, else there is none") {
  same(path_of("M0 0C0 5 5 5 5 0S10-5 10 0"), path_of("M0 0C0 5 5 5 5 0C5-5 10-5 10 0"));
  same(path_of("M0 0L5 0S10-5 10 0"), path_of("M0 0L5 0C5 0 10-5 10 0"));
  same(path_of("M0 0Q5 5 10 0T20 0"), path_of("M0 0Q5 5 10 0Q15-5 20 0"));
  same(path_of("M0 0C0 5 5 5 5 0T10 0"), path_of("M0 0C0 5 5 5 5 0Q5 0 10 0"));
}

TEST_CASE("arcs are those of the implementation notes of SVG 1.1, F.6") {
  // The four arcs of figure arcs02 in 8.3.8, their mirror images, turned, narrow and too small
  // ones.
  struct Case {
    Vec2 from, to;
    double rx, ry, degrees;
  };
  for (const Case& one :
       {Case{{125, 75}, {225, 125}, 100, 50, 0}, Case{{225, 125}, {125, 75}, 100, 50, 0},
        Case{{300, 200}, {150, 350}, 150, 150, 0}, Case{{200, 300}, {225, 275}, 25, 50, -30},
        Case{{10, 10}, {14, 10}, 30, 2, 65}, Case{{10, 10}, {90, 40}, 1, 3, 20},
        Case{{10, 10}, {30, 10}, 10, 10, 0}, Case{{10, 10}, {11, 10}, -40, 40, 0}})
    for (const bool large : {false, true})
      for (const bool sweep : {false, true}) {
        std::ostringstream data;
        data.precision(17);
        data << "M" << one.from.x << " " << one.from.y << "A" << one.rx << " " << one.ry << " "
             << one.degrees << " " << large << " " << sweep << " " << one.to.x << " " << one.to.y;
        INFO(data.str());
        const double phi = one.degrees * pi / 180;
        const Arc arc = arc_by_the_notes(one.from, one.to, one.rx, one.ry, phi, large, sweep);
        const model::SymbolPath path = path_of(data.str());
        CHECK(path.points.back().x == one.to.x);
        CHECK(path.points.back().y == one.to.y);
        // The exact arc is compared as 720 straight steps: 1e-5 of a radius at a whole turn.
        CHECK(apart(along(path, 100), arc, phi) < 3e-5);
      }
}

TEST_CASE("an arc without a radius is a line, one to its own start is nothing (F.6.2)") {
  same(path_of("M0 0A0 5 0 1 1 9 9"), path_of("M0 0L9 9"));
  same(path_of("M0 0A5 0 0 1 1 9 9"), path_of("M0 0L9 9"));
  same(path_of("M1 1L2 2A5 5 0 1 1 2 2L3 3"), path_of("M1 1L2 2 3 3"));
  same(path_of("M0 0A1e-300 1e-300 0 1 1 9 9"), path_of("M0 0L9 9"));
}

TEST_CASE("what is wrong with a path is told by its place in it") {
  CHECK(fault_of("") == "it draws nothing");
  CHECK(fault_of("L1 1") == "it begins with \"L1 1\", not with M or m");
  CHECK(fault_of("M1 1 X2") == "\"X2\" is no command");
  CHECK(fault_of("M1 1L2").find("after L") == 0);
  CHECK(fault_of("M1 1L2 1e99").find("\"1e99\"") != std::string::npos);
  CHECK(fault_of("M1 1A5 5 0 2 1 9 9").find("after A") == 0);
  CHECK(fault_of("M1 1L2px 3").find("\"px 3\"") != std::string::npos);
  CHECK(fault_of("M1 1L nan 3").find("after L") == 0);
}

TEST_CASE("circles, ellipses and round corners are what their equations say") {
  const model::Symbol symbol = good(
      svg("<circle cx='50' cy='50' r='40'/><ellipse cx='50' cy='50' rx='30' ry='10'/>\n"
          "<rect x='10' y='20' width='60' height='40' rx='10' ry='5'/><rect x='1' y='2' width='3' "
          "height='4'/><rect width='8' height='8' rx='3'/>"));
  REQUIRE(symbol.shapes.size() == 5);
  for (const Vec2 p : along(symbol.shapes[0].path, 30))
    CHECK(norm(p - Vec2{50, 50}) == Approx(40).epsilon(1e-5));
  for (const Vec2 p : along(symbol.shapes[1].path, 30))
    CHECK(std::pow((p.x - 50) / 30, 2) + std::pow((p.y - 50) / 10, 2) == Approx(1).epsilon(2e-5));
  for (const Vec2 p : along(symbol.shapes[2].path, 30)) {
    const double x = std::max(0.0, std::abs(p.x - 40) - 20),
                 y = std::max(0.0, std::abs(p.y - 40) - 15);
    CHECK(std::hypot(x / 10, y / 5) == Approx(1).epsilon(2e-5));
  }
  same(symbol.shapes[3].path, path_of("M1 2H4V6H1Z"));
  // One radius alone is both (9.2).
  same(symbol.shapes[4].path,
       path_of("M3 0L5 0A3 3 0 0 1 8 3L8 5A3 3 0 0 1 5 8L3 8A3 3 0 0 1 0 5L0 3A3 3 0 0 1 3 0Z"));
}

TEST_CASE("transforms stand in the order of SVG 1.1, chapter 7") {
  // Of two in one attribute the right one comes first, and what stands around an element comes
  // last.
  const auto at = [](const char* text, Vec2 p) { return (*svg_transform(text))(p); };
  const auto near = [](Vec2 a, Vec2 b) { return norm(a - b) < 1e-12; };
  CHECK(near(at("translate(3)", {1, 1}), {4, 1}));
  CHECK(near(at("scale(2,3)translate(1 1)", {1, 1}), {4, 6}));
  CHECK(near(at(" rotate( 90 ) ", {1, 0}), {0, 1}));
  CHECK(near(at("rotate(180, 5 5)", {4, 4}), {6, 6}));
  CHECK(near(at("matrix(1 2 3 4 5 6)", {1, 1}), {9, 12}));
  CHECK(near(at("rotate(30) , rotate(-30)", {1, 7}), {1, 7}));
  const model::Symbol symbol =
      good(svg("<g transform='translate(50 50)'><line x1='0' y1='0' x2='10' y2='0' "
               "transform='rotate(90) scale(2)' stroke-width='3'/></g>"));
  REQUIRE(symbol.shapes.size() == 1);
  CHECK(near(symbol.shapes[0].path.points[1], {50, 70}));
  CHECK(symbol.shapes[0].stroke->width == Approx(6));
}

TEST_CASE("paint is inherited, and what says nothing is black as SVG has it") {
  const model::Symbol symbol = good(
      "<svg viewBox='0 0 10 10'><title>A sign</title><desc>of two</desc><!-- a remark -->"
      "<rect width='5' height='5'/><g fill='none' stroke='#808080' stroke-width='0.5'>"
      "<circle cx='5' cy='5' r='2'/><circle cx='5' cy='5' r='1' stroke='none' fill='#fff'/></g>"
      "<line x1='1' y1='1' x2='2' y2='2'/></svg>");
  REQUIRE(symbol.shapes.size() == 3);  // a line that nothing strokes is not there
  CHECK(symbol.shapes[0].fill == 0.0);
  CHECK_FALSE(symbol.shapes[0].stroke);
  CHECK_FALSE(symbol.shapes[1].fill);
  CHECK(symbol.shapes[1].stroke->grey == Approx(128 / 255.0));
  CHECK(symbol.shapes[1].stroke->width == 0.5);
  CHECK(symbol.shapes[2].fill == 1.0);
  CHECK_FALSE(symbol.shapes[2].stroke);
}

TEST_CASE("faults of a sign are told all at once, each in its line") {
  const std::string text =
      svg("<text x='1'>A</text>\n"
          "<path d='M1 1 L2'/>\n"
          "\n"
          "<rect width='10%' height='5' class='a'/>");
  const SymbolReading reading = read_symbol(text);
  CHECK_FALSE(reading.symbol);
  REQUIRE(reading.diagnostics.size() == 4);
  CHECK(reading.diagnostics[0].found == "the element text");
  CHECK(reading.diagnostics[0].hint == "turn lettering into paths");
  CHECK(reading.diagnostics[0].span.line == 3);
  CHECK(reading.diagnostics[1].span == SourceSpan{4, 7, 2});
  CHECK(reading.diagnostics[2].span == SourceSpan{6, 7, 5});
  CHECK(reading.diagnostics[3].found == "the attribute class of rect");
  CHECK(reading.diagnostics[3].span == SourceSpan{6, 30, 5});
}

TEST_CASE("a sign may have so many elements and points and no more") {
  std::string many, points = "M0 0";
  for (std::size_t i = 0; i < most_symbol_elements; ++i) many += "<line x2='5'/>";
  for (std::size_t i = 0; i + 1 < most_symbol_points; ++i) points += "L9 9";
  good(svg("<path d='" + points + "'/>"));
  good(svg(many));
  const auto refused = [](const std::string& text) {
    const SymbolReading reading = read_symbol(text);
    return reading.diagnostics.size() == 1 && reading.diagnostics[0].code == "too-much-drawn";
  };
  CHECK(refused(svg("<path d='" + points + "L9 9'/>")));
  CHECK(refused(svg(many + "<line x2='5'/>")));
}
