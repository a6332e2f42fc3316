#include "geometry/solid.h"

namespace splay {

double overlap_volume(const Solid& a, const Solid& b) {
  Solid common = a;
  common.intersect(b);
  return common.volume();
}

double difference_volume(const Solid& a, const Solid& b) {
  Solid only_a = a, only_b = b;
  only_a.subtract(b);
  only_b.subtract(a);
  return only_a.volume() + only_b.volume();
}

}  // namespace splay
