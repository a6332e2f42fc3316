#include "ink/fonts.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>
#include <stdexcept>

#include "ink/font_face.h"
#include "ink/font_files.h"

using namespace splay;
using namespace splay::ink;

TEST_CASE("the faces are found, with their versions") {
  const FontSet fonts;
  REQUIRE(fonts.files().size() == 4);
  for (const FontSet::File& file : fonts.files()) {
    CHECK(!file.path.empty());
    CHECK(file.version.find_first_of("0123456789") != std::string::npos);
  }
  CHECK(fonts.files()[0].family == "Liberation Sans Narrow");
  CHECK(fonts.files()[3].family == "DejaVu Sans Condensed");
}

TEST_CASE("a family that is not installed is named, and where to get it") {
  try {
    find_font_files({{"No Such Family Here", Cut::bold, "fonts-invented"}});
    FAIL("a font was put in its place");
  } catch (const std::runtime_error& error) {
    const std::string text = error.what();
    CHECK(text.find("No Such Family Here") != std::string::npos);
    CHECK(text.find("bold") != std::string::npos);
    CHECK(text.find("fonts-invented") != std::string::npos);
  }
}

TEST_CASE("the height of a text is the height of its capitals, in every face and font") {
  const FontSet fonts;
  for (const Face face : {Face::regular, Face::bold, Face::italic}) {
    for (const Run& run : fonts.runs("H∠", 5, face)) {
      const FontFace file(fonts.files()[static_cast<std::size_t>(run.font)].path);
      const GlyphMeasure capital = file.measure(file.glyph_of(U'H'));
      CHECK(capital.high * run.size / 1000 == Approx(5));
    }
  }
  const std::vector<Vec2> box = fonts.box({.at = {10, 20}, .utf8 = "HEIGHT", .height = 3.5});
  CHECK(box[0].y == Approx(20).margin(0.06));  // the round of the G dips under the base line
  CHECK(box[2].y - 20 == Approx(3.5).margin(0.06));
  CHECK(fonts.box({.at = {0, 0}, .utf8 = "gauge", .height = 3.5})[0].y < -0.5);
}

TEST_CASE("figures are tabular") {
  const FontSet fonts;
  for (const Face face : {Face::regular, Face::bold, Face::italic})
    for (char digit = '0'; digit <= '9'; ++digit)
      CHECK(fonts.width(std::string(1, digit), 2.5, face) == fonts.width("0", 2.5, face));
}

TEST_CASE(
    "what the trade writes can be drawn, and a missing letter is taken from the second face") {
  const FontSet fonts;
  CHECK(fonts.can_draw("37.50° ⌀8 ∠ ▲ △ ← → ↑ ↓ 12″ 3′ × – — ½ ¼ ¾ ⅛ ⅜ ⅝ ⅞ ± ≤ ≥ □ ☐ ✓ é ß ø"));
  const std::vector<Run> runs = fonts.runs("a⌀b", 2.5, Face::bold);
  REQUIRE(runs.size() == 3);
  CHECK(runs[0].font == 1);
  CHECK(runs[1].font == 3);
  CHECK(runs[1].utf8 == "⌀");
  CHECK(runs[1].characters == U"⌀");
  CHECK(runs[2].font == 1);
}

TEST_CASE("text that can't be drawn is refused by name") {
  const FontSet fonts;
  const auto refusal = [&](std::string_view text) -> std::string {
    try {
      fonts.runs(text, 2.5, Face::regular);
    } catch (const std::invalid_argument& error) {
      return error.what();
    }
    return "";
  };
  CHECK(refusal("\xC3").find("UTF-8") != std::string::npos);
  CHECK(refusal("\xC0\x80").find("UTF-8") != std::string::npos);
  CHECK(refusal("a\nb").find("U+000A") != std::string::npos);
  CHECK(refusal(std::string_view("a\0b", 3)).find("U+0000") != std::string::npos);
  CHECK(refusal("漢").find("U+6F22 \"漢\"") != std::string::npos);
  CHECK(refusal("\xF0\x9F\xAA\x9A").find("U+1FA9A") != std::string::npos);
  CHECK(refusal("שלום").find("U+05E9") != std::string::npos);
  CHECK(!fonts.can_draw("a\tb"));
  CHECK(!fonts.can_draw("漢"));
  CHECK_THROWS_AS(fonts.width("漢", 1), std::invalid_argument);
}

TEST_CASE("a width is the sum of the advances and grows with the height") {
  const FontSet fonts;
  const std::string text = "Side ∠ 12.5° left";
  double sum = 0;
  for (const Run& run : fonts.runs(text, 2.5, Face::regular))
    for (const double advance : run.advances) sum += advance;
  CHECK(fonts.width(text, 2.5) == Approx(sum).epsilon(1e-12));
  CHECK(fonts.width(text, 5) == Approx(2 * sum).epsilon(1e-12));
  CHECK(fonts.width("", 5) == 0);
}

TEST_CASE("advances are whole thousandths of the em, rounded down") {
  const FontSet fonts;
  const Run run = fonts.runs("0", 1, Face::regular).front();
  CHECK(fonts.advance(0, run.glyphs[0]) == 934 * 1000 / 2048);
  CHECK(run.advances[0] == Approx(456 * run.size / 1000));
}

TEST_CASE("the box of a turned and aligned text") {
  const FontSet fonts;
  const double width = fonts.width("Shelf", 2.5);
  const Text text{.at = {50, 60},
                  .utf8 = "Shelf",
                  .height = 2.5,
                  .turn = std::numbers::pi / 2,
                  .align = Align::right};
  const std::vector<Vec2> box = fonts.box(text);
  REQUIRE(box.size() == 4);
  CHECK(box[0].y == Approx(60 - width));
  CHECK(box[1].y == Approx(60));
  CHECK(box[3].x < 50 - 2.5 + 1e-9);
  const std::vector<PlacedRun> placed = fonts.place(text);
  REQUIRE(placed.size() == 1);
  CHECK(placed[0].at.x == Approx(50));
  CHECK(placed[0].at.y == Approx(60 - width));
}

TEST_CASE("runs of two fonts follow each other without a gap") {
  const FontSet fonts;
  const std::vector<PlacedRun> placed =
      fonts.place({.at = {10, 10}, .utf8 = "M8 ⌀ hole", .height = 2.5, .align = Align::centre});
  REQUIRE(placed.size() == 3);
  CHECK(placed[0].at.x == Approx(10 - fonts.width("M8 ⌀ hole", 2.5) / 2));
  CHECK(placed[1].at.x == Approx(placed[0].at.x + fonts.width("M8 ", 2.5)));
  CHECK(placed[2].at.x == Approx(placed[1].at.x + fonts.width("⌀", 2.5)));
}

TEST_CASE("the closure of a composite glyph holds its parts, however deep") {
  const FontSet fonts;
  for (int font = 0; font < 4; ++font) {
    const FontFace face(fonts.files()[static_cast<std::size_t>(font)].path);
    bool nested = false;
    for (char32_t c = 0xC0; c < 0x1F00; ++c) {
      const std::uint32_t glyph = face.glyph_of(c);
      if (glyph == 0) continue;
      const std::vector<std::uint32_t> whole = fonts.closure(font, {glyph});
      const auto holds = [&](std::uint32_t g) {
        return std::binary_search(whole.begin(), whole.end(), g);
      };
      REQUIRE(holds(0));
      REQUIRE(holds(glyph));
      for (const std::uint32_t part : face.components(glyph)) {
        REQUIRE(holds(part));
        for (const std::uint32_t inner : face.components(part)) {
          nested = true;
          REQUIRE(holds(inner));
        }
      }
    }
    if (font == 3) CHECK(nested);  // the face does hold such letters, so the loop has seen one
  }
}
