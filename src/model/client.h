// What an author says for the client's set and of its sign-off: [client] and [approval].
#pragma once

#include <string>
#include <vector>

#include "model/field.h"

namespace splay::model {

struct Client : Fields {
  Given<std::vector<std::string>> choices;  // still open: "Handles: bronze or oak"
  Given<std::vector<std::string>> terms;    // in the author's words
  Given<bool> prices{false};                // the quote goes into the client's set
  Given<bool> sign_off{false};              // shop pages say so until an approval stands
  void fields(FieldVisitor& visit) override;
};

// What was signed: `sha256` is of the whole file but this table, 64 hexadecimal digits (FIPS
// 180-4).
struct Approval : Fields {
  Given<std::string> by;
  Given<Date> date;
  Given<std::string> sha256;
  void fields(FieldVisitor& visit) override;
  void check(Complaints& complaints) const override;
};

}  // namespace splay::model
