// Fixed blocks glued into the corner of a partition and what it ends against.
#include <cmath>

#include "constructs/case_build.h"

namespace splay::constructs {

void CaseBuild::build_blocks(const Partition& partition, int part, const Ends& ends) {
  const Blocks& blocks = partition.blocks;
  if (!blocks.given) return;
  const bool upper = blocks.at.value == BlockEnd::upper;
  const EndChoice& end = upper ? partition.upper : partition.lower;
  if (end.housing.given) {
    builder_.report({Level::note,
                     "blocks-beside-housing",
                     {builder_.part(part).name},
                     "The " + partition.name + " partition has blocks at its " +
                         (upper ? "upper" : "lower") + " end, where a housing holds it already.",
                     "Blocks are usual at an end without a housing.",
                     blocks.span});
  }
  const HostFace& host = upper ? *ends.second : *ends.first;
  if (blocks.sides.value != BlockSides::right) add_block(partition, part, host, true);
  if (blocks.sides.value != BlockSides::left) add_block(partition, part, host, false);
}

void CaseBuild::add_block(const Partition& partition, int part, const HostFace& host, bool left) {
  const Blocks& blocks = partition.blocks;
  const double t = thickness(*blocks.stock);
  const double on_host = blocks.along_host.given ? blocks.along_host->mm : t;
  const double on_partition = blocks.along_partition.given ? blocks.along_partition->mm : t;
  const parts::Part& board = builder_.part(part);
  const Box reach = board.body.bounds();
  const double x = left ? -reach.high.z : -reach.low.z;  // the partition's face, in the world
  const Vec2 away{left ? -1.0 : 1.0, 0};
  const Line2& face = host.face;
  const Vec2 corner{x, (face.d - face.n.x * x) / face.n.y};
  Vec2 along = left_of(face.n);
  if (dot(along, away) < 0) along = -along;
  const Vec2 in{0, face.n.y > 0 ? 1.0 : -1.0};
  const Polygon profile = {corner, corner + along * on_host,
                           corner + along * on_host + in * on_partition,
                           corner + in * on_partition};
  const double whole = reach.high.y - reach.low.y;
  const double length = blocks.length.given ? blocks.length->mm : whole * 0.75;
  const double y = reach.low.y + (whole - length) / 2;

  parts::Blank blank;
  blank.name = part_name(partition.name + (left ? " left block" : " right block"));
  blank.stock = *blocks.stock;
  blank.show = parts::ShowFace::either;
  blank.place = frame(lift(corner, y), {0, 1, 0}, lift_direction(face.n));
  blank.side_names = {"front end", "back end", "", "", "glued to " + builder_.part(host.part).name,
                      "free face"};
  const bool partition_low = dot(blank.place.ey, lift_direction(away)) > 0;
  blank.side_names[partition_low ? 2 : 3] = "glued to partition";
  blank.side_names[partition_low ? 3 : 2] = "free edge";
  Box box;
  for (const Vec2 p : profile) box.add(blank.place.local_point(lift(p, y)));
  box.high.x = length;
  blank.body = Solid::box(box.low, box.high);
  const int block = builder_.add(std::move(blank));
  const double turn = signed_area(profile) > 0 ? 1 : -1;
  for (std::size_t i = 0; i < 4; ++i) {
    const Vec2 a = profile[i], b = profile[(i + 1) % 4];
    const Vec2 out = left_of(unit(b - a)) * -turn;
    const Vec3 local = builder_.part(block).place.local_direction(lift_direction(out));
    if (std::abs(local.y) > 1e-9 && std::abs(local.z) > 1e-9)
      builder_.cut_edge(block, lift({out, dot(out, a)}), "bevel", "");
  }
  joinery::glued(builder_, host.part, block, lift(face), "glued");
  joinery::glued(builder_, part, block, lift({away, dot(away, corner)}), "glued");
}

}  // namespace splay::constructs
