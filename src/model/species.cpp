#include "model/species.h"

#include <algorithm>
#include <array>

namespace splay::model {

namespace {

constexpr std::array<Species, 27> table{{
    {"red alder", 0.00151, 0.00256, 4.4, 7.3, 0.41, 1.38},
    {"white ash", 0.00169, 0.00274, 4.9, 7.8, 0.60, 1.74},
    {"quaking aspen", 0.00119, 0.00234, 3.5, 6.7, 0.38, 1.18},
    {"American basswood", 0.00230, 0.00330, 6.6, 9.3, 0.37, 1.46},
    {"American beech", 0.00190, 0.00431, 5.5, 11.9, 0.64, 1.72},
    {"paper birch", 0.00219, 0.00304, 6.3, 8.6, 0.55, 1.59},
    {"yellow birch", 0.00256, 0.00338, 7.3, 9.5, 0.62, 2.01},
    {"sweet birch", 0.00256, 0.00338, 6.5, 9.0, 0.65, 2.17},
    {"butternut", 0.00116, 0.00223, 3.4, 6.4, 0.38, 1.18},
    {"black cherry", 0.00126, 0.00248, 3.7, 7.1, 0.50, 1.49},
    {"pecan hickory", 0.00169, 0.00315, 4.9, 8.9, 0.66, 1.73},
    {"red maple", 0.00137, 0.00289, 4.0, 8.2, 0.54, 1.64},
    {"silver maple", 0.00102, 0.00252, 3.0, 7.2, 0.47, 1.14},
    {"sugar maple", 0.00165, 0.00353, 4.8, 9.9, 0.63, 1.83},
    {"red oak", 0.00158, 0.00369, 4.0, 8.6, 0.63, 1.82},
    {"white oak", 0.00180, 0.00365, 5.6, 10.5, 0.68, 1.78},
    {"sweetgum", 0.00183, 0.00365, 5.3, 10.2, 0.52, 1.64},
    {"American sycamore", 0.00172, 0.00296, 5.0, 8.4, 0.49, 1.42},
    {"black walnut", 0.00190, 0.00274, 5.5, 7.8, 0.55, 1.68},
    {"yellow poplar", 0.00158, 0.00289, 4.6, 8.2, 0.42, 1.58},
    {"coast Douglas-fir", 0.00165, 0.00267, 4.8, 7.6, 0.48, 1.95},
    {"eastern white pine", 0.00071, 0.00212, 2.1, 6.1, 0.35, 1.24},
    {"ponderosa pine", 0.00133, 0.00216, 3.9, 6.2, 0.40, 1.29},
    {"longleaf pine", 0.00176, 0.00263, 5.1, 7.5, 0.59, 1.98},
    // The table's trade group of mahogany is wider; this is Swietenia, from its shrinkage.
    {"true mahogany", 0.00102, 0.00141, 3.0, 4.1, 0.45, 1.50},
    {"teak", 0.00085, 0.00186, 2.5, 5.8, 0.55, 1.55},
    {"white fir", 0.00112, 0.00245, 3.3, 7.0, 0.39, 1.50},
}};

}  // namespace

std::span<const Species> species() { return table; }

const Species* find_species(std::string_view name) {
  const auto found = std::ranges::find(table, name, &Species::name);
  return found == table.end() ? nullptr : &*found;
}

std::string species_names() {
  std::string text;
  for (const Species& wood : table) text.append(text.empty() ? "" : ", ").append(wood.name);
  return text;
}

}  // namespace splay::model
