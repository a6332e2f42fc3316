#include "model/client.h"

#include <algorithm>

namespace splay::model {

void Client::fields(FieldVisitor& visit) {
  visit.texts(may("choices", "what the client has still to choose, one text for each"), choices);
  visit.texts(may("terms", "what is agreed, in your own words, one text for each"), terms);
  visit.flag(may("prices", "the client's set shows the quote"), prices);
  visit.flag(may("sign_off", "shop pages say NOT APPROVED until [approval] fits this revision"),
             sign_off);
}

void Approval::fields(FieldVisitor& visit) {
  visit.text(need("by", "who signed the client's set"), by);
  visit.date(need("date", "the day it was signed, written 2026-03-02"), date);
  visit.text(need("sha256", "the check figure printed on the page that was signed, 64 digits"),
             sha256);
}

void Approval::check(Complaints& complaints) const {
  constexpr std::size_t digits = 64;
  const bool sound = sha256->size() == digits && std::ranges::all_of(*sha256, [](char c) {
                       return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'f');
                     });
  if (!sound)
    complaints.complain({sha256.span, "wrong-check-figure",
                         "\"" + *sha256 + "\" is no SHA-256 figure",
                         "64 of the digits 0 to 9 and a to f",
                         "copy it from the page that was signed, without its spaces"});
}

}  // namespace splay::model
