// What an author says of hardware that no construct or joint brings by itself: knobs, levellers,
// shelf pins, catches, the screws of hinges.
#pragma once

#include <string>
#include <vector>

#include "model/field.h"

namespace splay::model {

// Where holes for it are drilled is worked into the solids when `at` is given; else it is counted.
struct Hardware : Fields {
  std::string name;
  Given<std::string> what, size;  // as the hardware list has them; size in its native unit
  Given<int> count{1};            // for each of `per`
  Given<std::string> per;         // "piece", "part", "door", "drawer", or the kind of a fitting
  Given<std::vector<std::string>> on;  // parts by name
  Given<std::string> face;             // of these parts, as its part view names it
  Given<std::vector<Vec2>> at;         // from the datums of the part view, mm
  Given<Length> hole, depth;           // what is drilled for it; no depth: through
  Given<int> spare{0};
  Given<double> price{0.0};  // of a pack, in the currency of [buying]
  Given<int> pack{1};        // how many are in it
  void fields(FieldVisitor& visit) override;
  void check(Complaints& complaints) const override;
  const std::string& words() const { return what.given ? *what : name; }
};

}  // namespace splay::model
