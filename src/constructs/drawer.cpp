#include "constructs/drawer.h"

#include <algorithm>
#include <cmath>

#include "constructs/drawer_build.h"
#include "constructs/plate.h"
#include "constructs/play.h"
#include "constructs/section.h"
#include "joinery/draft.h"
#include "joinery/joint.h"

namespace splay::constructs {

namespace {

constexpr double least_room = 1;   // mm between the box and a leaning side
constexpr double room_behind = 3;  // mm behind runners of a length found here

}  // namespace

bool DrawerBuild::stop(std::string code, std::string text, std::string remedy,
                       SourceSpan span) const {
  refuse(builder_, {std::move(code), spec_.name, std::move(text), std::move(remedy),
                    span.line > 0 ? span : spec_.span});
  return false;
}

std::string DrawerBuild::figure(double mm) const { return joinery::figure(builder_, mm); }
Plane DrawerBuild::plane(Vec3 n, double d) const { return place_.plane({n, d}); }

double DrawerBuild::wall(std::size_t side, double z) const {
  const Vec2 low = opening_[side == 0 ? 0 : 1], high = opening_[side == 0 ? 3 : 2];
  return low.x + (high.x - low.x) * (z - low.y) / (high.y - low.y);
}

bool DrawerBuild::leans(std::size_t side) const {
  return std::abs(wall(side, 0) - wall(side, 1)) > 1e-9;
}

// Clearances of the named kind. Side runners, 1/2 in each side and 1/16 in of play:
// https://www.eaglewoodworking.com/dovetail-drawers/measuring-instructions ; there too 13/16 in of
// height for undermount runners, here 9/16 in below and 1/4 in above. The 42 mm by which an
// undermount box's inside is narrower than the opening, and wooden runners: common practice.
void DrawerBuild::lay_heights() {
  const Runner& runner = spec_.runner;
  const bool side = runner.kind.value == RunnerKind::side;
  const bool under = runner.kind.value == RunnerKind::undermount;
  const auto in = [](double inches) { return Length::inches(inches).mm; };
  const model::Project& project = builder_.project();
  each_side_ = or_else(runner.each_side, side    ? in(0.5)
                                         : under ? 21 - thick_
                                                 : std::max(in(1.0 / 16), one_gap(project, 0)));
  play_ = or_else(runner.play, side ? in(1.0 / 16) : 0);
  below_ = or_else(runner.below, side ? in(0.25) : under ? in(9.0 / 16) : 0);
  const double foot = opening_[0].y, top = opening_[2].y;
  const double needs = spec_.box.height.given
                           ? 0
                           : both_gaps(project, swelling(project, *spec_.box.stock, top - foot));
  above_ = or_else(runner.above, std::max(side || under ? in(0.25) : in(3.0 / 32), needs - below_));
  z_[0] = foot + below_;
  z_[1] = spec_.box.height.given ? z_[0] + spec_.box.height->mm : top - above_;
  const double high = or_else(runner.height, side ? 45 : under ? 16 : 20);
  const double middle = runner.at.given ? foot + runner.at->mm
                        : side          ? (z_[0] + z_[1]) / 2
                                        : foot + high / 2;
  band_ = {middle - high / 2, middle + high / 2};
}

bool DrawerBuild::lay_length() {
  const DrawerFront& front = spec_.front;
  const bool inset = front.given && front.fit.value == FrontFit::inset;
  y_[0] = inset ? stock_thickness(builder_, *front.stock) : 0;
  const double room = spec_.depth->mm - y_[0];
  double length = 0;
  if (spec_.runner.length.given) {
    length = spec_.runner.length->mm;
  } else {
    const bool inch = builder_.project().job.units.value == Unit::inch;
    const double step = inch ? Length::inches(2).mm : 50;
    length = step * std::floor((room - room_behind) / step + 1e-9);
  }
  y_[1] = y_[0] + length;
  if (length > room + 1e-6 || length < 50)
    return stop("box-too-long",
                "The box of " + spec_.name + " is " + figure(length) + " long, and " +
                    figure(room) + " of depth is left for it.",
                "Another runner length, or more depth.",
                spec_.runner.length.given ? spec_.runner.length.span : spec_.depth.span);
  return true;
}

bool DrawerBuild::check_box() const {
  if (z_[1] > opening_[2].y - above_ + 1e-6 || z_[1] - z_[0] < 30)
    return stop("box-too-high",
                "The box of " + spec_.name + " is " + figure(z_[1] - z_[0]) +
                    " high; the opening less its clearances leaves " +
                    figure(opening_[2].y - above_ - z_[0]) + ".",
                "Give it at least 30 mm and no more than is left.", spec_.box.height.span);
  if (band_[0] < opening_[0].y - 1e-6 || band_[1] > opening_[2].y + 1e-6)
    return stop("runner-outside", "The runners of " + spec_.name + " don't lie in the opening.",
                "Change their `at`, or their height.", spec_.runner.at.span);
  if (x_[1] - x_[0] < 4 * thick_ || each_side_ < 0)
    return stop("box-too-narrow",
                "The box of " + spec_.name + " would be " + figure(x_[1] - x_[0]) + " wide.",
                "A wider opening or smaller clearances.", spec_.opening_span());
  for (const std::size_t side : {0U, 1U})
    for (const double z : z_) {
      const double sense = side == 0 ? 1 : -1;
      const double room = (x_[side] - wall(side, z)) * sense;
      if (room > least_room - 1e-9) continue;
      return stop("box-hits-side",
                  std::string("The ") + (side == 0 ? "left" : "right") + " side leans " +
                      figure(-room + least_room) + " too far in at the box's " +
                      (z == z_[1] ? "upper" : "lower") + " edge: the box of " + spec_.name +
                      " is measured at its runners.",
                  "A lower box, runners at its " + std::string(z == z_[1] ? "upper" : "lower") +
                      " edge (runner.at), or more clearance each side.",
                  spec_.runner.given ? spec_.runner.span : spec_.span);
    }
  return true;
}

bool DrawerBuild::lay_out() {
  const auto found = find_opening(builder_, spec_, spec_);
  if (!found) return false;
  opening_ = level_opening(builder_, spec_, found->shape, spec_.opening_span());
  if (opening_.empty()) return false;
  place_ = found->place;
  thick_ = stock_thickness(builder_, *spec_.box.stock);
  lay_heights();
  for (const std::size_t side : {0U, 1U}) {
    const double a = wall(side, band_[0]), b = wall(side, band_[1]);
    const double least = leans(side) ? spec_.packing.least->mm : 0;
    face_[side] = side == 0 ? std::max(a, b) + least : std::min(a, b) - least;
    if (leans(side) && !spec_.packing.given)
      return stop("no-packing",
                  std::string("The ") + (side == 0 ? "left" : "right") +
                      " side of the opening of " + spec_.name + " leans, and runners stand plumb.",
                  "Add packing = { stock = ... }.", spec_.opening_span());
  }
  x_ = {face_[0] + each_side_ + play_ / 2, face_[1] - each_side_ - play_ / 2};
  if (!lay_length() || !check_box()) return false;
  if (found->item >= 0 && !spec_.beside.given) find_walls();
  if (spec_.beside.given)
    for (const std::size_t side : {0U, 1U}) {
      walls_[side] = find_part(builder_, (*spec_.beside)[side], spec_.name, spec_.beside.span);
      if (walls_[side] < 0) return false;
    }
  return true;
}

// At foot, right, top and left: its own, else what is usual or what the drawer needs. The box
// behind it is as high at the most and may swell more; where that stands lower than the front's
// foot, more is needed above.
std::vector<double> DrawerBuild::front_gaps() const {
  const model::Given<Length>& gap = spec_.front.gap;
  if (gap.given) return std::vector<double>(4, gap->mm);
  const model::Project& project = builder_.project();
  const double high = opening_[2].y - opening_[0].y;
  const double swells = std::max(swelling(project, *spec_.front.stock, high),
                                 swelling(project, *spec_.box.stock, high));
  const double side = std::max(gap->mm, one_gap(project, 0));
  const double foot = std::max(gap->mm, one_gap(project, swells));
  const double top = std::max(foot, both_gaps(project, swells) - std::min(foot, below_));
  return {foot, side, top, side};
}

void DrawerBuild::add_front() {
  const DrawerFront& front = spec_.front;
  if (!front.given) return;
  const bool over = front.fit.value == FrontFit::over;
  const double t = stock_thickness(builder_, *front.stock);
  const std::vector<double> inwards =
      over ? std::vector<double>(4, -front.overlap->mm) : front_gaps();
  const auto shape = offset_edges(opening_, inwards);
  if (!shape) {
    stop("no-front", "The front of " + spec_.name + " has no shape at these sizes.",
         "A smaller gap.", front.span);
    return;
  }
  const double y = over ? -t : 0;
  const int part = add_plate(builder_, {part_name(builder_, spec_, "front"),
                                        *front.stock,
                                        *shape,
                                        y,
                                        y + t,
                                        {1, 0},
                                        parts::ShowFace::high_z,
                                        place_});
  joinery::glued(builder_, crosses_[0], part, plane({0, -1, 0}, -y_[0]), "screwed");
}

void DrawerBuild::note_lost_space() const {
  const double area = signed_area(opening_), box = (x_[1] - x_[0]) * (z_[1] - z_[0]);
  double most = 0;
  for (const std::size_t side : {0U, 1U})
    for (const double z : z_) most = std::max(most, std::abs(x_[side] - wall(side, z)));
  if (!leans(0) && !leans(1)) return;
  builder_.report({Level::note,
                   "space-out-of-reach",
                   {spec_.name},
                   "A rectangular box of " + figure(x_[1] - x_[0]) + " by " +
                       figure(z_[1] - z_[0]) + " takes " + plain_number(100 * box / area, 0) +
                       " % of the leaning opening of " + spec_.name + "; up to " + figure(most) +
                       " beside it can't be reached.",
                   "Runners at the box's narrow end use the most of it.",
                   spec_.opening_span()});
}

void DrawerBuild::add_measures() {
  const double z = (band_[0] + band_[1]) / 2;
  builder_.measure(crosses_[0], "opening at the runners", face_[1] - face_[0]);
  builder_.measure(crosses_[0], "box, outside width", x_[1] - x_[0]);
  builder_.measure(crosses_[0], "runners over the opening's foot", z - opening_[0].y);
  parts::CheckLoop loop{"box of " + spec_.name + " from above", {}};
  loop.corners = {place_.point({x_[0], y_[0], z_[1]}), place_.point({x_[1], y_[0], z_[1]}),
                  place_.point({x_[1], y_[1], z_[1]}), place_.point({x_[0], y_[1], z_[1]})};
  builder_.add_loop(std::move(loop));
  const std::string width = spec_.name + " box width";
  builder_.add_length({width, place_.point({x_[0], y_[0], z_[0]}),
                       place_.point({x_[1], y_[0], z_[0]}), width, true});
}

void DrawerBuild::run() {
  if (!lay_out()) return;
  parts::Slide slide{spec_.name, {}, place_.direction({0, -1, 0}), y_[1] - y_[0], spec_.span};
  const auto moves_since = [&](int first) {
    for (int i = first; i < builder_.count(); ++i) slide.parts.push_back(i);
  };
  const int box = builder_.count();
  add_box();
  moves_since(box);
  for (const std::size_t side : {0U, 1U}) {
    add_packing(side);
    add_runner(side);
  }
  const int front = builder_.count();
  add_front();
  moves_since(front);
  builder_.add_slide(std::move(slide));
  note_lost_space();
  add_measures();
}

void Drawer::build(parts::Builder& builder) const { DrawerBuild(*this, builder).run(); }

}  // namespace splay::constructs
