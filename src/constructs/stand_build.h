// Building a stand, step by step.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "constructs/member.h"
#include "constructs/stand.h"
#include "joinery/stick.h"

namespace splay::constructs {

// The outside of the legs: four planes that lean, or the outer edges of legs on a ring.
struct StandBody {
  double left = 0, right = 0, front = 0, back = 0;  // where they stand at `level`
  double level = 0, foot = 0, top = 0;              // heights in the room
  double lean_left = 0, lean_right = 0, lean_front = 0, lean_back = 0;  // radians, in going up
  Vec2 middle;                                                          // of a ring
  double radius = 0;  // of its outer edges, at `level`
  double x(bool at_right, double z) const;
  double y(bool at_back, double z) const;
  // Outwards: of the side with x or y constant at a height.
  Plane side(bool at_right) const;
  Plane face(bool at_back) const;
  double radius_at(double z) const;
};

// The two edges of a leg in the plane of its faces.
struct StandLegEdges {
  Vec3 foot, top;              // outer edge
  Vec3 inner_foot, inner_top;  // inner edge
  Vec3 axis;                   // of the blank
};

// Where a leg is to stand: the ends of its outer edge, on the plane of one face; `in` is level, in
// that plane, away from the outer edge.
struct StandLegSetting {
  std::string name;
  Vec3 foot, top, in;
  Plane face;
  std::string face_name, other_face;
};

struct StandLegPlace {
  int part = -1;
  joinery::Stick stick;  // before its laps
};

// A place between two legs where a brace can run.
struct StandBay {
  std::string name;
  std::size_t first = 0, second = 0;  // indices of legs
  Vec3 along;                         // level, from the first to the second
  Plane outside;
};

struct PlacedBrace {
  int part = -1;
  Vec3 from, to;  // its centre line, from leg to leg
  std::size_t first = 0, second = 0;
};

// One that other braces can name.
struct NamedBrace {
  std::string name;
  PlacedBrace brace;
};

class StandBuild {
 public:
  StandBuild(const Stand& spec, parts::Builder& builder) : spec_(spec), builder_(builder) {}
  void run();

 private:
  // stand_legs.cpp
  bool lay_out();
  bool lay_under();
  bool take_lean(const std::string& side, double& lean) const;
  StandLegSetting corner_leg(bool right, bool back) const;
  bool add_leg(const StandLegSetting& setting);
  Member leg_member(const StandLegSetting& setting, const StandLegEdges& edges) const;
  double leg_thickness() const;
  void state_leg(const StandLegPlace& leg, const StandLegEdges& edges);
  void add_measures();
  void rest_item();
  // stand_ring.cpp
  StandLegSetting ring_leg(std::size_t i) const;
  void add_ring_measures();
  void add_between(const StandBrace& choice);
  Vec3 brace_end(const StandBrace& choice, std::size_t end);
  void lap_into(const StandBrace& choice, const PlacedBrace& brace, const PlacedBrace& other);
  int host_brace(const StandBrace& choice, std::size_t end) const;
  const NamedBrace* find_brace(const std::string& name) const;
  void stop(std::string code, std::string text, std::string remedy, SourceSpan span) const;
  // stand_braces.cpp
  std::vector<StandBay> bays(BraceRun runs) const;
  Vec3 leg_middle(std::size_t leg, double height) const;
  void add_braces(const StandBrace& choice);
  void add_in_bay(const StandBrace& choice, const StandBay& bay);
  void add_in_plan(const StandBrace& choice);
  PlacedBrace add_brace(const StandBrace& choice, const std::string& name, PlacedBrace brace,
                        Vec3 facing);
  void lap_crossing(const StandBrace& choice, const PlacedBrace& one, const PlacedBrace& other);
  void state_crossing(const StandBrace& choice, const PlacedBrace& brace, const PlacedBrace& other,
                      Vec3 at, double angle);
  void lap_ends(const StandBrace& choice, const PlacedBrace& brace);
  void lap_leg(const StandBrace& choice, const PlacedBrace& brace, std::size_t leg);
  void warn_of_neck(const StandBrace& choice, const PlacedBrace& brace, std::size_t leg);
  void trim_proud(const StandBrace& choice, const PlacedBrace& brace, std::size_t leg, Vec3 way);

  const Stand& spec_;
  parts::Builder& builder_;
  StandBody body_;
  std::vector<StandLegPlace> legs_;  // left front, right front, left back, right back; or round
  std::vector<NamedBrace> between_;  // braces between named legs, so far
  int carried_ = -1;                 // index of the item on the stand
};

}  // namespace splay::constructs
