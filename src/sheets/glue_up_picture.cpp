#include "sheets/glue_up_picture.h"

#include <algorithm>
#include <cmath>

#include "drafting/dimension.h"
#include "sheets/exploded_layout.h"
#include "sheets/glue_up_clamps.h"

namespace splay::sheets {

namespace {

using drafting::Picture;
using fabrication::GlueStage;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

constexpr double label_room = 9;  // mm round the drawn parts

Solid shifted(const Solid& solid, Vec3 by) {
  Rigid motion;
  motion.origin = by;
  return solid.transformed(motion);
}

// Solids toned, as large as they go, with room for labels round them.
struct Drawn {
  Picture picture;
  drafting::Placement placement;
  View view = View::axonometric(seen_turn, seen_rise);
};

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

// Words on white discs or boxes over a picture, where no other stands, with a line to what they
// belong to where they had to make way.
class Tags {
 public:
  Tags(const Context& context, const Picture& picture)
      : kit_(context.kit), area_{{0, -picture.height}, {picture.width, 0}} {}

  void put(Vec2 tip, const std::string& words) {
    const double letter = kit_.look.lettering;
    const Vec2 half{(kit_.width(words, letter, ink::Face::bold) + 2.4) / 2, letter / 2 + 1.2};
    Vec2 best = tip;
    constexpr int rings = 14, around = 16;
    for (int ring = 0; ring <= rings; ++ring) {
      bool found = false;
      for (int k = 0; k < (ring == 0 ? 1 : around) && !found; ++k) {
        const double turn = 6.283185307179586 * k / around;
        best = tip + Vec2{std::cos(turn), std::sin(turn)} * (2.5 * ring);
        found = free({best - half, best + half});
      }
      if (found) break;
    }
    const ink::Rect box{best - half, best + half};
    taken_.push_back(box);
    if (norm(best - tip) > 2) lines_.move(best).line(tip);
    ink::Group tag{"leader", {}};
    tag.items.emplace_back(ink::Fill{ink::Path{}.rect(box), 1});
    tag.items.emplace_back(ink::Stroke{ink::Path{}.rect(box), kit_.thin()});
    tag.items.emplace_back(ink::Text{
        {best.x, best.y - letter / 2}, words, letter, 0, ink::Align::centre, ink::Face::bold});
    tags_.push_back(std::move(tag));
  }

  void draw(drafting::Items& items) {
    if (!lines_.verbs.empty())
      items.emplace_back(ink::Group{"leader", {ink::Stroke{std::move(lines_), kit_.thin()}}});
    drafting::append(items, std::move(tags_));
  }

 private:
  bool free(ink::Rect box) const {
    const bool inside = box.low.x >= area_.low.x && box.high.x <= area_.high.x &&
                        box.low.y >= area_.low.y && box.high.y <= area_.high.y;
    return inside && std::ranges::none_of(taken_, [&](const ink::Rect& other) {
             return drafting::overlap(drafting::grown(box, 0.5), other);
           });
  }

  const drafting::Kit& kit_;
  ink::Rect area_;
  std::vector<ink::Rect> taken_;
  ink::Path lines_;
  std::vector<ink::Group> tags_;
};

void arrow(const Context& context, Vec2 from, Vec2 to, drafting::Items& items) {
  if (norm(to - from) < 1) return;
  ink::Group group{"legend", {}};
  group.items.emplace_back(ink::Stroke{ink::Path{}.move(from).line(to), {context.kit.look.middle}});
  group.items.emplace_back(drafting::arrow_head(to, to - from, 3));
  items.emplace_back(std::move(group));
}

std::string step_word(std::size_t step) { return std::to_string(step + 1); }

}  // namespace

std::string row_letter(std::size_t row) {
  return std::string(1, static_cast<char>('a' + static_cast<int>(row % 26)));
}

std::string hours_text(double minutes) {
  const auto whole = static_cast<long>(std::lround(minutes));
  if (whole < 90) return std::to_string(whole) + " min";
  const long rest = whole % 60;
  std::string text = std::to_string(whole / 60) + " h";
  if (rest > 0) text += (rest < 10 ? " 0" : " ") + std::to_string(rest) + " min";
  return text;
}

Picture coming_in(const Context& context, const GlueStage& stage, double width, double highest) {
  const parts::Assembly& all = context.plan.assembly;
  const auto& order = context.plan.glue_up.order.joinings;
  Box box;
  for (const int part : stage.parts)
    for (const Vec3& p : all.parts[at(part)].world.vertices()) box.add(p);
  const double size = norm(box.size());
  const std::vector<Vec3> moved = drawn_apart(all, order, stage.joinings, size * 0.1, size * 0.45);
  std::vector<Solid> solids;
  for (const int part : stage.parts)
    solids.push_back(shifted(all.parts[at(part)].world, moved[at(part)]));
  Drawn drawn = draw(context, solids, width, highest);
  drafting::Items& items = drawn.picture.items;
  for (const WayArrow& way : way_arrows(all, order, stage.joinings, moved, drawn.view))
    arrow(context, drawn.placement.paper(way.from), drawn.placement.paper(way.to), items);
  Tags tags(context, drawn.picture);
  const auto tag = [&](int part, const std::string& more) {
    const auto i = std::ranges::find(stage.parts, part) - stage.parts.begin();
    tags.put(
        drawn.placement.paper(drawn.view.project(solids[static_cast<std::size_t>(i)].centroid())),
        context.plan.mark_of(part) + more);
  };
  // What was made up before has one mark for all.
  for (std::size_t s = 0; s < stage.joinings.size(); ++s) {
    const std::vector<int>& fixed = order[at(stage.joinings[s])].fixed;
    const std::vector<int>& moving = order[at(stage.joinings[s])].moving;
    if (fixed.size() == 1) tag(fixed.front(), "");
    tag(moving.front(), (moving.size() > 1 ? " ... · " : " · ") + step_word(s));
  }
  tags.draw(items);
  return std::move(drawn.picture);
}

Picture in_clamps(const Context& context, const GlueStage& stage, double width, double highest) {
  const parts::Assembly& all = context.plan.assembly;
  std::vector<Solid> solids;
  for (const int part : stage.parts) solids.push_back(all.parts[at(part)].world);
  ClampShapes shapes = clamp_shapes(all, stage);
  if (shapes.solids.empty()) return {};
  for (Solid& solid : shapes.solids) solids.push_back(std::move(solid));
  Drawn drawn = draw(context, solids, width, highest);
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

Picture timeline(const Context& context, double width, std::size_t first, std::size_t last) {
  const drafting::Kit& kit = context.kit;
  const fabrication::GlueUpPlan& glue_up = context.plan.glue_up;
  constexpr double pitch = 6, bar = 3.2, name = 18;
  const double ends = std::max(1.0, glue_up.ends());
  const double run = width - name - 4;
  const auto x = [&](double minutes) { return name + run * minutes / ends; };
  const double height = pitch * static_cast<double>(last - first) + 10;
  Picture picture{{}, width, height};
  ink::Group group{"table", {}};
  // A step of the axis that leaves room for its words.
  static constexpr double steps[] = {5, 10, 15, 30, 60, 120, 240, 480, 960, 1440, 2880, 10080};
  double step = steps[0];
  for (const double each : steps)
    if (step * run / ends < 24) step = each;
  ink::Path grid;
  for (double t = 0; t <= ends + 1e-9; t += step) {
    grid.move({x(t), -6.5}).line({x(t), -height});
    group.items.emplace_back(ink::Text{{x(t), -4},
                                       hours_text(t),
                                       kit.look.lettering,
                                       0,
                                       t == 0 ? ink::Align::left : ink::Align::centre});
  }
  group.items.emplace_back(ink::Stroke{std::move(grid), {0.13, ink::Dash::continuous, 0.5}});
  for (std::size_t s = first; s < last; ++s) {
    const GlueStage& stage = glue_up.stages[s];
    const double low = -9 - pitch * static_cast<double>(s - first) - bar;
    const auto box = [&](double from, double to) {
      return ink::Path{}.rect({{x(from), low}, {std::max(x(to), x(from) + 0.4), low + bar}});
    };
    group.items.emplace_back(ink::Fill{box(stage.starts + stage.minutes, stage.frees), 0.75});
    group.items.emplace_back(ink::Fill{box(stage.starts, stage.starts + stage.minutes), 0});
    group.items.emplace_back(ink::Stroke{box(stage.starts, stage.frees), kit.thin()});
    group.items.emplace_back(
        ink::Text{{0, low + 0.3}, "Stage " + std::to_string(s + 1), kit.look.lettering});
  }
  picture.items.emplace_back(std::move(group));
  return picture;
}

}  // namespace splay::sheets
