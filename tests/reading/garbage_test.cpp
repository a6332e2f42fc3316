// Nothing a file can hold makes the reader crash, throw or take for ever.
#include <catch2/catch.hpp>
#include <random>

#include "base/utf8.h"
#include "furniture.h"
#include "reading/expression.h"

using namespace reading_test;

namespace {

void check_sane(const reading::ProjectReading& reading) {
  CHECK(reading.project.has_value() == reading.diagnostics.empty());
  CHECK(reading.diagnostics.size() <= 201);
  int line = 0;
  for (const Diagnostic& d : reading.diagnostics) {
    CHECK(d.span.line >= line);
    line = d.span.line;
    CHECK(d.span.length >= 1);
    CHECK_FALSE(d.found.empty());
  }
}

std::string sound_file() {
  return file_with(
      crate("cant = \"12 deg\"\nplan = [[0, 0], [\"w / 2\", 3]]\nthrough = ['a', \"b\"]\n"
            "[crate.body.ledge.upper]\ntop_at = \"9 3/4\"\nends = 'housed'"),
      "w = 48\nv = \"w - 2*(3/8 in)\"");
}

}  // namespace

TEST_CASE("random bytes are refused, not feared") {
  std::mt19937 random(3);
  for (int i = 0; i < 3000; ++i) {
    std::string text(random() % 200, ' ');
    for (char& c : text) c = static_cast<char>(random() % 256);
    const auto reading = read(text);
    CHECK_FALSE(reading.project);
    check_sane(reading);
    CHECK(malformed_at(all_text(reading, text)) == std::string::npos);
  }
}

TEST_CASE("random TOML-like texts are refused, not feared") {
  const std::vector<std::string> words{"[",
                                       "]",
                                       "{",
                                       "}",
                                       "=",
                                       ",",
                                       ".",
                                       "\"",
                                       "'",
                                       "\n",
                                       "#",
                                       "\\",
                                       " ",
                                       "12",
                                       "23 1/4",
                                       "inf",
                                       "nan",
                                       "[job]\n",
                                       "title",
                                       "date",
                                       "crate",
                                       "body",
                                       "stock",
                                       "[[",
                                       "]]",
                                       "\"\"\"",
                                       "'''",
                                       "width",
                                       "1e308",
                                       "\"w*w\"",
                                       "true",
                                       "\t",
                                       "2026-03-02",
                                       "[sizes]\n",
                                       "a=\"b\"\n",
                                       "b=\"a\"\n",
                                       "[crate.body]\n",
                                       "[stock.panel]\n",
                                       "outline={bottom=1}\n",
                                       "ledge.a.top_at=1\n",
                                       "\r\n",
                                       "\xC2\xB0"};
  std::mt19937 random(5);
  for (int i = 0; i < 6000; ++i) {
    std::string text;
    const std::size_t count = random() % 40;
    for (std::size_t n = 0; n < count; ++n) text += words[random() % words.size()];
    check_sane(read(text));
  }
}

TEST_CASE("a sound file with random damage is read or refused") {
  const std::string sound = sound_file();
  REQUIRE(read(sound).project);
  std::mt19937 random(9);
  for (int i = 0; i < 6000; ++i) {
    std::string text = sound;
    for (std::size_t n = 1 + random() % 3; n > 0; --n) {
      const std::size_t at = random() % text.size();
      switch (random() % 3) {
        case 0:
          text[at] = static_cast<char>(random() % 128);
          break;
        case 1:
          text.erase(at, 1 + random() % 8);
          break;
        default:
          text.insert(at, text.substr(random() % text.size(), random() % 12));
      }
      if (text.empty()) text = " ";
    }
    const auto reading = read(text);
    check_sane(reading);
    for (const Diagnostic& d : reading.diagnostics) CHECK_FALSE(describe(d, "x", text).empty());
  }
}

TEST_CASE("random expressions give a number or a trouble within the text") {
  const std::string letters = "0123456789 ./+-*()%',\"aw mincosqrtdegft\t\xC2\xB0\xBD";
  const reading::Sizes sizes{{"w", reading::Amount{48, reading::length_kind}},
                             {"a", reading::Amount{0.2, reading::angle_kind}}};
  reading::Evaluator evaluator(Unit::inch);
  std::mt19937 random(13);
  int values = 0;
  for (int i = 0; i < 60000; ++i) {
    std::string text(random() % 14, ' ');
    for (char& c : text) c = letters[random() % letters.size()];
    try {
      const reading::Amount amount = evaluator.evaluate(text, sizes);
      CHECK(std::isfinite(amount.value));
      ++values;
    } catch (const reading::Trouble& trouble) {
      CHECK(trouble.at <= text.size());
      CHECK_FALSE(trouble.code.empty());
    }
  }
  CHECK(values > 100);
}

TEST_CASE("the longest formula that is allowed can be computed") {
  reading::Evaluator evaluator(Unit::inch);
  const reading::Sizes sizes{{"w", reading::Amount{48, reading::length_kind}}};
  for (const std::string part : {"2+", "w/w*", "w-2+", "2/", "-(", "abs(", "1 mm+", "min(w,2)+"}) {
    std::string text;
    while (text.size() + part.size() + 1 <= reading::longest_text) text += part;
    text += 'w';
    try {
      evaluator.evaluate(text, sizes);
    } catch (const reading::Trouble&) {
      // refused with a place; anything else fails the test
    }
  }
  std::string sum;
  while (sum.size() < reading::longest_text - 2) sum += "2+";
  CHECK(evaluator.evaluate(sum + "w", sizes).kind == reading::length_kind);
}

TEST_CASE("deep nesting is refused before it is parsed") {
  const int deep = 100000;
  std::string dots = "a";
  std::string header = "[a";
  std::string inline_tables;
  for (int i = 0; i < deep; ++i) {
    dots += ".a";
    header += ".a";
    inline_tables += "{a=";
  }
  for (const std::string& text :
       {dots + " = 1\n", header + "]\n", "x = " + std::string(deep, '[') + "\n",
        "x = " + inline_tables, "x = [\n" + std::string(deep, '[') + "\n", "[[" + dots + "]]\n",
        "x.y = { " + dots + " = 1 }",
        "[" + dots.substr(0, 79) + "]\n" + dots.substr(0, 79) + "=1"}) {
    const auto reading = read(text);
    REQUIRE(reading.diagnostics.size() == 1);
    CHECK(reading.diagnostics[0].code == "nested-too-deep");
  }
}

TEST_CASE("brackets and dots in texts and remarks are not nesting") {
  const std::string many(200, '[');
  const std::string dots(200, '.');
  const auto reading =
      read(file_with(crate("remark = \"" + many + "\\\"" + many.substr(0, 20) + "\" # " + many +
                           "\nthrough = ['" + dots + "', '''" + many + "''', \"\"\"" + many +
                           "\"\"\"]\nload = 1.5\nplan = [[0.5, 0.5], [0.25, 0.75]]")));
  INFO(all_text(reading, ""));
  CHECK(reading.project);
}

TEST_CASE("four megabytes are read or refused") {
  const auto filled = [](const std::string& head, const std::string& line) {
    std::string text = head;
    for (int i = 0; text.size() + line.size() + 16 < reading::largest_file; ++i)
      text += line + std::to_string(i) + " = 1\n";
    return text;
  };
  for (const std::string& text :
       {filled(file_with("[crate.body]\n"), "k"), filled("[job]\n[sizes]\n", "w"),
        filled("", "[stool.a]\n#"), filled("", "\"w"), filled(file_with("[stool]\n"), "a"),
        "x = \"" + std::string(reading::largest_file - 10, 'x') + "\"\n",
        std::string(reading::largest_file, '\n'), std::string(reading::largest_file, '['),
        std::string(reading::largest_file, '"'), std::string(reading::largest_file, '=')}) {
    const auto reading = read(text);
    check_sane(reading);
    CHECK_FALSE(reading.project);
    CHECK(all_text(reading, "").size() < 1000000);
  }
}

TEST_CASE("a chain of many sizes needs no deep stack") {
  std::string sizes = "s0 = 1\n";
  for (int i = 30000; i > 0; --i)
    sizes += "s" + std::to_string(i) + " = \"s" + std::to_string(i - 1) + "\"\n";
  CHECK(read(file_with(crate("sizes = [\"s30000\"]"), sizes)).project);
  const auto round = read(file_with(crate(""), sizes + "t = \"u\"\nu = \"t\"\n"));
  REQUIRE(round.diagnostics.size() == 1);
  CHECK(round.diagnostics[0].code == "size-cycle");
}
