// Constructs: the things an author can ask for. Each is an Item that knows how to build itself.
#pragma once

#include <string>
#include <vector>

#include "model/project.h"
#include "parts/builder.h"

namespace splay::constructs {

class Construct : public model::Item {
 public:
  // Lays down and joins the parts. What can't be built is reported to the builder as a finding of
  // level stop; nothing is thrown for what the author wrote.
  virtual void build(parts::Builder& builder) const = 0;
  virtual bool makes_parts() const { return true; }
};

// The name of a part of an item: with the item's word in front when more than one item makes parts.
std::string part_name(const parts::Builder& builder, const model::Item& item,
                      const std::string& name);

// A finding of level stop, at the place where the author wrote what can't be built.
struct Refusal {
  std::string code, about, text, remedy;
  SourceSpan span{};
};
void refuse(parts::Builder& builder, Refusal refusal);

// Index of a part built before, for an item or part named `about`; -1 after a finding
// ("unknown-part", with the nearest name) when there is none.
int find_part(parts::Builder& builder, const std::string& name, const std::string& about,
              SourceSpan span);

// A point of three lengths as an author writes it; complains ("wrong-count") of any other number.
using PointField = model::Given<std::vector<Length>>;
Vec3 point_of(const PointField& field);
void check_point(const PointField& field, model::Complaints& complaints);

// The measured thickness of a stock, mm; 0 for an unknown one, which reading refuses.
double stock_thickness(const parts::Builder& builder, const std::string& stock);

// Every kind of construct (register.cpp).
const model::Registry& registry();

// The whole project, built and audited.
parts::Assembly build(const model::Project& project);

// A length as stated, or what its field says holds when it is not; mm.
inline double or_else(const model::Given<Length>& field, double mm) {
  return field.given ? field->mm : mm;
}

}  // namespace splay::constructs
