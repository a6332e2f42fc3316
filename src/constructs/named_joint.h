// A joint between any two parts, by their names, whatever built them.
#pragma once

#include <memory>

#include "constructs/construct.h"
#include "joinery/kinds.h"

namespace splay::constructs {

// Made when its turn comes in the file: both parts must stand before it.
class NamedJoint : public Construct {
 public:
  void fields(model::FieldVisitor& visit) override;
  void check(model::Complaints& complaints) const override;
  void build(parts::Builder& builder) const override;
  bool makes_parts() const override { return false; }

  model::Given<int> kind_index;
  model::Given<std::string> host, guest;
  std::unique_ptr<joinery::JointKind> joint;  // with the options of its kind
};

}  // namespace splay::constructs
