// One board or piece of sheet anywhere, cut by any planes.
#pragma once

#include "constructs/construct.h"
#include "constructs/cut_choice.h"

namespace splay::constructs {

// Seen with its face in front and its first end down, a board has a left and a right edge, a face
// and a back.
enum class BoardSide { second_end, first_end, left_edge, right_edge, face, back };

struct BoardCut : CutChoice {
  std::string name;
  PointField through;
  model::Given<Length> along, across;
  model::Given<BoardSide> waste{BoardSide::second_end};
  void fields(model::FieldVisitor& visit) override;
  void check(model::Complaints& complaints) const override;
};

enum class Anchor { corner, end, middle };

class Board : public Construct {
 public:
  void fields(model::FieldVisitor& visit) override;
  void check(model::Complaints& complaints) const override;
  void build(parts::Builder& builder) const override;

  PointField at, towards;
  model::Given<Anchor> anchor{Anchor::corner};
  model::Given<std::string> stock;
  model::Given<Length> length, width, thickness;
  model::Given<Angle> turn, rise, roll;
  model::Given<Length> corner_radius;
  model::Tables<BoardCut> cuts;

 private:
  Rigid axes() const;
  void round_face(parts::Builder& builder, int part, const Rigid& corner, Vec3 size) const;
  void cut(parts::Builder& builder, int part, const Rigid& corner, const BoardCut& choice) const;
};

}  // namespace splay::constructs
