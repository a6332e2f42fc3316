#include "reading/faults.h"

namespace splay::reading {

void Faults::complain(Diagnostic diagnostic) {
  ++count_;
  kept_.push_back(std::move(diagnostic));
  if (kept_.size() >= 20 * most_faults) trim();
}

void Faults::trim() {
  sort_diagnostics(kept_);
  if (kept_.size() <= most_faults) return;
  dropped_ += kept_.size() - most_faults;
  kept_.resize(most_faults);
}

std::vector<Diagnostic> Faults::finish() && {
  trim();
  if (dropped_ > 0)
    kept_.push_back({kept_.back().span, "too-many-faults",
                     std::to_string(dropped_) + " more faults are not listed", "",
                     "mend the first ones; many of the others may go with them"});
  return std::move(kept_);
}

}  // namespace splay::reading
