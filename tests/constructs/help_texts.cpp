// Every field's help reads as one voice: a phrase in lower case without a full stop (house style).
#include <catch2/catch.hpp>
#include <cctype>

#include "constructs/construct.h"
#include "reading/description.h"

namespace splay {
namespace {

void check_phrase(const std::string& where, const std::string& help) {
  INFO(where << ": " << help);
  REQUIRE_FALSE(help.empty());
  const bool initialism = help.size() > 1 && std::isupper(static_cast<unsigned char>(help[1]));
  CHECK((initialism || !std::isupper(static_cast<unsigned char>(help[0]))));
  CHECK(help.back() != '.');
}

void check_rows(const std::string& where, const std::vector<reading::FieldRow>& rows) {
  for (const reading::FieldRow& row : rows) {
    check_phrase(where + "." + row.name, row.help);
    check_rows(where + "." + row.name, row.inner);
  }
}

TEST_CASE("help texts are phrases in lower case") {
  const std::vector<reading::TopTable> tables = reading::top_tables(constructs::registry());
  REQUIRE(tables.size() > 10);
  for (const reading::TopTable& table : tables) {
    check_phrase(table.word, table.help);
    check_rows(table.word, table.rows);
  }
}

}  // namespace
}  // namespace splay
