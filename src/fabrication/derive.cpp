// A part's steps from its blank to its last cut.
#include "fabrication/derive.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "base/figure.h"
#include "base/tolerance.h"
#include "fabrication/proof.h"

namespace splay::fabrication {

using parts::Operation;
using parts::OperationKind;
using parts::outward;
using parts::Side;

namespace {

constexpr double resaw_from = 6;  // mm: more is sawn off rather than planed, common practice

double box_at(const parts::Part& part, Side side) {
  const Vec3 out = outward(side);
  return std::max(0.0, dot(out, part.size));
}

Plane square_side(const parts::Part& part, Side side) {
  return {outward(side), box_at(part, side)};
}

bool flat_cut(const Operation& operation) {
  return operation.kind == OperationKind::end_cut || operation.kind == OperationKind::edge_cut;
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

class Deriver {
 public:
  Deriver(const model::Project& project, const parts::Part& part, int row) : project_(project) {
    at_.shop = &project.shop;
    at_.part = &part;
    at_.row = row;
    at_.work = blank_of(project, part);
  }

  Derivation run() {
    to_thickness();
    widths();
    ends();
    pockets();
    tapers();
    outlines();
    return std::move(at_);
  }

 private:
  const parts::Part& part() const { return *at_.part; }

  bool has_left(const Plane& plane) const { return at_.high(plane.n) > plane.d + tolerance::weld; }

  bool board() const {
    const model::Stock* stock = project_.stocks.find(part().stock);
    return stock != nullptr && stock->kind.value == model::StockKind::board;
  }

  void through(const Plane& plane, const std::string& name, Side own, std::vector<int> operations) {
    if (!has_left(plane)) return;
    Step step = cut_through(at_, plane, name, own);
    step.operations = std::move(operations);
    at_.add(std::move(step), {plane.flipped()});
  }

  void to_thickness() {
    const Plane back = square_side(part(), Side::z_low);
    if (!has_left(back)) return;
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

  void straight_edge() {
    const Plane edge = square_side(part(), Side::y_low);
    if (!has_left(edge)) return;
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
        through(square_side(part(), side), "rip to width", side, {});
    }
    if (square_for_joints()) return;
    for (const std::size_t i : cuts) cut(i, side);
  }

  // Tenons, mortises and laps are laid out from square edges; those are bevelled afterwards.
  bool square_for_joints() const {
    return std::any_of(part().operations.begin(), part().operations.end(), [](const Operation& op) {
      return op.kind == OperationKind::shoulder || op.kind == OperationKind::mortise ||
             op.kind == OperationKind::notch || op.kind == OperationKind::hole;
    });
  }

  void cut(std::size_t i, Side side) {
    const Operation& operation = part().operations[i];
    through(operation.cut, operation.name, side, {static_cast<int>(i)});
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
        through(square_side(part(), side),
                side == Side::x_low ? "square one end" : "crosscut to length", side, {});
      for (const std::size_t i : cuts) cut(i, side);
    }
  }

  std::optional<PocketJob> job_of(std::size_t i) const {
    const Operation& operation = part().operations[i];
    std::optional<Pocket> pocket = open_pocket(at_, operation.removed);
    if (!pocket) return {};
    return PocketJob{std::move(*pocket), operation.name, static_cast<int>(i)};
  }

  // No side of the board to lay it out on: the proof refuses it.
  void cannot(std::size_t i) {
    Step step;
    step.row = at_.row;
    step.machine = Machine::hand;
    step.tool = Tool::clear;
    step.guide = Guide::marks;
    step.unproven_why = "The cut opens on no side of the board, so that no layout for it is given.";
    step.name = part().operations[i].name;
    step.operations = {static_cast<int>(i)};
    at_.add(std::move(step), part().operations[i].removed);
  }

  bool bored(std::size_t i) {
    const Operation& operation = part().operations[i];
    if (operation.kind != OperationKind::hole) return false;
    std::optional<Step> step = bore(at_, operation.removed);
    if (!step) return false;
    step->name = operation.name;
    step->operations = {static_cast<int>(i)};
    at_.add(std::move(*step), operation.removed);
    return true;
  }

  void make(std::size_t i) {
    if (bored(i)) return;
    std::optional<PocketJob> job = job_of(i);
    if (!job) return cannot(i);
    if (!machine_pocket(at_, *job)) pare_pocket(at_, *job);
  }

  static bool single_line(const Operation& operation) {
    return operation.kind == OperationKind::outline && operation.removed.size() == 1;
  }

  // First every shoulder's line, while the saw is set to it; what is pared comes last.
  void pockets() {
    std::map<std::size_t, PocketJob> begun;
    std::vector<PocketJob> to_pare;
    const auto is_pocket = [&](std::size_t i) {
      const Operation& operation = part().operations[i];
      return !flat_cut(operation) && operation.kind != OperationKind::outline;
    };
    for (std::size_t i = 0; i < part().operations.size(); ++i) {
      if (!is_pocket(i) || part().operations[i].kind != OperationKind::shoulder) continue;
      std::optional<PocketJob> job = job_of(i);
      if (job) begin_pocket(at_, *job);
      if (job && job->begun) begun.emplace(i, std::move(*job));
    }
    for (std::size_t i = 0; i < part().operations.size(); ++i) {
      if (!is_pocket(i) || bored(i)) continue;
      const auto kept = begun.find(i);
      std::optional<PocketJob> job = kept != begun.end() ? kept->second : job_of(i);
      if (!job)
        cannot(i);
      else if (!machine_pocket(at_, *job))
        to_pare.push_back(std::move(*job));
    }
    for (const PocketJob& job : to_pare) pare_pocket(at_, job);
  }

  // Tapers and late bevels come last: until then the edges are square to lie on.
  void tapers() {
    for (std::size_t i = 0; i < part().operations.size(); ++i) {
      const Operation& operation = part().operations[i];
      if (operation.kind == OperationKind::edge_cut) cut(i, side_of(operation));
    }
  }

  void outlines() {
    const std::vector<Operation>& all = part().operations;
    for (std::size_t i = 0; i < all.size(); ++i) {
      if (all[i].kind != OperationKind::outline) continue;
      if (!single_line(all[i])) {
        make(i);
        continue;
      }
      std::vector<Plane> lines;
      std::vector<int> which;
      for (; i < all.size() && single_line(all[i]) &&
             (which.empty() || all[i].name == all[i - 1].name);
           ++i) {
        lines.push_back(all[i].removed.front().flipped());
        which.push_back(static_cast<int>(i));
      }
      --i;
      follow(lines, which);
    }
  }

  void follow(const std::vector<Plane>& lines, const std::vector<int>& which) {
    std::optional<Step> step = follow_lines(at_, lines);
    if (!step) {
      step.emplace();
      step->row = at_.row;
      step->machine = Machine::hand;
      step->unproven_why = "The outline runs along no side of the board.";
    }
    step->name = part().operations[static_cast<std::size_t>(which.front())].name;
    step->operations = which;
    at_.add(std::move(*step), {});
    at_.work.keep(lines);
  }

  const model::Project& project_;
  Derivation at_;
};

}  // namespace

void Derivation::add(Step step, const Region& removed) {
  steps.push_back(std::move(step));
  if (!removed.empty()) work.subtract(removed);
}

Solid blank_of(const model::Project& project, const parts::Part& part) {
  const double over = project.shop.blank_allowance->mm / 2;
  const model::Stock* stock = project.stocks.find(part.stock);
  const double thick =
      stock != nullptr && stock->thickness.given ? stock->thickness->mm - part.size.z : 0;
  return Solid::box({-over, -over, -std::max(0.0, thick)},
                    {part.size.x + over, part.size.y + over, part.size.z});
}

Derivation derive_steps(const model::Project& project, const parts::Part& part, int row) {
  return Deriver(project, part, row).run();
}

}  // namespace splay::fabrication
