#include "base/diagnostic.h"

#include <catch2/catch.hpp>

#include "base/finding.h"
#include "base/utf8.h"

using namespace splay;

TEST_CASE("a diagnostic shows its place, line and carets") {
  const Diagnostic d{{2, 3, 8},
                     "unknown-key",
                     "unknown key \"thicknes\" in [stock.panel]",
                     "kind, material, thickness",
                     "did you mean \"thickness\"?"};
  CHECK(describe(d, "tea.toml", "[stock.panel]\n  thicknes = \"0.713\"\r\n") ==
        "tea.toml:2:3: unknown key \"thicknes\" in [stock.panel] (unknown-key)\n"
        "     2 |   thicknes = \"0.713\"\n"
        "       |   ^^^^^^^^\n"
        "  allowed: kind, material, thickness\n"
        "  hint: did you mean \"thickness\"?\n");
}

TEST_CASE("a diagnostic about the whole file has no line") {
  CHECK(describe({{}, "missing-table", "there is no [job]", "", ""}, "a.toml", "x") ==
        "a.toml: there is no [job] (missing-table)\n");
}

TEST_CASE("carets stand under characters, not bytes, and tabs are one wide") {
  const std::string text = describe({{1, 6, 2}, "c", "f", "", ""}, "a", "\tö°€=ab\n");
  CHECK(text.find(" |  ö°€=ab\n") != std::string::npos);
  CHECK(text.find(" |      ^^\n") != std::string::npos);
}

TEST_CASE("a very long line is shown around the fault, whatever the span says") {
  const std::string source(5000, 'x');
  for (const int column : {1, 70, 80, 2500, 4990, 5001, 900000}) {
    const std::string text = describe({{1, column, 400}, "c", "f", "", ""}, "a", source);
    CHECK(text.size() < 500);
    CHECK(text.find('^') != std::string::npos);
  }
  CHECK_NOTHROW(describe({{9, 9, 9}, "c", "f", "", ""}, "a", ""));
}

TEST_CASE("diagnostics sort in file order and lose repeats") {
  std::vector<Diagnostic> all{{{3, 1, 1}, "b", "", "", ""},
                              {{1, 9, 1}, "a", "", "", ""},
                              {{3, 1, 1}, "b", "", "", ""},
                              {{0, 0, 1}, "z", "", "", ""}};
  sort_diagnostics(all);
  REQUIRE(all.size() == 3);
  CHECK(all[0].code == "z");
  CHECK(all[1].code == "a");
  CHECK(all[2].code == "b");
}

TEST_CASE("the nearest word is near") {
  const std::vector<std::string_view> known{"thickness", "kind", "material", "size"};
  CHECK(nearest_word("thicknes", known) == "thickness");
  CHECK(nearest_word("Thickness", known) == "thickness");
  CHECK(nearest_word("knid", known) == "kind");
  CHECK(nearest_word("mteriall", known) == "material");
  CHECK(nearest_word("colour", known).empty());
  CHECK(nearest_word("", known).empty());
  CHECK(nearest_word("xy", known).empty());
  CHECK(nearest_word(std::string(100000, 'a'), known).empty());
}

TEST_CASE("a level has a word") {
  CHECK(word(Level::stop) == "stop");
  CHECK(word(Level::caution) == "caution");
  CHECK(word(Level::note) == "note");
}

// RFC 3629 section 3 (the ABNF in section 4): overlong forms, surrogates and codes past U+10FFFF
// are malformed.
TEST_CASE("UTF-8 is decoded strictly") {
  CHECK(first_character("€").code == U'€');
  CHECK(first_character("€").bytes == 3);
  CHECK(first_character("\U0001F6AA").code == U'\U0001F6AA');
  for (const char* bad : {"\xC0\x80", "\xED\xA0\x80", "\xF4\x90\x80\x80", "\xE2\x82", "\x80",
                          "\xFF", "\xE0\x80\x80", "\xF0\x80\x80\x80"})
    CHECK(malformed_at(std::string("ab") + bad) == 2);
  CHECK(malformed_at("ab€°") == std::string_view::npos);
  CHECK(character_count("ab€°") == 4);
  CHECK(character_count("a\xFF\xFF") == 3);
  for (const char32_t code : {U'a', U'°', U'€', U'\U0001F6AA', U'\uFFFD'})
    CHECK(first_character(to_utf8(code)).code == code);
  CHECK(is_control(U'\n'));
  CHECK(is_control(0x7F));
  CHECK(is_control(0x202E));
  CHECK_FALSE(is_control(U'é'));
}
