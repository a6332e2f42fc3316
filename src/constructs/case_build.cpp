#include "constructs/case_build.h"

#include <algorithm>

namespace splay::constructs {

void Case::build(parts::Builder& builder) const { CaseBuild(*this, builder).run(); }

void CaseBuild::run() {
  if (!lay_out()) return;
  build_panels();
  build_back();
  build_slabs();
  build_frame();
  add_measures();
}

void CaseBuild::stop(std::string code, std::string about, std::string text, std::string remedy,
                     SourceSpan span) const {
  builder_.report(
      {Level::stop, std::move(code), {std::move(about)}, std::move(text), std::move(remedy), span});
}

std::string CaseBuild::part_name(const std::string& name) const {
  return constructs::part_name(builder_, case_, name);
}

double CaseBuild::thickness(const std::string& stock) const {
  const model::Stock* found = builder_.project().stocks.find(stock);
  return found == nullptr ? 0 : found->thickness->mm;
}

std::string CaseBuild::stock_of(const model::Given<std::string>& choice) const {
  return choice.given ? choice.value : case_.stock.value;
}

bool CaseBuild::lay_out() {
  sides_ = case_.outline.edge_names();
  std::vector<double> breadths;
  for (const std::string& side : sides_) {
    const PanelChoice* panel = case_.panels.find(side);
    breadths.push_back(thickness(panel == nullptr ? case_.stock.value : stock_of(panel->stock)));
  }
  Polygon outer = case_.outline.polygon();
  if (case_.outline.measured.value == Measured::inside) {
    std::vector<double> outwards = breadths;
    for (double& breadth : outwards) breadth = -breadth;
    const std::optional<Polygon> grown = offset_edges(outer, outwards);
    outer = grown ? *grown : Polygon{};
    Vec2 low = outer.empty() ? Vec2{} : outer.front();
    for (const Vec2 p : outer) low = {std::min(low.x, p.x), std::min(low.y, p.y)};
    for (Vec2& p : outer) p = p - low;
  }
  std::optional<Ring> ring;
  if (!outer.empty()) ring = lay_ring(outer, breadths);
  if (!ring) {
    stop("no-inside", case_.name,
         "The panels of " + case_.name + " leave no space inside the outline.",
         "Make the outline larger or the panels thinner.", case_.outline.span);
    return false;
  }
  ring_ = std::move(*ring);
  std::string fault;
  corners_ = resolve_corners(sides_, case_.corners.kind.value, *case_.through,
                             &case_.corner_choices, fault);
  if (!fault.empty()) {
    stop("unclear-corner", case_.name, fault,
         "Name in `through` one of the two panels of every butted corner.", case_.span);
    return false;
  }
  return true;
}

Line2 butt_end(const Ring& ring, std::size_t corner, bool before, bool through) {
  const std::size_t n = ring.members.size();
  const RingMember& other = ring.members[before ? corner : (corner + n - 1) % n];
  // Through: to the neighbour's outside. Stopped: against the neighbour's inside face.
  return through ? other.outside : flipped(other.inside);
}

}  // namespace splay::constructs
