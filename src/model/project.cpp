#include "model/project.h"

#include <bit>

namespace splay::model {

std::string iso_date(const Date& date) {
  if (date.year == 0) return {};
  std::string text = std::to_string(date.year * 10000 + date.month * 100 + date.day);
  text.insert(0, text.size() < 8 ? 8 - text.size() : 0, '0');
  text.insert(6, "-");
  text.insert(4, "-");
  return text;
}

namespace {

constexpr std::array<std::string_view, 2> unit_words{"in", "mm"};
constexpr std::array<std::string_view, 3> stock_words{"sheet", "board", "edge band"};

}  // namespace

void Job::fields(FieldVisitor& visit) {
  visit.text(need("title", "what is being made, for the cover and the foot of every page"), title);
  visit.text(may("number", "the shop's own number for the job"), number);
  visit.text(may("client", "who it is made for"), client);
  visit.text(may("maker", "who makes it"), maker);
  visit.text(may("revision", "the issue of the drawings; change it whenever a size changes"),
             revision);
  visit.date(need("date", "the day of this revision, written 2026-03-02"), date);
  choose(visit, may("units", "the unit of every bare number in the file and of every page"), units,
         unit_words);
  visit.count(may("fraction", "inches are printed to one part in this many: 2, 4, 8 ... 128"),
              fraction, Range::between(2, 128));
  visit.count(may("decimals", "millimetres are printed with this many decimals"), decimals,
              Range::between(0, 3));
  choose(visit, may("paper", "the paper of the binder", "what the style says; else \"a4\""), paper,
         paper_words);
  visit.flag(may("two_sided", "printed on both sides: the binding edge changes with the page"),
             two_sided);
  visit.texts(may("notes", "remarks for the cover, one text for each"), notes);
}

void Job::check(Complaints& complaints) const {
  if (!std::has_single_bit(static_cast<unsigned>(*fraction)))
    complaints.complain({fraction.span, "odd-fraction",
                         "an inch rule has no 1/" + std::to_string(*fraction) + " marks",
                         "2, 4, 8, 16, 32, 64 or 128", ""});
}

FigureStyle Job::figures() const { return {*units, *fraction, *decimals}; }

void Stock::fields(FieldVisitor& visit) {
  choose(visit, may("kind", "how it is bought: sheets, boards, or band for edges"), kind,
         stock_words);
  visit.text(
      may("material", "what it is, for the cut list: \"birch plywood\"", "the name of the stock"),
      material);
  visit.length(need("thickness", "as measured on the stock in hand, not the name it is sold by"),
               thickness, Range{0, 300, true});
  visit.lengths(may("size", "length along the grain, then width across it",
                    "boards are bought to suit; a sheet must give it"),
                size, Range::size());
  visit.flag(may("grain", "the show faces have a grain direction to be kept"), grain);
  visit.flag(may("two_good_faces", "either face may be the show face"), two_good_faces);
  visit.number(
      may("density", "weight for its volume, in kg per cubic metre", "the species'; else 650"),
      density, Range::between(20, 3000));
  timber.fields(visit);
  supply.fields(visit);
}

void Stock::check(Complaints& complaints) const {
  const std::string table = "[stock." + name + "]";
  timber.check(complaints);
  supply.check(table, *kind == StockKind::sheet, complaints);
  if (!size.given) {
    if (*kind == StockKind::sheet)
      complaints.complain({span, "missing-size", table + " is a sheet and does not say how large",
                           "size = [length along the grain, width across it]", ""});
    return;
  }
  if (size->size() != 2)
    complaints.complain({size.span, "wrong-size",
                         table + " has " + std::to_string(size->size()) + " numbers for its size",
                         "two: length along the grain, width across it", ""});
}

double Stock::weight() const {
  const bool by_species = !density.given && timber.wood() != nullptr;
  return by_species ? timber.wood()->density() : *density;
}

void Shop::fields(FieldVisitor& visit) {
  visit.table(may("saw", "what the table saw can do"), saw);
  visit.table(may("mitre_saw", "what the mitre saw can do", "there is none"), mitre_saw);
  visit.table(may("track_saw", "what the track saw can do", "there is none"), track_saw);
  visit.table(may("band_saw", "what the band saw can do", "there is none"), band_saw);
  visit.table(may("router", "what the router can do"), router);
  visit.table(may("drill", "what the drill press can do"), drill);
  visit.table(may("jointer", "what the jointer can do"), jointer);
  visit.table(may("planer", "what the planer can do"), planer);
  visit.length(may("largest_gap", "the widest gap a joint may show, put together dry"), largest_gap,
               Range{0, 10, true});
  visit.length(may("blank_allowance", "extra length and width of a blank over the finished part"),
               blank_allowance, Range{0, 150, false});
  visit.length(
      may("accuracy", "how far a finished size may be off, for the play of doors and drawers"),
      accuracy, Range{0, 5, true});
}

}  // namespace splay::model
