// The drawing from above.
#include <algorithm>
#include <cmath>

#include "drafting/conventions.h"
#include "drafting/dimension.h"
#include "fabrication/simulate.h"
#include "geometry/hidden_lines.h"
#include "sheets/part_view_draw.h"
#include "sheets/saw_steps_plan.h"

namespace splay::sheets {

namespace {

using drafting::Loops;
using fabrication::Machine;
using fabrication::Step;
using fabrication::Tool;
using parts::Side;
using Loop = std::vector<Vec2>;

constexpr double room_along = 42, room_across = 21;  // mm on paper
constexpr double least_seen = 8;
constexpr double ahead = 7;  // how far the tool stands off the wood

class PlanDrawing {
 public:
  PlanDrawing(const Context& context, const StepWork& work)
      : kit_(context.kit),
        part_(context.plan.assembly.parts[static_cast<std::size_t>(
            context.plan.rows[static_cast<std::size_t>(work.step->row)].members.front())]),
        work_(work),
        step_(*work.step),
        stance_(stance_of(step_)) {
    const double c = std::cos(step_.at_gauge() ? step_.exact.gauge : 0.0);
    const double s = std::sin(step_.at_gauge() ? step_.exact.gauge : 0.0);
    along_ = stance_.plan.project({c, s, 0});
    if (along_.x < 0) {
      along_ = -along_;
      turned_ = true;
    }
    into_ = stance_.plan.project({-s, c, 0});
    feed_ = stance_.plan.project({0, 1, 0});
  }

  drafting::Picture draw() {
    measure();
    machine_parts();
    wood();
    marks();
    tool();
    names();
    return cut_out(kit_, std::move(items_));
  }

 private:
  bool sawn() const { return step_.tool == Tool::blade || step_.tool == Tool::stack; }
  Vec2 seen(Vec3 machine) const { return stance_.plan.project(machine); }
  Vec2 paper(Vec2 view) const { return view_->paper(view * scale_); }
  double reference() const {
    const double d = step_.reference_right ? step_.exact.distance : -step_.exact.distance;
    return turned_ ? -d : d;
  }
  double reference_side() const { return step_.reference_right != turned_ ? 1 : -1; }

  void measure() {
    const Rigid& m = work_.machine;
    const View& plan = stance_.plan;
    const View view{m.direction(plan.right), m.direction(plan.up), m.direction(plan.toward)};
    const Vec2 origin = view.project(m.origin);
    const Vec2 across = left_of(along_);
    low_ = {1e300, 1e300};
    high_ = -low_;
    for (ViewLine line : hidden_lines({&work_.drawn(), 1}, view)) {
      if (line.hidden) continue;
      line.a = line.a - origin;
      line.b = line.b - origin;
      for (const Vec2 p : {line.a, line.b}) {
        low_ = {std::min(low_.x, dot(along_, p)), std::min(low_.y, dot(across, p))};
        high_ = {std::max(high_.x, dot(along_, p)), std::max(high_.y, dot(across, p))};
      }
      lines_.push_back(line);
    }
    choose_windows();
  }

  void choose_windows() {
    double left = low_.x, right = high_.x;
    const bool held = step_.at_gauge() || step_.at_fence();
    if (held) {
      left = std::min({left, 0.0, reference()});
      right = std::max({right, 0.0, reference()});
    }
    const double up = room_across - (step_.at_gauge() ? machine_part(kit_) + 7 : 0);
    const double whole =
        std::min(room_along / (right - left), up / std::max(high_.y - low_.y, 1e-3));
    const double thin = std::max(std::min(high_.x - low_.x, high_.y - low_.y), 0.5);
    scale_ = std::min(std::max(whole, least_seen / thin), 1.0);
    const bool all = !held;
    view_.emplace(along_,
                  BrokenAxis({left * scale_, right * scale_, room_along, 0,
                              all || reference_side() < 0, all || reference_side() > 0}),
                  BrokenAxis({low_.y * scale_, high_.y * scale_, up, low_.y * scale_, true, true}));
  }

  Vec2 edge(double first, double second) const { return along_ * first + left_of(along_) * second; }

  void machine_parts() {
    if (step_.at_fence()) {
      const double x = paper(edge(reference(), low_.y)).x, side = reference_side();
      const double low = paper(edge(0, low_.y)).y - 3, high = paper(edge(0, high_.y)).y + ahead;
      add(named_part(kit_, {x, low}, {0, high - low}, {side * machine_part(kit_), 0}, "fence"));
    }
    if (!step_.at_gauge()) return;
    const Vec2 stop = paper(along_ * reference()), away = -into_;
    const double side = reference_side();
    const Vec2 far = paper(along_ * (reference_side() < 0 ? high_.x : low_.x));
    const Vec2 from =
        reference_side() < 0 ? stop - along_ * (machine_part(kit_) + 1) : far - along_ * 2.0;
    const Vec2 to =
        reference_side() < 0 ? far + along_ * 2.0 : stop + along_ * (machine_part(kit_) + 1);
    add(named_part(kit_, from, to - from, away * machine_part(kit_),
                   step_.machine == Machine::mitre_saw ? "fence" : "gauge"));
    const double stop_length = 3.4 * kit_.look.lettering;
    add(named_part(kit_, stop, into_ * stop_length, along_ * (side * machine_part(kit_)), "stop"));
    if (step_.exact.distance > 0.5)
      items_.emplace_back(set_distance(kit_, paper({0, 0}), stop, away, machine_part(kit_) + 0.4,
                                       machine_part(kit_) + 2.5, step_.printed.distance));
  }

  Loops level_of(const Solid& solid) const {
    const double z = std::min(0.3, work_.bite.high.z / 2);
    const Vec3 up{0, 0, 1};
    Loops loops;
    for (const Face& face : solid.section(work_.machine.plane({up, z})))
      for (const std::vector<Vec3>& points : face.loops) {
        Loop loop;
        for (const Vec3 p : points) loop.push_back(seen(work_.machine.local_point(p)) * scale_);
        loops.push_back(std::move(loop));
      }
    return loops;
  }

  void wood() {
    ink::Group group{"view", {}};
    const Loops all = level_of(work_.drawn());
    if (step_.tool != Tool::thickness && step_.tool != Tool::edging) {
      Loops both = all;
      const Loops kept = level_of(work_.after);
      both.insert(both.end(), kept.begin(), kept.end());
      for (const Loops& loops : view_->shown(both))
        drafting::append(group.items, drafting::waste_area(kit_, loops).items);
      ink::Path border;
      view_->outline(kept, border);
      if (!border.verbs.empty())
        group.items.emplace_back(ink::Stroke{
            std::move(border), step_.cuts_through || stance_.led ? kit_.thin() : kit_.hidden()});
    }
    ink::Path outline, broken;
    for (const ViewLine& line : lines_) view_->line(line.a * scale_, line.b * scale_, outline);
    view_->breaks(all, broken);
    if (!outline.verbs.empty())
      group.items.emplace_back(ink::Stroke{std::move(outline), kit_.visible()});
    if (!broken.verbs.empty())
      group.items.emplace_back(ink::Stroke{std::move(broken), kit_.thin()});
    items_.emplace_back(std::move(group));
  }

  Vec2 on_work(const fabrication::Mark& mark) const {
    const auto start = [&](Side side) {
      return fabrication::marks_start(step_, work_.before, side);
    };
    const Vec3 p = parts::outward(step_.stopped) * (start(step_.stopped) - mark.along) +
                   parts::outward(step_.across_from) * (start(step_.across_from) - mark.across) +
                   parts::outward(step_.face) * start(step_.face);
    return paper(seen(work_.machine.local_point(p)));
  }

  void marks() {
    ink::Group group{"view", {}};
    ink::Path path;
    for (const fabrication::Mark& mark : step_.exact.marks) {
      const Vec2 at = on_work(mark);
      path.move(at - Vec2{1.6, 0}).line(at + Vec2{1.6, 0});
      path.move(at - Vec2{0, 1.6}).line(at + Vec2{0, 1.6});
      marked_.push_back(at);
    }
    if (step_.tool == Tool::bore && !marked_.empty())
      path.arc(marked_[0], std::max(0.8, step_.exact.width / 2 * scale_), 0, 6.283185307179586)
          .close();
    if (path.verbs.empty()) return;
    group.items.emplace_back(ink::Stroke{std::move(path), {kit_.look.middle}});
    items_.emplace_back(std::move(group));
  }

  // The line of cut, the saw on the side it comes from or goes to, the way the work or tool moves.
  void tool() {
    if (!sawn()) return;
    const double sense = (stance_.led ? -1 : 1) * feed_.y;
    // The line of cut meets the gauge at the origin.
    const double begin = step_.at_gauge() ? std::max(work_.bite.low.y, 0.0) : work_.bite.low.y;
    const Vec2 low = paper(seen({0, begin, 0})), high = paper(seen({0, work_.bite.high.y, 0}));
    const double bottom = std::min(low.y, high.y), top = std::max(low.y, high.y);
    const double near = sense > 0 ? top + 2 : bottom - 2, far = near + sense * (ahead - 2);
    const double waste = seen({step_.waste_right ? 1.0 : -1.0, 0, 0}).x;
    const double width =
        std::max(1.0, step_.exact.width / std::cos(step_.exact.tilt) * scale_) * waste;
    ink::Group group{"view", {}};
    const double x = paper({0, 0}).x;
    ink::Path line, box;
    line.move({x, std::min(bottom, near)}).line({x, std::max(top, near)});
    group.items.emplace_back(ink::Stroke{std::move(line), kit_.centre()});
    box.rect({{std::min(x, x + width), std::min(near, far)},
              {std::max(x, x + width), std::max(near, far)}});
    const bool stack = step_.tool == Tool::stack;
    group.items.emplace_back(ink::Fill{box, stack ? 1.0 : 0.0});
    group.items.emplace_back(ink::Stroke{std::move(box), {kit_.look.middle}});
    items_.emplace_back(std::move(group));
    if (step_.machine == Machine::mitre_saw) return;
    const double beside = x + width + waste * 4;
    ink::Group arrow{"leader", {}};
    const Vec2 tail{beside, sense > 0 ? near : far - 1}, tip = tail + Vec2{0, feed_.y * 7};
    arrow.items.emplace_back(ink::Stroke{ink::Path{}.move(tail).line(tip), kit_.thin()});
    arrow.items.emplace_back(drafting::arrow_head(tip, {0, feed_.y}, 2.5));
    items_.emplace_back(std::move(arrow));
  }

  void names() {
    add_plan_names({kit_, part_, work_, stance_, along_, low_, high_, scale_, *view_, marked_,
                    step_.at_gauge() ? reference_side() : 0},
                   items_);
  }

  void add(ink::Group group) { items_.emplace_back(std::move(group)); }

  const drafting::Kit& kit_;
  const parts::Part& part_;
  const StepWork& work_;
  const Step& step_;
  Stance stance_;
  Vec2 along_, into_, feed_;  // on paper: along gauge or square to the fence; into the wood; feed
  bool turned_ = false;       // `along_` runs against the machine frame's x
  Vec2 low_, high_;           // of the wood, along and across, mm
  std::vector<ViewLine> lines_;
  std::vector<Vec2> marked_;
  double scale_ = 1;
  std::optional<BrokenView> view_;
  drafting::Items items_;
};

}  // namespace

drafting::Picture plan_picture(const Context& context, const StepWork& work) {
  return PlanDrawing(context, work).draw();
}

}  // namespace splay::sheets
