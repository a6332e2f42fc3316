#include "joinery/hardware.h"

#include <algorithm>
#include <cmath>

#include "base/tolerance.h"
#include "joinery/bed.h"
#include "joinery/draft.h"
#include "joinery/stick.h"

namespace splay::joinery {

namespace {

constexpr double probe = 0.5;  // mm: wood is looked for this far behind a face

class Placing {
 public:
  Placing(const model::Hardware& spec, parts::Builder& builder) : spec_(spec), builder_(builder) {}

  void run() {
    for (const std::string& name : *spec_.on) {
      const int part = builder_.find(name);
      if (part < 0)
        refuse("unknown-part", "[hardware." + spec_.name + "] names a part \"" + name + "\".",
               "Names of parts: " + all_names(), spec_.on.span);
      else
        on_part(part);
    }
  }

 private:
  void refuse(const char* code, std::string text, std::string remedy, SourceSpan span) {
    builder_.report({Level::stop, code, {spec_.name}, std::move(text), std::move(remedy), span});
  }

  std::string all_names() const {
    std::string list;
    for (int i = 0; i < builder_.count(); ++i) list += (i == 0 ? "" : ", ") + builder_.part(i).name;
    return list + ".";
  }

  void on_part(int index) {
    const parts::Part& part = builder_.part(index);
    const auto& names = part.side_names;
    const auto found = std::find(names.begin(), names.end(), *spec_.face);
    if (found == names.end()) {
      std::string list;
      for (const std::string& name : names) list += (list.empty() ? "" : ", ") + name;
      refuse("unknown-face", part.name + " has no face \"" + *spec_.face + "\".",
             "Its faces: " + list + ".", spec_.face.span);
      return;
    }
    const auto side = static_cast<parts::Side>(found - names.begin());
    for (const Vec2 place : *spec_.at) at_place(index, side, place);
  }

  // A corner of the bounding box plus the two figures from their datums.
  Vec3 point(const parts::Part& part, parts::Side side, Vec2 place) const {
    const Box box = part.body.bounds();
    const auto on = [&](parts::Side of) {
      const Vec3 out = parts::outward(of);
      const Vec3 corner{out.x > 0 ? box.high.x : box.low.x, out.y > 0 ? box.high.y : box.low.y,
                        out.z > 0 ? box.high.z : box.low.z};
      return out * dot(out, corner);
    };
    const auto from = parts::datums(part, side);
    return on(side) + on(from[0]) + on(from[1]) - parts::outward(from[0]) * place.x -
           parts::outward(from[1]) * place.y;
  }

  // Into the wood of that place, from the surface that is there: an edge may be bevelled.
  void at_place(int index, parts::Side side, Vec2 place) {
    const parts::Part& part = builder_.part(index);
    const Solid body = part.body.transformed(part.place);
    const Vec3 in = -part.place.direction(parts::outward(side));
    const Vec3 on_box = part.place.point(point(part, side, place));
    const Vec3 behind = on_box + in * probe;
    std::string where = spec_.words() + " on " + part.name + ", " + *spec_.face + ", at " +
                        figure(builder_, place.x) + " and " + figure(builder_, place.y);
    if (!wood_at(body, behind)) {
      refuse("off-the-face", where + ": there is no wood.",
             "Measured from the " + side_name(part, parts::datums(part, side)[0]) + " and the " +
                 side_name(part, parts::datums(part, side)[1]) + ".",
             spec_.at.span);
      return;
    }
    const double through = way_out(body, behind, in).distance + probe;
    const double deep = spec_.depth.given ? spec_.depth->mm : through;
    if (spec_.hole.given && !drill(index, body, on_box, in, deep, through)) {
      refuse("hole-breaks-out",
             where + ": a hole " + figure(builder_, spec_.hole->mm) + " wide and " +
                 figure(builder_, deep) + " deep comes out of the wood, " +
                 figure(builder_, through) + " thick there.",
             "A shallower hole, or another place.", spec_.at.span);
      return;
    }
    builder_.add_fitting({spec_.words(),
                          *spec_.size,
                          on_box,
                          in,
                          spec_.hole.given ? spec_.hole->mm : 0.0,
                          spec_.hole.given ? deep : 0.0,
                          {index},
                          ""});
  }

  static bool wood_at(const Solid& body, Vec3 at) {
    for (std::size_t i = 0; i < body.cells().size(); ++i) {
      const Region region = body.cell_region(i);
      if (std::all_of(region.begin(), region.end(),
                      [&](const Plane& plane) { return plane.distance(at) <= 0; }))
        return true;
    }
    return false;
  }

  bool drill(int index, const Solid& body, Vec3 at, Vec3 in, double deep, double through) {
    const std::vector<Plane> round = cylinder(at, in, spec_.hole->mm / 2);
    Region in_wood = round;
    in_wood.push_back(Plane::through(at, -in));
    in_wood.push_back(Plane::through(at + in * deep, in));
    if (!inside(in_wood, body) || (spec_.depth.given && deep > through - tolerance::weld))
      return false;
    Region hole = round;
    hole.push_back(Plane::through(at - in * probe, -in));
    hole.push_back(Plane::through(at + in * (deep + (spec_.depth.given ? 0 : probe)), in));
    builder_.cut_region(index, parts::OperationKind::hole, hole, "hole for " + spec_.words(), "",
                        round);
    return true;
  }

  const model::Hardware& spec_;
  parts::Builder& builder_;
};

}  // namespace

void place_hardware(parts::Builder& builder) {
  const auto& all = builder.project().hardware;
  for (std::size_t i = 0; i < all.size(); ++i)
    if (all[i].at.given) Placing(all[i], builder).run();
}

}  // namespace splay::joinery
