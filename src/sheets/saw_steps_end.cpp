// The drawing along the line of cut.
#include <algorithm>
#include <cmath>

#include "drafting/dimension.h"
#include "sheets/part_view_draw.h"
#include "sheets/saw_steps_draw.h"

namespace splay::sheets {

namespace {

using drafting::Loops;
using fabrication::Machine;
using fabrication::Step;
using fabrication::Tool;
using Loop = std::vector<Vec2>;

constexpr double room_across = 38, room_up = 20;  // mm on paper
constexpr double board = 10;                      // how thick wood is best drawn
constexpr double least_board = 4.5;
constexpr double bar = 3;  // of the table or the shoe

class EndDrawing {
 public:
  EndDrawing(const Context& context, const StepWork& work)
      : kit_(context.kit),
        work_(work),
        step_(*work.step),
        stance_(stance_of(step_)),
        sense_(stance_.end.up.z) {}

  drafting::Picture draw() {
    cut();
    choose_scale();
    choose_windows();
    base();
    wood();
    if (step_.tool == Tool::edging) seam();
    tool();
    reference();
    tilt();
    return cut_out(kit_, std::move(items_));
  }

 private:
  const fabrication::Setting& set() const { return step_.exact; }
  Vec2 seen(double x, double z) const { return stance_.end.project({x, 0, z}); }
  Vec2 paper(Vec2 view) const { return view_->paper(view * scale_); }

  Loops loops_of(const Solid& solid) const { return section_seen(work_, stance_, solid); }

  void cut() {
    before_ = loops_of(work_.drawn());
    after_ = loops_of(work_.after);
    box_ = drafting::no_rect();
    for (const Loop& loop : before_)
      for (const Vec2 p : loop) box_ = drafting::joined(box_, {p, p});
    if (before_.empty()) box_ = {{-1, 0}, {1, 1}};
  }

  void choose_scale() {
    const double thin = std::min(box_.width(), box_.height());
    double wanted = board / std::max(thin, 1.0);
    const double high = std::max(work_.bite.high.z, set().height);
    if (high > 0) wanted = std::min(wanted, 0.75 * room_up / high);
    if (step_.tool == Tool::stack) wanted = std::min(wanted, 0.4 * room_across / set().width);
    scale_ = std::min({std::max(wanted, least_board / std::max(thin, 1.0)), 1.0});
  }

  double at_reference() const { return step_.reference_right ? set().distance : -set().distance; }

  double reference_side() const { return step_.reference_right != stance_.mirrored ? 1 : -1; }

  // Where the tool is; tools that are led along lines have no place of their own.
  double always_shown() const {
    if (step_.tool != Tool::clear && step_.tool != Tool::follow) return 0;
    const double middle = seen((work_.bite.low.x + work_.bite.high.x) / 2, 0).x;
    return std::clamp(middle, box_.low.x, box_.high.x);
  }

  void choose_windows() {
    double left = std::min(box_.low.x, 0.0), right = std::max(box_.high.x, 0.0);
    bool to_left = false, to_right = false;
    if (step_.at_fence()) {
      const double x = seen(at_reference(), 0).x;
      left = std::min(left, x);
      right = std::max(right, x);
      (reference_side() < 0 ? to_left : to_right) = true;
    }
    if (step_.tool == Tool::edging) (reference_side() < 0 ? to_left : to_right) = true;
    const BrokenAxis across(
        {left * scale_, right * scale_, room_across, always_shown() * scale_, to_left, to_right});
    const BrokenAxis up({std::min(box_.low.y, 0.0) * scale_, std::max(box_.high.y, 0.0) * scale_,
                         room_up, 0, false, false});
    view_.emplace(Vec2{1, 0}, across, up);
    left_ = across.low();
    right_ = across.high();
    // The tool may stand higher than the wood.
    reach_ = room_up + 2;
  }

  // The table, or the shoe of a tool that is led.
  void base() {
    const double half = 15;
    const double shoe = paper({always_shown(), 0}).x;
    const double left = stance_.led ? shoe - half : left_ - 3,
                 right = stance_.led ? shoe + half : right_ + 3;
    if (step_.machine == Machine::hand || step_.machine == Machine::drill) return;
    ink::Path box;
    const double low = std::min(0.0, -sense_ * bar), high = std::max(0.0, -sense_ * bar);
    box.rect({{left, low}, {right, high}});
    picture().items.emplace_back(ink::Fill{box, kit_.look.tone_mid});
    picture().items.emplace_back(ink::Stroke{std::move(box), {kit_.look.middle}});
  }

  Loops scaled(const Loops& loops) const {
    Loops result = loops;
    for (Loop& loop : result)
      for (Vec2& p : loop) p = p * scale_;
    return result;
  }

  void wood() {
    const Loops kept = scaled(after_), all = scaled(before_);
    Loops both = all;
    both.insert(both.end(), kept.begin(), kept.end());
    for (const Loops& loops : view_->shown(kept)) {
      ink::Path path;
      for (const Loop& loop : loops) path.polygon(loop);
      picture().items.emplace_back(ink::Fill{std::move(path), kit_.look.tone_light});
    }
    if (step_.tool != Tool::edging)
      for (const Loops& loops : view_->shown(both))
        drafting::append(picture().items, drafting::waste_area(kit_, loops).items);
    ink::Path outline, wide, broken;
    view_->outline(all, outline);
    view_->outline(kept, wide);
    view_->breaks(all, broken);
    stroke(std::move(outline), kit_.thin());
    stroke(std::move(broken), kit_.thin());
    stroke(std::move(wide), kit_.visible());
  }

  // Edging stands out dark from its panel.
  void seam() {
    Solid strip = work_.after;
    const Vec3 out = parts::outward(step_.against);
    strip.keep(Plane{-out, -work_.before.extent(out)[1]});
    for (const Loops& loops : view_->shown(scaled(loops_of(strip)))) {
      ink::Path path;
      for (const Loop& loop : loops) path.polygon(loop);
      picture().items.emplace_back(ink::Fill{path, kit_.look.tone_mid});
      stroke(std::move(path), kit_.visible());
    }
  }

  void stroke(ink::Path path, ink::Pen pen) {
    if (!path.verbs.empty()) picture().items.emplace_back(ink::Stroke{std::move(path), pen});
  }

  void tool() {
    switch (step_.tool) {
      case Tool::blade:
      case Tool::stack:
        return blade();
      case Tool::thickness:
        return cutters();
      case Tool::bore:
        return bit(set().width, set().height > 0 ? set().height : work_.bite.high.z + 3 / scale_,
                   set().tilt, 0);
      case Tool::clear:
        if (set().width > 0)
          bit(set().width, work_.bite.high.z, 0, (work_.bite.low.x + work_.bite.high.x) / 2);
        return;
      default:
        return;
    }
  }

  // A direction of the tool in the machine frame, from its plane into the wood.
  Vec2 upwards(double tilt, bool right) const {
    return seen((right ? 1 : -1) * std::sin(tilt), std::cos(tilt));
  }

  Loop shape(Vec2 foot, Vec2 up, Vec2 side, double from, double to, double width) const {
    const Vec2 at = paper(foot);
    const double w = width * scale_;
    return {at + up * from, at + up * to, at + up * to + side * w, at + up * from + side * w};
  }

  void blade() {
    const Vec2 up = upwards(set().tilt, step_.tilts_right);
    Vec2 side = left_of(up);
    const Vec2 waste = seen(step_.waste_right ? 1 : -1, 0);
    if (dot(side, waste) < 0) side = -side;
    const double cosine = std::cos(set().tilt), width = set().width;
    const double over = step_.machine == Machine::mitre_saw ? 10 : 4;
    double to = (work_.bite.high.z * scale_ + over) / cosine;
    if (set().height > 0)
      to = (set().height - std::max(0.0, dot(side, seen(0, 1)) * width)) * scale_ / cosine;
    // Nearly level it is drawn no further than across the picture.
    const double longest = std::hypot(room_across, room_up);
    to = std::min({to, reach_ / cosine, longest});
    const double from = -std::min((bar + 1) / cosine, longest);
    reach_ = to;
    const Loop box = shape({0, 0}, up, side, from, to, std::max(width, 0.7 / scale_));
    ink::Path path;
    path.polygon(box);
    if (step_.tool == Tool::blade) {
      picture().items.emplace_back(ink::Fill{std::move(path)});
      return;
    }
    picture().items.emplace_back(ink::Fill{path, 1});
    stroke(std::move(path), kit_.visible());
    // The cutters of a stack, side by side.
    const int plies = std::max(2, static_cast<int>(width * scale_ / 1.3));
    ink::Path lines;
    for (int i = 1; i < plies; ++i) {
      const Vec2 by = (box[3] - box[0]) * (static_cast<double>(i) / plies);
      lines.move(box[0] + by).line(box[1] + by);
    }
    stroke(std::move(lines), kit_.thin());
  }

  void bit(double width, double depth, double tilt, double x) {
    const Vec2 up = upwards(tilt, true), side = left_of(up);
    const Vec2 foot = seen(x, 0) - side * (width / 2);
    const Loop box = shape(foot, up, side, -(bar + 4), depth * scale_, width);
    ink::Path path, axis;
    path.polygon(box);
    picture().items.emplace_back(ink::Fill{path, 1});
    stroke(std::move(path), kit_.visible());
    const Vec2 half = (box[3] - box[0]) * 0.5;
    axis.move(box[0] + half - up * 2).line(box[1] + half + up * 2);
    stroke(std::move(axis), kit_.centre());
  }

  void cutters() {
    const bool planes = step_.machine == Machine::planer;
    const Vec2 at = paper(seen(0, set().width));
    const double low = planes ? at.y : at.y - machine_part(kit_);
    const double left = left_ - 1, right = right_ + 1;
    drafting::append(
        picture().items,
        named_part(kit_, {left, low}, {right - left, 0}, {0, machine_part(kit_)}, "cutters").items);
  }

  void reference() {
    if (!step_.at_fence()) return;
    const double x = paper(seen(at_reference(), 0)).x, side = reference_side();
    const bool tall = step_.has(fabrication::Flag::tall_fence) ||
                      step_.position() == fabrication::Position::on_end;
    const double high = (tall ? room_up : 14) * sense_;
    const std::string name = tall ? "tall fence" : "fence";
    drafting::append(
        picture().items,
        named_part(kit_, {x, 0}, {0, high}, {side * machine_part(kit_), 0}, name).items);
    if (std::abs(set().distance) < 0.5) return;
    const double below = -sense_ * (bar + 0.2);
    items_.emplace_back(set_distance(kit_, {0, below}, {x, below}, {0, -sense_}, 0.4, 4,
                                     std::abs(step_.printed.distance)));
  }

  void tilt() {
    const bool leans = step_.tool != Tool::thickness && set().tilt > no_angle;
    if (!leans) return;
    drafting::Room room(drafting::grown(drafting::extent(kit_, items_), 14));
    room.take(kit_, items_);
    drafting::AngleMark mark;
    mark.at = paper({0, 0});
    mark.from = {0, sense_};
    mark.to = upwards(set().tilt, step_.tool == Tool::bore || step_.tilts_right);
    mark.radians = set().tilt;
    mark.radius = std::min(reach_ + 3, room_up);
    if (auto group = drafting::try_angle(kit_, room, mark)) items_.emplace_back(std::move(*group));
  }

  // All but dimensions is one group.
  ink::Group& picture() {
    if (items_.empty()) items_.emplace_back(ink::Group{"view", {}});
    return std::get<ink::Group>(items_.front());
  }

  const drafting::Kit& kit_;
  const StepWork& work_;
  const Step& step_;
  Stance stance_;
  double sense_;  // +1: the wood is over the tool's plane
  Loops before_, after_;
  ink::Rect box_ = drafting::no_rect();
  double scale_ = 1, left_ = 0, right_ = 0, reach_ = 0;
  std::optional<BrokenView> view_;
  drafting::Items items_;
};

}  // namespace

drafting::Picture end_picture(const Context& context, const StepWork& work) {
  return EndDrawing(context, work).draw();
}

}  // namespace splay::sheets
