// Milling: from the blank to thickness and width, edging, then the length.
#include <algorithm>
#include <cmath>

#include "base/tolerance.h"
#include "fabrication/derive.h"

namespace splay::fabrication {

using parts::Operation;
using parts::OperationKind;
using parts::outward;
using parts::Side;

namespace {

constexpr double resaw_from = 6;  // mm: more is sawn off rather than planed, common practice

Plane square_side(const parts::Part& part, Side side) {
  const Vec3 out = outward(side);
  return {out, std::max(0.0, dot(out, part.size))};
}

// An edge cut that keeps its distance to the length, as a rip makes it.
bool runs_along(const Operation& operation) {
  return operation.kind == OperationKind::edge_cut && std::abs(operation.cut.n.x) < 1e-9 &&
         std::abs(operation.cut.n.y) > std::abs(operation.cut.n.z);
}

Side side_of(const Operation& operation) {
  const Vec3 n = operation.cut.n;
  if (operation.kind == OperationKind::end_cut) return n.x > 0 ? Side::x_high : Side::x_low;
  return n.y > 0 ? Side::y_high : Side::y_low;
}

bool has_left(const Derivation& at, const Plane& plane) {
  return at.high(plane.n) > plane.d + tolerance::weld;
}

void through(Derivation& at, const Plane& plane, const std::string& name, Side own,
             std::vector<int> operations) {
  if (!has_left(at, plane)) return;
  Step step = cut_through(at, plane, name, own);
  step.operations = std::move(operations);
  at.add(std::move(step), {plane.flipped()});
}

class Mill {
 public:
  Mill(const model::Project& project, Derivation& at) : project_(project), at_(at) {}

  void to_thickness() {
    const Plane back = square_side(part(), Side::z_low);
    if (!has_left(at_, back)) return;
    Step step;
    step.row = at_.row;
    step.name = "to thickness";
    step.machine = Machine::planer;
    step.tool = Tool::thickness;
    step.face = Side::z_high;
    step.exact.width = part().size.z;
    const double over = at_.high(back.n) - back.d;
    if (over > resaw_from)
      step.remark =
          "Resaw it near to size first: " + project_.job.figures().with_unit(over) + " has to go.";
    at_.add(std::move(step), {back.flipped()});
  }

  // The edge that stays square is made first and guides the other.
  void widths() {
    const bool low = of_side(Side::y_low, OperationKind::edge_cut).size() == 1;
    const bool high = of_side(Side::y_high, OperationKind::edge_cut).size() == 1;
    if (low && !high) {
      edges_of(Side::y_high, false);
      edges_of(Side::y_low, false);
    } else {
      edges_of(Side::y_low, low && high);
      edges_of(Side::y_high, false);
    }
  }

  void ends() {
    for (const Side side : {Side::x_low, Side::x_high}) {
      const std::vector<std::size_t> cuts = of_side(side, OperationKind::end_cut);
      if (cuts.size() != 1)
        through(at_, square_side(part(), side),
                side == Side::x_low ? "square one end" : "crosscut to length", side, {});
      for (const std::size_t i : cuts) cut_flat(at_, i);
    }
  }

 private:
  const parts::Part& part() const { return *at_.part; }

  bool board() const {
    const model::Stock* stock = project_.stocks.find(part().stock);
    return stock != nullptr && stock->kind.value == model::StockKind::board;
  }

  void straight_edge() {
    const Plane edge = square_side(part(), Side::y_low);
    if (!has_left(at_, edge)) return;
    Step step;
    step.row = at_.row;
    step.name = "one straight edge";
    step.machine = Machine::jointer;
    step.tool = Tool::thickness;
    step.face = Side::y_low;
    step.against = Side::z_low;
    step.exact.width = at_.high(edge.n) - edge.d;
    at_.add(std::move(step), {edge.flipped()});
  }

  std::vector<std::size_t> of_side(Side side, OperationKind kind) const {
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < part().operations.size(); ++i) {
      const Operation& operation = part().operations[i];
      if (operation.kind != kind || side_of(operation) != side) continue;
      if (kind == OperationKind::end_cut || runs_along(operation)) found.push_back(i);
    }
    return found;
  }

  void edges_of(Side side, bool square_first) {
    const std::vector<std::size_t> cuts = of_side(side, OperationKind::edge_cut);
    if (cuts.size() != 1 || square_first || square_for_joints()) {
      if (side == Side::y_low && board())
        straight_edge();
      else
        through(at_, square_side(part(), side), "rip to width", side, {});
    }
    if (square_for_joints()) return;
    for (const std::size_t i : cuts) cut_flat(at_, i);
  }

  // Tenons, mortises and laps are laid out from square edges; those are bevelled afterwards.
  bool square_for_joints() const {
    return std::any_of(part().operations.begin(), part().operations.end(), [](const Operation& op) {
      return op.kind == OperationKind::shoulder || op.kind == OperationKind::mortise ||
             op.kind == OperationKind::notch || op.kind == OperationKind::hole;
    });
  }

  const model::Project& project_;
  Derivation& at_;
};

}  // namespace

void cut_flat(Derivation& at, std::size_t operation) {
  const Operation& wanted = at.part->operations[operation];
  through(at, wanted.cut, wanted.name, side_of(wanted), {static_cast<int>(operation)});
}

void mill(const model::Project& project, Derivation& at) {
  Mill work(project, at);
  work.to_thickness();
  work.widths();
}

void cut_ends(const model::Project& project, Derivation& at) { Mill(project, at).ends(); }

void glue_edging(Derivation& at, const Edging& edging) {
  Step step;
  step.row = at.row;
  step.name = "edging on the " + parts::side_name(*at.part, edging.side);
  step.machine = Machine::hand;
  step.tool = Tool::edging;
  step.against = edging.side;
  if (!at.steps.empty() && at.steps.back().position() == Position::flat)
    step.face = at.steps.back().face;
  step.exact.width = edging.thickness;
  step.glued = edging.strip;
  at.steps.push_back(std::move(step));
  Box box = at.work.bounds();
  const bool low = edging.side == Side::y_low;
  (low ? box.high : box.low).y = edging.seam.d * edging.seam.n.y;
  (low ? box.low : box.high).y =
      edging.seam.d * edging.seam.n.y + (low ? -1 : 1) * edging.thickness;
  at.work.add_disjoint(Solid::box(box.low, box.high));
}

}  // namespace splay::fabrication
