// What an author measured on the finished work: [as_built]. It goes into the archive beside the
// designed sizes; nothing is cut by it.
#pragma once

#include <string>
#include <vector>

#include "model/field.h"

namespace splay::model {

// A part as measured, by its mark: [as_built.part.B-L].
struct BuiltPart : Fields {
  std::string name;
  Given<Length> length, width, thickness;
  void fields(FieldVisitor& visit) override;
};

struct AsBuilt : Fields {
  Given<Date> date;
  Given<Length> width, height, depth;  // over everything
  Given<double> hours;
  Given<std::vector<std::string>> photos, notes;
  Tables<BuiltPart> parts;
  void fields(FieldVisitor& visit) override;
};

}  // namespace splay::model
