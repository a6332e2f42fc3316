// Cutters near faces, near each other and near nothing: what is cut off and what stays are the
// whole, and the boundary closes.
#include <array>
#include <cmath>
#include <cstdlib>

#include "fuzz/target.h"
#include "geometry/solid.h"

namespace {

using namespace splay;

class Bytes {
 public:
  Bytes(const std::uint8_t* data, std::size_t size) : data_(data), size_(size) {}
  bool left() const { return at_ < size_; }
  int next() { return left() ? data_[at_++] : 0; }

 private:
  const std::uint8_t* data_;
  std::size_t size_, at_ = 0;
};

// A place along an edge of the block, often within a hair of a whole tenth of it.
double place(Bytes& bytes, double length) {
  static constexpr std::array<double, 8> hairs{0, 1e-9, -1e-7, 1e-6, -1e-5, 1e-4, -1e-3, 0.1};
  const double tenth = length * (bytes.next() % 13 - 1) / 10.0;
  return tenth + hairs[static_cast<std::size_t>(bytes.next()) % hairs.size()];
}

Vec3 direction(Bytes& bytes) {
  const Vec3 coarse{bytes.next() % 5 - 2.0, bytes.next() % 5 - 2.0, bytes.next() % 5 - 2.0};
  const Vec3 fine{(bytes.next() - 128) * 1e-7, (bytes.next() - 128) * 1e-5, 0};
  const Vec3 both = coarse + fine;
  return norm(both) < 0.5 ? Vec3{0, 0, 1} : unit(both);
}

constexpr Vec3 block{300, 120, 20};  // mm

Region cutter(Bytes& bytes) {
  Region region;
  const int faces = 1 + bytes.next() % 4;
  for (int i = 0; i < faces; ++i) {
    const Vec3 normal = direction(bytes);
    const Vec3 through{place(bytes, block.x), place(bytes, block.y), place(bytes, block.z)};
    region.push_back(Plane{normal, dot(normal, through)});
  }
  return region;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  Bytes bytes(data, std::min<std::size_t>(size, 200));
  Solid rest = Solid::box({0, 0, 0}, block);
  while (bytes.left() && !rest.empty()) {
    const double before = rest.volume();
    // A cut may move a face by the kernel's tolerance: that much wood may be told apart wrongly.
    const double slack = 1e-3 * rest.area() + 1e-6;
    const Region region = cutter(bytes);
    Solid off = rest;
    rest.subtract(region);
    off.keep(region);
    const double after = rest.volume() + off.volume();
    if (!(std::abs(after - before) <= slack)) std::abort();
    if (!rest.empty()) (void)rest.boundary();
    if (!off.empty()) (void)off.boundary();
  }
  return 0;
}
