#include "sheets/joint_drawing.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <optional>

#include "drafting/callout.h"
#include "drafting/dimension.h"
#include "drafting/text_block.h"
#include "sheets/joint_angles.h"
#include "sheets/joint_faces.h"
#include "sheets/part_view_draw.h"
#include "sheets/saw_steps_broken.h"

namespace splay::sheets {

namespace {

using drafting::Loops;
using drafting::Quad;
using Loop = std::vector<Vec2>;

constexpr double around = 34;        // mm on paper that figures may take on every side of the wood
constexpr double least_beside = 22;  // that they take in all, and by which wood is first tried
constexpr double least_face = 2.5;   // mm on paper: a shorter line is no face to measure to
constexpr double label_wide = 22;    // mm on paper: a longer name takes lines
constexpr double least_wood = 15;    // mm on paper: the longer side of what is shown
constexpr std::size_t most_rows = 5, most_stations = 6;
constexpr std::array<drafting::HatchStyle, 4> hatches{
    {{45, 1.8}, {135, 1.8}, {20, 2.2}, {160, 2.2}}};

class JointDrawing {
 public:
  JointDrawing(const Context& context, const parts::Joint& joint, const JointCut& cut, double scale,
               std::string name)
      : context_(context),
        kit_(context.kit),
        joint_(joint),
        cut_(cut),
        place_{scale, cut.window.low * -scale},
        sheet_{{0, 0}, cut.window.high * scale + place_.origin},
        room_(drafting::grown(sheet_, around)),
        view_(Vec2{1, 0}, axis(0), axis(1)),
        cut_name_(std::move(name)) {}

  drafting::Items draw() {
    wood();
    fittings();
    angles();
    rows();
    names();
    return std::move(items_);
  }

 private:
  BrokenAxis axis(int which) const {
    double low = 1e300, high = -1e300;
    for (const Loops& loops : cut_.loops)
      for (const Loop& loop : loops)
        for (const Vec2 p : loop) {
          const Vec2 q = place_.paper(p);
          low = std::min(low, which == 0 ? q.x : q.y);
          high = std::max(high, which == 0 ? q.x : q.y);
        }
    return BrokenAxis::window(low, high, 0, which == 0 ? sheet_.high.x : sheet_.high.y);
  }

  Loops on_paper(const Loops& loops) const {
    Loops result = loops;
    for (Loop& loop : result)
      for (Vec2& p : loop) p = place_.paper(p);
    return result;
  }

  void add(ink::Group group) {
    room_.take(kit_, ink::Item{group});
    items_.emplace_back(std::move(group));
  }

  void wood() {
    ink::Group hatching{"hatching", {}};
    ink::Path outline, broken;
    for (std::size_t i = 0; i < cut_.loops.size(); ++i) {
      const Loops loops = on_paper(cut_.loops[i]);
      for (const Loops& shown : view_.shown(loops)) {
        ink::Path lines = drafting::hatch(shown, hatches[i % hatches.size()]);
        if (!lines.verbs.empty())
          hatching.items.emplace_back(ink::Stroke{std::move(lines), {0.18}});
      }
      view_.outline(loops, outline);
      view_.breaks(loops, broken);
    }
    if (!broken.verbs.empty())
      hatching.items.emplace_back(ink::Stroke{std::move(broken), kit_.thin()});
    if (!outline.verbs.empty())
      hatching.items.emplace_back(ink::Stroke{std::move(outline), kit_.visible()});
    add(std::move(hatching));
  }

  // A fitting is not cut: its outline and its axis.
  void fittings() {
    if (cut_.fittings.empty()) return;
    ink::Group group{"view", {}};
    for (const CutFitting& fitting : cut_.fittings) {
      const Vec2 a = place_.paper(fitting.from), b = place_.paper(fitting.to);
      const Vec2 across = left_of(unit(b - a)) * (fitting.half * place_.scale);
      ink::Path box;
      box.polygon({a - across, b - across, b + across, a + across});
      group.items.emplace_back(ink::Fill{box, 1});
      group.items.emplace_back(ink::Stroke{std::move(box), {kit_.look.middle}});
      const Vec2 more = unit(b - a) * 2.0;
      group.items.emplace_back(
          ink::Stroke{ink::Path{}.move(a - more).line(b + more), kit_.centre()});
    }
    add(std::move(group));
  }

  // Free of what stands there already.
  bool fits(const drafting::DrawnRow& row) const {
    for (const Quad& text : row.texts)
      if (!room_.free(text, 0.6)) return false;
    for (const ink::Item& item : row.group.items) {
      const auto* stroke = std::get_if<ink::Stroke>(&item);
      if (stroke == nullptr) continue;
      const std::vector<Vec2>& points = stroke->path.points;
      for (std::size_t i = 0; i + 1 < points.size(); ++i)
        if (stroke->path.verbs[i + 1] == ink::Path::Verb::line &&
            room_.over_text(points[i], points[i + 1], 0.4))
          return false;
    }
    return true;
  }

  double reach(Vec2 out) const {
    double most = -1e300;
    for (const Vec2 p : {sheet_.low, Vec2{sheet_.high.x, sheet_.low.y}, sheet_.high,
                         Vec2{sheet_.low.x, sheet_.high.y}})
      most = std::max(most, dot(out, p));
    return most;
  }

  // A chain, with its overall beyond it where there are more figures than one.
  std::vector<drafting::DrawnRow> drawn(const Faces& faces, Vec2 out, double off) const {
    drafting::Row row;
    const double step = kit_.figures.step_mm() / 2;
    row.stations = stations(faces, out, step, most_stations);
    if (row.stations.empty()) return {};
    row.along = faces.along;
    row.out = out;
    const bool oblique = std::min(std::abs(faces.along.x), std::abs(faces.along.y)) > 1e-6;
    const double at = (oblique ? reach_of(row) : reach(out)) + off;
    const bool single = count_apart(row.stations, row.along, step) < 3;
    drafting::Row whole = row;
    whole.kind = drafting::RowKind::overall;
    whole.stations = {row.stations.front(), row.stations.back()};
    if (single) return {drafting::draw_row(kit_, place_, whole, at)};
    row.chain = whole.chain = joint_.name + cut_name_ + std::to_string(chains_);
    drafting::DrawnRow chain = drafting::draw_row(kit_, place_, row, at);
    // Figures are read from below and from the right: there they stand between their line and wood.
    const bool inward = out.x > 0.5 || out.y < -0.5;
    const double further = std::max(chain.reach + (inward ? 4.5 + kit_.look.figures : 5), at + 8);
    drafting::DrawnRow overall = drafting::draw_row(kit_, place_, whole, further, chain.texts);
    return {std::move(chain), std::move(overall)};
  }

  void row(const Faces& faces) {
    const bool level = std::abs(faces.along.x) > std::abs(faces.along.y);
    Vec2 usual = left_of(faces.along);
    if (level ? usual.y > 0 : usual.x > 0) usual = -usual;
    ++chains_;
    for (const double off : {8.0, 14.0, 20.0})
      for (const Vec2 out : {usual, -usual}) {
        std::vector<drafting::DrawnRow> rows = drawn(faces, out, off);
        if (rows.empty()) return;
        if (!std::ranges::all_of(rows, [&](const auto& one) { return fits(one); })) continue;
        for (drafting::DrawnRow& one : rows) add(std::move(one.group));
        return;
      }
  }

  // Of the faces that a slanting row measures: the corner of the window may be far away.
  double reach_of(const drafting::Row& row) const {
    double most = -1e300;
    for (const Vec2 p : row.stations) most = std::max(most, dot(row.out, place_.paper(p)));
    return most;
  }

  void rows() {
    const std::vector<Faces> all = faces_on_edge(cut_, least_face / place_.scale);
    for (std::size_t i = 0; i < std::min(all.size(), most_rows); ++i) row(all[i]);
  }

  void angles() {
    for (const JointAngle& angle : joint_angles(context_, cut_)) {
      drafting::AngleMark mark;
      mark.at = place_.paper(angle.at);
      mark.from = angle.from;
      mark.to = angle.to;
      mark.radians = angle.radians;
      mark.name = angle.name;
      for (const double radius : {12.0, 18.0, 9.0}) {
        mark.radius = radius;
        auto group = drafting::try_angle(kit_, room_, mark);
        if (!group) continue;
        items_.emplace_back(std::move(*group));
        break;
      }
    }
  }

  void names() {
    std::vector<drafting::Callout> callouts;
    for (std::size_t i = 0; i < cut_.parts.size(); ++i) {
      const auto tip = deep_inside(view_.shown(on_paper(cut_.loops[i])), sheet_.high);
      if (!tip) continue;
      const std::string& mark = context_.plan.mark_of(cut_.parts[i]);
      const parts::Part& part =
          context_.plan.assembly.parts[static_cast<std::size_t>(cut_.parts[i])];
      drafting::Callout callout;
      callout.tip = *tip;
      callout.lines = drafting::wrap(kit_, mark + " " + part.name, label_wide, kit_.look.lettering);
      callout.link = part_anchor(mark);
      callout.mark = mark;
      callout.claim = "joint";
      callouts.push_back(std::move(callout));
    }
    for (ink::Group& group : drafting::place_labels(kit_, room_, callouts))
      items_.emplace_back(std::move(group));
  }

  const Context& context_;
  const drafting::Kit& kit_;
  const parts::Joint& joint_;
  const JointCut& cut_;
  drafting::Placement place_;
  ink::Rect sheet_;  // the window on paper
  drafting::Room room_;
  BrokenView view_;
  drafting::Items items_;
  std::string cut_name_;  // of this drawing among those of the joint
  int chains_ = 0;
};

}  // namespace

JointPicture joint_picture(const Context& context, const parts::Joint& joint, const JointCut& cut,
                           drafting::Room2 room, const std::string& title) {
  const drafting::Kit& kit = context.kit;
  const drafting::Room2 wood{std::max(room.width - least_beside, 20.0),
                             std::max(room.height - least_beside, 20.0)};
  drafting::Scale scale = drafting::largest_scale(
      kit.figures.unit, {cut.window.width(), cut.window.height()}, wood, true);
  for (;;) {
    drafting::Items items = JointDrawing(context, joint, cut, scale.ratio(), title).draw();
    const ink::Rect drawn = drafting::extent(kit, items);
    items.emplace_back(drafting::view_title(kit,
                                            {(drawn.low.x + drawn.high.x) / 2, drawn.low.y - 1},
                                            title, drafting::short_text(scale)));
    drafting::Picture picture = cut_out(kit, std::move(items));
    const drafting::Scale smaller = drafting::next_smaller(scale, kit.figures.unit);
    // Figures and labels don't shrink: of wood smaller than they are nothing could be read.
    const double left = std::max(cut.window.width(), cut.window.height()) * smaller.ratio();
    if ((picture.width <= room.width && picture.height <= room.height) || smaller == scale ||
        left < least_wood)
      return {std::move(picture), scale};
    scale = smaller;
  }
}

}  // namespace splay::sheets
