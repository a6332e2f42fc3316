// The drawing from above.
#include <algorithm>
#include <cmath>

#include "drafting/conventions.h"
#include "drafting/dimension.h"
#include "geometry/hidden_lines.h"
#include "sheets/part_view_draw.h"
#include "sheets/saw_steps_draw.h"

namespace splay::sheets {

namespace {

using drafting::Loops;
using fabrication::Guide;
using fabrication::Machine;
using fabrication::Step;
using fabrication::Tool;
using parts::Side;
using Loop = std::vector<Vec2>;

constexpr double room_along = 42, room_up = 23;  // mm on paper
constexpr double least_board = 8;
constexpr double ahead = 7;  // how far the tool stands off the wood
constexpr double no_angle = 1e-4;
constexpr double sign = 5;  // the face mark

class PlanDrawing {
 public:
  PlanDrawing(const Context& context, const StepWork& work)
      : kit_(context.kit),
        part_(context.plan.assembly.parts[static_cast<std::size_t>(
            context.plan.rows[static_cast<std::size_t>(work.step->row)].members.front())]),
        work_(work),
        step_(*work.step),
        stance_(stance_of(step_)) {
    const double c = std::cos(gauged() ? step_.exact.gauge : 0.0);
    const double s = std::sin(gauged() ? step_.exact.gauge : 0.0);
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
  bool gauged() const { return step_.guide == Guide::gauge && step_.tool != Tool::thickness; }
  bool fenced() const { return step_.guide == Guide::fence && step_.tool != Tool::thickness; }
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
    for (ViewLine line : hidden_lines({&work_.before, 1}, view)) {
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
    const bool held = gauged() || fenced();
    if (held) {
      left = std::min({left, 0.0, reference()});
      right = std::max({right, 0.0, reference()});
    }
    const double up = room_up - (gauged() ? machine_part + 7 : 0);
    const double whole =
        std::min(room_along / (right - left), up / std::max(high_.y - low_.y, 1e-3));
    const double thin = std::max(std::min(high_.x - low_.x, high_.y - low_.y), 0.5);
    scale_ = std::min(std::max(whole, least_board / thin), 1.0);
    const bool all = !held;
    view_.emplace(along_,
                  BrokenAxis({left * scale_, right * scale_, room_along, 0,
                              all || reference_side() < 0, all || reference_side() > 0}),
                  BrokenAxis({low_.y * scale_, high_.y * scale_, up, low_.y * scale_, true, true}));
  }

  Vec2 edge(double first, double second) const { return along_ * first + left_of(along_) * second; }

  void machine_parts() {
    if (fenced()) {
      const double x = paper(edge(reference(), low_.y)).x, side = reference_side();
      const double low = paper(edge(0, low_.y)).y - 3, high = paper(edge(0, high_.y)).y + ahead;
      add(named_part(kit_, {x, low}, {0, high - low}, {side * machine_part, 0}, "fence"));
    }
    if (!gauged()) return;
    const Vec2 stop = paper(along_ * reference()), away = -into_;
    const double side = reference_side();
    const Vec2 far = paper(along_ * (reference_side() < 0 ? high_.x : low_.x));
    const Vec2 from =
        reference_side() < 0 ? stop - along_ * (machine_part + 1) : far - along_ * 2.0;
    const Vec2 to = reference_side() < 0 ? far + along_ * 2.0 : stop + along_ * (machine_part + 1);
    add(named_part(kit_, from, to - from, away * machine_part,
                   step_.machine == Machine::mitre_saw ? "fence" : "gauge"));
    add(named_part(kit_, stop, into_ * 8.5, along_ * (side * machine_part), "stop"));
    if (step_.exact.distance > 0.5)
      items_.emplace_back(set_distance(kit_, paper({0, 0}), stop, away, machine_part + 0.4,
                                       machine_part + 2.5, step_.printed.distance));
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
    const Loops all = level_of(work_.before);
    if (step_.tool != Tool::thickness) {
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
    const auto furthest = [&](Side side) {
      const Vec3 out = parts::outward(side);
      return out * work_.before.extent(out)[1];
    };
    const Vec3 p = furthest(step_.stopped) + furthest(step_.across_from) + furthest(step_.face) -
                   parts::outward(step_.stopped) * mark.along -
                   parts::outward(step_.across_from) * mark.across;
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
    const Vec2 low = paper(seen({0, work_.bite.low.y, 0})),
               high = paper(seen({0, work_.bite.high.y, 0}));
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

  // What is up, with the face mark where that is the show face.
  void face(drafting::Room& room, Side up, Vec2 middle) {
    const bool marked = up == Side::z_high && part_.show == parts::ShowFace::high_z;
    const Vec2 aside{8, 0}, over{0, 5}, beyond{0, 10};
    write(room, parts::side_name(part_, up) + " up",
          {middle, middle + over, middle - over, middle + aside, middle - aside, middle + beyond,
           middle - beyond, middle + aside + over, middle - aside + over, middle + aside - over,
           middle - aside - over},
          marked ? sign : 0);
  }

  // The first free of some places, with room for a sign after the words.
  bool write(drafting::Room& room, const std::string& words, std::initializer_list<Vec2> places,
             double sign_width = 0) {
    const double letter = kit_.look.lettering, wide = kit_.width(words, letter);
    const double half = (wide + sign_width) / 2;
    for (const Vec2 place : places) {
      const double up = std::max(letter, sign_width) / 2;
      const ink::Rect box{place - Vec2{half, up + 0.3 * letter}, place + Vec2{half, up}};
      if (!room.free(box, 0.7)) continue;
      items_.emplace_back(ink::Text{{box.low.x, place.y - letter / 2}, words, letter});
      if (sign_width > 0)
        items_.emplace_back(drafting::face_side_mark(kit_, {box.high.x - 0.4 * sign_width, place.y},
                                                     0.9 * sign_width));
      room.take(drafting::quad(box));
      return true;
    }
    return false;
  }

  void angle(drafting::Room& room) {
    if (!gauged() || std::abs(step_.exact.gauge) < no_angle) return;
    drafting::AngleMark mark;
    mark.at = paper({0, 0});
    const Vec2 toward = along_ * (reference_side() < 0 ? -1.0 : 1.0);
    mark.from = {toward.x < 0 ? -1.0 : 1.0, 0};
    mark.to = toward;
    mark.radians = std::abs(step_.exact.gauge);
    mark.radius = 18;
    if (auto group = drafting::try_angle(kit_, room, mark)) items_.emplace_back(std::move(*group));
  }

  void names() {
    const ink::Rect drawn = drafting::extent(kit_, items_);
    drafting::Room room({{drawn.low.x - 8, drawn.low.y - 5}, {drawn.high.x + 8, drawn.high.y + 5}});
    room.take(kit_, items_);
    angle(room);
    const Side up = stance_.led ? step_.face : parts::opposite(step_.face);
    const Vec2 middle = paper(edge((low_.x + high_.x) / 2, (low_.y + high_.y) / 2));
    face(room, up, middle);
    for (const Side side : {Side::x_low, Side::x_high, Side::y_low, Side::y_high}) end(room, side);
    for (std::size_t i = 0; i < marked_.size() && marked_.size() > 1; ++i)
      write(room, std::to_string(i + 1),
            {marked_[i] + Vec2{3, 3}, marked_[i] + Vec2{-3, 3}, marked_[i] + Vec2{3, -3},
             marked_[i] + Vec2{-3, -3}});
  }

  // The name of an end or edge that is seen from above, beside it; what leads says so.
  void end(drafting::Room& room, Side side) {
    const Vec3 out3 = work_.machine.local_direction(parts::outward(side));
    const Vec2 out = seen(out3);
    if (norm(out) < 0.5) return;
    const bool leads = side == step_.leads && !stance_.led && step_.machine != Machine::mitre_saw;
    const bool ends = side == Side::x_low || side == Side::x_high;
    if (!ends && !leads) return;
    const double a = dot(along_, out), b = dot(left_of(along_), out);
    const Vec2 at = paper(edge(a > 0.5    ? high_.x
                               : a < -0.5 ? low_.x
                                          : (low_.x + high_.x) / 2,
                               b > 0.5    ? high_.y
                               : b < -0.5 ? low_.y
                                          : (low_.y + high_.y) / 2));
    const std::string words = parts::side_name(part_, side) + (leads ? " leads" : "");
    const double half = kit_.width(words, kit_.look.lettering) / 2;
    const Vec2 way = unit(out);
    const double off = std::abs(way.x) * half + std::abs(way.y) * 1.3 + 1.2;
    const Vec2 beside{-way.y * (half + 3), way.x * (half + 3)};
    const Vec2 outside = at + way * off, inside = at - way * off;
    write(room, words,
          {inside, inside + beside, inside - beside, outside, outside + beside, outside - beside,
           outside + beside * 2, outside - beside * 2});
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
