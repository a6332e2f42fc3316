#include "model/finish.h"

namespace splay::model {

namespace {

constexpr std::array<std::string_view, 9> kind_words{
    "oil", "wax", "shellac", "varnish", "lacquer", "water based", "two part", "paint", "soap"};

}  // namespace

void Finish::fields(FieldVisitor& visit) {
  choose(visit, may("kind", "what kind of finish it is; the cautions beside it go by this"), kind,
         kind_words);
  visit.text(may("product", "as its label names it", "the table's name"), product);
  visit.count(may("coats", "how many coats"), coats, Range::between(1, 50));
  visit.number(may("coverage", "square metres a litre covers in one coat, from its data sheet",
                   "the quantity is not reckoned"),
               coverage, Range::between(0.1, 200));
  visit.texts(may("on", "names of the parts it goes on", "every part no other finish is on"), on);
  visit.texts(may("stocks", "or the stocks whose parts it goes on"), stocks);
  visit.texts(may("before", "names of the parts to be finished before they are assembled",
                  "panels that lie loose in grooves"),
              before);
  visit.text(may("between", "what is done between coats: \"rub with 320 grit\""), between);
}

}  // namespace splay::model
