#include "model/timber.h"

namespace splay::model {

namespace {

constexpr std::array<std::string_view, 2> sawn_words{"flat", "quarter"};

}  // namespace

void Timber::fields(FieldVisitor& visit) {
  visit.text(may("species", "solid wood: the species, for how it moves and how stiff it is",
                 "movement is not reckoned"),
             species);
  choose(visit, may("sawn", "solid wood: how the growth rings stand to the face"), sawn,
         sawn_words);
  visit.number(may("stiffness", "modulus of elasticity along the grain, in GPa, from its maker",
                   "the species'; else shelves of it are not reckoned"),
               stiffness, Range::between(0.1, 40));
}

void Timber::check(Complaints& complaints) const {
  if (species.given && wood() == nullptr)
    complaints.complain({species.span, "unknown-species",
                         "the tables have no species \"" + *species + "\"", species_names(), ""});
}

double Timber::modulus_mpa() const {
  if (stiffness.given) return *stiffness * 1000;
  return wood() == nullptr ? 0 : wood()->modulus_mpa();
}

double Timber::across_coefficient() const {
  if (wood() == nullptr) return 0;
  return *sawn == Sawn::flat ? wood()->tangential : wood()->radial;
}

}  // namespace splay::model
