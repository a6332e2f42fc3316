// What must hold of every piece that can be built, tried on pieces from a seed.
#pragma once

#include <string>

#include "properties/pencil.h"

namespace splay::test {

struct Kind {
  const char* what;  // "canted cases"
  unsigned seed;
  int pieces;
  std::string (*write)(Pencil&);
  double by_machine = 0.5;  // share of the steps that a machine makes, at the least
  bool mirrors = true;      // the writer exchanges left and right
  // Of two crossing members the one in front is cut from its other face, and that rule of the stand
  // is not mirrored: of these only the outside is compared.
  bool crosses = false;
};

// Goes on from the seed until so many pieces are built, and no further than four times as many;
// what can't be built must say so, with what to do. Of every piece:
//   each joint is closed and no two parts share space;
//   every step is proven to 1e-6 mm, no operation is made twice, and parts so cut close each joint;
//   no layout overlaps, leaves no room for the kerf, or asks for a cut that stops within a sheet,
//   and each part is on it as often as it is wanted;
//   no page of the shop's binder or of the client's set breaks a rule of the page lint;
//   every other one is in inches: said in the other unit it is the same piece, or mirrored it is
//   its mirror image, and that is proven too.
// What breaks a law fails the test, by seed. `SPLAYBOOK_MORE=n` in the environment asks for n times
// as many pieces; `SPLAYBOOK_SEED=n` tries that seed alone and ends with its text.
void hold(const Kind& kind);

}  // namespace splay::test
