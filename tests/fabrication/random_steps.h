// Random projects from a seed, their steps replayed. Every test here asks for a number of pieces
// that can be built, and counts no other: what an invented text can't be built for has to say so.
#pragma once

#include <string>

#include "support/chance.h"

namespace splay::test {

// The job, a saw and the stocks that the pieces of these tests are made of.
std::string a_shop(Chance& chance);

struct Wanted {
  const char* what;  // "canted cases"
  unsigned seed;
  int pieces;
  std::string (*write)(Chance&);
  double by_machine = 0.5;  // share of the steps that a machine makes, at the least
};

// Goes on from the seed until so many pieces are built. Of each every step is proven under 1e-6 mm
// and every joint closes under 1e-6 mm when the parts are cut by their steps; those that aren't are
// listed by seed, part and step and fail the test. `SPLAYBOOK_MORE=n` asks for n times as many.
void prove(const Wanted& wanted);

}  // namespace splay::test
