#include "reading/symbol_shape.h"

#include <array>

namespace splay::reading {

namespace {

constexpr const char* a_number = "a number without a unit";

void make_rect(const ShapeReader& from, SymbolPathMaker& path) {
  const Vec2 low{from.number("x"), from.number("y")};
  const Vec2 size{from.size("width"), from.size("height")};
  // One radius alone is both (SVG 1.1, 9.2).
  const auto rx = from.radius("rx"), ry = from.radius("ry");
  path.rect(low, size, {rx.value_or(ry.value_or(0)), ry.value_or(rx.value_or(0))});
}

void make_circle(const ShapeReader& from, SymbolPathMaker& path) {
  const double r = from.size("r");
  path.ellipse({from.number("cx"), from.number("cy")}, {r, r});
}

void make_ellipse(const ShapeReader& from, SymbolPathMaker& path) {
  const Vec2 centre{from.number("cx"), from.number("cy")};
  path.ellipse(centre, {from.size("rx"), from.size("ry")});
}

void make_line(const ShapeReader& from, SymbolPathMaker& path) {
  path.move({from.number("x1"), from.number("y1")});
  path.line({from.number("x2"), from.number("y2")});
}

void make_polyline(const ShapeReader& from, SymbolPathMaker& path) {
  path.polygon(from.points(2), false);
}

void make_polygon(const ShapeReader& from, SymbolPathMaker& path) {
  path.polygon(from.points(3), true);
}

void make_path(const ShapeReader& from, SymbolPathMaker& path) { from.path_data(path); }

constexpr std::array<SvgShapeKind, 7> shapes{{
    {"path", "transform d", make_path, true, true},
    {"line", "transform x1 y1 x2 y2", make_line, false, false},
    {"polyline", "transform points", make_polyline, true, true},
    {"polygon", "transform points", make_polygon, true, true},
    {"rect", "transform x y width height rx ry", make_rect, true, false},
    {"circle", "transform cx cy r", make_circle, true, false},
    {"ellipse", "transform cx cy rx ry", make_ellipse, true, false},
}};

}  // namespace

std::optional<double> ShapeReader::read(const char* name) const {
  const auto* at = element_.FindAttribute(name);
  if (at == nullptr) return std::nullopt;
  const auto numbers = svg_numbers(at->Value());
  if (numbers && numbers->size() == 1) return numbers->front();
  xml_.complain(at->GetLineNum(), name, "bad-attribute",
                std::string(name) + " is \"" + shown(at->Value()) + "\"", a_number);
  return 0;
}

void ShapeReader::missing(const char* name, const char* allowed) const {
  xml_.complain(element_.GetLineNum(), element_.Name(), "missing-attribute",
                std::string(element_.Name()) + " has no " + name,
                std::string(name) + ": " + allowed);
}

double ShapeReader::number(const char* name, double when_left_out) const {
  return read(name).value_or(when_left_out);
}

double ShapeReader::size(const char* name) const {
  constexpr const char* allowed = "a number over 0, without a unit";
  const auto* at = element_.FindAttribute(name);
  if (at == nullptr) {
    missing(name, allowed);
    return 1;
  }
  const auto value = read(name);
  if (value && *value <= 0 && svg_numbers(at->Value()))
    xml_.complain(at->GetLineNum(), name, "bad-attribute",
                  std::string(name) + " is \"" + shown(at->Value()) + "\"", allowed);
  return value.value_or(1);
}

std::optional<double> ShapeReader::radius(const char* name) const {
  const auto value = read(name);
  if (value && *value < 0)
    xml_.complain(element_.FindAttribute(name)->GetLineNum(), name, "bad-attribute",
                  std::string(name) + " is below 0", "a number not below 0, without a unit");
  return value;
}

std::vector<Vec2> ShapeReader::points(std::size_t least) const {
  const auto* at = element_.FindAttribute("points");
  if (at == nullptr) {
    missing("points", "x and y of every corner");
    return {};
  }
  const auto numbers = svg_numbers(at->Value());
  std::vector<Vec2> points;
  if (numbers && numbers->size() % 2 == 0)
    for (std::size_t i = 0; i < numbers->size(); i += 2)
      points.push_back({(*numbers)[i], (*numbers)[i + 1]});
  if (points.size() < least)
    xml_.complain(at->GetLineNum(), "points", "bad-attribute",
                  "points is \"" + shown(at->Value()) + "\"",
                  "x and y of " + std::to_string(least) + " corners or more, without units");
  return points;
}

void ShapeReader::path_data(SymbolPathMaker& path) const {
  const auto* at = element_.FindAttribute("d");
  if (at == nullptr) return missing("d", "the path's commands");
  const std::string fault = read_path_data(at->Value(), path);
  if (!fault.empty())
    xml_.complain(at->GetLineNum(), "d=", "bad-path", "in the path: " + fault,
                  "M L H V C S Q T A Z and their numbers, beginning with M or m");
}

const SvgShapeKind* svg_shape(std::string_view name) {
  for (const SvgShapeKind& kind : shapes)
    if (kind.name == name) return &kind;
  return nullptr;
}

std::string svg_shape_names() {
  std::string list;
  for (const SvgShapeKind& kind : shapes) list.append(list.empty() ? "" : ", ").append(kind.name);
  return list;
}

}  // namespace splay::reading
