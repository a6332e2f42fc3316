// What the trade's names for thicknesses stand for.
#pragma once

#include <optional>

namespace splay::fabrication {

// Least and greatest thickness, mm.
struct ThicknessBand {
  double least = 0, most = 0;
};

// A panel of the performance category `named` (mm of the name's fraction), unsanded, touch-sanded
// or overlaid: Voluntary Product Standard PS 1, Structural Plywood, 1/32 in either way up to 13/16
// in and 5 % above. Hardwood plywood (ANSI/HPVA HP-1, from memory) may be 3/64 in under its name.
ThicknessBand structural_panel(double named);
ThicknessBand panel(double named);  // either standard

// The least thickness of kiln-dried rough hardwood lumber sold as `named` (4/4 is 25.4 mm): the
// name less 1/16 in. NHLA Rules for the Measurement and Inspection of Hardwood and Cypress, as
// lumber sellers and wood scientists quote them.
double least_dry_rough(double named);

}  // namespace splay::fabrication
