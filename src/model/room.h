// What an author says of the place a piece will stand in and of the way there.
#pragma once

#include <string>
#include <vector>

#include "model/field.h"

namespace splay::model {

// A door, stairs, a landing, a lift on the way: its clear opening, which is less than its name
// says.
struct Way : Fields {
  std::string name;
  Given<Length> width, height;
  Given<Length> turns_into;  // it turns at a right angle into a way this wide
  void fields(FieldVisitor& visit) override;
};

enum class Standing { on_the_floor, on_the_wall };
enum class ShelfUse { general, books };

struct Room : Fields {
  Given<double> made_at{45}, driest{30}, dampest{60};  // relative humidity, percent
  Given<double> temperature{21};                       // degrees Celsius
  Given<Length> ceiling;
  Given<Standing> standing{Standing::on_the_floor};
  Given<ShelfUse> shelves{ShelfUse::general};
  Given<std::vector<std::string>> open;  // doors and drawers that stand open together; else all
  // kg in a cubic metre of drawer: clothes as ASTM F2057-23 has them, 8.5 lb/ft3 (from memory)
  Given<double> drawer_load{136};
  Tables<Way> ways;
  void fields(FieldVisitor& visit) override;
  void check(Complaints& complaints) const override;
};

}  // namespace splay::model
