#include "sheets/glue_up_picture.h"

#include <algorithm>
#include <cmath>

#include "base/index.h"
#include "drafting/dimension.h"
#include "geometry/polygon.h"
#include "sheets/exploded_layout.h"
#include "sheets/glue_up_clamps.h"
#include "sheets/glue_up_tags.h"

namespace splay::sheets {

namespace {

using drafting::Picture;
using fabrication::GlueStage;

constexpr double label_room = 9;  // mm round the drawn parts
constexpr double largest = 165;   // mm: the height of a picture

// Solids toned, as large as they go, with room for labels round them.
struct Drawn {
  Picture picture;
  drafting::Placement placement;
  View view = View::axonometric(seen_turn, seen_rise);
};

// The parts of a stage where they come from, in the stage's order.
struct StageApart {
  std::vector<Vec3> moved;  // of all parts of the assembly
  std::vector<Solid> solids;
};

StageApart apart(const Context& context, const GlueStage& stage) {
  const parts::Assembly& all = context.plan.assembly;
  Box box;
  for (const int part : stage.parts)
    for (const Vec3& p : all.parts[index(part)].world.vertices()) box.add(p);
  const double size = norm(box.size());
  StageApart result{drawn_apart(all, context.plan.glue_up.order.joinings, stage.joinings,
                                size * 0.1, size * 0.45),
                    {}};
  for (const int part : stage.parts)
    result.solids.push_back(all.parts[index(part)].world.shifted(result.moved[index(part)]));
  return result;
}

// The parts of a stage together, then its clamps.
std::vector<Solid> with_clamps(const Context& context, const GlueStage& stage,
                               const ClampShapes& shapes) {
  std::vector<Solid> solids;
  for (const int part : stage.parts)
    solids.push_back(context.plan.assembly.parts[index(part)].world);
  solids.insert(solids.end(), shapes.solids.begin(), shapes.solids.end());
  return solids;
}

Vec2 size_seen(const std::vector<Solid>& solids) {
  const View view = View::axonometric(seen_turn, seen_rise);
  ink::Rect box = drafting::no_rect();
  for (const Solid& solid : solids)
    for (const Vec3& p : solid.vertices())
      box = drafting::joined(box, {view.project(p), view.project(p)});
  return solids.empty() ? Vec2{} : box.high - box.low;
}

Drawn draw(const Context& context, const std::vector<Solid>& solids, double width, double highest) {
  Drawn drawn;
  const std::vector<ViewLine> lines = hidden_lines(solids, drawn.view);
  if (lines.empty()) return drawn;
  const ink::Rect box = drafting::view_box(lines);
  const double scale =
      std::min((width - 2 * label_room) / box.width(), (highest - 2 * label_room) / box.height());
  drawn.picture.width = width;
  drawn.picture.height = box.height() * scale + 2 * label_room;
  drawn.placement = drafting::centred(box, scale, {width / 2, -drawn.picture.height / 2});
  drawn.picture.items.emplace_back(drafting::draw_toned(
      context.kit, painted_faces(solids, drawn.view), lines, drawn.view, drawn.placement));
  return drawn;
}

void arrow(const Context& context, Vec2 from, Vec2 to, drafting::Items& items) {
  if (norm(to - from) < 1) return;
  ink::Group group{"legend", {}};
  group.items.emplace_back(ink::Stroke{ink::Path{}.move(from).line(to), {context.kit.look.middle}});
  group.items.emplace_back(drafting::arrow_head(to, to - from, 3));
  items.emplace_back(std::move(group));
}

std::string step_word(std::size_t step) { return std::to_string(step + 1); }

// What comes along with the first of parts made up before: ", C, D" or " and 4 more".
std::string others(const Context& context, const std::vector<int>& parts) {
  constexpr std::size_t named = 3;
  const std::string first = context.plan.mark_of(parts.front());
  std::vector<std::string> marks;
  for (const int part : parts) {
    const std::string& mark = context.plan.mark_of(part);
    if (mark != first && std::ranges::find(marks, mark) == marks.end()) marks.push_back(mark);
  }
  if (marks.empty()) return "";
  return marks.size() < named ? ", " + joined(marks)
                              : " and " + std::to_string(marks.size()) + " more";
}

Picture coming_in(const Context& context, const GlueStage& stage, double width, double highest) {
  const parts::Assembly& all = context.plan.assembly;
  const auto& order = context.plan.glue_up.order.joinings;
  const StageApart pulled = apart(context, stage);
  const auto& moved = pulled.moved;
  const auto& solids = pulled.solids;
  Drawn drawn = draw(context, solids, width, highest);
  drafting::Items& items = drawn.picture.items;
  for (const WayArrow& way : way_arrows(all, order, stage.joinings, moved, drawn.view))
    arrow(context, drawn.placement.paper(way.from), drawn.placement.paper(way.to), items);
  const auto paper = [&](Vec3 p) { return drawn.placement.paper(drawn.view.project(p)); };
  std::vector<Polygon> wood;
  for (const Solid& solid : solids) {
    std::vector<Vec2> corners;
    for (const Vec3& p : solid.vertices()) corners.push_back(paper(p));
    wood.push_back(convex_hull(std::move(corners)));
  }
  Tags tags(context, drawn.picture, std::move(wood));
  const auto tag = [&](int part, const std::string& more) {
    const auto i = std::ranges::find(stage.parts, part) - stage.parts.begin();
    tags.put(paper(solids[static_cast<std::size_t>(i)].centroid()),
             context.plan.mark_of(part) + more, i);
  };
  // One that comes in with others later is named then.
  const auto named_later = [&](int part) {
    return std::ranges::any_of(stage.joinings, [&](int joining) {
      const std::vector<int>& moving = order[index(joining)].moving;
      return moving.size() > 1 && moving.front() == part;
    });
  };
  for (std::size_t s = 0; s < stage.joinings.size(); ++s) {
    const std::vector<int>& fixed = order[index(stage.joinings[s])].fixed;
    const std::vector<int>& moving = order[index(stage.joinings[s])].moving;
    if (fixed.size() == 1 && !named_later(fixed.front())) tag(fixed.front(), "");
    tag(moving.front(), others(context, moving) + " · " + step_word(s));
  }
  tags.draw(items);
  return std::move(drawn.picture);
}

Picture in_clamps(const Context& context, const GlueStage& stage, double width, double highest) {
  const ClampShapes shapes = clamp_shapes(context.plan.assembly, stage);
  if (shapes.solids.empty()) return {};
  Drawn drawn = draw(context, with_clamps(context, stage, shapes), width, highest);
  drafting::Items& items = drawn.picture.items;
  Tags tags(context, drawn.picture);
  const auto paper = [&](Vec3 p) { return drawn.placement.paper(drawn.view.project(p)); };
  ink::Path bars;
  for (std::size_t r = 0; r < stage.clampings.size(); ++r) {
    for (const auto& heads : stage.clampings[r].heads)
      bars.move(paper(heads[0])).line(paper(heads[1]));
    if (shapes.tags[r]) tags.put(paper(*shapes.tags[r]), row_letter(r));
  }
  if (!bars.verbs.empty())
    items.emplace_back(ink::Group{
        "legend", {ink::Stroke{std::move(bars), {context.kit.look.narrow, ink::Dash::dashed}}}});
  tags.draw(items);
  return std::move(drawn.picture);
}

}  // namespace

std::string row_letter(std::size_t row) {
  return std::string(1, static_cast<char>('a' + static_cast<int>(row % 26)));
}

Picture stage_pictures(const Context& context, const GlueStage& stage, double width, double room) {
  constexpr double gap = 5;
  const double highest = std::min(room, largest);
  const ClampShapes shapes = clamp_shapes(context.plan.assembly, stage);
  if (shapes.solids.empty()) return coming_in(context, stage, width, highest);
  const Vec2 open = size_seen(apart(context, stage).solids),
             closed = size_seen(with_clamps(context, stage, shapes));
  const auto paper = [](double size, double scale) { return size * scale + 2 * label_room; };
  // Both at one scale, beside or below each other, whichever lets them be larger.
  const double beside = std::min((width - gap - 4 * label_room) / (open.x + closed.x),
                                 (highest - 2 * label_room) / std::max(open.y, closed.y));
  const double below = std::min({std::max(room - gap - 4 * label_room, 0.0) / (open.y + closed.y),
                                 (width - 2 * label_room) / std::max(open.x, closed.x),
                                 (largest - 2 * label_room) / std::max(open.y, closed.y)});
  if (below <= beside) {
    // The less high one may grow into width that is left.
    const auto grown = [&](Vec2 size, Vec2 other) {
      return std::min((width - gap - paper(other.x, beside) - 2 * label_room) / size.x,
                      (highest - 2 * label_room) / size.y);
    };
    const double opened = open.y < closed.y ? grown(open, closed) : beside;
    const double clamped = open.y < closed.y ? beside : grown(closed, open);
    const double spare = width - gap - paper(open.x, opened) - paper(closed.x, clamped);
    return drafting::side_by_side(
        coming_in(context, stage, paper(open.x, opened) + spare / 2, paper(open.y, opened)),
        in_clamps(context, stage, paper(closed.x, clamped) + spare / 2, paper(closed.y, clamped)),
        gap);
  }
  Picture picture = coming_in(context, stage, width, paper(open.y, below));
  Picture second = in_clamps(context, stage, width, paper(closed.y, below));
  const double depth = picture.height + gap;
  drafting::append(picture.items, drafting::moved(std::move(second.items), {0, -depth}));
  picture.height = depth + second.height;
  return picture;
}

}  // namespace splay::sheets
