// Constructs: the things an author can ask for. Each is an Item that knows how to build itself.
#pragma once

#include "model/project.h"
#include "parts/builder.h"

namespace splay::constructs {

class Construct : public model::Item {
 public:
  // Lays down and joins the parts. What can't be built is reported to the builder as a finding of
  // level stop; nothing is thrown for what the author wrote.
  virtual void build(parts::Builder& builder) const = 0;
};

// Every kind of construct (register.cpp).
const model::Registry& registry();

// The whole project, built and audited.
parts::Assembly build(const model::Project& project);

}  // namespace splay::constructs
