// What a drawer's box runs on: runners on the sides of its opening, on packing where these lean.
#include <algorithm>
#include <cmath>
#include <numeric>

#include "constructs/drawer_build.h"
#include "joinery/joint.h"

namespace splay::constructs {

// Whose wood stands beside the runners.
void DrawerBuild::find_walls() {
  std::vector<int> all(static_cast<std::size_t>(builder_.count()));
  std::iota(all.begin(), all.end(), 0);
  const double z = (band_[0] + band_[1]) / 2, y = (y_[0] + y_[1]) / 2;
  for (const std::size_t side : {0U, 1U}) {
    const double beside = wall(side, z) + (side == 0 ? -1 : 1);
    walls_[side] = part_at(builder_, all, place_.point({beside, y, z}));
  }
}

// A wedge along the runner: its back on the leaning side, its face plumb.
void DrawerBuild::add_packing(std::size_t side) {
  if (!leans(side)) return;
  const double sense = side == 0 ? 1 : -1;
  const Vec2 foot = opening_[side == 0 ? 0 : 1], head = opening_[side == 0 ? 3 : 2];
  const Vec2 up = unit(head - foot);
  const Vec2 out = side == 0 ? left_of(up) : -left_of(up);
  const Plane back = plane({out.x, 0, out.y}, dot(out, foot));
  parts::Blank blank;
  const std::string word = side == 0 ? "left" : "right";
  blank.name = part_name(builder_, spec_, word + " packing");
  blank.stock = *spec_.packing.stock;
  blank.place = frame(place_.point({face_[side], 0, 0}), {0, 1, 0}, {sense, 0, 0});
  const double deep = std::max(std::abs(face_[side] - wall(side, band_[0])),
                               std::abs(face_[side] - wall(side, band_[1])));
  Box box;
  for (const double z : band_)
    for (const double y : y_)
      for (const double x : {face_[side], face_[side] - sense * (deep + 5)})
        box.add(blank.place.local_point(place_.point({x, y, z})));
  blank.body = Solid::box(box.low, box.high);
  const bool up_high = blank.place.ey.z > 0;
  blank.side_names = {"front end",
                      "back end",
                      up_high ? "lower edge" : "upper edge",
                      up_high ? "upper edge" : "lower edge",
                      "back",
                      "face"};
  const int part = builder_.add(std::move(blank));
  packs_[side] = part;
  builder_.cut_edge(part, back, "bevel to the " + word + " side", "");
  builder_.measure(part, "thickness at its thick edge", deep);
  builder_.measure(part, "thickness at its thin edge", spec_.packing.least->mm);
  if (walls_[side] >= 0) joinery::glued(builder_, walls_[side], part, back.flipped(), "screwed");
}

void DrawerBuild::add_runner(std::size_t side) {
  const std::string word = side == 0 ? "left" : "right";
  const char* kinds[] = {"side runner", "undermount runner", "wooden runner"};
  const std::string kind = kinds[static_cast<int>(spec_.runner.kind.value)];
  const int host = packs_[side] >= 0 ? packs_[side] : walls_[side];
  std::vector<int> touches{sides_[side]};
  if (host >= 0) touches.insert(touches.begin(), host);
  const std::string joint = host < 0 ? "" : part_name(builder_, spec_, word + " runner");
  builder_.add_fitting({kind,
                        figure(y_[1] - y_[0]),
                        place_.point({face_[side], y_[0], (band_[0] + band_[1]) / 2}),
                        {0, 1, 0},
                        band_[1] - band_[0],
                        y_[1] - y_[0],
                        touches,
                        joint});
  // Nothing of it is glued: it has no surfaces that meet.
  if (host >= 0) builder_.add_joint({joint, kind, {host, sides_[side]}, 0, {}});
}

}  // namespace splay::constructs
