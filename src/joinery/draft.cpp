#include "joinery/draft.h"

#include <algorithm>
#include <cmath>

#include "base/tolerance.h"
#include "joinery/joint.h"
#include "parts/audit.h"

namespace splay::joinery {

using parts::OperationKind;

namespace {

constexpr double least_contact = 1e-2;  // mm2: less is an edge that touches

parts::Operation operation(OperationKind kind, std::string name, Region removed, Plane cut = {}) {
  return {kind, std::move(name), "", std::move(removed), cut, {}};
}

}  // namespace

Draft::Draft(const parts::Builder& builder, std::string_view kind, int host, int guest) {
  record_.name = joint_name(builder, guest, host);
  record_.kind = kind;
  record_.between = {guest, host};
}

void Draft::distinguish(std::string_view word) { record_.name.append(", ").append(word); }

void Draft::shape(int part, parts::Operation operation, std::vector<std::vector<Plane>> rounds) {
  cuts_.push_back({part, std::move(operation), std::move(rounds)});
}

void Draft::cut_end(int part, const Plane& plane, std::string name) {
  shape(part, operation(OperationKind::end_cut, std::move(name), {plane.flipped()}, plane));
}

void Draft::cut_edge(int part, const Plane& plane, std::string name) {
  shape(part, operation(OperationKind::edge_cut, std::move(name), {plane.flipped()}, plane));
}

void Draft::remove(int part, OperationKind kind, Region region, std::string name,
                   std::vector<std::vector<Plane>> rounds) {
  shape(part, operation(kind, std::move(name), std::move(region)), std::move(rounds));
}

void Draft::shoulder(int part, Region region, const Plane& plane, std::string name) {
  region.push_back(plane.flipped());
  shape(part, operation(OperationKind::shoulder, std::move(name), std::move(region), plane));
}

void Draft::trench(int part, OperationKind kind, Region region, parts::Trench trench,
                   std::string name) {
  parts::Operation made = operation(kind, std::move(name), std::move(region));
  made.trench = std::move(trench);
  shape(part, std::move(made));
}

void Draft::must_meet(int a, int b, const Plane& plane, std::string_view what) {
  wishes_.push_back({{a, b, plane}, true, std::string(what)});
}

void Draft::may_meet(int a, int b, const Plane& plane) {
  wishes_.push_back({{a, b, plane}, false, "sides"});
}

void Draft::fit(parts::Fitting fitting) { fittings_.push_back(std::move(fitting)); }

std::string Draft::try_cuts(const parts::Builder& builder) {
  bodies_.clear();
  for (const int part : record_.between)
    bodies_[part] = builder.part(part).body.transformed(builder.part(part).place);
  for (const Cut& cut : cuts_) {
    const auto place = bodies_.find(cut.part);
    if (place == bodies_.end()) continue;  // an edging that is cut through with its core
    // Holes in sound wood can't bring two parts into one place or make surfaces gape.
    if (cut.operation.kind == OperationKind::hole) continue;
    place->second.subtract(cut.operation.removed);
    if (place->second.empty())
      return "Nothing would be left of " + builder.part(cut.part).name + " after the cut for its " +
             cut.operation.name + ".";
  }
  return "";
}

std::string Draft::try_mates(const parts::Builder& builder) {
  const std::string& one = builder.part(record_.between[0]).name;
  const std::string& other = builder.part(record_.between[1]).name;
  for (const Wish& wish : wishes_) {
    const parts::MateMeasure found =
        parts::measure(wish.mate, bodies_.at(wish.mate.a), bodies_.at(wish.mate.b));
    const bool touching = found.area > least_contact;
    std::string surfaces = "The ";
    surfaces.append(wish.what).append(" of ").append(one).append(" and ").append(other);
    if (wish.needed && !touching) return surfaces.append(" would not touch.");
    if (touching && found.gap > tolerance::gap)
      return surfaces.append(" would stay ").append(figure(builder, found.gap)).append(" apart.");
    if (touching) record_.mates.push_back(wish.mate);
  }
  return "";
}

std::string Draft::carry_out(parts::Builder& builder) {
  if (std::string fault = try_cuts(builder); !fault.empty()) return fault;
  const Solid both[] = {bodies_.at(record_.between[0]), bodies_.at(record_.between[1])};
  if (!find_clashes(both).empty())
    return builder.part(record_.between[0]).name + " and " + builder.part(record_.between[1]).name +
           " would still be in the same place beside the joint.";
  record_.mates.clear();
  if (std::string fault = try_mates(builder); !fault.empty()) return fault;
  commit(builder);
  return "";
}

void Draft::carry_out_untried(parts::Builder& builder) {
  for (const Wish& wish : wishes_) record_.mates.push_back(wish.mate);
  commit(builder);
}

void Draft::commit(parts::Builder& builder) {
  for (Cut& cut : cuts_) {
    cut.operation.joint = record_.name;
    builder.shape(cut.part, cut.operation, cut.rounds);
  }
  for (parts::Fitting& fitting : fittings_) {
    fitting.joint = record_.name;
    builder.add_fitting(std::move(fitting));
  }
  builder.add_joint(std::move(record_));
}

std::string figure(const parts::Builder& builder, double mm) {
  return builder.project().job.figures().with_unit(mm);
}

}  // namespace splay::joinery
