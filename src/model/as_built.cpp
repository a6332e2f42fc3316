#include "model/as_built.h"

namespace splay::model {

void BuiltPart::fields(FieldVisitor& visit) {
  const char* unmeasured = "not measured";
  visit.length(may("length", "as measured", unmeasured), length, Range::size());
  visit.length(may("width", "as measured", unmeasured), width, Range::size());
  visit.length(may("thickness", "as measured", unmeasured), thickness, Range::size());
}

void AsBuilt::fields(FieldVisitor& visit) {
  const char* unmeasured = "not measured";
  constexpr double most_hours = 100000;
  visit.date(may("date", "the day it was finished"), date);
  visit.length(may("width", "over everything, as measured", unmeasured), width, Range::size());
  visit.length(may("height", "over everything, as measured", unmeasured), height, Range::size());
  visit.length(may("depth", "over everything, as measured", unmeasured), depth, Range::size());
  visit.number(may("hours", "what it took", "not counted"), hours, Range::between(0, most_hours));
  visit.texts(may("photos", "file names of photographs"), photos);
  visit.texts(may("notes", "what to do otherwise next time"), notes);
  visit.tables(may("part", "a part as measured, by its mark"), parts);
}

}  // namespace splay::model
