// Joint details: every kind of joint in the piece cut open and drawn enlarged, alike ones once.
#include <algorithm>
#include <cmath>
#include <map>
#include <optional>

#include "drafting/text_block.h"
#include "sheets/joint_drawing.h"
#include "sheets/joint_words.h"
#include "sheets/kinds.h"
#include "sheets/part_view_facts.h"

namespace splay::sheets {

namespace {

using drafting::Picture;
using drafting::Story;

constexpr double detail_gap = 5, head = 8, detail_pad = 1.5;

// The bar over a drawing: kind, parts, how many.
ink::Group title_bar(const Context& context, const JointGroup& group, std::size_t number,
                     double width) {
  const drafting::Kit& kit = context.kit;
  ink::Group bar{"table", {}};
  bar.items.emplace_back(ink::Stroke{ink::Path{}.rect({{0, -head}, {width, 0}}), kit.visible()});
  const std::size_t count = group.joints.size();
  const std::string times = count == 1 ? "one joint" : std::to_string(count) + " joints alike";
  const double letter = kit.look.lettering;
  bar.items.emplace_back(
      ink::Text{{width - detail_pad, -head / 2 - letter / 2}, times, letter, 0, ink::Align::right});
  bar.items.emplace_back(
      drafting::fitted(kit,
                       std::to_string(number) + "  " + capitalised(group.joints.front()->kind) +
                           ": " + group.joints.front()->name,
                       {{detail_pad, -head + 0.4},
                        {width - detail_pad - kit.width(times, letter) - detail_gap, -0.4}},
                       {.height = kit.look.figures, .face = ink::Face::bold}));
  return bar;
}

Picture words_of(const Context& context, const JointGroup& group, double width) {
  Story story;
  for (const std::string& line : joint_words(context, group)) {
    story.push_back(drafting::body_text(context.kit, line, width));
    story.back().space_after = 1.2;
  }
  return drafting::as_picture(story, width);
}

// Drawings of one joint, and the smallest of their scales.
struct DrawnDetail {
  Picture picture;
  double ratio = 1e300;
};

// Beside each other, or the second below the first; each has `room`.
DrawnDetail draw_cuts(const Context& context, const parts::Joint& joint,
                      const std::vector<JointCut>& cuts, drafting::Room2 room, bool below) {
  DrawnDetail drawn;
  for (std::size_t i = 0; i < cuts.size(); ++i) {
    const std::string title = cuts.size() == 1 ? "Section" : i == 0 ? "Along both" : "Across";
    JointPicture one = joint_picture(context, joint, cuts[i], room, title);
    drawn.ratio = std::min(drawn.ratio, one.scale.ratio());
    Picture& all = drawn.picture;
    if (i == 0) {
      all = std::move(one.picture);
    } else if (!below) {
      all = drafting::side_by_side(std::move(all), one.picture, detail_gap);
    } else {
      const double depth = all.height + detail_gap / 2;
      drafting::append(all.items, drafting::moved(std::move(one.picture.items), {0, -depth}));
      all.width = std::max(all.width, one.picture.width);
      all.height = depth + one.picture.height;
    }
  }
  return drawn;
}

// The words stand beside a single drawing or two above each other, below two that stand beside each
// other: these where that doesn't make them a good deal smaller.
Picture detail(const Context& context, const JointGroup& group, std::size_t number, double width,
               double most_high) {
  constexpr double one_share = 0.64, upper_share = 0.75, much_larger = 1.4;
  const parts::Joint& joint = *group.joints.front();
  const std::vector<JointCut> cuts = joint_cuts(context.plan.assembly, joint);
  if (cuts.empty()) return {{}, 0, 0};
  bool beside = cuts.size() == 1;
  const double high = beside ? most_high : most_high * upper_share;
  DrawnDetail drawn = draw_cuts(context, joint, cuts, {one_share * width, high}, true);
  if (!beside) {
    const double half = (width - detail_gap - detail_pad) / 2;
    DrawnDetail row = draw_cuts(context, joint, cuts, {half, most_high}, false);
    beside = drawn.ratio > much_larger * row.ratio || row.picture.width > width - detail_pad;
    if (!beside) drawn = std::move(row);
  }
  Picture& pictures = drawn.picture;
  const bool fits_beside = beside && width - pictures.width - detail_gap >= 50;
  const double words_width =
      fits_beside ? width - pictures.width - detail_gap - detail_pad : width - 2 * detail_pad;
  const Picture words = words_of(context, group, words_width);
  const double top = head + 2;
  drafting::Items items{title_bar(context, group, number, width)};
  drafting::append(items, drafting::moved(std::move(pictures.items), {detail_pad, -top}));
  double depth = top + pictures.height;
  if (fits_beside) {
    drafting::append(items, drafting::moved(words.items, {pictures.width + detail_gap, -top}));
    depth = std::max(depth, top + words.height);
  } else {
    drafting::append(items, drafting::moved(words.items, {detail_pad, -depth - 2}));
    depth += 2 + words.height;
  }
  return {std::move(items), width, depth};
}

// All details with drawings no higher than `most_high`, after a word about them.
Story story_of(const Context& context, double width, double most_high) {
  const JointGroups groups = joint_groups(context.plan);
  Story story;
  std::size_t number = 0;
  std::vector<std::string> plain = groups.plain;
  for (const JointGroup& group : groups.drawn) {
    Picture picture = detail(context, group, number + 1, width, most_high);
    if (picture.height <= 0) {
      plain.push_back(group.joints.front()->kind + ": " + group.joints.front()->name);
      continue;
    }
    ++number;
    story.push_back(drafting::of_picture(std::move(picture), detail_gap));
  }
  if (story.empty()) return {};
  std::string words =
      "Each kind of joint once, cut open at right angles to its line and enlarged where that "
      "helps. Each part is hatched its own way. Check an angle by its rise with a square and a "
      "rule.";
  for (std::size_t i = 0; i < plain.size(); ++i)
    words += (i == 0 ? " Not drawn, since nothing is cut for them: " : "; ") + plain[i];
  if (!plain.empty()) words += ".";
  story.insert(story.begin(), drafting::body_text(context.kit, words, width));
  return story;
}

// With drawings so high at the most; nothing where one is higher than a column.
std::optional<std::vector<drafting::Items>> laid_out(const Context& context,
                                                     const std::vector<ink::Rect>& columns,
                                                     double high) {
  const double room = columns.front().height();
  const Story story = story_of(context, columns.front().width(), high);
  if (story.empty()) return std::vector<drafting::Items>{};
  if (std::ranges::any_of(
          story, [&](const drafting::Block& block) { return block.picture.height > room; }))
    return {};
  return drafting::flow(story, columns, columns);
}

}  // namespace

// Drawings are as large as they can be on as few pages as can be.
std::vector<ink::Page> make_joint_details(const Context& given) {
  const Context context = for_reading(given);
  const std::vector<ink::Rect> columns = drafting::columns(context.area(), context.wide() ? 2 : 1);
  std::optional<std::vector<drafting::Items>> best;
  // A large sheet has room for them one above the other.
  const std::vector<double> heights = context.wide() ? std::vector<double>{190, 160, 130, 100, 85}
                                                     : std::vector<double>{130, 100, 85};
  for (const double high : heights) {
    auto laid = laid_out(context, columns, high);
    if (laid && (!best || laid->size() < best->size())) best = std::move(laid);
  }
  std::vector<ink::Page> pages;
  for (drafting::Items& items : best.value_or(std::vector<drafting::Items>{})) {
    pages.push_back(start_page(context, "Joint details", "as marked"));
    drafting::append(pages.back().items, std::move(items));
  }
  return pages;
}

}  // namespace splay::sheets
