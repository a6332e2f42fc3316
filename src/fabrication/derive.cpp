// A part's steps from its blank to its last cut.
#include "fabrication/derive.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "fabrication/proof.h"

namespace splay::fabrication {

using parts::Operation;
using parts::OperationKind;

namespace {

bool near(double a, double b) { return std::abs(a - b) < 1e-6; }

bool same_machine_setting(const Step& a, const Step& b) {
  const bool any_width = a.tool == Tool::blade || (a.runs_out && b.runs_out && a.exact.tilt == 0);
  return a.machine == b.machine && a.tool == b.tool && near(a.exact.tilt, b.exact.tilt) &&
         near(a.exact.gauge, b.exact.gauge) && (any_width || near(a.exact.width, b.exact.width));
}

// What is laid on the machine by its outermost points lies the same before and after.
bool same_extents(const Box& a, const Box& b) {
  return norm(a.low - b.low) < 1e-9 && norm(a.high - b.high) < 1e-9;
}

bool flat_cut(const Operation& operation) {
  return operation.kind == OperationKind::end_cut || operation.kind == OperationKind::edge_cut;
}

class Deriver {
 public:
  Deriver(const model::Project& project, const parts::Part& part, int row) : project_(project) {
    at_.shop = &project.shop;
    at_.part = &part;
    at_.row = row;
    at_.work = blank_of(project, part);
  }

  Derivation strip() {
    mill(project_, at_);
    return std::move(at_);
  }

  Derivation run(const std::vector<Edging>& edging) {
    mill(project_, at_);
    for (const Edging& each : edging) glue_edging(at_, each);
    cut_ends(project_, at_);
    pockets();
    tapers();
    outlines();
    return std::move(at_);
  }

 private:
  const parts::Part& part() const { return *at_.part; }

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

  bool is_pocket(std::size_t i) const {
    const Operation& operation = part().operations[i];
    return !flat_cut(operation) && operation.kind != OperationKind::outline;
  }

  // First every shoulder's line, while the saw is set to it; what is pared comes last.
  void pockets() {
    std::map<std::size_t, PocketJob> begun;
    std::vector<PocketJob> to_pare;
    Span lines = span();
    for (std::size_t i = 0; i < part().operations.size(); ++i) {
      if (!is_pocket(i) || part().operations[i].kind != OperationKind::shoulder) continue;
      std::optional<PocketJob> job = job_of(i);
      if (job) begin_pocket(at_, *job);
      if (job && job->begun) begun.emplace(i, std::move(*job));
    }
    by_setting(lines);
    for (const std::size_t i : shoulders_by_setting(pocket_operations(), begun)) {
      if (bored(i)) continue;
      const auto kept = begun.find(i);
      std::optional<PocketJob> job = kept != begun.end() ? kept->second : job_of(i);
      if (!job)
        cannot(i);
      else if (!machine_pocket(at_, *job))
        to_pare.push_back(std::move(*job));
    }
    for (const PocketJob& job : to_pare) pare_pocket(at_, job);
  }

  std::vector<std::size_t> pocket_operations() const {
    std::vector<std::size_t> all;
    for (std::size_t i = 0; i < part().operations.size(); ++i)
      if (is_pocket(i)) all.push_back(i);
    return all;
  }

  // The same with the shoulders that one setting makes after each other, in the shoulders' places.
  // What a machine is set to is found on trial, each as if it were the next.
  std::vector<std::size_t> shoulders_by_setting(std::vector<std::size_t> order,
                                                const std::map<std::size_t, PocketJob>& begun) {
    struct Shoulder {
      std::size_t operation, place;
      Step like;
    };
    std::vector<Shoulder> shoulders;
    for (std::size_t place = 0; place < order.size(); ++place) {
      const std::size_t i = order[place];
      if (part().operations[i].kind != OperationKind::shoulder) continue;
      const auto kept = begun.find(i);
      std::optional<PocketJob> job = kept != begun.end() ? kept->second : job_of(i);
      Derivation trial{at_.shop, at_.part, at_.row, at_.work, {}, {}};
      if (job) machine_pocket(trial, *job);
      shoulders.push_back({i, place, trial.steps.empty() ? Step{} : trial.steps.front()});
    }
    std::vector<std::size_t> places;
    places.reserve(shoulders.size());
    for (const Shoulder& shoulder : shoulders) places.push_back(shoulder.place);
    for (auto from = shoulders.begin(); from != shoulders.end();) {
      const Step like = from->like;
      from = std::stable_partition(from, shoulders.end(), [&](const Shoulder& other) {
        return same_machine_setting(like, other.like);
      });
    }
    for (std::size_t k = 0; k < places.size(); ++k) order[places[k]] = shoulders[k].operation;
    return order;
  }

  // Steps from here on, none of which waits for another.
  struct Span {
    std::size_t from = 0;
    Box box;
  };
  Span span() const { return {at_.steps.size(), at_.work.bounds()}; }

  // One setting after the other, first the one the machine still has. Where they take of the
  // work's outermost points the order stays: stop and marks are measured from those.
  void by_setting(const Span& span) {
    if (!same_extents(span.box, at_.work.bounds())) return;
    const auto begin = at_.steps.begin();
    auto sorted = begin + static_cast<std::ptrdiff_t>(span.from);
    if (std::any_of(sorted, at_.steps.end(), [](const Step& s) { return s.has(Flag::block); }))
      return;
    while (sorted != at_.steps.end()) {
      const Step like = sorted == begin ? *sorted : *(sorted - 1);
      const auto next = std::stable_partition(
          sorted, at_.steps.end(), [&](const Step& s) { return same_machine_setting(like, s); });
      if (next == sorted) {
        // Nothing more is ready as the machine stands: on with the next.
        const Step first = *sorted;
        sorted = std::stable_partition(
            sorted, at_.steps.end(), [&](const Step& s) { return same_machine_setting(first, s); });
      } else {
        sorted = next;
      }
    }
  }

  // Tapers and late bevels come last: until then the edges are square to lie on.
  void tapers() {
    for (std::size_t i = 0; i < part().operations.size(); ++i) {
      const Operation& operation = part().operations[i];
      if (operation.kind == OperationKind::edge_cut) cut_flat(at_, i);
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

Derivation derive_steps(const model::Project& project, const parts::Part& part, int row,
                        const std::vector<Edging>& edging) {
  return Deriver(project, part, row).run(edging);
}

Derivation derive_strip(const model::Project& project, const parts::Part& part, int row) {
  return Deriver(project, part, row).strip();
}

}  // namespace splay::fabrication
