// print --for archive, check of an archive, and the index of finished jobs.
#include <algorithm>
#include <catch2/catch.hpp>
#include <fstream>
#include <nlohmann/json.hpp>

#include "program/run.h"
#include "writers/digest.h"
#include "writers/files.h"

using namespace splay;

namespace {

namespace fs = std::filesystem;

// The stool, archived.
struct Archived {
  test::Folder folder;
  std::string file = folder / "stool.toml", out = folder / "out";
  std::string text = test::bytes(test::project("splayed-stool"));
  std::string place = out + "/stool-A-archive";
  Archived() {
    test::save(file, text);
    const test::Run run = print();
    INFO(run.output);
    REQUIRE(run.status == 0);
  }
  test::Run print(const std::string& before = "") const {
    return test::run(before + test::program() + " print " + file + " --for archive --out " + out);
  }
  test::Run check(const std::string& ending = "") const {
    return test::run(test::program() + " check " + place + ending);
  }
  std::vector<std::string> names() const {
    std::vector<std::string> all;
    for (const auto& entry : fs::directory_iterator(out))
      all.push_back(entry.path().filename().string());
    std::ranges::sort(all);
    return all;
  }
  // Writes the sums anew, as somebody would who changes an archive on purpose.
  void write_sums() const {
    test::save(place + "/manifest.sha256",
               test::run("cd " + place +
                         " && sha256sum $(ls | LC_ALL=C sort | grep -v '^manifest.sha256$')")
                   .output);
  }
};

}  // namespace

TEST_CASE("an archive holds what was issued and what it was made from, whole for other tools") {
  const Archived it;
  CHECK(it.names() ==
        std::vector<std::string>{"jobs.csv", "stool-A-archive", "stool-A-archive.zip"});
  for (const char* name :
       {"stool.toml", "style-bench.toml", "style-client.toml", "stool-A-shop.pdf",
        "stool-A-client.pdf", "stool-A-cut-list.csv", "stool-A.json", "stool-A-part-B.svg",
        "stool-A-part-B.dxf", "manifest.json"})
    CHECK(fs::exists(it.place + "/" + name));
  CHECK(test::bytes(it.place + "/stool.toml") == it.text);
  const test::Run sums = test::run("cd " + it.place + " && sha256sum --strict -c manifest.sha256");
  INFO(sums.output);
  CHECK(sums.status == 0);
  CHECK(test::run("unzip -tq " + it.place + ".zip").status == 0);
  const std::string unpacked = it.folder / "unpacked";
  REQUIRE(test::run("unzip -q " + it.place + ".zip -d " + unpacked).status == 0);
  CHECK(test::run("diff -r " + it.place + " " + unpacked + "/stool-A").status == 0);
}

TEST_CASE("check proves an archive whole and prints it again byte for byte") {
  const Archived it;
  for (const char* ending : {"", ".zip"}) {
    const test::Run run = it.check(ending);
    INFO(run.output);
    CHECK(run.status == 0);
    CHECK(test::has(run, "every byte the same"));
    CHECK_FALSE(test::has(run, "Not the tools"));
  }
}

TEST_CASE("a changed, lost or added file of an archive is named") {
  const Archived it;
  const std::string list = it.place + "/stool-A-cut-list.csv", whole = test::bytes(list);
  std::string wrong = whole;
  wrong[wrong.size() / 2] ^= 1;
  test::save(list, wrong);
  CHECK(it.check().status == 1);
  CHECK(test::has(it.check(), "stool-A-cut-list.csv: not as it was archived"));
  fs::remove(list);
  CHECK(test::has(it.check(), "stool-A-cut-list.csv: missing"));
  test::save(list, whole);
  test::save(it.place + "/extra", "");
  CHECK(test::has(it.check(), "extra: not in the manifest"));
  std::string packed = test::bytes(it.place + ".zip");
  packed[packed.size() / 2] ^= 1;
  test::save(it.place + ".zip", packed);
  CHECK(it.check(".zip").status != 0);
}

TEST_CASE("other tools and other bytes than then are told") {
  const Archived it;
  auto manifest = nlohmann::ordered_json::parse(test::bytes(it.place + "/manifest.json"));
  manifest["made_with"]["versions"]["cairo"] = "0.9";
  manifest["made_with"]["fonts"][0]["sha256"] = std::string(64, '0');
  // A packet that says something else, with its sum put right.
  const std::string pdf = it.place + "/stool-A-shop.pdf";
  test::save(pdf, test::bytes(pdf) + "\n");
  manifest["sha256"]["stool-A-shop.pdf"] = writers::sha256(test::bytes(pdf));
  test::save(it.place + "/manifest.json", manifest.dump(2) + "\n");
  it.write_sums();
  const test::Run run = it.check();
  INFO(run.output);
  CHECK(run.status == 1);
  CHECK(test::has(run, ", then 0.9"));
  CHECK(test::has(run, "is another file than then"));
  CHECK(test::has(run, "stool-A-shop.pdf: printed otherwise now"));
  CHECK_FALSE(test::has(run, "stool-A-client.pdf"));
}

TEST_CASE("an archive is never written over: another state needs another revision") {
  const Archived it;
  const std::string manifest = test::bytes(it.place + "/manifest.json"),
                    zip = test::bytes(it.place + ".zip");
  const test::Run again = it.print();
  CHECK(again.status == 0);
  CHECK(test::has(again, "there already, the same"));
  const std::string higher = test::changed(it.text, "high = 460", "high = 470");
  test::save(it.file, higher);
  const test::Run refused = it.print();
  CHECK(refused.status == 3);
  CHECK(test::has(refused, "give this state a revision of its own"));
  CHECK(test::bytes(it.place + "/manifest.json") == manifest);
  CHECK(test::bytes(it.place + ".zip") == zip);
  CHECK(it.names().size() == 3);
  test::save(it.file, test::changed(test::changed(higher, "revision = \"A\"", "revision = \"B\""),
                                    "date = 2026-06-02", "date = 2026-07-03"));
  REQUIRE(it.print().status == 0);
  CHECK(it.names().size() == 5);
  // The index, and what is found in it.
  const test::Run all = test::run(test::program() + " jobs --out " + it.out);
  CHECK(all.output.find("2026-06-02") < all.output.find("2026-07-03"));
  const test::Run one = test::run(test::program() + " jobs millrace 07-03 --out " + it.out);
  INFO(one.output);
  CHECK(test::has(one, "revision B"));
  CHECK_FALSE(test::has(one, "revision A"));
  const test::Run none = test::run(test::program() + " jobs nobody 2026 --out " + it.out);
  CHECK(none.status == 0);
  CHECK(test::has(none, "has \"nobody\" and \"2026\""));
  const std::string index = test::bytes(it.out + "/jobs.csv");
  CHECK(std::count(index.begin(), index.end(), '\n') == 3);
}

TEST_CASE("an archive has the same bytes under another locale and time zone") {
  const Archived one, two;
  fs::remove_all(two.out);
  // A locale with a decimal comma, made for this test.
  test::run("localedef -i de_DE -f UTF-8 '" + (two.folder / "de_DE.UTF-8") + "'");
  REQUIRE(fs::exists(two.folder / "de_DE.UTF-8"));
  const std::string elsewhere =
      "LOCPATH=" + two.folder.path() + " LC_ALL=de_DE.UTF-8 LANG=de_DE.UTF-8 TZ=Asia/Tokyo ";
  REQUIRE(two.print(elsewhere).status == 0);
  CHECK(test::bytes(one.place + ".zip") == test::bytes(two.place + ".zip"));
}

TEST_CASE("what was measured stands beside what was designed, and does not void a signature") {
  test::Folder folder;
  const std::string file = folder / "stool.toml",
                    text = test::bytes(test::project("splayed-stool"));
  const std::string record =
      "\n[as_built]\ndate = 2026-08-01\nheight = 459.2\nhours = 21.5\nphotos = [\"front.jpg\"]\n"
      "notes = [\"Cut the tenons fuller.\"]\n[as_built.part.F]\nlength = \"361 mm\"\n";
  test::save(file, text + record);
  const std::string print = test::program() + " print " + file + " --out " + (folder / "out");
  const test::Run run = test::run(print + " --for archive");
  INFO(run.output);
  REQUIRE(run.status == 0);
  // 460 high as designed; the difference is plain subtraction.
  const std::string csv = test::bytes(folder / "out/stool-A-archive/stool-A-as-built.csv");
  CHECK(csv.find("height over everything,460,459.2,-0.8,460 mm\r\n") != std::string::npos);
  CHECK(csv.find("F length,360,361,1,360 mm\r\n") != std::string::npos);
  CHECK(csv.find("note: Cut the tenons fuller.") != std::string::npos);
  // The record page has it too.
  REQUIRE(test::run(print).status == 0);
  const test::Run pages =
      test::run("pdftotext -layout " + (folder / "out/stool-A-shop.pdf") + " -");
  const std::string page = pages.output.substr(pages.output.rfind("The piece and the work"));
  for (const char* words :
       {"459.2", "361", "2026-08-01, 21.5 hours", "front.jpg", "Cut the tenons fuller."})
    CHECK(page.find(words) != std::string::npos);
  const test::Run jobs = test::run(test::program() + " jobs --out " + (folder / "out"));
  CHECK(test::has(jobs, "21.5 hours"));
  CHECK(test::has(jobs, "front.jpg"));
  CHECK(test::run(test::program() + " check " + (folder / "out/stool-A-archive.zip")).status == 0);
  // The check figure of the client's set is the one without the record.
  const auto figure = [&](const std::string& source) {
    test::save(file, source);
    REQUIRE(test::run(print + " --for client").status == 0);
    const std::string words =
        test::run("pdftotext -layout " + (folder / "out/stool-A-client.pdf") + " -").output;
    return words.substr(words.find("SHA-256"), 120);
  };
  CHECK(figure(text + record) == figure(text));
  test::save(file, text + "\n[as_built.part.Z]\nlength = 1\n");
  const test::Run unknown = test::run(test::program() + " check " + file);
  CHECK(unknown.status == 1);
  CHECK(test::has(unknown, "no part has the mark \"Z\""));
  test::save(file, text + "\n[as_built]\nheigth = 1\n");
  CHECK(test::has(test::run(test::program() + " check " + file), "did you mean \"height\""));
}
