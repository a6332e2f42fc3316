// How much wood swells and shrinks with the air around it.
// Source: Wood Handbook, FPL-GTR-190 (2010), chapters 4 and 13.
#pragma once

namespace splay::model {

// Moisture content (percent) that wood comes to in air of this relative humidity (percent) and
// temperature (degrees Celsius): the handbook's equation of equilibrium moisture, chapter 4.
double equilibrium_moisture(double relative_humidity, double celsius);

// Change of a width (in its own unit) between two moisture contents in percent, by the coefficient
// of Table 13-5: Eq. 13-2, meant for 6 to 14 percent.
double movement(double width, double coefficient, double from, double to);

// The same for a large change or outside 6 to 14 percent, by the shrinkage from green to oven-dry
// in percent: Eq. 13-3. No moisture above 30 percent counts.
double movement_by_shrinkage(double width, double shrinkage, double from, double to);

struct Room;

// Percent: in the shop while it is made, and between what the room goes.
struct Moistures {
  double made = 0, driest = 0, dampest = 0;
};
Moistures moistures(const Room& room);
// The most that it goes to one side from where it was made; not negative.
double most_points(const Room& room);

}  // namespace splay::model
