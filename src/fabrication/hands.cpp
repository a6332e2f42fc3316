#include "fabrication/hands.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace splay::fabrication {

namespace {

using parts::Part;

constexpr double same_point = 1e-5;  // mm

// A turn or mirror image about the middle of the bounding box: axis i takes from axis `axis[i]`
// with the given sign.
struct Turn {
  std::array<int, 3> axis;
  std::array<double, 3> sign;
};

// Turns that keep the grain axis and the show face. Without a grain a square piece may also be
// turned a quarter; without a show face it may be turned over.
std::vector<Turn> allowed_turns(const Part& part) {
  std::vector<Turn> turns = {{{0, 1, 2}, {1, 1, 1}}, {{0, 1, 2}, {-1, -1, 1}}};
  if (part.show == parts::ShowFace::either) {
    turns.push_back({{0, 1, 2}, {1, -1, -1}});
    turns.push_back({{0, 1, 2}, {-1, 1, -1}});
  }
  if (part.grain == parts::Grain::none && std::abs(part.size.x - part.size.y) < same_point) {
    const std::size_t straight = turns.size();
    for (std::size_t i = 0; i < straight; ++i) {
      const Turn& t = turns[i];
      turns.push_back({{1, 0, 2}, {t.sign[0], -t.sign[1], t.sign[2]}});
    }
  }
  return turns;
}

// Corners of the body measured from the middle of its bounding box.
std::vector<Vec3> corners(const Part& part) {
  std::vector<Vec3> points;
  for (const Face& face : part.body.boundary().faces)
    for (const std::vector<Vec3>& loop : face.loops)
      for (const Vec3& p : loop) {
        const Vec3 q = p - part.size * 0.5;
        const bool known = std::any_of(points.begin(), points.end(),
                                       [&](Vec3 o) { return norm(o - q) < same_point; });
        if (!known) points.push_back(q);
      }
  return points;
}

Vec3 turned(const Turn& turn, Vec3 p) {
  const std::array<double, 3> c = {p.x, p.y, p.z};
  const auto at = [&](std::size_t i) {
    return turn.sign[i] * c[static_cast<std::size_t>(turn.axis[i])];
  };
  return {at(0), at(1), at(2)};
}

bool covers(const std::vector<Vec3>& from, const Turn& turn, bool mirror,
            const std::vector<Vec3>& to) {
  return std::all_of(from.begin(), from.end(), [&](Vec3 p) {
    const Vec3 q = turned(turn, mirror ? Vec3{-p.x, p.y, p.z} : p);
    return std::any_of(to.begin(), to.end(), [&](Vec3 o) { return norm(o - q) < same_point; });
  });
}

bool comparable(const Part& a, const Part& b) {
  return a.stock == b.stock && a.show == b.show && a.grain == b.grain &&
         norm(a.size - b.size) < same_point &&
         std::abs(a.body.volume() - b.body.volume()) < same_point * (1 + a.body.area());
}

std::optional<Turn> match(const Part& a, const Part& b, bool mirror) {
  if (!comparable(a, b)) return {};
  const std::vector<Vec3> ones = corners(a), others = corners(b);
  if (ones.size() != others.size()) return {};
  for (const Turn& turn : allowed_turns(a))
    if (covers(ones, turn, mirror, others)) return turn;
  return {};
}

}  // namespace

bool alike(const Part& a, const Part& b) { return match(a, b, false).has_value(); }
bool mirrored(const Part& a, const Part& b) { return match(a, b, true).has_value(); }
std::optional<Rigid> turn_onto(const Part& a, const Part& b) {
  const std::optional<Turn> turn = match(a, b, false);
  if (!turn) return {};
  Rigid motion{turned(*turn, {1, 0, 0}), turned(*turn, {0, 1, 0}), turned(*turn, {0, 0, 1}), {}};
  motion.origin = b.size * 0.5 - motion.direction(a.size * 0.5);
  return motion;
}
bool handed(const Part& part) { return !mirrored(part, part); }

}  // namespace splay::fabrication
