#include "model/movement.h"

#include <algorithm>

#include "model/room.h"

namespace splay::model {

double equilibrium_moisture(double relative_humidity, double celsius) {
  const double t = celsius * 9 / 5 + 32;  // the equation's own degrees
  const double h = relative_humidity / 100;
  const double w = 330 + 0.452 * t + 0.00415 * t * t;
  const double k = 0.791 + 4.63e-4 * t - 8.44e-7 * t * t;
  const double k1 = 6.34 + 7.75e-4 * t - 9.35e-5 * t * t;
  const double k2 = 1.09 + 2.84e-2 * t - 9.04e-5 * t * t;
  const double kh = k * h;
  const double both = k1 * k2 * kh * kh;
  return 1800 / w * (kh / (1 - kh) + (k1 * kh + 2 * both) / (1 + k1 * kh + both));
}

double movement(double width, double coefficient, double from, double to) {
  return width * coefficient * (to - from);
}

double movement_by_shrinkage(double width, double shrinkage, double from, double to) {
  constexpr double saturated = 30;
  const double first = std::min(from, saturated), last = std::min(to, saturated);
  return width * (last - first) / (saturated * 100 / shrinkage - saturated + first);
}

Moistures moistures(const Room& room) {
  const auto at = [&](double humidity) {
    return equilibrium_moisture(humidity, *room.temperature);
  };
  return {at(*room.made_at), at(*room.driest), at(*room.dampest)};
}

double most_points(const Room& room) {
  const Moistures all = moistures(room);
  return std::max({all.made - all.driest, all.dampest - all.made, 0.0});
}

}  // namespace splay::model
