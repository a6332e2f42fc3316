// Styles from outside: files of signs and where they may lie, pages left out, archives of both.
#include <catch2/catch.hpp>
#include <fstream>
#include <nlohmann/json.hpp>

#include "program/run.h"
#include "writers/files.h"

using namespace splay;

namespace {

namespace fs = std::filesystem;

constexpr const char* good_sign =
    "<svg viewBox='0 0 24 24' fill='none' stroke='black' stroke-width='3'>\n"
    "  <polygon points='2 21 12 3 22 21'/>\n</svg>\n";

// The stool with a style of its own beside it.
struct Shop {
  test::Folder folder;
  std::string file = folder / "stool.toml", out = folder / "out";
  explicit Shop(const std::string& style) {
    test::save(file, test::bytes(test::project("splayed-stool")));
    test::save(folder / "styles/own.toml", style);
  }
  void sign(const std::string& name, const std::string& text) const {
    test::save(folder / ("styles/" + name), text);
  }
  test::Run print(const std::string& more = "") const {
    return test::run(test::program() + " print " + file + " --style own --out " + out + " " + more);
  }
  std::string words(const std::string& whom = "shop") const {
    return test::run("pdftotext -layout " + out + "/stool-A-" + whom + ".pdf -").output;
  }
};

}  // namespace

TEST_CASE("a style's signs are printed, and its pages left out, from a folder beside the project") {
  const Shop shop(
      "paper = \"letter\"\nleave_out = [\"signs\", \"client-materials\"]\n[symbols]\n"
      "triangle = \"marks/triangle.svg\"\nshop = \"mark.svg\"\n");
  shop.sign("marks/triangle.svg", good_sign);
  shop.sign("mark.svg", good_sign);
  const test::Run run = shop.print();
  INFO(run.output);
  REQUIRE(run.status == 0);
  CHECK_FALSE(test::has(run, "drawing hand failed"));
  CHECK(shop.words().find("Signs and words") == std::string::npos);
  CHECK(shop.words().find("Checks and cautions") != std::string::npos);
  const bool said = test::bytes(shop.file).find("\npaper") != std::string::npos;
  const test::Run info = test::run("pdfinfo " + shop.out + "/stool-A-shop.pdf");
  if (!said) CHECK(test::has(info, "612 x 792"));
  REQUIRE(shop.print("--for client --paper A4").status == 0);
  CHECK(shop.words("client").find("Materials and finish") == std::string::npos);
  CHECK(test::has(test::run("pdfinfo " + shop.out + "/stool-A-client.pdf"), "(A4)"));
}

TEST_CASE("what a style may not leave out is refused at its place, and nothing is printed") {
  const Shop shop("wide = 0.5\nleave_out = [\"labels\", \"checks\"]\n");
  const test::Run run = shop.print();
  INFO(run.output);
  CHECK(run.status != 0);
  CHECK(test::has(run, "own.toml:2:24"));
  CHECK(test::has(run, "\"checks\" can't be left out: it carries cautions"));
  CHECK_FALSE(fs::exists(shop.out));
  test::save(shop.folder / "styles/own.toml", "leave_out = [\"lables\"]\n");
  CHECK(test::has(shop.print(), "did you mean \"labels\"?"));
}

TEST_CASE("signs are read from the style's own folder and from nowhere else") {
  const auto refused = [](const Shop& shop, const std::string& why) {
    const test::Run run = shop.print();
    INFO(run.output);
    CHECK(run.status != 0);
    CHECK(test::has(run, "own.toml:2:8"));
    CHECK(test::has(run, why));
    CHECK_FALSE(fs::exists(shop.out));
  };
  for (const char* path : {"../secret.svg", "/etc/secret.svg", "marks/../../secret.svg",
                           "./secret.svg", "marks//a.svg", "C:secret.svg"}) {
    const Shop shop(std::string("[symbols]\nshop = \"") + path + "\"\n");
    test::save(shop.folder / "secret.svg", good_sign);
    refused(shop, "is no SVG file below the style's folder");
  }
  const Shop shop("[symbols]\nshop = \"mark.svg\"\n");
  const std::string mark = shop.folder / "styles/mark.svg";
  refused(shop, "No such file");
  fs::create_directory(mark);
  refused(shop, "mark.svg");
  fs::remove(mark);
  test::save(shop.folder / "secret.svg", good_sign);
  fs::create_symlink("../secret.svg", mark);
  refused(shop, "lies elsewhere than the style");
  fs::remove(mark);
  fs::create_symlink(mark, mark);
  refused(shop, "mark.svg");
  fs::remove(mark);
  // A folder that is a link leads out just as well.
  test::save(shop.folder / "styles/own.toml", "[symbols]\nshop = \"marks/secret.svg\"\n");
  fs::create_directory_symlink("..", shop.folder / "styles/marks");
  refused(shop, "lies elsewhere than the style");
  // A link to a file below the folder is good.
  test::save(shop.folder / "styles/own.toml", "[symbols]\nshop = \"mark.svg\"\n");
  shop.sign("deep/real.svg", good_sign);
  fs::create_symlink("deep/real.svg", mark);
  CHECK(shop.print().status == 0);
}

TEST_CASE("a sign that can't be drawn is told by the style's place and by its own") {
  const Shop shop("[symbols]\nshop = \"mark.svg\"\n");
  shop.sign("mark.svg", "<svg viewBox='0 0 9 9'>\n\n  <text>A</text>\n  <g blur='1'/>\n</svg>\n");
  const test::Run run = shop.print();
  INFO(run.output);
  CHECK(run.status != 0);
  CHECK(test::has(run, "own.toml:2:8"));
  CHECK(test::has(run, "mark.svg:3:"));
  CHECK(test::has(run, "the element text"));
  CHECK(test::has(run, "mark.svg:4:6"));
  CHECK(test::has(run, "the attribute blur of g"));
  shop.sign("mark.svg", std::string((1u << 18) + 9, ' '));
  CHECK(test::has(shop.print(), "bytes"));
}

TEST_CASE("an archive holds the signs it was printed with, and is printed again from them") {
  const Shop shop("[symbols]\nface_side = \"marks/face.svg\"\nshop = \"mark.svg\"\n");
  shop.sign("marks/face.svg", good_sign);
  shop.sign("mark.svg", good_sign);
  const test::Run run = shop.print("--for archive");
  INFO(run.output);
  REQUIRE(run.status == 0);
  const std::string place = shop.out + "/stool-A-archive";
  CHECK(test::bytes(place + "/style-own-marks-face.svg") == good_sign);
  CHECK(test::bytes(place + "/style-own-mark.svg") == good_sign);
  const auto manifest = nlohmann::json::parse(test::bytes(place + "/manifest.json"));
  CHECK(manifest["made_from"]["symbols"]["client"]["marks/face.svg"] == "style-own-marks-face.svg");
  CHECK(manifest["sha256"].contains("style-own-mark.svg"));
  CHECK(test::run("cd " + place + " && sha256sum --strict -c manifest.sha256").status == 0);
  // What lies beside the project no longer counts.
  fs::remove_all(shop.folder / "styles");
  for (const char* ending : {"", ".zip"}) {
    const test::Run check = test::run(test::program() + " check " + place + ending);
    INFO(check.output);
    CHECK(check.status == 0);
    CHECK(test::has(check, "every byte the same"));
  }
  fs::remove(place + "/style-own-mark.svg");
  CHECK(test::has(test::run(test::program() + " check " + place), "style-own-mark.svg: missing"));
}

TEST_CASE("a style's typeface is what the pages are set in, and one that is not there is told") {
  const Shop shop("typeface = \"DejaVu Sans Condensed\"\n");
  const test::Run run = shop.print("--for archive");
  INFO(run.output);
  REQUIRE(run.status == 0);
  const std::string place = shop.out + "/stool-A-archive";
  const test::Run used = test::run("pdffonts " + place + "/stool-A-shop.pdf");
  CHECK(test::has(used, "DejaVuSansCondensed-Bold"));
  CHECK_FALSE(test::has(used, "Liberation"));
  const test::Run again = test::run(test::program() + " check " + place);
  CHECK(test::has(again, "every byte the same"));
  CHECK_FALSE(test::has(again, "Not the tools"));

  test::save(shop.folder / "styles/own.toml", "\ntypeface = \"No Such Letters\"\n");
  const test::Run refused = shop.print();
  CHECK(refused.status != 0);
  CHECK(test::has(refused, "own.toml:2:12"));
  CHECK(test::has(refused, "no TrueType font \"No Such Letters\" (upright) is installed"));
  CHECK(test::has(refused, "fc-list : family"));
}

TEST_CASE("a style's fields are explained") {
  const test::Run run = test::run(test::program() + " explain style");
  CHECK(run.status == 0);
  for (const char* word : {"leave_out", "\"cut-list\"", "\"client-price\"", "paper", "symbols"})
    CHECK(test::has(run, word));
  CHECK(test::has(test::run(test::program() + " explain style.symbols"), "the maker's own mark"));
}
