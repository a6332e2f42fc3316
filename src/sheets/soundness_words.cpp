#include "sheets/soundness_words.h"

#include "drafting/table.h"
#include "sheets/table_columns.h"

namespace splay::sheets {

std::vector<Reckoned> movement_reckoned(const Context& context) {
  const fabrication::Soundness& sound = context.plan.soundness;
  return {
      {"Moisture", plain_number(sound.made, 1) + " % while it is made, " +
                       plain_number(sound.driest, 1) + " % at the driest, " +
                       plain_number(sound.dampest, 1) +
                       " % at the dampest: from the room's humidities and temperature by the Wood "
                       "Handbook's equation (FPL-GTR-190, chapter 4)."},
      {"Driest, dampest",
       "Width x coefficient (Table 13-5) x points of moisture (Eq. 13-2). Single boards differ "
       "widely from these means."},
      {"Slot longer by",
       "At an edge of a part held in its middle: longer than its screw, the screw set in the "
       "middle of it."},
      {"Room in a groove",
       "For each side of a panel pinned in its middle: half of its swelling and 1/16 in (common "
       "practice). What it has is measured between the solids."}};
}

std::vector<Reckoned> shelves_reckoned(const Context& context, bool joined) {
  const bool books = *context.plan.project->room.shelves == model::ShelfUse::books;
  std::vector<Reckoned> lines{
      {"Sag at first",
       "5 W L³ / (384 E I), W the whole load, resting freely on both ends: a housing does not "
       "count as fixed."},
      {"Load, limit", std::string(books ? "50" : "40") +
                          " lbf on a square foot, at most 200 lbf on a shelf; span / 144. "
                          "Architectural Woodwork Standards, 1st edition (AWI, AWMAC, WI, 2009)."},
      {"After years", "Half as much again, from memory of the Wood Handbook, chapter 5."},
      {"What sags", "Needs thicker stock, both long edges stiffened, or a support between."}};
  if (!joined) return lines;
  lines.push_back(
      {"What counts",
       "What is glued along the whole span, a back in its rabbet too, and what is screwed on with "
       "no stretch over a quarter of the span without a screw. A back that only stands behind a "
       "shelf, or dry in a groove, carries nothing."});
  lines.push_back(
      {"How it bends",
       "Each part for itself (with shear: Wood Handbook, Eq. 9-2), but a board glued on the whole "
       "face is one with the shelf."});
  lines.push_back(
      {"From edge to edge",
       "The joint lets the shelf turn: one edge carried helps the other by the shelf's torsion "
       "only (of bars held from warping: Roark, chapter 10; from memory), G = 0.06 E (low for "
       "wood: Wood Handbook, Table 5-1). No edge is taken to sag more than with nothing joined; "
       "the one that sags more is in the table."});
  return lines;
}

drafting::Story reckoned_table(const Context& context, const std::vector<Reckoned>& lines,
                               double width) {
  drafting::Table table;
  table.columns = {{.head = "Figure", .share = 0, .wrap = false}, words("How it is reckoned")};
  for (const Reckoned& line : lines)
    table.rows.push_back({{drafting::Cell::bold(line.figure), line.how}, {}, false});
  return drafting::table(context.kit, table, width);
}

}  // namespace splay::sheets
