// Hardware, finish, the figures of movement, load and balance, and the way in, one after the other:
// each by itself is too short for pages of its own in a small piece.
#include "sheets/hold_stories.h"
#include "sheets/kinds.h"

namespace splay::sheets {

std::vector<ink::Page> make_hold(const Context& given) {
  const Context context = for_reading(given);
  const double width = story_width(context);
  drafting::Story story = hardware_story(context, width);
  for (drafting::Story more :
       {finish_story(context, width), soundness_story(context, width), way_story(context, width)}) {
    if (more.empty()) continue;
    if (!story.empty()) story.back().space_after = 6;
    drafting::add(story, std::move(more));
  }
  if (story.empty()) return {};
  return story_pages(context, "Hardware, finish, balance", story);
}

}  // namespace splay::sheets
