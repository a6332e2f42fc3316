#include "model/buying.h"

namespace splay::model {

namespace {

constexpr std::array<std::string_view, 2> run_words{"side by side", "end to end"};
constexpr std::array<std::string_view, 3> tally_words{"volume", "next inch and foot",
                                                      "surface measure"};
constexpr std::array<std::string_view, 7> per_words{
    "piece", "square metre", "square foot", "cubic metre", "board foot", "metre", "foot"};
constexpr double most_money = 1e7;

}  // namespace

void OffCutOnHand::fields(FieldVisitor& visit) {
  visit.lengths(need("size", "length along the grain, then width across it"), size, Range::size());
  visit.count(may("count", "how many there are"), count, Range::between(1, 1000));
}

void OffCutOnHand::check(Complaints& complaints) const {
  if (size->size() != 2)
    complaints.complain(
        {size.span, "wrong-size",
         "the off-cut has " + std::to_string(size->size()) + " numbers for its size",
         "two: length along the grain, width across it", ""});
}

void BoardOnRack::fields(FieldVisitor& visit) {
  visit.length(need("length", "as measured, checked ends included"), length, Range::size());
  visit.length(need("width", "clear width, as measured at the narrowest place"), width,
               Range::size());
  visit.count(may("count", "how many are alike"), count, Range::between(1, 1000));
  visit.lengths(
      may("defects", "stretches to be cut out, measured from the left end: from, to, from, to",
          "none"),
      defects, Range::allowance());
}

void BoardOnRack::check(Complaints& complaints) const {
  const std::vector<Length>& marks = *defects;
  if (marks.size() % 2 != 0)
    complaints.complain({defects.span, "odd-defects", "the last defect has no end",
                         "pairs of lengths: from, to, from, to ...", ""});
  for (std::size_t i = 0; i + 1 < marks.size(); i += 2)
    if (marks[i].mm >= marks[i + 1].mm || marks[i + 1].mm > length->mm)
      complaints.complain({defects.span, "odd-defects",
                           "defect " + std::to_string(i / 2 + 1) +
                               " ends before it begins, or past the end of the board",
                           "from, then a greater to, at most the board's length", ""});
  if (!marks.empty() && *count > 1)
    complaints.complain({count.span, "odd-defects", "several boards have one list of defects",
                         "one table for each board that has defects", ""});
}

void Match::fields(FieldVisitor& visit) {
  visit.texts(need("parts", "names of the parts, from the left or from below"), parts);
  choose(visit, may("run", "across the grain side by side, or along the grain end to end"), run,
         run_words);
}

void Match::check(Complaints& complaints) const {
  if (parts->size() < 2)
    complaints.complain(
        {parts.span, "lonely-match", "nothing to match", "two parts or more, by name", ""});
}

void Supply::fields(FieldVisitor& visit) {
  break_down(visit);
  boards(visit);
  billing(visit);
}

void Supply::break_down(FieldVisitor& visit) {
  visit.length(may("kerf", "width of cut of the saw that breaks it down", "the kerf of [shop.saw]"),
               kerf, Range{0, 12, false});
  visit.length(
      may("edge_trim", "cut off each edge of a sheet, or each long edge of a board, kerf included"),
      edge_trim, Range{0, 300, false});
  visit.length(may("end_trim", "cut off each end of a board for its checks, kerf included"),
               end_trim, Range{0, 1000, false});
  visit.length(
      may("keep",
          "an off-cut of a sheet is kept when both sides are at least this, of a board the length",
          "150 mm; of a board 300 mm"),
      keep, Range::size());
  visit.texts(may("may_turn", "names of the parts whose grain may run either way", "none"),
              may_turn);
  visit.tables(may("match", "parts cut next to each other so that the figure runs through"),
               matches);
  visit.tables(may("off_cut", "an off-cut of a sheet on hand, used before a sheet is bought"),
               off_cuts);
  visit.tables(may("rack", "a board on the rack, used before one is bought"), rack);
}

void Supply::boards(FieldVisitor& visit) {
  visit.lengths(may("lengths", "the lengths of board the yard sells",
                    "8 ft or 2400 mm, or what the longest part needs"),
                lengths, Range::size());
  visit.lengths(
      may("widths", "least and most of the yard's random widths; layouts count on the least",
          "6 in or 150 mm"),
      widths, Range::size());
  visit.length(may("rough", "thickness before planing, as measured", "it is bought planed"), rough,
               Range{0, 300, true});
  visit.length(may("planing", "lost in planing a rough board or a resawn piece, both faces"),
               planing, Range{0, 50, false});
  visit.length(may("jointing", "extra width of each strip of a glued-up panel"), jointing,
               Range{0, 100, false});
}

void Supply::billing(FieldVisitor& visit) {
  visit.length(may("sold_as", "the thickness it is sold by: \"5/4 in\"", "the rough thickness"),
               sold_as, Range{0, 300, true});
  visit.length(may("billed_as", "the thickness the yard bills, when it counts up", "sold_as"),
               billed_as, Range{0, 300, true});
  choose(visit, may("tally", "how the yard counts a board"), tally, tally_words);
  visit.number(may("price", "what one costs", "not counted"), price, Range::between(0, most_money));
  choose(
      visit,
      may("per", "what the price is for",
          "a sheet, a metre of edge band; of boards a board foot, a cubic metre in a metric job"),
      per, per_words);
  visit.number(may("waste", "bought at least so many percent over what the finished parts measure"),
               waste, Range::between(0, 500));
}

void Supply::check(const std::string& table, bool sheet, Complaints& complaints) const {
  const auto misplaced = [&](bool there, const SourceSpan& span, const char* field, bool of_sheet) {
    if (there && sheet != of_sheet)
      complaints.complain(
          {span, "wrong-stock",
           table + " is a " + (sheet ? "sheet" : "board or band") + " and has " + field,
           of_sheet ? "only a sheet has it" : "only a board has it", ""});
  };
  misplaced(!off_cuts.empty(), off_cuts.empty() ? SourceSpan{} : off_cuts[0].span, "an off_cut",
            true);
  misplaced(!rack.empty(), rack.empty() ? SourceSpan{} : rack[0].span, "a rack", false);
  misplaced(rough.given, rough.span, "a rough thickness", false);
  misplaced(lengths.given, lengths.span, "lengths", false);
  misplaced(widths.given, widths.span, "widths", false);
  if (widths.given && (widths->size() != 2 || (*widths)[0].mm > (*widths)[1].mm))
    complaints.complain({widths.span, "wrong-count", table + " does not say which widths there are",
                         "two lengths: the least width, then the most", ""});
}

void HardwarePrice::fields(FieldVisitor& visit) {
  visit.text(need("fitting", "its kind as the hardware list has it: \"dowel\""), fitting);
  visit.text(may("size", "its size as the hardware list has it", "any size"), size);
  visit.number(need("price", "of a pack"), price, Range::between(0, most_money));
  visit.count(may("pack", "how many are in a pack"), pack, Range::between(1, 100000));
}

void Sundry::fields(FieldVisitor& visit) {
  visit.text(may("what", "what it is", "its name"), what);
  visit.number(may("quantity", "how many, of whatever the price is for"), quantity,
               Range::between(0, 100000));
  visit.number(need("price", "of one"), price, Range::between(0, most_money));
}

void Work::fields(FieldVisitor& visit) {
  visit.number(need("hours", "how long it takes, as the maker reckons it"), hours,
               Range::between(0, 100000));
  visit.number(may("rate", "an hour of this work", "labour_rate of [buying]"), rate,
               Range::between(0, most_money));
}

void Glue::fields(FieldVisitor& visit) {
  visit.text(may("what", "which glue"), what);
  visit.number(need("price", "of a kilogram"), price, Range::between(0, most_money));
  visit.number(may("spread", "grams on a square metre of joint, as its maker asks"), spread,
               Range::between(1, 2000));
}

void Buying::fields(FieldVisitor& visit) {
  visit.text(may("currency", "what the prices are in, as it is to be printed", "not printed"),
             currency);
  visit.number(may("labour_rate", "an hour of work", "not counted"), labour_rate,
               Range::between(0, most_money));
  visit.number(may("markup", "percent on everything, for the quote"), markup,
               Range::between(0, 1000));
  visit.number(may("tax", "percent on the quote"), tax, Range::between(0, 100));
  visit.texts(may("terms", "what the quote says under the price, a paragraph each", "none"), terms);
  visit.table(may("glue", "the glue, by the joint area of the piece"), glue);
  visit.tables(may("hardware", "what a piece of hardware costs"), hardware);
  visit.tables(may("sundry", "anything else that is bought"), sundries);
  visit.tables(may("work", "hours of one kind of work"), work);
}

void Buying::check(Complaints& complaints) const {
  for (std::size_t i = 0; i < work.size(); ++i)
    if (!work[i].rate.given && !labour_rate.given)
      complaints.complain({work[i].span, "missing-rate",
                           "[buying.work." + work[i].name + "] has hours and no rate",
                           "rate here, or labour_rate in [buying]", ""});
}

}  // namespace splay::model
