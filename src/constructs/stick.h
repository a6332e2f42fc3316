// A straight member between two points.
#pragma once

#include "constructs/construct.h"
#include "constructs/cut_choice.h"
#include "constructs/member.h"
#include "constructs/orientation.h"

namespace splay::constructs {

enum class LineAcross { centre, left_edge, right_edge };
enum class LineThrough { centre, face, back };

// An end of a stick: a plane through the end of its line, or another part's face.
struct StickEnd : CutChoice {
  model::Given<std::string> against;
  void fields(model::FieldVisitor& visit) override;
  void check(model::Complaints& complaints) const override;
};

// Seen with its face in front and its first end down, a stick has a left and a right edge, a face
// and a back.
class Stick : public Construct {
 public:
  void fields(model::FieldVisitor& visit) override;
  void check(model::Complaints& complaints) const override;
  void build(parts::Builder& builder) const override;

  PointField from, to;
  model::Given<std::string> stock;
  model::Given<Length> width, thickness, to_width, to_thickness, straight;
  model::Given<std::vector<std::string>> taper_on;
  model::Given<LineAcross> line_across{LineAcross::centre};
  model::Given<LineThrough> line_through{LineThrough::centre};
  Orientation orientation;
  StickEnd from_end, to_end;

 private:
  bool lay_end(parts::Builder& builder, const Rigid& line, bool at_to, Member& member,
               int& host) const;
  void finish_end(parts::Builder& builder, int part, const MemberEnd& end, bool at_to,
                  int host) const;
  double broadest(const parts::Builder& builder) const;
  SquareSection section(double thick) const;
  bool tapers(std::string_view side) const;
};

}  // namespace splay::constructs
