// watch: a save is printed, a fault leaves the last good packet as it is and says so.
#include <signal.h>  // NOLINT(modernize-deprecated-headers): kill is POSIX

#include <catch2/catch.hpp>
#include <chrono>
#include <fstream>
#include <thread>

#include "program/run.h"
#include "writers/files.h"

using namespace splay;

namespace {

// The program beside the test, its words in a file.
class Watch {
 public:
  Watch(const test::Folder& folder, const std::string& file, const std::string& more = "")
      : log_(folder / "log") {
    const test::Run run = test::run(test::program() + " watch " + file + " --out " +
                                    (folder / "out") + more + " > " + log_ + " 2>&1 & echo $!");
    pid_ = std::stoi(run.output);
  }
  ~Watch() { ::kill(pid_, SIGTERM); }
  Watch(const Watch&) = delete;
  Watch& operator=(const Watch&) = delete;

  bool says_by_now(const std::string& words, int times) const {
    return count(writers::read_file(log_, 1u << 20), words) >= times;
  }
  // Waits until the words were said so often; a minute at the most.
  bool says(const std::string& words, int times) const {
    for (int i = 0; i < 3000; ++i) {
      if (says_by_now(words, times)) return true;
      std::this_thread::sleep_for(std::chrono::milliseconds(20));
    }
    return false;
  }

 private:
  static int count(const std::string& text, const std::string& words) {
    int n = 0;
    for (std::size_t at = 0; (at = text.find(words, at)) != std::string::npos; at += words.size())
      ++n;
    return n;
  }
  std::string log_;
  int pid_ = 0;
};

}  // namespace

TEST_CASE("watch prints at each save and keeps the last good packet on a fault") {
  test::Folder folder;
  const std::string file = folder / "stool.toml", pdf = folder / "out/stool-A-shop.pdf";
  const std::string text = writers::read_file(test::project("splayed-stool"), 1u << 20);
  test::save(file, text);
  const Watch watch(folder, file);
  REQUIRE(watch.says("printed ", 1));
  const std::string first = writers::read_file(pdf, 1u << 26);

  std::string higher = text;
  higher.replace(higher.find("high = 460"), 10, "high = 470");
  test::save(file, higher);
  REQUIRE(watch.says("printed ", 2));
  const std::string second = writers::read_file(pdf, 1u << 26);
  CHECK(first != second);

  test::save(file, "[job]\ntitel = 1\n");
  REQUIRE(watch.says("The last good packet stays as it is.", 1));
  CHECK(watch.says("did you mean \"title\"", 1));
  CHECK(writers::read_file(pdf, 1u << 26) == second);

  // As editors save: another file put in its place.
  test::save(folder / "new", text);
  std::filesystem::rename(folder / "new", file);
  REQUIRE(watch.says("printed ", 3));
  CHECK(writers::read_file(pdf, 1u << 26) == first);
}

TEST_CASE("watch prints at each save of the style and of the signs it names") {
  test::Folder folder;
  const std::string file = folder / "stool.toml", style = folder / "styles/own.toml";
  const std::string sign = "<svg viewBox='0 0 9 9'><rect x='1' y='1' width='7' height='7'/></svg>";
  std::filesystem::create_directories(folder / "styles/marks");
  test::save(file, writers::read_file(test::project("splayed-stool"), 1u << 20));
  test::save(style, "leave_out = [\"signs\"]\n");
  const Watch watch(folder, file, " --style own");
  REQUIRE(watch.says("printed ", 1));

  // The sign is named before it is there.
  test::save(style, "[symbols]\nshop = \"marks/shop.svg\"\n");
  REQUIRE(watch.says("\"marks/shop.svg\" can't be had", 1));
  CHECK(watch.says("The last good packet stays as it is.", 1));
  test::save(folder / "styles/marks/shop.svg", sign);
  REQUIRE(watch.says("printed ", 2));
  test::save(folder / "styles/marks/other.svg", sign);  // nobody names it
  test::save(file, writers::read_file(test::project("splayed-stool"), 1u << 20));
  REQUIRE(watch.says("printed ", 3));
  CHECK_FALSE(watch.says_by_now("printed ", 4));
}
