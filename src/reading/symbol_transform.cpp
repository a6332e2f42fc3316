#include "reading/symbol_transform.h"

#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include "reading/symbol_scan.h"

namespace splay::reading {

namespace {

SvgMatrix turned(double degrees) {
  const double angle = degrees * std::numbers::pi / 180;
  return {std::cos(angle), std::sin(angle), -std::sin(angle), std::cos(angle), 0, 0};
}

std::optional<SvgMatrix> one_transform(const std::string& name, const std::vector<double>& n) {
  const std::size_t count = n.size();
  if (name == "matrix" && count == 6) return SvgMatrix{n[0], n[1], n[2], n[3], n[4], n[5]};
  if (name == "translate" && (count == 1 || count == 2))
    return SvgMatrix{1, 0, 0, 1, n[0], count == 2 ? n[1] : 0};
  if (name == "scale" && (count == 1 || count == 2))
    return SvgMatrix{n[0], 0, 0, count == 2 ? n[1] : n[0], 0, 0};
  if (name == "rotate" && count == 1) return turned(n[0]);
  if (name == "rotate" && count == 3)
    return SvgMatrix{1, 0, 0, 1, n[1], n[2]} * turned(n[0]) * SvgMatrix{1, 0, 0, 1, -n[1], -n[2]};
  return std::nullopt;
}

std::string name_at(SvgScanner& scan) {
  std::string name;
  while (scan.peek() >= 'a' && scan.peek() <= 'z') name += scan.take();
  return name;
}

}  // namespace

SvgMatrix SvgMatrix::operator*(const SvgMatrix& inner) const {
  return {a * inner.a + c * inner.b, b * inner.a + d * inner.b,     a * inner.c + c * inner.d,
          b * inner.c + d * inner.d, a * inner.e + c * inner.f + e, b * inner.e + d * inner.f + f};
}

std::optional<double> SvgMatrix::scale() const {
  constexpr double alike = 1e-6;
  const double x = a * a + b * b, y = c * c + d * d;
  const bool even =
      std::abs(x - y) <= alike * (x + y) && std::abs(a * c + b * d) <= alike * (x + y);
  if (!even) return std::nullopt;
  return std::sqrt(x);
}

std::optional<SvgMatrix> svg_transform(std::string_view text) {
  SvgScanner scan(text);
  SvgMatrix all;
  scan.skip_space();
  while (!scan.at_end()) {
    const std::string name = name_at(scan);
    scan.skip_space();
    if (scan.take() != '(') return std::nullopt;
    scan.skip_space();
    std::vector<double> numbers;
    while (scan.peek() != ')') {
      const auto number = scan.number();
      if (!number) return std::nullopt;
      numbers.push_back(*number);
      scan.skip_comma();
    }
    scan.take();
    const auto one = one_transform(name, numbers);
    if (!one) return std::nullopt;
    all = all * *one;
    scan.skip_comma();
  }
  return all;
}

}  // namespace splay::reading
