// One bad file or more for every code, and a search of the sources for codes without one.
#include <array>
#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <regex>
#include <set>
#include <sstream>

#include "furniture.h"
#include "reading/symbol_reader.h"

using namespace reading_test;

namespace {

struct Bad {
  std::string code;
  std::string text;
  std::string_view underlined;  // what the carets stand under; "" when it isn't checked
};

std::string in_crate(const std::string& more) { return file_with(crate(more)); }
std::string in_sizes(const std::string& sizes) { return file_with(crate(""), sizes); }
std::string plank(const std::string& more) {
  return "[stock.plank]\nkind = 'board'\nthickness = 1\n" + more;
}
std::string rack(const std::string& more) {
  return "[stock.plank.rack.a]\nlength = 8\nwidth = 3\n" + more;
}
std::string in_job(const std::string& job) {
  return "[job]\n" + job + "\n[stool.a]\nheight = 450\n";
}

std::string many_faults() {
  std::string text = file_with(crate(""));
  for (int i = 0; i < 300; ++i) text += "key" + std::to_string(i) + " = 1\n";
  return text;
}

std::vector<Bad> bad_projects() {
  const std::string day = "title = 'x'\ndate = 2026-03-02\n";
  const std::string wide(301, 'x');
  return {
      {"ambiguous-dash", in_crate("depth2 = 1\nsizes = [\"23-1/4\"]"), "23-1/4"},
      {"ambiguous-fraction", in_crate("sizes = [\"48 / 2/3\"]"), "2/3"},
      {"ambiguous-fraction", in_crate("sizes = [\"8/1/4\"]"), "8/1"},
      {"bad-date", in_job("title = 'x'\ndate = 2026-02-30"), ""},
      {"bad-date", in_job("title = 'x'\ndate = 12:61:00"), ""},
      {"bad-expression", in_crate("sizes = [\"2 * (3 + 4\"]"), ""},
      {"bad-expression", in_crate("sizes = [\"2 * / 4\"]"), "/"},
      {"bad-expression", in_crate("sizes = [\"2 + 4)\"]"), ")"},
      {"bad-expression", in_crate("sizes = [\"2 & 4\"]"), "&"},
      {"bad-expression", in_crate("sizes = [\"1.2.3\"]"), "1.2"},
      {"bad-expression", in_crate("sizes = [\"3 5/4\"]"), "3 5/4"},
      {"bad-expression", in_crate("sizes = [\"min(3)\"]"), "min(3)"},
      {"bad-expression", in_crate("sizes = [\"2 + abs\"]"), "abs"},
      {"bad-expression", in_crate("sizes = [\"2 +\"]"), ""},
      {"bad-expression", in_crate("sizes = ['2 + °']"), "°"},
      {"bad-expression",
       in_crate("sizes = ['" + std::string(40, '(') + "1" + std::string(40, ')') + "']"), "("},
      {"bad-header", file_with("[crate.body\ndepth = 1\n"), ""},
      {"bad-header", file_with("[]\n"), ""},
      {"bad-line", file_with("] = 3\n"), ""},
      {"bad-line", in_crate("sizes = [1, 2] 3"), ""},
      {"bad-list", in_crate("sizes = [96 1/2, 48]"), ""},
      {"bad-name", file_with("[stool.\"\"]\nheight = 1\n"), "\"\""},
      {"bad-name", file_with("[stool." + std::string(41, 'x') + "]\nheight = 1\n"), ""},
      {"bad-name", file_with("[stool.\"a\\nb\"]\nheight = 1\n"), ""},
      {"bad-name", in_crate("[crate.body.ledge.\"a\\tb\"]\ntop_at = 1\n"), ""},
      {"bad-number", in_job("number = 014\n" + day), ""},
      {"bad-number", in_crate("load = 1."), ""},
      {"bad-number", in_crate("load = .5"), ""},
      {"bad-number", in_crate("load = 99999999999999999999"), ""},
      {"bad-quotes", in_crate("remark = \"open"), ""},
      {"bad-quotes", in_crate("remark = 'open"), ""},
      {"bad-quotes", in_crate("remark = \"wrong \\q\""), ""},
      {"bad-size-name", in_sizes("top-height = 3"), "top-height"},
      {"bad-size-name", in_sizes("mm = 3"), "mm"},
      {"bad-size-name", in_sizes("sin = 3"), "sin"},
      {"bad-size-name", in_sizes("2nd = 3"), "2nd"},
      {"bad-table", file_with("[crate.body]\noutline = { bottom = 1,\n lean = [1, 2] }\n"), ""},
      {"bad-utf8", in_crate("remark = \"caf\xE9\""), ""},
      {"control-character", in_crate("remark = \"two\\nlines\""), "\"two\\nlines\""},
      {"control-character", in_crate("remark = \"turn \\u202E round\""), ""},
      {"decimal-comma", in_crate("sizes = [\"23,5\"]"), "23,5"},
      {"empty-text", in_crate("remark = \"\""), "\"\""},
      {"empty-text", in_crate("sizes = [\" \"]"), ""},
      {"expression-too-long", in_crate("sizes = [\"" + std::string(400, '1') + "\"]"), ""},
      {"file-too-large", "#" + std::string(reading::largest_file, 'x'), ""},
      {"missing-equals", in_crate("tea time = 1"), ""},
      {"missing-field", file_with("[crate.body]\noutline = { bottom = 1 }\nstock = 'panel'\n"),
       "[crate.body]"},
      {"missing-field", file_with("[crate.body]\noutline = { }\nstock = 'panel'\ndepth = 1\n"),
       "outline"},
      {"missing-name", file_with("[crate]\ndepth = 3\n"), "depth"},
      {"missing-name", file_with("[[crate]]\ndepth = 3\n"), ""},
      {"missing-name", in_crate("ledge = { top_at = 3 }"), "top_at"},
      {"missing-operator", file_with(crate("sizes = [\"2 width\"]"), "width = 3"), "width"},
      {"missing-operator", in_crate("sizes = [\"2 (3)\"]"), "("},
      {"missing-operator", in_crate("sizes = [\"2 mm 3 mm\"]"), "3 mm"},
      {"missing-size", file_with("[stock.thin]\nthickness = '1/4'\n" + crate("")), "[stock.thin]"},
      {"missing-table", "[stool.a]\nheight = 3\n", ""},
      {"missing-value", in_crate("load ="), ""},
      {"mixed-kinds", in_crate("sizes = [\"3 in + 4 deg\"]"), "3 in + 4 deg"},
      {"mixed-kinds", in_crate("sizes = [\"max(3 in, 1 in 6)\"]"), ""},
      {"mixed-kinds", in_crate("sizes = [\"3 in - 2 times\"]"), ""},
      {"nested-too-deep", "a = " + std::string(70, '[') + std::string(70, ']'), ""},
      {"no-such-value", in_crate("sizes = [\"sqrt(3 - 4)\"]"), ""},
      {"no-such-value", in_crate("load = \"tan(90 deg)\""), ""},
      {"no-such-value", in_crate("cant = \"asin(2)\""), ""},
      {"no-such-value", in_crate("cant = \"acos(-2)\""), ""},
      {"not-finite", in_crate("load = inf"), "inf"},
      {"not-finite", in_crate("load = nan"), "nan"},
      {"not-finite", in_sizes("width = -inf"), "-inf"},
      {"not-finite", in_sizes("width = 1e308"), "1e308"},
      {"not-whole", in_crate("count = 2.5"), "2.5"},
      {"not-whole", in_crate("count = \"5 / 2\""), ""},
      {"nothing-to-build", "[job]\n" + day, ""},
      {"not-on-a-face", file_with("[hardware.pin]\nat = [[1, 2]]\n" + crate("")), "[[1, 2]]"},
      {"counted-twice",
       file_with("[hardware.pin]\non = ['a']\nface = 'top'\nat = [[1, 2]]\ncount = 2\n" +
                 crate("")),
       "2"},
      {"hole-nowhere", file_with("[hardware.pin]\nhole = '5 mm'\n" + crate("")), "'5 mm'"},
      {"pack-without-price", file_with("[hardware.pin]\npack = 10\n" + crate("")), "10"},
      {"depth-of-nothing", file_with("[hardware.pin]\ndepth = '5 mm'\n" + crate("")), "'5 mm'"},
      {"missing-name", file_with("[[hardware]]\nwhat = 'knob'\n" + crate("")), ""},
      {"dry-over-damp", file_with("[room]\ndriest = 70\n" + crate("")), "70"},
      {"repeated-name", file_with("[glue_up]\norder = ['a', 'a']\n" + crate("")), "['a', 'a']"},
      {"unknown-species",
       file_with("[stock.thin]\nkind = 'board'\nthickness = 1\nspecies = 'ironwood'\n" + crate("")),
       "'ironwood'"},
      {"odd-fraction", in_job(day + "fraction = 24"), "24"},
      {"out-of-range", in_crate("sizes = [\"40 m\"]"), "\"40 m\""},
      {"out-of-range", in_crate("load = -1"), "-1"},
      {"out-of-range", in_crate("cant = \"46 deg\""), ""},
      {"out-of-range", file_with("[stool.a]\nheight = 0\n"), "0"},
      {"out-of-range", in_crate("plan = [[0, 1e9]]"), "1e9"},
      {"out-of-range", in_crate("load = 1e300"), "1e300"},
      {"repeated-key", in_crate("depth = 3"), ""},
      {"repeated-key", in_crate("[crate.body]"), ""},
      {"repeated-key", in_crate("[crate.body.outline.more]"), ""},
      {"repeated-name", in_crate("[stool.body]\nheight = 3"), "body"},
      {"size-cycle", in_sizes("a = \"b + 1\"\nb = \"2 * c\"\nc = \"a\""), "a"},
      {"size-cycle", in_sizes("a = \"a\""), "a"},
      {"text-too-long", in_crate("remark = \"" + wide + "\""), ""},
      {"too-large", file_with(crate("sizes = [\"w*w\"]"), "w = 1e300"), ""},
      {"too-many-faults", many_faults(), ""},
      {"unclosed-bracket", "x = [1, 2\n", ""},
      {"unknown-item", in_crate("beside = \"bdy\""), "\"bdy\""},
      {"unknown-key", in_crate("thicknes = 1"), "thicknes"},
      {"unknown-key", in_crate("[crate.body.ledge.a]\ntop_at = 1\nend = 'butt'"), "end"},
      {"unknown-name", in_crate("sizes = [\"2 * wdth\"]"), "wdth"},
      {"unknown-stock", file_with("[crate.a]\noutline.bottom = 1\ndepth = 1\nstock = 'plank'\n"),
       "'plank'"},
      {"unknown-table", file_with("[crates.a]\nx = 1\n"), "crates"},
      {"unknown-table", "width = 3\n" + in_crate(""), "width"},
      {"unknown-unit", in_crate("sizes = [\"23 inchs\"]"), "inchs"},
      {"unknown-word", in_crate("[crate.body.ledge.a]\ntop_at = 1\nends = 'glued'"), "'glued'"},
      {"unquoted-text", in_crate("load = 1/2"), "1/2"},
      {"unquoted-text", in_crate("load = 2,5"), "2,5"},
      {"unquoted-text", in_crate("lid = True"), "True"},
      {"unquoted-text", in_crate("sizes = 12\""), "12\""},
      {"wrong-kind", in_crate("sizes = [\"3 deg\"]"), "3 deg"},
      {"wrong-kind", in_crate("sizes = [\"10 %\"]"), "10 %"},
      {"wrong-kind", file_with(crate("sizes = [\"w*w\"]"), "w = 3"), "w*w"},
      {"wrong-kind", file_with(crate("sizes = [\"w/w\"]"), "w = 3"), "w/w"},
      {"wrong-kind", file_with(crate("load = \"w\""), "w = 3"), "w"},
      {"wrong-kind", file_with(crate("sizes = [\"sqrt(w)\"]"), "w = 3"), "w"},
      {"wrong-kind", in_crate("load = \"sin(3 in)\""), "3 in"},
      {"wrong-kind", in_sizes("a = \"2 in * 3 in\""), ""},
      {"wrong-kind", file_with(crate("sizes = [\"w*w*w*w*w\"]"), "w = 3"), "w*w*w*w*w"},
      {"wrong-check-figure",
       file_with("[approval]\nby = \"A\"\ndate = 2026-01-02\nsha256 = \"abc\"\n" + crate("")),
       "\"abc\""},
      {"wrong-size", file_with("[stock.thin]\nthickness = 1\nsize = [1, 2, 3]\n" + crate("")),
       "[1, 2, 3]"},
      {"wrong-size",
       file_with("[stock.thin]\nthickness = 1\nsize = [9, 9]\n"
                 "[stock.thin.off_cut.a]\nsize = [1]\n" +
                 crate("")),
       "[1]"},
      {"wrong-stock",
       file_with("[stock.thin]\nthickness = 1\nsize = [9, 9]\nrough = 2\n" + crate("")), "2"},
      {"wrong-stock", file_with(plank("[stock.plank.off_cut.a]\nsize = [1, 2]\n") + crate("")), ""},
      {"wrong-count", file_with(plank("widths = [9, 4]\n") + crate("")), "[9, 4]"},
      {"odd-defects", file_with(plank(rack("defects = [1, 2, 3]\n")) + crate("")), "[1, 2, 3]"},
      {"odd-defects", file_with(plank(rack("defects = [2, 1]\n")) + crate("")), "[2, 1]"},
      {"odd-defects", file_with(plank(rack("defects = [7, 9]\n")) + crate("")), "[7, 9]"},
      {"odd-defects", file_with(plank(rack("count = 2\ndefects = [1, 2]\n")) + crate("")), "2"},
      {"lonely-match", file_with(plank("[stock.plank.match.a]\nparts = ['x']\n") + crate("")),
       "['x']"},
      {"missing-rate", file_with("[buying.work.planing]\nhours = 3\n" + crate("")), ""},
      {"wrong-type", in_crate("depth2 = 1\nload = true"), "true"},
      {"wrong-type", in_crate("remark = 3"), "3"},
      {"wrong-type", in_crate("lid = \"yes\""), "\"yes\""},
      {"wrong-type", in_crate("bought = \"2026-03-02\""), ""},
      {"wrong-type", in_crate("bought = 2026-03-02T10:00:00"), ""},
      {"wrong-type", in_crate("sizes = 3"), "3"},
      {"wrong-type", in_crate("plan = [[1, 2, 3]]"), "[1, 2, 3]"},
      {"wrong-type", in_crate("through = [1]"), "1"},
      {"wrong-type", in_crate("ledge = 3"), "3"},
      {"wrong-type", in_crate("[[crate.body.ledge]]\ntop_at = 3"), ""},
      {"wrong-type", file_with("[crate.a]\noutline = 3\ndepth = 1\nstock = 'panel'\n"), "3"},
      {"wrong-type", in_sizes("width = true"), "true"},
      {"wrong-type", "job = 3\n", "job"},
      {"wrong-type", in_crate("[crate.body.ledge.a]\ntop_at = 1\nends = 3"), "3"},
      {"zero-division", in_crate("sizes = [\"3 / (2 - 2)\"]"), "("},
      {"zero-division", in_crate("sizes = [\"3/0\"]"), "3/0"},
      {"zero-division", in_crate("cant = \"1 in 0\""), "1 in 0"},
  };
}

constexpr std::array<model::PageKind, 2> page_kinds{
    {{"labels", ""}, {"checks", "carries cautions"}}};

std::vector<Bad> bad_styles() {
  return {{"lines-too-alike", "wide = 0.3\n", "0.3"},
          {"tones-out-of-order", "tone_mid = 0.99\n", "0.99"},
          {"out-of-range", "figures = 2.4\n", "2.4"},
          {"unknown-word", "leave_out = [\"labels\", \"lables\"]\n", "\"lables\""},
          {"page-kept", "leave_out = [\"labels\", \"checks\"]\n", "\"checks\""},
          {"repeated-name", "leave_out = [\"labels\",\n  \"labels\"]\n", "\"labels\""},
          {"wrong-type", "leave_out = \"labels\"\n", "\"labels\""},
          {"unknown-word", "paper = \"a5\"\n", "\"a5\""},
          {"bad-symbol-path", "[symbols]\ntriangle = \"/etc/sign.svg\"\n", "\"/etc/sign.svg\""},
          {"bad-symbol-path", "[symbols]\nshop = \"../sign.svg\"\n", "\"../sign.svg\""},
          {"bad-symbol-path", "[symbols]\nshop = \"a/../../sign.svg\"\n", ""},
          {"bad-symbol-path", "[symbols]\nshop = \"a//sign.svg\"\n", ""},
          {"bad-symbol-path", "[symbols]\nshop = 'a\\..\\sign.svg'\n", ""},
          {"bad-symbol-path", "[symbols]\nface_side = \"sign.png\"\n", "\"sign.png\""}};
}

std::string sign(const std::string& inside) {
  return "<svg viewBox=\"0 0 10 10\">\n" + inside + "\n</svg>";
}

std::vector<Bad> bad_symbols() {
  std::string nested = "<circle r='1'/>";
  for (int i = 0; i < 20; ++i) nested = "<g>" + nested + "</g>";
  return {
      {"bad-xml", sign("<g>"), ""},
      {"bad-xml", "", ""},
      {"bad-xml", "<svg viewBox='0 0 1 1'/>\n<svg/>", ""},
      {"unknown-instruction", "<!DOCTYPE svg [<!ENTITY a \"b\">]>\n" + sign(""), ""},
      {"unknown-instruction", "<?xml-stylesheet href='a.css'?>\n" + sign(""), ""},
      {"not-svg", "<html/>", "html"},
      {"nothing-drawn", sign("<g/>"), ""},
      {"missing-attribute", "<svg/>", "svg"},
      {"missing-attribute", sign("<circle cx='1'/>"), "circle"},
      {"missing-attribute", sign("<path fill='none'/>"), "path"},
      {"bad-attribute", "<svg viewBox=\"0 0 10\"/>", "viewBox"},
      {"bad-attribute", "<svg viewBox=\"0 0 0 10\"/>", "viewBox"},
      {"bad-attribute", "<svg viewBox=\"0 0 1 99\"/>", "viewBox"},
      {"bad-attribute", "<svg viewBox=\"0 0 inf 10\"/>", "viewBox"},
      {"bad-attribute", "<svg xmlns='other' viewBox='0 0 1 1'/>", "xmlns"},
      {"bad-attribute", sign("<rect width='3px' height='2'/>"), "width"},
      {"bad-attribute", sign("<rect width='3' height='2' rx='-1'/>"), "rx"},
      {"bad-attribute", sign("<circle r='0'/>"), "r"},
      {"bad-attribute", sign("<polygon points='1 2 3'/>"), "points"},
      {"bad-attribute", sign("<rect fill='red' width='3' height='2'/>"), "fill"},
      {"bad-attribute", sign("<rect fill='#010203' width='3' height='2'/>"), "fill"},
      {"bad-attribute", sign("<rect fill='url(#a)' width='3' height='2'/>"), "fill"},
      {"bad-attribute", sign("<g stroke-width='-1'/>"), "stroke-width"},
      {"bad-attribute", sign("<g stroke-linecap='butt'/>"), "stroke-linecap"},
      {"bad-attribute", sign("<line x2='5' stroke='black' stroke-width='11'/>"), "line"},
      {"bad-path", sign("<path d='M1 1 W'/>"), "d="},
      {"bad-transform", sign("<g transform='skewX(3)'/>"), "transform"},
      {"bad-transform", sign("<g transform='scale(1 2 3)'/>"), "transform"},
      {"uneven-stroke", sign("<line x2='1' stroke='black' transform='scale(1 2)'/>"), "line"},
      {"needs-even-odd", sign("<path d='M1 1H9V9Z'/>"), "path"},
      {"outside-view-box", sign("<circle r='1'/>"), "circle"},
      {"outside-view-box", sign("<path d='M1 1C0 30 9 30 9 9' fill='none' stroke='black'/>"),
       "path"},
      {"unknown-element", sign("<image href='a.png'/>"), "image"},
      {"unknown-element", sign("<linearGradient id='a'/>"), "linearGradient"},
      {"unknown-element", sign("<script>1</script>"), ""},
      {"unknown-element", sign("<style>a</style>"), ""},
      {"unknown-element", sign("<use href='#a'/>"), "use"},
      {"unknown-element", sign("<circle cx='5' cy='5' r='1'><animate/></circle>"), "animate"},
      {"unknown-attribute", sign("<circle cx='5' cy='5' r='1' style='fill:none'/>"), "style"},
      {"unknown-attribute", sign("<g onclick='a()'/>"), "onclick"},
      {"unknown-attribute", sign("<g xml:base='http://example.org'/>"), "xml:base"},
      {"bad-xml", sign("<circle cx='5' cy='5' r='1' r='2'/>"), ""},
      {"stray-text", sign("<g>words</g>"), ""},
      {"stray-text", sign("<g><![CDATA[words]]></g>"), ""},
      {"too-much-drawn", sign(nested), ""},
      {"file-too-large", sign(std::string(reading::largest_symbol, ' ')), ""},
      {"bad-utf8", sign("<!-- caf\xE9 -->"), ""},
      {"control-character", sign("<!-- \x01 -->"), "\x01"},
  };
}

// Attributes of SVG that look like codes.
const std::set<std::string> words_of_svg{"stroke-width", "fill-rule", "stroke-linecap",
                                         "stroke-linejoin"};

std::string line_of(const std::string& text, int number) {
  std::istringstream lines(text);
  std::string line;
  for (int i = 0; i < number; ++i) std::getline(lines, line);
  return line;
}

void check_bad(const Bad& bad, const std::vector<Diagnostic>& diagnostics) {
  const Diagnostic* found = nullptr;
  for (const Diagnostic& d : diagnostics)
    if (d.code == bad.code) found = &d;
  std::string seen;
  for (const Diagnostic& d : diagnostics) seen += describe(d, "bad", bad.text);
  if (seen.size() > 4000) seen.resize(4000);
  INFO(bad.code << " in:\n" << bad.text.substr(0, 2000) << "\nseen:\n" << seen);
  CHECK(found != nullptr);
  if (found == nullptr) return;
  CHECK_FALSE(found->found.empty());
  const std::string line = line_of(bad.text, found->span.line);
  if (found->span.line > 0) CHECK(found->span.column <= static_cast<int>(line.size()) + 1);
  if (bad.underlined.empty()) return;
  const auto column = static_cast<std::size_t>(found->span.column);
  CHECK(line.substr(column - 1, bad.underlined.size()) == bad.underlined);
  CHECK(found->span.length <= static_cast<int>(bad.underlined.size()));
}

}  // namespace

TEST_CASE("every bad file is refused with its code, in its place") {
  for (const Bad& bad : bad_projects()) {
    const auto reading = read(bad.text);
    CHECK_FALSE(reading.project);
    check_bad(bad, reading.diagnostics);
  }
  for (const Bad& bad : bad_styles()) {
    const auto reading = reading::read_style(bad.text, "bad", page_kinds);
    CHECK_FALSE(reading.style);
    check_bad(bad, reading.diagnostics);
  }
  for (const Bad& bad : bad_symbols()) {
    const auto reading = reading::read_symbol(bad.text);
    CHECK_FALSE(reading.symbol);
    check_bad(bad, reading.diagnostics);
  }
}

TEST_CASE("every code of the sources has a bad file") {
  std::set<std::string> provoked;
  for (const Bad& bad : bad_projects()) provoked.insert(bad.code);
  for (const Bad& bad : bad_styles()) provoked.insert(bad.code);
  for (const Bad& bad : bad_symbols()) provoked.insert(bad.code);
  const std::regex word("\"([a-z0-9]+(-[a-z0-9]+)+)\"");
  std::size_t files = 0;
  std::set<std::string> coded;
  for (const char* folder : {"/src/reading", "/src/model"})
    for (const auto& entry :
         std::filesystem::directory_iterator(std::string(SPLAYBOOK_SOURCE_DIR) + folder)) {
      if (entry.path().extension() != ".cpp") continue;
      ++files;
      std::ifstream in(entry.path());
      const std::string text((std::istreambuf_iterator<char>(in)), {});
      for (std::sregex_iterator match(text.begin(), text.end(), word), end; match != end; ++match)
        if (!words_of_svg.contains((*match)[1])) coded.insert((*match)[1]);
    }
  CHECK(files > 10);
  CHECK(coded.size() > 40);
  for (const std::string& code : coded) {
    INFO(code);
    CHECK(provoked.contains(code));
  }
  for (const std::string& code : provoked) {
    INFO(code);
    CHECK(coded.contains(code));
  }
}

TEST_CASE("at most 200 faults are listed, and then how many more") {
  const auto reading = read(many_faults());
  REQUIRE(reading.diagnostics.size() == 201);
  CHECK(reading.diagnostics[0].found == "unknown key \"key0\" in [crate.body]");
  CHECK(reading.diagnostics[199].found == "unknown key \"key199\" in [crate.body]");
  CHECK(reading.diagnostics[200].found == "100 more faults are not listed");
}

TEST_CASE("a fault of one size is told once, not where the size is used") {
  const auto reading =
      read(file_with(crate("sizes = [\"a\", \"b\"]"), "a = \"1 / 0\"\nb = \"a + 1\""));
  REQUIRE(reading.diagnostics.size() == 1);
  CHECK(reading.diagnostics[0].code == "zero-division");
}

TEST_CASE("a cycle names its sizes") {
  const auto reading = read(file_with(crate("sizes = [\"far\"]"),
                                      "far = \"a\"\na = \"b + 1\"\nb = \"2 * c\"\nc = \"a / 2\""));
  REQUIRE(reading.diagnostics.size() == 1);
  CHECK(reading.diagnostics[0].found == "sizes go round in a circle: a -> b -> c -> a");
  CHECK(reading.diagnostics[0].span == SourceSpan{7, 1, 1});
}

TEST_CASE("a table checks itself only when its fields are sound") {
  CHECK(has_code(read(file_with(crate("count = 13"))), "unlucky-count"));
  CHECK_FALSE(has_code(read(file_with(crate("count = 13\noops = 1"))), "unlucky-count"));
}
