// A case: panels round a closed outline, with shelves, partitions, a back and a face frame.
#pragma once

#include "constructs/case_fields.h"
#include "constructs/construct.h"

namespace splay::constructs {

class Case : public Construct {
 public:
  void fields(model::FieldVisitor& visit) override;
  void check(model::Complaints& complaints) const override;
  void build(parts::Builder& builder) const override;

  Outline outline;
  model::Given<Length> depth;
  model::Given<std::string> stock;
  CornerChoice corners;
  model::Given<std::vector<std::string>> through;
  FrontEdge front;
  model::Tables<PanelChoice> panels;
  model::Tables<CornerChoiceNamed> corner_choices;
  Back back;
  model::Tables<Shelf> shelves;
  model::Tables<Partition> partitions;
  FaceFrame frame;
};

}  // namespace splay::constructs
