// Fills one table of the model from one table of the file, and everything below it.
#pragma once

#include <set>
#include <string>

#include "model/field.h"
#include "reading/in_order.h"
#include "reading/values.h"

namespace splay::reading {

// Names that a text may refer to.
struct Known {
  std::set<std::string, std::less<>> stocks;
  std::set<std::string, std::less<>> items;
};

// A table of the file with the name messages give it ("[case.body]") and the place of its header
// or, written inline or dotted, of its key.
struct Place {
  const toml::table& table;
  std::string path;  // "case.body"
  SourceSpan span;
};
Place place_of(const Entry& entry, const toml::table& table, std::string path,
               const SourceText& source);

// Reads the fields, refuses what is left over, then asks the table to check itself.
void read_table(const Place& place, model::Fields& fields, const ValueReader& values,
                const Known& known);

// An author's name for a table; complains when it is none.
bool check_name(const Entry& entry, std::string_view what, const ValueReader& values);

}  // namespace splay::reading
