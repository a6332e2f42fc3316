// Building a table, step by step.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "constructs/member.h"
#include "constructs/table.h"
#include "joinery/stick.h"

namespace splay::constructs {

struct PlacedLeg {
  int part = -1;
  std::string name;
  Vec3 front, side;      // level, outwards: the leg's own front and side in plan
  Vec3 along;            // unit, from the foot to the head: the line the splay is stated for
  joinery::Stick stick;  // before its mortises
};

struct PlacedRail {
  int part = -1;
  std::size_t first = 0, second = 0;  // legs
  Vec3 from, to;                      // its centre line, from leg to leg
  Vec3 out;                           // its face
};

class TableBuild {
 public:
  TableBuild(const Table& spec, parts::Builder& builder);
  void run();

 private:
  // table_legs.cpp
  bool add_leg(std::size_t i);
  PlacedLeg face_leg(std::size_t i) const;
  Member leg_member(const PlacedLeg& leg, Vec3 head) const;
  Vec3 spread(const PlacedLeg& leg) const;
  std::vector<MemberSide> leg_sides(const PlacedLeg& leg, Vec3 head) const;
  Vec3 shift_to_plan(const PlacedLeg& leg, const std::vector<MemberSide>& sides) const;
  void add_measures();
  std::vector<Vec3> corners(const PlacedLeg& leg, double z) const;
  // table_rails.cpp
  void add_apron();
  void add_stretcher(const TableStretcher& choice);
  void add_between(const TableStretcher& choice);
  struct RailPlace {
    std::size_t side = 0;
    double upper = 0, middle = 0;  // heights: of its level upper edge when it has one
    bool level_top = false;
  };
  std::optional<PlacedRail> add_rail(const TableRail& choice, const std::string& name,
                                     const RailPlace& place);
  void set_back(const TableRail& choice, PlacedRail& rail, Vec3 level_out) const;
  void refuse_meeting(const TableRail& choice, const std::vector<PlacedRail>& rails);
  void join_rails(const TableRail& choice, const std::vector<PlacedRail>& rails);
  // Where a rail's tenon meets that of the rail on the leg's other side: the plane that halves the
  // corner of the two, out of this rail, and how long a square-ended tenon can be before it.
  struct Halving {
    Plane plane;
    double most = 0;
  };
  void join(const TableRail& choice, int host, const PlacedRail& rail,
            const std::optional<Halving>& halving);
  std::optional<Halving> halve(const TableRail& choice, const PlacedRail& rail, std::size_t leg,
                               const std::vector<PlacedRail>& rails) const;
  std::vector<std::size_t> sides_of(const TableRail& choice) const;
  double thickness_of(const TableRail& choice) const;
  // table_arch.cpp
  void arch(const TableRail& choice, const PlacedRail& rail);
  // table_top.cpp
  void add_top();
  std::vector<Vec2> top_outline() const;

  void stop(std::string code, std::string text, std::string remedy, SourceSpan span) const;
  std::size_t count() const { return static_cast<std::size_t>(*spec_.legs); }

  const Table& spec_;
  parts::Builder& builder_;
  Vec3 middle_;      // of the plan, on the floor
  double head_ = 0;  // height of the legs' top
  double top_thickness_ = 0;
  std::vector<PlacedLeg> legs_;  // anticlockwise from above, side i from leg i to the next
  struct Placed {
    std::string name;
    std::vector<PlacedRail> rails;
  };
  std::vector<Placed> stretchers_;
  std::vector<int> aprons_;
};

// Measures of a rail with a shoulder at either end: between the shoulders along its middle and its
// two edges on the face, and over all.
void state_shoulders(parts::Builder& builder, int part);

}  // namespace splay::constructs
