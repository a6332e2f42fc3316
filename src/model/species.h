// What is published of the woods that furniture is made of.
#pragma once

#include <span>
#include <string>
#include <string_view>

namespace splay::model {

// USDA Forest Products Laboratory, Wood Handbook (FPL-GTR-190, 2010): coefficients of dimensional
// change, Table 13-5; shrinkage from green to oven-dry, Table 4-3; specific gravity and modulus of
// elasticity at 12 % moisture, Tables 5-3 and 5-5. Single boards differ widely from these means.
struct Species {
  std::string_view name;
  double radial, tangential;                // change of size per point of moisture content
  double radial_shrink, tangential_shrink;  // percent
  double gravity;
  double modulus;  // 10^6 lbf/in2
  double modulus_mpa() const { return modulus * 6894.757; }
  double density() const { return gravity * 1120; }  // kg/m3 with its 12 % of water
};

std::span<const Species> species();
const Species* find_species(std::string_view name);  // nullptr when it isn't in the table
std::string species_names();                         // for an error's list of what is allowed

}  // namespace splay::model
