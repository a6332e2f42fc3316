#include "parts/builder.h"

#include "parts/audit.h"

namespace splay::parts {

namespace {

Region local_region(const Rigid& place, const Region& world) {
  Region local;
  local.reserve(world.size());
  for (const Plane& plane : world) local.push_back(place.local_plane(plane));
  return local;
}

Plane shifted(const Plane& plane, Vec3 by) { return {plane.n, plane.d + dot(plane.n, by)}; }

void shift(std::vector<Plane>& planes, Vec3 by) {
  for (Plane& plane : planes) plane = shifted(plane, by);
}

void shift(Operation& operation, Vec3 by) {
  shift(operation.removed, by);
  operation.cut = shifted(operation.cut, by);
  operation.trench.floor = shifted(operation.trench.floor, by);
  shift(operation.trench.walls, by);
  shift(operation.trench.stops, by);
}

// Moves the part's frame to the low corner of its bounding box and places its solid.
void settle(Part& part) {
  if (part.body.empty()) return;
  const Box box = part.body.bounds();
  const Vec3 by = -box.low;
  part.body = part.body.transformed({{1, 0, 0}, {0, 1, 0}, {0, 0, 1}, by});
  part.place.origin = part.place.point(box.low);
  part.size = box.size();
  for (Operation& operation : part.operations) shift(operation, by);
  part.body.boundary();  // found once, it moves along
  part.world = part.body.transformed(part.place);
}

}  // namespace

int Builder::add(Blank blank) {
  Part part;
  part.name = std::move(blank.name);
  part.stock = std::move(blank.stock);
  part.item = item_;
  part.body = std::move(blank.body);
  part.place = blank.place;
  part.show = blank.show;
  part.grain = blank.grain;
  part.side_names = std::move(blank.side_names);
  assembly_.parts.push_back(std::move(part));
  return static_cast<int>(assembly_.parts.size()) - 1;
}

int Builder::find(std::string_view name) const {
  for (std::size_t i = 0; i < assembly_.parts.size(); ++i)
    if (assembly_.parts[i].name == name) return static_cast<int>(i);
  return -1;
}

void Builder::cut(int index, Operation operation) {
  Part& part = assembly_.parts[static_cast<std::size_t>(index)];
  part.body.subtract(operation.removed);
  part.operations.push_back(std::move(operation));
}

void Builder::cut_end(int index, const Plane& world, std::string name, std::string joint) {
  const Plane local = part(index).place.local_plane(world);
  cut(index,
      {OperationKind::end_cut, std::move(name), std::move(joint), {local.flipped()}, local, {}});
}

void Builder::cut_edge(int index, const Plane& world, std::string name, std::string joint) {
  const Plane local = part(index).place.local_plane(world);
  cut(index,
      {OperationKind::edge_cut, std::move(name), std::move(joint), {local.flipped()}, local, {}});
}

void Builder::cut_trench(int index, OperationKind kind, const Region& world,
                         const Trench& world_trench, std::string name, std::string joint) {
  const Rigid& place = part(index).place;
  Trench trench = world_trench;
  trench.floor = place.local_plane(world_trench.floor);
  trench.walls = local_region(place, world_trench.walls);
  trench.stops = local_region(place, world_trench.stops);
  cut(index, {kind, std::move(name), std::move(joint), local_region(place, world), {}, trench});
}

void Builder::cut_region(int index, OperationKind kind, const Region& world, std::string name,
                         std::string joint, const std::vector<Plane>& facets) {
  const Rigid& place = part(index).place;
  cut(index, {kind, std::move(name), std::move(joint), local_region(place, world), {}, {}});
  if (facets.empty()) return;
  assembly_.parts[static_cast<std::size_t>(index)].body.mark_smooth(local_region(place, facets));
}

void Builder::shape(int index, const Operation& world,
                    const std::vector<std::vector<Plane>>& rounds) {
  const Rigid& place = part(index).place;
  Operation local = world;
  local.removed = local_region(place, world.removed);
  local.cut = place.local_plane(world.cut);
  local.trench.floor = place.local_plane(world.trench.floor);
  local.trench.walls = local_region(place, world.trench.walls);
  local.trench.stops = local_region(place, world.trench.stops);
  cut(index, std::move(local));
  Solid& body = assembly_.parts[static_cast<std::size_t>(index)].body;
  for (const std::vector<Plane>& round : rounds) body.mark_smooth(local_region(place, round));
}

void Builder::add_joint(Joint joint) { assembly_.joints.push_back(std::move(joint)); }

void Builder::remark(int index, std::string text) {
  assembly_.parts[static_cast<std::size_t>(index)].remarks.push_back(std::move(text));
}

void Builder::measure(int index, std::string name, double mm) {
  assembly_.parts[static_cast<std::size_t>(index)].measures.push_back({std::move(name), mm});
}

void Builder::cut_edging(const Joint& joint) {
  constexpr double nothing = 1e-6;  // mm3
  const int strip = joint.between.front();
  for (std::size_t i = 1; i < joint.between.size(); ++i) {
    const Rigid to_strip = part(strip).place.inverse() * part(joint.between[i]).place;
    for (const Operation& operation : part(joint.between[i]).operations) {
      if (operation.kind == OperationKind::end_cut || operation.kind == OperationKind::edge_cut)
        continue;
      Region removed;
      for (const Plane& plane : operation.removed) removed.push_back(to_strip.plane(plane));
      Solid met = part(strip).body;
      met.keep(removed);
      if (met.empty() || met.volume() < nothing) continue;
      cut(strip, {OperationKind::notch, operation.name, operation.joint, removed, {}, {}});
    }
  }
}

Assembly Builder::finish() && {
  const std::vector<Joint> joints = assembly_.joints;
  for (const Joint& joint : joints)
    if (joint.made == Made::before_cuts) cut_edging(joint);
  for (Part& part : assembly_.parts) settle(part);
  std::vector<Finding> found = audit(assembly_, project_);
  assembly_.findings.insert(assembly_.findings.end(), found.begin(), found.end());
  return std::move(assembly_);
}

}  // namespace splay::parts
