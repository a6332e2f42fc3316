// What the reports and the schemas say alike.
#pragma once

#include <nlohmann/json.hpp>

#include "base/quantity.h"
#include "geometry/vec.h"

namespace splay::writers {

inline nlohmann::ordered_json point(Vec3 p) {
  return nlohmann::ordered_json::array({p.x, p.y, p.z});
}
inline double degrees(double radians) { return Angle{radians}.degrees(); }
// The schema of a list whose members are all of one schema.
inline nlohmann::ordered_json list_of(nlohmann::ordered_json of) {
  return {{"type", "array"}, {"items", std::move(of)}};
}

}  // namespace splay::writers
