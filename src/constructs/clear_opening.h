// The clear opening that a door or drawer fills: stated by its sizes, or found between the parts of
// an item.
#pragma once

#include <optional>

#include "constructs/construct.h"
#include "constructs/outline.h"

namespace splay::constructs {

struct ClearOpening {
  Polygon shape;  // anticlockwise as the front is seen, its lowest left corner first
  Rigid place;    // of the front plane in the world; a polygon's (x, y) is (x, z) there
  int item = -1;  // index of the item it belongs to; -1 for one stated by its sizes
};

// How an author says which one.
struct OpeningChoice {
  model::Given<std::string> of;
  model::Given<std::vector<Length>> within;
  Outline opening;
  PointField at;
  SourceSpan opening_span() const { return of.given ? of.span : opening.span; }

 protected:
  void opening_fields(model::FieldVisitor& visit);
  void check_opening(SourceSpan owner, model::Complaints& complaints) const;
};

// In the front plane of an item the clear openings are what its parts leave free between them.
// Nothing after a finding of level stop: "nothing-to-close", "no-opening", "which-opening".
std::optional<ClearOpening> find_opening(parts::Builder& builder, const OpeningChoice& choice,
                                         const model::Item& owner);

// The part, of those named, whose wood is at a point of the world; -1 when none is.
int part_at(const parts::Builder& builder, const std::vector<int>& among, Vec3 point);

}  // namespace splay::constructs
