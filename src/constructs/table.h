// A table, stool or trestle: splayed legs, aprons, stretchers and a plain top.
#pragma once

#include "constructs/construct.h"
#include "constructs/curve.h"
#include "constructs/fasteners.h"
#include "joinery/tenon.h"

namespace splay::constructs {

enum class LegLevel { top, foot };
enum class TableLegTaper { inside, outside, all };
enum class LegSection { square, trued };
enum class LegRoll { front, side, line_of_lean };

// A leg's width runs along the front (of several legs: along the ring), its depth square to that.
struct TableLeg : model::Fields {
  model::Given<std::string> stock;
  model::Given<Length> width, depth, foot_width, foot_depth, straight;
  model::Given<TableLegTaper> taper{TableLegTaper::inside};
  model::Given<LegSection> section{LegSection::square};
  model::Given<LegRoll> roll{LegRoll::front};
  void fields(model::FieldVisitor& visit) override;
  void check(model::Complaints& complaints) const override;
};

enum class RailFace { with_the_legs, plumb };
enum class TenonsMeet { short_of_each_other, mitred };

struct TableRail : model::Fields {  // an apron or a stretcher
  std::string name;
  model::Given<std::string> stock;
  model::Given<Length> width, thickness, set_back;
  model::Given<RailFace> face{RailFace::with_the_legs};
  model::Given<TenonsMeet> tenons_meet{TenonsMeet::short_of_each_other};
  model::Given<std::vector<std::string>> sides;
  EdgeArch arch{Length::inches(0.5)};  // of the lower edge
  joinery::TenonKind tenon;

 protected:
  void common_fields(model::FieldVisitor& visit);
};
struct TableApron : TableRail {
  model::Given<Length> below_top;
  void fields(model::FieldVisitor& visit) override;
};
struct TableStretcher : TableRail {
  model::Given<Length> at;
  model::Given<std::string> between;
  void fields(model::FieldVisitor& visit) override;
  void check(model::Complaints& complaints) const override;
};

enum class TopShape { rectangle, regular };
struct TableTop : model::Fields {
  model::Given<std::string> stock;
  model::Given<Length> thickness, overhang;
  model::Given<TopShape> shape{TopShape::rectangle};
  model::Given<int> sides{8};
  model::Tables<TopFastener> fasteners;
  void fields(model::FieldVisitor& visit) override;
  void check(model::Complaints& complaints) const override;
};

// Four legs stand at the corners of a rectangle; three, five or more stand on a ring, the first to
// the front. All lean outwards going down.
class Table : public Construct {
 public:
  void fields(model::FieldVisitor& visit) override;
  void check(model::Complaints& complaints) const override;
  void build(parts::Builder& builder) const override;
  // "front", "right", "back", "left" for four legs, else "side 1" onwards, anticlockwise from
  // above.
  std::vector<std::string> side_names() const;

  model::Given<int> legs{4};
  model::Given<Length> height, width, depth, radius;
  model::Given<LegLevel> stated_at{LegLevel::top};
  model::Given<std::vector<Angle>> splay;
  model::Given<Angle> lean, direction;
  PointField at;
  TableLeg leg;
  TableApron apron;
  model::Tables<TableStretcher> stretchers;
  TableTop top;

 private:
  void check_plan(model::Complaints& complaints) const;
  void check_lean(model::Complaints& complaints) const;
};

}  // namespace splay::constructs
