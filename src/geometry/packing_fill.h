// The fullest filling of one stretch from a supply of lengths (part of packing_lengths.h).
#pragma once

#include "geometry/packing_types.h"

namespace splay::packing {

// Lengths in falling order, with how many there are of each.
struct Supply {
  std::vector<Units> length;
  std::vector<int> count;
};

// How many of each length to cut from `room` so that as little as possible is left. `must` is a
// length that has to be among them (-1: none); lengths marked in `skip` are passed over, if it is
// not empty. Exact unless the bounded search runs out.
std::vector<int> fullest(const Supply& supply, Units room, int must, const std::vector<char>& skip);

}  // namespace splay::packing
