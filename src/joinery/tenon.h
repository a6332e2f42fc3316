#pragma once

#include <optional>

#include "joinery/kinds.h"

namespace splay::joinery {

// Which of the guest's sides the tenon's cheeks are parallel to.
enum class Cheeks { faces, edges };
enum class HaunchAt { low_edge, high_edge };

// A tenon on the guest, in line with it, in a mortise of the host. The shoulders lie on the host's
// face and the tenon's end is parallel to them, so that a leaning guest has one length of tenon.
struct TenonKind : JointKind {
  model::Given<Length> thickness, width, length, shoulder;
  model::Given<Length> offset{Length{0}};
  model::Given<Length> bottom_gap{Length::inches(1.0 / 16)};
  model::Given<bool> through{false};
  model::Given<Length> proud{Length{0}};
  model::Given<Length> haunch, haunch_width;
  model::Given<HaunchAt> haunch_at{HaunchAt::high_edge};
  model::Given<Cheeks> cheeks{Cheeks::faces};
  // Not an author's field. A plane in the world, out of the guest, that the mortise must not pass,
  // set by whoever knows of a neighbour's tenon in the same host: the tenon's end is mitred to it,
  // the bottom gap short of it.
  std::optional<Plane> limit;
  void fields(model::FieldVisitor& visit) override;
  std::string shape(parts::Builder& builder, int host, int guest) const override;
};

}  // namespace splay::joinery
