// What each page of the exploded view shows, so that every part's balloon finds its place. Internal
// to src/sheets.
#pragma once

#include <string>
#include <vector>

#include "fabrication/plan.h"

namespace splay::sheets {

// Parts drawn as one, with one balloon.
struct ExplodedBlock {
  std::vector<int> parts;  // indices into Assembly::parts, ascending
  std::string name;        // of a block drawn apart on a page of its own, "" for a single part
};

struct ExplodedShare {
  std::string name;  // "" when one page shows everything
  std::vector<ExplodedBlock> blocks;
  std::vector<int> joinings;  // the ones undone, indices into the order's, ascending
  std::vector<int> parts() const;
};

// All of it together when that needs no more than `most` balloons. Else each piece that stands by
// itself, alike ones once; and a piece with too many parts as the blocks it is put together from at
// the end, then each of these.
std::vector<ExplodedShare> exploded_shares(const fabrication::Plan& plan, std::size_t most);

}  // namespace splay::sheets
