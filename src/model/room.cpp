#include "model/room.h"

namespace splay::model {

namespace {

constexpr std::array<std::string_view, 2> standing_words{"floor", "wall"};
constexpr std::array<std::string_view, 2> shelf_words{"general", "books"};

}  // namespace

void Way::fields(FieldVisitor& visit) {
  visit.length(need("width", "clear width, as measured with the door open"), width, Range::size());
  visit.length(need("height", "clear height; of stairs, square to their slope"), height,
               Range::size());
  visit.length(may("turns_into",
                   "clear width of the way it turns into at a right angle: a landing, a corridor",
                   "it goes straight on"),
               turns_into, Range::size());
}

void Room::fields(FieldVisitor& visit) {
  const Range percent = Range::between(5, 95);
  visit.number(may("made_at", "relative humidity of the shop while it is made, percent"), made_at,
               percent);
  visit.number(may("driest", "least relative humidity of the room in a year, percent"), driest,
               percent);
  visit.number(may("dampest", "greatest relative humidity of the room in a year, percent"), dampest,
               percent);
  visit.number(may("temperature", "of shop and room, in degrees Celsius"), temperature,
               Range::between(-10, 50));
  visit.length(may("ceiling", "height of the ceiling", "not looked at"), ceiling, Range::size());
  choose(visit, may("standing", "what carries the piece"), standing, standing_words);
  choose(visit, may("shelves", "what the shelves are for: books weigh more"), shelves, shelf_words);
  visit.texts(may("open", "doors and drawers by name that may stand open together", "all of them"),
              open);
  visit.number(
      may("drawer_load", "kilograms in a cubic metre of a full drawer: clothes 136, paper 700"),
      drawer_load, Range::between(0, 3000));
  visit.tables(may("way", "a door, stairs or landing the piece has to go through, by name"), ways);
}

void Room::check(Complaints& complaints) const {
  if (*driest > *dampest)
    complaints.complain({driest.given ? driest.span : dampest.span, "dry-over-damp",
                         "the driest air is damper than the dampest", "driest at most dampest",
                         ""});
}

}  // namespace splay::model
