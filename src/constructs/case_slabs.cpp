// Shelves and partitions.
#include <algorithm>
#include <cmath>

#include "constructs/case_build.h"

namespace splay::constructs {

struct CaseBuild::Placed {
  const Slab* slab = nullptr;
  const Partition* partition = nullptr;  // null for a shelf
  bool upright = false;
  double low = 0, high = 0;  // across: heights of a shelf's faces, places of a partition's
  const EndChoice* first = nullptr;
  const EndChoice* second = nullptr;
  double edging = 0;
  std::string what;
};

namespace {

bool ready(const Slab& slab, const std::vector<HostFace>& hosts) {
  return std::all_of(slab.between->begin(), slab.between->end(), [&](const std::string& name) {
    return std::any_of(hosts.begin(), hosts.end(),
                       [&](const HostFace& host) { return host.name == name; });
  });
}

}  // namespace

std::vector<CaseBuild::Placed> CaseBuild::placed_slabs() const {
  std::vector<Placed> placed;
  const auto edging = [&](const Slab& slab) {
    if (slab.front.edge.value == Edging::none) return 0.0;
    return slab.front.thickness.given ? slab.front.thickness->mm : thickness(*slab.front.stock);
  };
  for (std::size_t i = 0; i < case_.shelves.size(); ++i) {
    const Shelf& shelf = case_.shelves[i];
    const double t = thickness(stock_of(shelf.stock));
    placed.push_back({&shelf, nullptr, false, shelf.top_at->mm - t, shelf.top_at->mm, &shelf.ends,
                      &shelf.ends, edging(shelf), shelf.name + " shelf"});
  }
  for (std::size_t i = 0; i < case_.partitions.size(); ++i) {
    const Partition& p = case_.partitions[i];
    const double t = thickness(stock_of(p.stock));
    const double low = p.left_at.given     ? p.left_at->mm
                       : p.centre_at.given ? p.centre_at->mm - t / 2
                                           : p.right_at->mm - t;
    placed.push_back(
        {&p, &p, true, low, low + t, &p.lower, &p.upper, edging(p), p.name + " partition"});
  }
  return placed;
}

void CaseBuild::build_slabs() {
  std::vector<Placed> waiting = placed_slabs();
  // A shelf may run to a partition and a partition to a shelf, so each waits for what it names.
  for (bool progress = true; progress && !waiting.empty();) {
    progress = false;
    for (std::size_t i = 0; i < waiting.size(); ++i) {
      if (!ready(*waiting[i].slab, hosts_)) continue;
      build_slab(waiting[i]);
      waiting.erase(waiting.begin() + static_cast<std::ptrdiff_t>(i));
      progress = true;
      break;
    }
  }
  for (const Placed& slab : waiting)
    stop("unknown-neighbour", slab.what,
         "The " + slab.what + " runs between " + (*slab.slab->between)[0] + " and " +
             (*slab.slab->between)[1] + ", one of which is not there or waits for this one.",
         "Name sides of the outline, shelves or partitions of this case.", slab.slab->between.span);
}

void CaseBuild::join_end(const Placed& slab, const EndChoice& end, const HostFace& host,
                         const std::vector<int>& guests) {
  const Plane face = lift(host.face);
  if (!end.housing.given) {
    joinery::butt(builder_, {host.part, guests.front(), face, 0});
    for (std::size_t i = 1; i < guests.size(); ++i)
      builder_.cut_end(guests[i], face.flipped(), "end against " + builder_.part(host.part).name,
                       "");
    return;
  }
  const double deepest = builder_.part(host.part).body.extent({0, 0, 1})[1] -
                         builder_.part(host.part).body.extent({0, 0, 1})[0];
  if (end.housing->mm >= deepest) {
    stop("housing-too-deep", slab.what,
         "The housing for " + slab.what + " is as deep as " + builder_.part(host.part).name +
             " is thick.",
         "A third of the thickness is usual; half is the most.", end.housing.span);
    return;
  }
  const Vec3 across = slab.upright ? Vec3{1, 0, 0} : Vec3{0, 0, 1};
  const double set_back = slab.slab->set_back->mm;
  joinery::Housing housing;
  housing.host = host.part;
  housing.guests = guests;
  housing.face = face;
  housing.wall_1 = {across, slab.high};
  housing.wall_2 = {-across, -slab.low};
  housing.depth = end.housing->mm;
  housing.floor = end.floor.value;
  housing.stopped = end.stopped.given;
  housing.stop = {{0, 1, 0}, set_back + end.stopped->mm};
  // A housing that runs out in front goes through an edging that the shelf reaches into.
  if (host.edging >= 0 && !end.stopped.given &&
      builder_.part(host.edging).place.origin.y > set_back)
    housing.host_edgings.push_back(host.edging);
  joinery::housing(builder_, housing);
}

void CaseBuild::build_slab(const Placed& slab) {
  std::string fault;
  const Ends ends = find_ends(hosts_, *slab.slab->between, sides_.size(), slab.upright, slab.low,
                              slab.high, fault);
  const double front = slab.slab->set_back->mm;
  const double back = slab.slab->depth.given ? front + slab.slab->depth->mm : inside_back();
  if (fault.empty() && back > inside_back() + 1e-6)
    fault = "it reaches past the inside of the back";
  if (fault.empty() && back <= front + slab.edging) fault = "it has no depth left";
  if (!fault.empty()) {
    stop("slab-does-not-fit", slab.what, "The " + slab.what + " can't be built: " + fault + ".",
         "Change its place, its depth or what it runs between.", slab.slab->span);
    return;
  }
  const HostFace first = *ends.first, second = *ends.second;
  const auto along = [&](Vec2 p) { return slab.upright ? p.y : p.x; };
  const double least = std::min(along(first.from), along(first.to)) - 50;
  const double most = std::max(along(second.from), along(second.to)) + 50;

  parts::Blank blank;
  blank.name = part_name(slab.what);
  blank.stock = stock_of(slab.slab->stock);
  const model::Stock* stock = builder_.project().stocks.find(blank.stock);
  if (stock != nullptr && stock->two_good_faces.value) blank.show = parts::ShowFace::either;
  const double core = front + slab.edging;
  if (slab.upright) {
    blank.place = frame({}, {0, 0, 1}, {-1, 0, 0});
    blank.body = Solid::box({least, core, -slab.high}, {most, back, -slab.low});
    blank.side_names = {"foot", "head", "front edge", "back edge", "right face", "left face"};
  } else {
    blank.place = frame({}, {1, 0, 0}, {0, 0, 1});
    blank.body = Solid::box({least, core, slab.low}, {most, back, slab.high});
    blank.side_names = {"left end", "right end", "front edge", "back edge", "underside", "top"};
  }
  const auto point = [&](double u, double v) { return slab.upright ? Vec2{v, u} : Vec2{u, v}; };
  std::vector<int> guests = {builder_.add(std::move(blank))};
  const int strip = add_edging(slab.slab->front, guests.front(), core,
                               {point(least, slab.low), point(most, slab.low),
                                point(most, slab.high), point(least, slab.high)});
  if (strip >= 0) guests.push_back(strip);
  join_end(slab, *slab.first, first, guests);
  join_end(slab, *slab.second, second, guests);

  const Vec2 across = point(0, 1);
  const Vec2 a = point(least, slab.low), b = point(most, slab.low);
  const Vec2 c = point(least, slab.high), d = point(most, slab.high);
  hosts_.push_back({slab.slab->name, guests.front(), c, d, {across, slab.high}, strip});
  hosts_.push_back({slab.slab->name, guests.front(), a, b, {-across, -slab.low}, strip});
  const Vec2 to = slab.upright ? Vec2{(slab.low + slab.high) / 2, 0} : Vec2{0, slab.high};
  builder_.add_length({slab.what + (slab.upright ? ", middle" : ", top face"),
                       {},
                       lift(to),
                       slab.upright ? "places" : "heights",
                       false});
  if (slab.partition != nullptr) build_blocks(*slab.partition, guests.front(), {&first, &second});
}

}  // namespace splay::constructs
