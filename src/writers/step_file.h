// A file after ISO 10303-21 (clear text encoding of the exchange structure): numbered instances and
// the spelling of values.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "geometry/plane.h"

namespace splay::writers {

// Text between apostrophes; what is not ASCII by \X2\ as ISO 10303-21 has it, above U+FFFF by \X4\.
std::string step_text(std::string_view utf8);
// A real: always with a point, the shortest digits that give the same double again.
std::string step_real(double value);

class StepFile {
 public:
  // Adds an instance, "POINT('',#3)" and the like, and returns its number.
  int add(std::string_view entity);
  static std::string ref(int number) { return "#" + std::to_string(number); }
  static std::string refs(const std::vector<int>& numbers);  // "(#1,#2)"

  int point(Vec3 p);
  int direction(Vec3 d);
  int placement(Vec3 origin, Vec3 axis, Vec3 reference);  // AXIS2_PLACEMENT_3D

  // The whole file; `when` is an ISO 8601 date, `schema` the name that the standard gives it.
  std::string finish(std::string_view description, std::string_view name, std::string_view when,
                     std::string_view system, std::string_view schema) const;

 private:
  std::string data_;
  int last_ = 0;
};

}  // namespace splay::writers
