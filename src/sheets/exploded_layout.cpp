#include "sheets/exploded_layout.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

#include "base/figure.h"
#include "base/index.h"
#include "geometry/polygon.h"
#include "parts/audit.h"

namespace splay::sheets {

namespace {

std::array<double, 2> reach(const parts::Assembly& all, const std::vector<int>& among,
                            const std::vector<Vec3>& moved, Vec3 way) {
  std::array<double, 2> result{1e300, -1e300};
  for (const int part : among) {
    const auto own = all.parts[index(part)].world.extent(way);
    const double by = dot(moved[index(part)], way);
    result[0] = std::min(result[0], own[0] + by);
    result[1] = std::max(result[1], own[1] + by);
  }
  return result;
}

// A surface that two parts have in common, or several: the sum of its points by their area.
struct Surface {
  Vec3 sum;
  double area = 0;
  Vec3 middle() const { return sum * (1 / area); }
};

Surface surface_of(const parts::Assembly& all, const parts::Mate& mate) {
  Surface surface;
  const parts::Contact contact =
      parts::contact(mate, all.parts[index(mate.a)].world, all.parts[index(mate.b)].world);
  for (const Polygon& piece : contact.pieces) {
    const double area = std::abs(signed_area(piece)), corners = static_cast<double>(piece.size());
    surface.area += area;
    for (const Vec2 p : piece)
      surface.sum = surface.sum + contact.frame.point({p.x, p.y, 0}) * (area / corners);
  }
  return surface;
}

// The surfaces that a joining brings together, by the two parts that meet there.
std::map<std::array<int, 2>, Surface> surfaces_of(const parts::Assembly& all,
                                                  const fabrication::Joining& joining) {
  std::map<std::array<int, 2>, Surface> found;
  for (const int joint : joining.joints)
    for (const parts::Mate& mate : all.joints[index(joint)].mates) {
      const Surface one = surface_of(all, mate);
      Surface& both = found[{std::min(mate.a, mate.b), std::max(mate.a, mate.b)}];
      both.sum = both.sum + one.sum;
      both.area += one.area;
    }
  std::erase_if(found, [](const auto& entry) { return entry.second.area <= 0; });
  return found;
}

// The middle of all that it brings together.
Vec3 middle_of(const parts::Assembly& all, const fabrication::Joining& joining) {
  Surface whole;
  for (const auto& [parts, one] : surfaces_of(all, joining)) {
    whole.sum = whole.sum + one.sum;
    whole.area += one.area;
  }
  if (whole.area > 0) return whole.middle();
  Vec3 sum;
  for (const int part : joining.moving) sum = sum + all.parts[index(part)].world.centroid();
  return sum * (1.0 / static_cast<double>(joining.moving.size()));
}

}  // namespace

std::vector<Vec3> drawn_apart(const parts::Assembly& assembly,
                              const std::vector<fabrication::Joining>& order,
                              const std::vector<int>& joinings, double gap, double furthest) {
  std::vector<Vec3> moved(assembly.parts.size());
  for (const int number : joinings) {
    const fabrication::Joining& joining = order[index(number)];
    const auto own = reach(assembly, joining.moving, moved, joining.way);
    const auto other = reach(assembly, joining.fixed, moved, joining.way);
    const double back = std::clamp(own[1] - other[0] + gap, gap, std::max(gap, furthest));
    for (const int part : joining.moving)
      moved[index(part)] = moved[index(part)] - joining.way * back;
  }
  return moved;
}

std::vector<WayArrow> way_arrows(const parts::Assembly& assembly,
                                 const std::vector<fabrication::Joining>& order,
                                 const std::vector<int>& joinings, const std::vector<Vec3>& moved,
                                 const View& view) {
  std::vector<WayArrow> arrows;
  for (const int number : joinings) {
    const fabrication::Joining& joining = order[index(number)];
    const Vec3 place = middle_of(assembly, joining);
    const Vec3 apart = moved[index(joining.moving.front())] - moved[index(joining.fixed.front())];
    // Only what this joining itself moved: groups inside were moved by others before.
    const double back = -dot(apart, joining.way);
    const Vec3 start = place + moved[index(joining.moving.front())];
    arrows.push_back({number, view.project(start + joining.way * (back * 0.08)),
                      view.project(start + joining.way * (back * 0.88))});
  }
  return arrows;
}

std::vector<HomeLine> home_lines(const parts::Assembly& assembly,
                                 const std::vector<fabrication::Joining>& order,
                                 const std::vector<int>& joinings, const std::vector<Vec3>& moved,
                                 const View& view) {
  std::vector<HomeLine> lines;
  for (const int number : joinings)
    for (const auto& [parts, surface] : surfaces_of(assembly, order[index(number)])) {
      const Vec3 at = surface.middle();
      lines.push_back(
          {view.project(at + moved[index(parts[0])]), view.project(at + moved[index(parts[1])])});
    }
  return lines;
}

std::string way_words(Vec3 way) {
  struct Named {
    Vec3 way;
    const char* word;
  };
  static constexpr std::array<Named, 6> named{{{{0, 0, -1}, "down"},
                                               {{0, 0, 1}, "up"},
                                               {{1, 0, 0}, "to the right"},
                                               {{-1, 0, 0}, "to the left"},
                                               {{0, 1, 0}, "to the back"},
                                               {{0, -1, 0}, "to the front"}}};
  const Named* best = named.data();
  for (const Named& one : named)
    if (dot(one.way, way) > dot(best->way, way)) best = &one;
  const double off = Angle{angle_between(best->way, way)}.degrees();
  constexpr double seen = 0.05;
  std::string words = best->word;
  if (off > seen) words += ", " + degrees_text(off) + " off";
  return words;
}

}  // namespace splay::sheets
