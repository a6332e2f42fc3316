// A ring of leaning sides round a plan: trays, hoppers, planters, staved vessels.
#pragma once

#include "constructs/construct.h"
#include "constructs/outline.h"
#include "constructs/ring_layout.h"
#include "model/field.h"

namespace splay::constructs {

enum class StatedAt { foot, top };
enum class RimEdges { level, square };

struct RingSide : model::Fields {  // a side that differs
  std::string name;
  model::Given<std::string> stock;
  model::Given<Angle> lean_out;
  void fields(model::FieldVisitor& visit) override;
};

struct RingFloor : model::Fields {
  model::Given<std::string> stock;
  model::Given<Length> underside_at, into, clearance;
  void fields(model::FieldVisitor& visit) override;
  void check(model::Complaints& complaints) const override;
};

class RingOfSides : public Construct {
 public:
  void fields(model::FieldVisitor& visit) override;
  void check(model::Complaints& complaints) const override;
  void build(parts::Builder& builder) const override;

  PlanOutline plan;
  model::Given<StatedAt> stated_at{StatedAt::foot};
  model::Given<Length> height;
  model::Given<Angle> lean_out;
  model::Given<std::string> stock;
  model::Given<CornerKind> corners{CornerKind::mitre};
  model::Given<std::vector<std::string>> through;
  model::Given<RimEdges> foot_edge{RimEdges::level}, top_edge{RimEdges::level};
  model::Tables<RingSide> sides;
  RingFloor floor;
};

}  // namespace splay::constructs
