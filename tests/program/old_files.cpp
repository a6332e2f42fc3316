// Old files stay whole: a full disk, a folder that can't be written to, a process that is killed.
#include <sys/mount.h>
#include <sys/stat.h>
#include <unistd.h>

#include <catch2/catch.hpp>
#include <fstream>
#include <set>

#include "program/run.h"
#include "writers/files.h"

using namespace splay;

namespace {

namespace fs = std::filesystem;

std::set<std::string> names_in(const std::string& folder) {
  std::set<std::string> names;
  for (const auto& entry : fs::directory_iterator(folder)) names.insert(entry.path().filename());
  return names;
}

const std::string pdf = "splayed-stool-A-shop.pdf";

std::string print(const std::string& file, const std::string& out) {
  return test::program() + " print " + file + " --out " + out;
}

}  // namespace

TEST_CASE("on a full disk the old binder stays and the reason is told") {
  test::Folder folder;
  const std::string disk = folder / "disk";
  fs::create_directory(disk);
  if (mount("none", disk.c_str(), "tmpfs", 0, "size=64k") != 0) {
    WARN("no small file system can be mounted here; the tests of files stand for it");
    return;
  }
  std::ofstream(disk + "/" + pdf) << "old";
  const test::Run run = test::run(print(test::project("splayed-stool"), disk));
  const test::Run archive =
      test::run(print(test::project("splayed-stool"), disk) + " --for archive");
  const std::set<std::string> names = names_in(disk);
  const std::string kept = test::bytes(disk + "/" + pdf);
  REQUIRE(umount(disk.c_str()) == 0);
  INFO(run.output);
  CHECK(run.status == 3);
  CHECK(run.output.find("No space left") != std::string::npos);
  CHECK(archive.status == 3);
  CHECK(names == std::set<std::string>{pdf});
  CHECK(kept == "old");
}

TEST_CASE("a report to a full device is no success") {
  const test::Run run =
      test::run(test::program() + " report " + test::project("splayed-stool") + " > /dev/full");
  CHECK(run.status == 3);
}

TEST_CASE("a folder that can't be written to is named, and what is in it stays") {
  test::Folder folder;
  REQUIRE(chmod(folder.path().c_str(), 0755) == 0);
  const std::string locked = folder / "locked";
  fs::create_directory(locked);
  std::ofstream(locked + "/" + pdf) << "old";
  REQUIRE(chmod(locked.c_str(), 0555) == 0);
  // No mode stops root: then as somebody else, who may not be let into the source tree.
  const std::string as =
      geteuid() == 0 ? "setpriv --reuid=65534 --regid=65534 --clear-groups " : "";
  const std::string file = folder / "splayed-stool.toml";
  fs::copy(test::project("splayed-stool"), file);
  fs::copy(std::string(SPLAYBOOK_SOURCE_DIR) + "/styles", folder / "styles",
           fs::copy_options::recursive);
  const test::Run run = test::run(as + print(file, locked));
  INFO(run.output);
  CHECK(run.status == 3);
  CHECK(run.output.find(locked) != std::string::npos);
  CHECK(names_in(locked) == std::set<std::string>{pdf});
  CHECK(test::bytes(locked + "/" + pdf) == "old");
}

// Killed at a different moment each time: the binder is the old one or the new one, whole.
TEST_CASE("a killed process leaves the old binder or the new one, nothing in between") {
  test::Folder folder;
  const std::string out = folder / "out", other = folder / "splayed-stool.toml";
  std::string text = test::bytes(test::project("splayed-stool"));
  std::ofstream(other) << text.replace(text.find("high = 460"), 10, "high = 470");
  REQUIRE(test::run(print(other, out)).status == 0);
  const std::string fresh = test::bytes(out + "/" + pdf);
  REQUIRE(test::run(print(test::project("splayed-stool"), out)).status == 0);
  const std::string old = test::bytes(out + "/" + pdf);
  REQUIRE(old != fresh);
  int killed = 0;
  for (int i = 0; i < 40; ++i) {
    const std::string milliseconds = std::to_string(1000 + 6 * i);
    const std::string seconds = "0." + milliseconds.substr(1);
    const test::Run run =
        test::run("timeout -s KILL " + seconds + " " +
                  print(i % 2 == 0 ? other : test::project("splayed-stool"), out));
    killed += run.status == 137;
    const std::string now = test::bytes(out + "/" + pdf);
    INFO("after " << seconds);
    REQUIRE((now == old || now == fresh));
  }
  CHECK(killed > 0);
}
