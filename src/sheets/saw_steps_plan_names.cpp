// The names in the drawing from above.
#include <algorithm>
#include <cmath>

#include "drafting/conventions.h"
#include "drafting/dimension.h"
#include "sheets/part_view_draw.h"
#include "sheets/saw_steps_plan.h"

namespace splay::sheets {

namespace {

using fabrication::Machine;
using parts::Side;

constexpr double sign = 5;  // the face mark

class PlanNames {
 public:
  PlanNames(const SeenFromAbove& plan, drafting::Items& items) : plan_(plan), items_(items) {}

  void write_all() {
    const ink::Rect drawn = drafting::extent(plan_.kit, items_);
    drafting::Room room({{drawn.low.x - 8, drawn.low.y - 5}, {drawn.high.x + 8, drawn.high.y + 5}});
    room.take(plan_.kit, items_);
    angle(room);
    const Side up = plan_.stance.led ? step().face : parts::opposite(step().face);
    const Vec2 middle =
        plan_.paper(plan_.edge((plan_.low.x + plan_.high.x) / 2, (plan_.low.y + plan_.high.y) / 2));
    face(room, up, middle);
    for (const Side side : {Side::x_low, Side::x_high, Side::y_low, Side::y_high}) end(room, side);
    for (std::size_t i = 0; i < plan_.marked.size() && plan_.marked.size() > 1; ++i)
      write(room, std::to_string(i + 1),
            {plan_.marked[i] + Vec2{3, 3}, plan_.marked[i] + Vec2{-3, 3},
             plan_.marked[i] + Vec2{3, -3}, plan_.marked[i] + Vec2{-3, -3}});
  }

 private:
  const fabrication::Step& step() const { return *plan_.work.step; }

  // What is up, with the face mark where that is the show face.
  void face(drafting::Room& room, Side up, Vec2 middle) {
    const bool marked = up == Side::z_high && plan_.part.show == parts::ShowFace::high_z;
    const Vec2 aside{8, 0}, over{0, 5}, beyond{0, 10};
    write(room, parts::side_name(plan_.part, up) + " up",
          {middle, middle + over, middle - over, middle + aside, middle - aside, middle + beyond,
           middle - beyond, middle + aside + over, middle - aside + over, middle + aside - over,
           middle - aside - over},
          marked ? sign : 0);
  }

  // The first free of some places, with room for a sign after the words.
  bool write(drafting::Room& room, const std::string& words, std::initializer_list<Vec2> places,
             double sign_width = 0) {
    const double letter = plan_.kit.look.lettering, wide = plan_.kit.width(words, letter);
    const double half = (wide + sign_width) / 2;
    for (const Vec2 place : places) {
      const double up = std::max(letter, sign_width) / 2;
      const ink::Rect box{place - Vec2{half, up + 0.3 * letter}, place + Vec2{half, up}};
      if (!room.free(box, 0.7)) continue;
      items_.emplace_back(ink::Text{{box.low.x, place.y - letter / 2}, words, letter});
      if (sign_width > 0)
        items_.emplace_back(drafting::face_side_mark(
            plan_.kit, {box.high.x - 0.4 * sign_width, place.y}, 0.9 * sign_width));
      room.take(drafting::quad(box));
      return true;
    }
    return false;
  }

  void angle(drafting::Room& room) {
    if (plan_.stop_side == 0 || std::abs(step().exact.gauge) < no_angle) return;
    drafting::AngleMark mark;
    mark.at = plan_.paper({0, 0});
    const Vec2 toward = plan_.along * (plan_.stop_side < 0 ? -1.0 : 1.0);
    mark.from = {toward.x < 0 ? -1.0 : 1.0, 0};
    mark.to = toward;
    mark.radians = std::abs(step().exact.gauge);
    mark.radius = 18;
    if (auto group = drafting::try_angle(plan_.kit, room, mark))
      items_.emplace_back(std::move(*group));
  }

  // The name of an end or edge that is seen from above, beside it; what leads says so.
  void end(drafting::Room& room, Side side) {
    const Vec3 out3 = plan_.work.machine.local_direction(parts::outward(side));
    const Vec2 out = plan_.stance.plan.project(out3);
    if (norm(out) < 0.5) return;
    const bool leads =
        side == step().leads && !plan_.stance.led && step().machine != Machine::mitre_saw;
    const bool ends = side == Side::x_low || side == Side::x_high;
    if (!ends && !leads) return;
    const double a = dot(plan_.along, out), b = dot(left_of(plan_.along), out);
    const Vec2 at = plan_.paper(plan_.edge(a > 0.5    ? plan_.high.x
                                           : a < -0.5 ? plan_.low.x
                                                      : (plan_.low.x + plan_.high.x) / 2,
                                           b > 0.5    ? plan_.high.y
                                           : b < -0.5 ? plan_.low.y
                                                      : (plan_.low.y + plan_.high.y) / 2));
    const std::string words = parts::side_name(plan_.part, side) + (leads ? " leads" : "");
    const double half = plan_.kit.width(words, plan_.kit.look.lettering) / 2;
    const Vec2 way = unit(out);
    const double off = std::abs(way.x) * half + std::abs(way.y) * 1.3 + 1.2;
    const Vec2 beside{-way.y * (half + 3), way.x * (half + 3)};
    const Vec2 outside = at + way * off, inside = at - way * off;
    write(room, words,
          {inside, inside + beside, inside - beside, outside, outside + beside, outside - beside,
           outside + beside * 2, outside - beside * 2});
  }

  const SeenFromAbove& plan_;
  drafting::Items& items_;
};

}  // namespace

void add_plan_names(const SeenFromAbove& plan, drafting::Items& items) {
  PlanNames(plan, items).write_all();
}

}  // namespace splay::sheets
