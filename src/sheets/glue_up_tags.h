// Words on a picture of a stage. Internal to src/sheets.
#pragma once

#include <string>
#include <vector>

#include "geometry/polygon.h"
#include "sheets/sheet.h"

namespace splay::sheets {

// Words in white boxes over a picture, where no other stands and little wood is hidden, with a line
// to what they belong to where they had to make way.
class Tags {
 public:
  // `wood`: about what each solid covers on paper.
  Tags(const Context& context, const drafting::Picture& picture, std::vector<Polygon> wood = {});

  // `own`: which of the wood the words name, -1: none.
  void put(Vec2 tip, const std::string& words, std::ptrdiff_t own = -1);
  void draw(drafting::Items& items);

 private:
  bool free(ink::Rect box) const;
  Vec2 place_for(Vec2 tip, Vec2 half, std::ptrdiff_t own) const;
  double hidden(ink::Rect box, std::ptrdiff_t own) const;

  const drafting::Kit& kit_;
  ink::Rect area_;
  std::vector<Polygon> wood_;
  std::vector<ink::Rect> taken_;
  ink::Path lines_;
  std::vector<ink::Group> tags_;
};

}  // namespace splay::sheets
