// The tables inside a case.
#pragma once

#include <string>

#include "constructs/corners.h"
#include "constructs/curve.h"
#include "constructs/outline.h"
#include "constructs/ring_layout.h"
#include "joinery/joint.h"
#include "model/field.h"

namespace splay::constructs {

// What is done to a front edge. The overall depth includes it.
enum class Edging { none, band, nosing };
enum class EdgingWhen { before, after };
struct FrontEdge : model::Fields {
  model::Given<Edging> edge{Edging::none};
  model::Given<std::string> stock;
  model::Given<Length> thickness;
  model::Given<EdgingWhen> when{EdgingWhen::before};
  void fields(model::FieldVisitor& visit) override;
  void check(model::Complaints& complaints) const override;
};

struct CornerChoice {
  model::Given<CornerKind> kind{CornerKind::mitre};
};

enum class PanelEnds { level, square };

struct PanelChoice : model::Fields {
  std::string name;
  model::Given<std::string> stock;
  model::Given<PanelEnds> ends{PanelEnds::level};
  FrontEdge front;
  void fields(model::FieldVisitor& visit) override;
};

// How the end of a shelf or partition meets what it runs to.
struct EndChoice : model::Fields {
  model::Given<Length> housing;
  model::Given<joinery::HousingFloor> floor{joinery::HousingFloor::square_to_walls};
  model::Given<Length> stopped;
  void fields(model::FieldVisitor& visit) override;
  void check(model::Complaints& complaints) const override;
};

// What shelves and partitions have in common.
struct Slab : model::Fields {
  std::string name;
  model::Given<std::string> stock;
  model::Given<std::vector<std::string>> between;
  model::Given<Length> set_back;
  model::Given<Length> depth;
  FrontEdge front;

 protected:
  void common_fields(model::FieldVisitor& visit);
  void check_common(model::Complaints& complaints) const;
};

struct Shelf : Slab {
  model::Given<Length> top_at;
  EndChoice ends;
  void fields(model::FieldVisitor& visit) override;
  void check(model::Complaints& complaints) const override;
};

enum class BlockEnd { lower, upper };
enum class BlockSides { both, left, right };
struct Blocks : model::Fields {
  model::Given<std::string> stock;
  model::Given<BlockEnd> at{BlockEnd::upper};
  model::Given<BlockSides> sides{BlockSides::both};
  model::Given<Length> along_host, along_partition, length;
  void fields(model::FieldVisitor& visit) override;
};

struct Partition : Slab {
  model::Given<Length> left_at, centre_at, right_at;
  EndChoice lower, upper;
  Blocks blocks;
  void fields(model::FieldVisitor& visit) override;
  void check(model::Complaints& complaints) const override;
};

enum class BackFit { rabbet, groove, applied };
struct Back : model::Fields {
  model::Given<std::string> stock;
  model::Given<BackFit> fit{BackFit::rabbet};
  model::Given<Length> into, set_in, clearance;
  void fields(model::FieldVisitor& visit) override;
  void check(model::Complaints& complaints) const override;
};

struct FrameMember : model::Fields {  // a member on the outline that differs
  std::string name;
  model::Given<Length> width;
  EdgeArch arch{Length{0}};  // of its inside edge
  void fields(model::FieldVisitor& visit) override;
};
struct FrameBar : model::Fields {  // a mid rail or mid stile
  std::string name;
  model::Given<Length> at, width;
  EdgeArch arch{Length{0}};  // of a rail's lower edge
  model::Given<std::vector<std::string>> between;
  bool rail = true;
  void fields(model::FieldVisitor& visit) override;
};
struct FrameRail : FrameBar {};
struct FrameStile : FrameBar {
  FrameStile() { rail = false; }
};

struct FaceFrame : model::Fields {
  model::Given<std::string> stock;
  model::Given<Length> width, overhang;
  CornerChoice corners;
  model::Given<std::vector<std::string>> through;
  model::Tables<FrameMember> members;
  model::Tables<FrameRail> rails;
  model::Tables<FrameStile> stiles;
  void fields(model::FieldVisitor& visit) override;
  void check(model::Complaints& complaints) const override;
};

}  // namespace splay::constructs
