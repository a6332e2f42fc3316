#include "joinery/bench.h"

#include <cmath>

namespace splay::test {

int Bench::add(const std::string& name, const Rigid& place, Solid body) {
  parts::Blank blank;
  blank.name = name;
  blank.place = place;
  blank.body = std::move(body);
  return builder.add(std::move(blank));
}

int Bench::bar(const std::string& name, const Rigid& place, double from, double to, double width,
               double thickness) {
  return add(name, place,
             Solid::box({from, -width / 2, -thickness / 2}, {to, width / 2, thickness / 2}));
}

const parts::Part& Made::part(const std::string& name) const {
  for (const parts::Part& each : assembly.parts)
    if (each.name == name) return each;
  FAIL("no part named " << name);
  return assembly.parts.front();
}

const parts::Operation& Made::operation(const std::string& part_name,
                                        const std::string& name) const {
  for (const parts::Operation& each : part(part_name).operations)
    if (each.name == name) return each;
  FAIL(part_name << " has no operation named " << name);
  return part(part_name).operations.front();
}

Made make_sound(Bench&& bench, const joinery::JointKind& kind, int host, int guest) {
  const std::string fault = kind.make(bench.builder, host, guest);
  REQUIRE(fault == "");
  Made made{std::move(bench.builder).finish()};
  std::string stops;
  for (const Finding& finding : made.assembly.findings)
    if (finding.level == Level::stop) stops += finding.code + ": " + finding.text + "\n";
  REQUIRE(stops == "");
  REQUIRE(made.assembly.joints.size() == 1);
  REQUIRE(!made.joint().mates.empty());
  REQUIRE(parts::joint_gap(made.joint(), made.assembly) < 1e-6);
  std::vector<Solid> solids;
  for (const parts::Part& part : made.assembly.parts) solids.push_back(part.world);
  REQUIRE(find_clashes(solids).empty());
  return made;
}

std::string refusal(Bench& bench, const joinery::JointKind& kind, int host, int guest) {
  const double before = bench.volume(host) + bench.volume(guest);
  const std::string fault = kind.make(bench.builder, host, guest);
  REQUIRE(fault != "");
  REQUIRE(fault.back() == '.');
  REQUIRE(bench.builder.part(host).operations.empty());
  REQUIRE(bench.builder.part(guest).operations.empty());
  REQUIRE(bench.volume(host) + bench.volume(guest) == before);
  return fault;
}

Vec3 any_direction(Chance& chance) {
  for (;;) {
    const double x = chance.between(-1, 1), y = chance.between(-1, 1), z = chance.between(-1, 1);
    const Vec3 v{x, y, z};
    if (norm(v) > 0.1 && norm(v) < 1) return unit(v);
  }
}

Rigid any_frame(Chance& chance) {
  const Vec3 x = any_direction(chance);
  Vec3 z = any_direction(chance);
  while (norm(cross(x, z)) < 0.1) z = any_direction(chance);
  const double right = chance.between(-500, 500), back = chance.between(-500, 500);
  return frame(Vec3{right, back, chance.between(-500, 500)}, x, z);
}

double Tee::cosine() const { return std::cos(lean) * std::cos(skew); }

double Tee::room() const { return (face < 4 ? host_width : host_thickness) / cosine(); }

Bench lay(const Tee& tee) {
  Bench bench;
  const double sign = (tee.face & 1) != 0 ? 1 : -1;
  const Vec3 out = tee.face < 4 ? Vec3{0, sign, 0} : Vec3{0, 0, sign};
  const double half = (tee.face < 4 ? tee.host_width : tee.host_thickness) / 2;
  // A tapered host is thicker to start with, so that the taper is all of its face.
  const double more = tee.host_length * std::abs(std::tan(tee.taper));
  bench.bar("host", tee.world, -tee.host_length / 2, tee.host_length / 2,
            tee.host_width + (tee.face < 4 ? more : 0),
            tee.host_thickness + (tee.face < 4 ? 0 : more));
  if (tee.taper != 0) {
    const Vec3 normal = out * std::cos(tee.taper) + Vec3{1, 0, 0} * std::sin(tee.taper);
    bench.builder.cut_edge(0, tee.world.plane(Plane::through(out * half, normal)), "taper", "");
  }
  const Vec3 length{1, 0, 0}, side = cross(out, length);
  const Vec3 in = (-out * std::cos(tee.lean) + length * std::sin(tee.lean)) * std::cos(tee.skew) +
                  side * std::sin(tee.skew);
  // Unrolled, the guest's y runs as nearly as can be along the host.
  const Vec3 y = unit(length - in * dot(length, in));
  const Vec3 z = cross(in, y);
  const Vec3 rolled = z * std::cos(tee.roll) + y * std::sin(tee.roll);
  const Rigid place = tee.world * frame(out * half, in, rolled);
  bench.bar("guest", place, -tee.guest_length, tee.past, tee.guest_width, tee.guest_thickness);
  return bench;
}

Tee random_tee(Chance& chance, double most_lean, double most_skew, double most_roll) {
  Tee tee;
  tee.host_width = chance.between(50, 90);
  tee.host_thickness = chance.between(50, 90);
  tee.guest_width = chance.between(25, 40);
  tee.guest_thickness = chance.between(15, 25);
  tee.lean = chance.between(-most_lean, most_lean);
  tee.skew = chance.between(-most_skew, most_skew);
  tee.roll = chance.between(-most_roll, most_roll);
  tee.face = 2 + static_cast<int>(chance.between(0, 4));
  tee.past = 250;
  tee.world = any_frame(chance);
  return tee;
}

}  // namespace splay::test
