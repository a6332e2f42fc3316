// The face frame: members round the outline, mid rails and mid stiles.
#include <cmath>

#include "constructs/case_build.h"
#include "constructs/flat_member.h"

namespace splay::constructs {

int CaseBuild::add_frame_member(const Ring& ring, std::size_t side, double thick) {
  const RingMember& member = ring.members[side];
  parts::Blank blank = flat_member(member, member.from, member.to, 0, thick, "front");
  blank.name = part_name("frame " + sides_[side]);
  blank.stock = *case_.frame.stock;
  return builder_.add(std::move(blank));
}

void CaseBuild::join_frame_corner(const Ring& ring, const std::vector<int>& members,
                                  std::size_t corner, const RingCorner& choice) {
  const std::size_t n = members.size();
  const std::size_t before = (corner + n - 1) % n;
  const double angle = ring.members[before].corner_angle;
  const int a = members[before], b = members[corner];
  if (choice.kind == CornerKind::mitre) {
    joinery::mitre(builder_, {a, b, lift(mitre_line(ring, corner)), angle});
    return;
  }
  const int host = choice.before_through ? a : b, guest = choice.before_through ? b : a;
  const std::size_t through = choice.before_through ? before : corner;
  builder_.cut_end(host, lift(butt_end(ring, corner, choice.before_through, true)),
                   "end past " + builder_.part(guest).name, "");
  joinery::butt(builder_, {host, guest, lift(ring.members[through].inside), angle});
}

void CaseBuild::add_frame_bar(const FrameBar& bar, std::vector<HostFace>& hosts) {
  const double width = bar.width.given ? bar.width->mm : case_.frame.width->mm;
  const bool upright = !bar.rail;
  const double high = upright ? bar.at->mm + width / 2 : bar.at->mm;
  const double low = high - width;
  const std::string what = std::string("frame ") + bar.name + (upright ? " stile" : " rail");
  std::string fault;
  const Ends ends = find_ends(hosts, *bar.between, sides_.size(), upright, low, high, fault);
  if (!fault.empty()) {
    stop("bar-does-not-fit", what, "The " + what + " can't be built: " + fault + ".",
         "Change its place or name in `between` what it runs to.", bar.span);
    return;
  }
  const HostFace first = *ends.first, second = *ends.second;
  const auto along = [&](Vec2 p) { return upright ? p.y : p.x; };
  const double least = std::min(along(first.from), along(first.to)) - 50;
  const double most = std::max(along(second.from), along(second.to)) + 50;
  const double thick = thickness(*case_.frame.stock);
  parts::Blank blank;
  blank.name = part_name(what);
  blank.stock = *case_.frame.stock;
  blank.place = frame({}, upright ? Vec3{0, 0, 1} : Vec3{1, 0, 0}, world_front);
  // Local y is the world's -x for a stile and z for a rail.
  blank.body = upright ? Solid::box({least, -high, 0}, {most, -low, thick})
                       : Solid::box({least, low, 0}, {most, high, thick});
  blank.side_names = upright ? std::array<std::string, 6>{"foot",      "head", "right edge",
                                                          "left edge", "back", "front"}
                             : std::array<std::string, 6>{"left end",   "right end", "lower edge",
                                                          "upper edge", "back",      "front"};
  const int part = builder_.add(std::move(blank));
  joinery::butt(builder_, {first.part, part, lift(first.face), 0});
  joinery::butt(builder_, {second.part, part, lift(second.face), 0});
  if (bar.rail) {
    const auto at = [&](const Line2& face) {
      return Vec2{(face.d - face.n.y * low) / face.n.x, low};
    };
    arch_edge(bar.arch, part, {at(first.face), at(second.face)}, {0, 1}, width, "lower edge");
  }
  const auto point = [&](double u, double v) { return upright ? Vec2{v, u} : Vec2{u, v}; };
  const Vec2 across = point(0, 1);
  hosts.push_back({bar.name, part, point(least, high), point(most, high), {across, high}});
  hosts.push_back({bar.name, part, point(least, low), point(most, low), {-across, -low}});
}

void CaseBuild::arch_edge(const EdgeArch& arch, int part, const std::array<Vec2, 2>& edge, Vec2 in,
                          double width, const std::string& name) {
  const std::string fault = cut_arch(
      builder_, part, arch, {lift(edge[0]), lift(edge[1]), lift_direction(in), width, name});
  if (!fault.empty())
    stop("no-arch", builder_.part(part).name, fault,
         "A smaller rise, a wider member, or less that stays straight.", arch.span);
}

void CaseBuild::build_frame() {
  const FaceFrame& frame = case_.frame;
  if (!frame.given) return;
  std::vector<double> widths;
  for (const std::string& side : sides_) {
    const FrameMember* member = frame.members.find(side);
    const bool own = member != nullptr && member->width.given;
    widths.push_back(own ? member->width->mm : frame.width->mm);
  }
  const std::vector<double> grow(sides_.size(), -frame.overhang->mm);
  const std::optional<Polygon> outer = offset_edges(ring_.outer, grow);
  std::optional<Ring> ring;
  if (outer) ring = lay_ring(*outer, widths);
  std::string fault;
  const std::vector<RingCorner> corners =
      resolve_corners(sides_, frame.corners.kind.value, *frame.through, nullptr, fault);
  if (!ring || !fault.empty()) {
    stop("frame-does-not-fit", "face frame",
         fault.empty() ? "The members of the face frame leave no opening." : fault,
         fault.empty() ? "Make them narrower." : "Name in `through` one member of every corner.",
         frame.span);
    return;
  }
  std::vector<int> members;
  std::vector<HostFace> hosts;
  for (std::size_t i = 0; i < sides_.size(); ++i) {
    members.push_back(add_frame_member(*ring, i, thickness(*frame.stock)));
    const RingMember& m = ring->members[i];
    hosts.push_back({sides_[i], members.back(), m.inner_1, m.inner_2, m.inside});
  }
  for (std::size_t i = 0; i < members.size(); ++i) join_frame_corner(*ring, members, i, corners[i]);
  for (std::size_t i = 0; i < members.size(); ++i) {
    const FrameMember* member = frame.members.find(sides_[i]);
    const RingMember& m = ring->members[i];
    if (member != nullptr)
      arch_edge(member->arch, members[i], {m.inner_1, m.inner_2}, m.out, widths[i], "inside edge");
  }
  for (std::size_t i = 0; i < members.size(); ++i)
    joinery::glued(builder_, panel_parts_[i].back(), members[i], {world_front, 0}, "glued");
  for (std::size_t i = 0; i < frame.rails.size(); ++i) add_frame_bar(frame.rails[i], hosts);
  for (std::size_t i = 0; i < frame.stiles.size(); ++i) add_frame_bar(frame.stiles[i], hosts);
}

}  // namespace splay::constructs
