// What an author says of a stock as wood: its species, how it is sawn, how stiff it is.
#pragma once

#include <string>

#include "model/field.h"
#include "model/species.h"

namespace splay::model {

// How the growth rings stand to the face of a board.
enum class Sawn { flat, quarter };

// The fields of a stock that say how it moves and carries (part of model::Stock).
struct Timber {
  Given<std::string> species;  // solid wood only
  Given<Sawn> sawn{Sawn::flat};
  Given<double> stiffness;  // modulus of elasticity, GPa; else the species'
  void fields(FieldVisitor& visit);
  void check(Complaints& complaints) const;

  const Species* wood() const { return find_species(*species); }
  double modulus_mpa() const;         // 0 when neither stiffness nor species is known
  double across_coefficient() const;  // of the width, per point of moisture; 0 when unknown
};

}  // namespace splay::model
