// Does it open: every swing of the assembly turned in the model until it touches something.
#include <algorithm>
#include <cmath>
#include <optional>

#include "base/tolerance.h"
#include "constructs/door_build.h"
#include "joinery/draft.h"

namespace splay::constructs {

namespace {

constexpr double touching = 0.01;          // mm3: parts that share more than this collide
constexpr double fine = 0.01;              // degrees: how well the first touch is known
constexpr double coarsest = 1;             // degrees between two trials
constexpr double most = std::numbers::pi;  // no hinge turns further

struct Obstacle {
  std::string name;
  Solid body;
  Box box;
};

struct Touch {
  double angle = 0;  // radians
  std::string what;
};

Obstacle obstacle(const parts::Part& part, const Rigid& motion = {}) {
  Obstacle made{part.name, part.body.transformed(motion * part.place), {}};
  made.box = made.body.bounds();
  return made;
}

class Trial {
 public:
  Trial(const parts::Builder& builder, const parts::Swing& swing) : swing_(swing) {
    double furthest = 0, thinnest = 1e300;
    for (const int index : swing.parts) {
      const parts::Part& part = builder.part(index);
      if (part.body.empty()) continue;
      bodies_.push_back(part.body.transformed(part.place));
      const Vec3 size = part.body.bounds().size();
      thinnest = std::min({thinnest, size.x, size.y, size.z});
      for (const Vec3 p : bodies_.back().vertices())
        furthest = std::max(furthest, norm(cross(swing.axis, p - swing.at)));
    }
    // Nothing that stands in the way is stepped over: no step is longer than half the leaf's own
    // thickness.
    step_ = std::min(Angle::degrees(coarsest).rad, thinnest / 2 / std::max(furthest, 1.0));
  }

  Rigid motion(double angle) const { return swing_.motion(angle); }

  // What is touched at an angle: the index of the first of them, or -1.
  int touched(double angle, const std::vector<Obstacle>& obstacles) const {
    const Rigid turned = motion(angle);
    for (const Solid& body : bodies_) {
      Box box;
      for (const Vec3 corner : body.vertices()) box.add(turned.point(corner));
      std::optional<Solid> there;
      for (std::size_t i = 0; i < obstacles.size(); ++i) {
        if (apart(box, obstacles[i].box)) continue;
        if (!there) there = body.transformed(turned);
        if (overlap_volume(*there, obstacles[i].body) > touching) return static_cast<int>(i);
      }
    }
    return -1;
  }

  // What overlaps while the door is shut is the audit's to report.
  void leave_out_shut(std::vector<Obstacle>& obstacles) const {
    for (int i = touched(0, obstacles); i >= 0; i = touched(0, obstacles))
      obstacles.erase(obstacles.begin() + i);
  }

  std::optional<Touch> first_touch(const std::vector<Obstacle>& obstacles) const {
    double clear = 0;
    for (double angle = step_; clear < most; angle = std::min(angle + step_, most)) {
      int hit = touched(angle, obstacles);
      if (hit < 0) {
        clear = angle;
        continue;
      }
      double low = clear, high = angle;
      while (high - low > Angle::degrees(fine).rad) {
        const double middle = (low + high) / 2;
        const int there = touched(middle, obstacles);
        if (there < 0) {
          low = middle;
        } else {
          high = middle;
          hit = there;
        }
      }
      return Touch{low, obstacles[static_cast<std::size_t>(hit)].name};
    }
    return std::nullopt;
  }

 private:
  const parts::Swing& swing_;
  std::vector<Solid> bodies_;
  double step_ = 0;
};

bool swings(const parts::Swing& swing, int part) {
  return std::find(swing.parts.begin(), swing.parts.end(), part) != swing.parts.end();
}

std::string angle_words(double radians) { return degrees_text(Angle{radians}.degrees(), 1); }

// The floor, as far as the piece's lowest point is on it.
Obstacle floor_of(const parts::Builder& builder) {
  Box box;
  for (int i = 0; i < builder.count(); ++i) {
    if (builder.part(i).body.empty()) continue;
    const Box part = builder.part(i).body.transformed(builder.part(i).place).bounds();
    box.add(part.low);
    box.add(part.high);
  }
  constexpr double wide = 5000, deep = 500;
  Obstacle made{"the floor",
                Solid::box({box.low.x - wide, box.low.y - wide, box.low.z - deep},
                           {box.high.x + wide, box.high.y + wide, box.low.z}),
                {}};
  made.box = made.body.bounds();
  return made;
}

// All else shut.
void try_alone(parts::Builder& builder, const parts::Swing& swing, const Obstacle& floor) {
  const Trial trial(builder, swing);
  std::vector<Obstacle> obstacles{floor};
  for (int i = 0; i < builder.count(); ++i)
    if (!swings(swing, i) && !builder.part(i).body.empty())
      obstacles.push_back(obstacle(builder.part(i)));
  trial.leave_out_shut(obstacles);
  const std::optional<Touch> touch = trial.first_touch(obstacles);
  if (touch && touch->angle < swing.opens - Angle::degrees(2 * fine).rad) {
    refuse(builder, {"door-hits", swing.name,
                     swing.name + " touches " + touch->what + " at " + angle_words(touch->angle) +
                         ", and is to open " + angle_words(swing.opens) + ".",
                     "A larger gap, a bevel on its closing edge (closing_bevel), its hinge line "
                     "further out (hinges.line_out, line_in_front), or less of an opening (opens).",
                     swing.span});
    return;
  }
  builder.remark(swing.parts.front(),
                 "Opens " + angle_words(swing.opens) +
                     " with all else shut, as tried in the model" +
                     (touch ? "; touches " + touch->what + " at " + angle_words(touch->angle) + "."
                            : "; nothing stops it before 180°."));
}

void try_both(parts::Builder& builder, const parts::Swing& first, const parts::Swing& second) {
  const Trial still(builder, first), moving(builder, second);
  std::vector<Obstacle> obstacles;
  for (const int part : first.parts)
    if (!builder.part(part).body.empty())
      obstacles.push_back(obstacle(builder.part(part), still.motion(first.opens)));
  const std::optional<Touch> touch = moving.first_touch(obstacles);
  if (!touch || touch->angle >= second.opens - Angle::degrees(2 * fine).rad) return;
  builder.report({Level::caution,
                  "doors-meet-open",
                  {first.name, second.name},
                  "With " + first.name + " open " + angle_words(first.opens) + ", " + second.name +
                      " touches it at " + angle_words(touch->angle) + ".",
                  "Hang one of them on its other side, or let them open less (opens).",
                  second.span});
}

}  // namespace

void check_swings(parts::Builder& builder) {
  const std::vector<parts::Swing> all = builder.swings();
  if (all.empty()) return;
  const Obstacle floor = floor_of(builder);
  for (const parts::Swing& swing : all) try_alone(builder, swing, floor);
  for (std::size_t i = 0; i < all.size(); ++i)
    for (std::size_t j = i + 1; j < all.size(); ++j) try_both(builder, all[i], all[j]);
}

}  // namespace splay::constructs
