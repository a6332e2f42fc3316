#include "geometry/solid_cutter.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <utility>

#include "base/index.h"
#include "base/tolerance.h"

namespace splay {
namespace {

std::uint64_t edge_key(std::int32_t low, std::int32_t high) {
  return (static_cast<std::uint64_t>(low) << 32) | static_cast<std::uint64_t>(high);
}

}  // namespace

SolidCutter::SolidCutter(Solid& solid) : solid_(solid) {
  solid.boundary_.reset();
  const Box box = solid.bounds();
  if (box.empty()) return;
  centre_ = (box.low + box.high) * 0.5;
  half_size_ = box.size() * 0.5;
}

CutPlane SolidCutter::cut_plane(const Plane& plane) const {
  CutPlane best{.plane = plane, .crossings = {}};
  double least = tolerance::on_plane;
  for (std::size_t i = 0; i < solid_.planes_.size(); ++i) {
    const Plane& known = solid_.planes_[i];
    const std::int32_t side = dot(known.n, plane.n) < 0 ? -1 : 1;
    const Vec3 tilt = plane.n - known.n * side;
    const double shift = dot(tilt, centre_) - (plane.d - known.d * side);
    const double deviation = std::abs(shift) + std::abs(tilt.x) * half_size_.x +
                             std::abs(tilt.y) * half_size_.y + std::abs(tilt.z) * half_size_.z;
    if (deviation < least) {
      least = deviation;
      best.id = static_cast<std::int32_t>(i);
      best.side = side;
      best.plane = side > 0 ? known : known.flipped();
    }
  }
  return best;
}

std::vector<CutPlane> SolidCutter::cut_planes(std::span<const Plane> region) const {
  std::vector<CutPlane> result;
  result.reserve(region.size());
  for (const Plane& plane : region) result.push_back(cut_plane(plane));
  return result;
}

std::int32_t SolidCutter::listed(CutPlane& plane) {
  if (plane.id < 0) {
    plane.id = static_cast<std::int32_t>(solid_.planes_.size());
    solid_.planes_.push_back(plane.plane);
  }
  return plane.id;
}

Whereabouts SolidCutter::classify(const Cell& cell, const Plane& plane, double tolerance) {
  distance_.resize(solid_.vertices_.size());
  class_.resize(solid_.vertices_.size());
  double furthest_in = 0, furthest_out = 0;
  for (const CellFace& face : cell.faces) {
    for (const std::int32_t v : face.loop) {
      const double distance = plane.distance(solid_.vertices_[index(v)]);
      distance_[index(v)] = distance;
      class_[index(v)] =
          static_cast<std::int8_t>(distance > tolerance ? 1 : (distance < -tolerance ? -1 : 0));
      furthest_in = std::max(furthest_in, -distance);
      furthest_out = std::max(furthest_out, distance);
    }
  }
  if (furthest_in > tolerance && furthest_out > tolerance) return Whereabouts::straddling;
  return furthest_out > furthest_in ? Whereabouts::outside : Whereabouts::inside;
}

// Is the cell outside of a plane, as classify() says? Most planes are done with at the first
// corner.
bool SolidCutter::misses(const Cell& cell, std::span<const CutPlane> region) const {
  return std::any_of(region.begin(), region.end(), [&](const CutPlane& cut) {
    double furthest_in = 0, furthest_out = 0;
    for (const CellFace& face : cell.faces) {
      for (const std::int32_t v : face.loop) {
        const double distance = cut.plane.distance(solid_.vertices_[index(v)]);
        if (distance < -tolerance::on_plane) return false;
        furthest_in = std::max(furthest_in, -distance);
        furthest_out = std::max(furthest_out, distance);
      }
    }
    return furthest_out > furthest_in;
  });
}

std::int32_t SolidCutter::crossing(CutPlane& plane, std::int32_t a, std::int32_t b) {
  const auto [low, high] = std::minmax(a, b);
  const auto [place, is_new] = plane.crossings.try_emplace(
      edge_key(low, high), static_cast<std::int32_t>(solid_.vertices_.size()));
  if (is_new) {
    // Always from the lower vertex, so that cells with a common edge get the same point.
    const Vec3 from = solid_.vertices_[index(low)], to = solid_.vertices_[index(high)];
    const double start = distance_[index(low)], end = distance_[index(high)];
    solid_.vertices_.push_back(from + (to - from) * (start / (start - end)));
    distance_.push_back(0);
    class_.push_back(0);
  }
  // A crossing made for a neighbouring cell has been classed against other planes since.
  distance_[index(place->second)] = 0;
  class_[index(place->second)] = 0;
  return place->second;
}

// Shares out one face's corners. False when its sides change more than twice, which only noise can
// do to a convex face.
bool SolidCutter::split_face(const CellFace& face, CutPlane& plane, Cell& inside, Cell& outside) {
  const auto& loop = face.loop;
  const std::size_t n = loop.size();
  const auto side_of = [&](std::size_t i) { return class_[index(loop[i % n])]; };
  std::size_t first = 0;
  int count[2] = {0, 0};
  for (std::size_t i = 0; i < n; ++i) {
    if (side_of(i) == 0) continue;
    if (count[0] + count[1] == 0) first = i;
    ++count[side_of(i) > 0];
  }
  if (count[1] == 0) {
    inside.faces.push_back(face);
    return true;
  }
  if (count[0] == 0) {
    outside.faces.push_back(face);
    return true;
  }
  CellFace part[2] = {{{}, face.plane, face.side}, {{}, face.plane, face.side}};
  int changes = 0;
  std::size_t i = first;
  while (i < first + n) {
    const bool here = side_of(i) > 0;
    part[here].loop.push_back(loop[i % n]);
    std::size_t next = i + 1;
    while (side_of(next) == 0) ++next;
    const bool there = side_of(next) > 0;
    if (here == there) {
      for (std::size_t k = i + 1; k < next; ++k) part[here].loop.push_back(loop[k % n]);
    } else {
      ++changes;
      const std::int32_t turn =
          next > i + 1 ? loop[(i + 1) % n] : crossing(plane, loop[i % n], loop[next % n]);
      part[here].loop.push_back(turn);
      part[there].loop.push_back(turn);
      for (std::size_t k = i + 2; k < next; ++k) part[there].loop.push_back(loop[k % n]);
    }
    i = next;
  }
  if (changes > 2 || part[0].loop.size() < 3 || part[1].loop.size() < 3) return false;
  inside.faces.push_back(std::move(part[0]));
  outside.faces.push_back(std::move(part[1]));
  return true;
}

// The edges on the plane that only one inside face has bound the new face.
bool SolidCutter::close_with_cap(CutPlane& plane, Cell& inside, Cell& outside) {
  on_plane_.clear();
  open_.clear();
  for (const CellFace& face : inside.faces) {
    const std::size_t n = face.loop.size();
    for (std::size_t i = 0; i < n; ++i) {
      const std::int32_t a = face.loop[i], b = face.loop[(i + 1) % n];
      if (class_[index(a)] == 0 && class_[index(b)] == 0) on_plane_.emplace_back(a, b);
    }
  }
  for (const auto& [a, b] : on_plane_) {
    const bool shared =
        std::find(on_plane_.begin(), on_plane_.end(), std::pair(b, a)) != on_plane_.end();
    if (!shared) open_.emplace_back(b, a);
  }
  if (open_.empty()) {
    // One side is a flap without thickness, two faces back to back: nothing is lost with it.
    (outside.faces.size() <= inside.faces.size() ? outside : inside).faces.clear();
    return true;
  }
  CellFace cap{{}, listed(plane), plane.side};
  std::int32_t at = open_.front().first;
  do {
    const auto next = std::find_if(open_.begin(), open_.end(),
                                   [&](const auto& edge) { return edge.first == at; });
    if (next == open_.end() || cap.loop.size() == open_.size()) return false;
    cap.loop.push_back(at);
    at = next->second;
  } while (at != open_.front().first);
  if (cap.loop.size() != open_.size()) return false;
  CellFace other = cap;
  std::reverse(other.loop.begin(), other.loop.end());
  other.side = -cap.side;
  inside.faces.push_back(std::move(cap));
  outside.faces.push_back(std::move(other));
  return true;
}

bool SolidCutter::try_split(const Cell& cell, CutPlane& plane, Cell& inside, Cell& outside) {
  for (Cell* part : {&inside, &outside}) {
    part->faces.clear();
    part->faces.reserve(cell.faces.size() + 1);
  }
  for (const CellFace& face : cell.faces) {
    if (!split_face(face, plane, inside, outside)) return false;
  }
  return close_with_cap(plane, inside, outside);
}

Whereabouts SolidCutter::split(const Cell& cell, CutPlane& plane, Cell& inside, Cell& outside) {
  // Noise of the tolerance's size can spoil a split of a very thin cell; a wider band then takes
  // the doubtful vertices as on the plane.
  for (int widening = 0; widening < 10; ++widening) {
    const double band = std::ldexp(tolerance::on_plane, widening);
    const Whereabouts where = classify(cell, plane.plane, band);
    if (where != Whereabouts::straddling) return where;
    if (try_split(cell, plane, inside, outside)) return where;
  }
  throw std::logic_error("SolidCutter: a cell could not be split");
}

void SolidCutter::subtract(const Cell& cell, std::span<CutPlane> region,
                           std::vector<Cell>& result) {
  if (misses(cell, region)) {
    result.push_back(cell);
    return;
  }
  std::vector<Cell> pieces;
  Cell rest = cell;
  for (CutPlane& plane : region) {
    Cell inside, outside;
    const Whereabouts where = split(rest, plane, inside, outside);
    if (where == Whereabouts::inside) continue;
    if (where == Whereabouts::outside ||
        (where == Whereabouts::straddling && inside.faces.empty())) {
      result.push_back(cell);  // not touched after all: don't leave it in shreds
      return;
    }
    if (!outside.faces.empty()) pieces.push_back(std::move(outside));
    rest = std::move(inside);
  }
  for (Cell& piece : pieces) result.push_back(std::move(piece));
}

void SolidCutter::keep(const Cell& cell, std::span<CutPlane> region, std::vector<Cell>& result) {
  if (misses(cell, region)) return;
  Cell rest = cell;
  for (CutPlane& plane : region) {
    Cell inside, outside;
    const Whereabouts where = split(rest, plane, inside, outside);
    if (where == Whereabouts::outside) return;
    if (where == Whereabouts::straddling) rest = std::move(inside);
    if (rest.faces.empty()) return;
  }
  result.push_back(std::move(rest));
}

void SolidCutter::finish(std::vector<Cell> cells) {
  std::vector<std::int32_t> renamed(solid_.vertices_.size(), -1);
  std::vector<Vec3> used;
  for (Cell& cell : cells) {
    for (CellFace& face : cell.faces) {
      for (std::int32_t& v : face.loop) {
        std::int32_t& name = renamed[index(v)];
        if (name < 0) {
          name = static_cast<std::int32_t>(used.size());
          used.push_back(solid_.vertices_[index(v)]);
        }
        v = name;
      }
    }
  }
  solid_.cells_ = std::move(cells);
  solid_.vertices_ = std::move(used);
}

void SolidCutter::append(const Solid& other) {
  const Box added = other.bounds();
  if (added.empty()) return;
  Box box = solid_.bounds();
  box.add(added.low);
  box.add(added.high);
  centre_ = (box.low + box.high) * 0.5;
  half_size_ = box.size() * 0.5;
  std::vector<CutPlane> planes = cut_planes(other.planes_);
  const auto first_vertex = static_cast<std::int32_t>(solid_.vertices_.size());
  solid_.vertices_.insert(solid_.vertices_.end(), other.vertices_.begin(), other.vertices_.end());
  for (Cell cell : other.cells_) {
    for (CellFace& face : cell.faces) {
      for (std::int32_t& v : face.loop) v += first_vertex;
      CutPlane& plane = planes[index(face.plane)];
      face.plane = listed(plane);
      face.side *= plane.side;
    }
    solid_.cells_.push_back(std::move(cell));
  }
  for (const Solid::SmoothPlane& smooth : other.smooth_planes_) {
    solid_.smooth_planes_.push_back(
        {listed(planes[index(smooth.plane)]), smooth.surface + solid_.smooth_surfaces_});
  }
  solid_.smooth_surfaces_ += other.smooth_surfaces_;
}

}  // namespace splay
