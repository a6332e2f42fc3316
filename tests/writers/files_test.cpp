#include "writers/files.h"

#include <sys/mount.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <unistd.h>

#include <catch2/catch.hpp>
#include <csignal>
#include <filesystem>
#include <fstream>
#include <set>
#include <stdexcept>

#include "writers/tools.h"

namespace fs = std::filesystem;
using splay::writer_tests::Folder;
using splay::writer_tests::slurp;
using splay::writers::read_file;
using splay::writers::write_files;

namespace {

std::set<std::string> names_in(const fs::path& folder) {
  std::set<std::string> names;
  for (const fs::directory_entry& entry : fs::directory_iterator(folder))
    names.insert(entry.path().filename());
  return names;
}

std::string error_of(const fs::path& folder, const std::map<std::string, std::string>& files) {
  try {
    write_files(folder, files);
  } catch (const std::runtime_error& error) {
    return error.what();
  }
  return "";
}

bool holds(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

// Another user for a while when the test is run as root, whom no permission stops.
class Nobody {
 public:
  explicit Nobody(const fs::path& folder) {
    if (geteuid() != 0) return;
    constexpr uid_t nobody = 65534;
    REQUIRE(chown(folder.c_str(), nobody, nobody) == 0);
    REQUIRE(seteuid(nobody) == 0);
    was_root_ = true;
  }
  ~Nobody() {
    if (was_root_ && seteuid(0) != 0) std::abort();
  }
  Nobody(const Nobody&) = delete;
  Nobody& operator=(const Nobody&) = delete;

 private:
  bool was_root_ = false;
};

// No file may grow over `bytes` while this lives; what writes on gets an error, not a signal.
class FileSizeLimit {
 public:
  explicit FileSizeLimit(rlim_t bytes) : handler_(std::signal(SIGXFSZ, SIG_IGN)) {
    REQUIRE(getrlimit(RLIMIT_FSIZE, &before_) == 0);
    rlimit lower = before_;
    lower.rlim_cur = bytes;
    REQUIRE(setrlimit(RLIMIT_FSIZE, &lower) == 0);
  }
  ~FileSizeLimit() {
    setrlimit(RLIMIT_FSIZE, &before_);
    std::signal(SIGXFSZ, handler_);
  }
  FileSizeLimit(const FileSizeLimit&) = delete;
  FileSizeLimit& operator=(const FileSizeLimit&) = delete;

 private:
  rlimit before_{};
  void (*handler_)(int);
};

}  // namespace

TEST_CASE("files appear whole, in folders made for them, and replace older ones") {
  const Folder folder;
  const fs::path inside = fs::path(folder.path()) / "binder" / "rev B";
  const std::string bytes("a\0b\xFF\n", 5);
  write_files(inside, {{"one.pdf", bytes}, {"two.csv", ""}});
  CHECK(names_in(inside) == std::set<std::string>{"one.pdf", "two.csv"});
  CHECK(slurp(inside / "one.pdf") == bytes);
  write_files(inside, {{"one.pdf", "shorter"}, {"three", "3"}});
  CHECK(names_in(inside) == std::set<std::string>{"one.pdf", "two.csv", "three"});
  CHECK(slurp(inside / "one.pdf") == "shorter");
  CHECK(slurp(inside / "three") == "3");
}

TEST_CASE("a replaced file keeps its permissions and a new one has the usual ones") {
  const Folder folder;
  const fs::path path = folder.save("one", "old");
  REQUIRE(chmod(path.c_str(), 0640) == 0);
  write_files(folder.path(), {{"one", "new"}, {"two", "new"}});
  struct stat state {};
  REQUIRE(stat(path.c_str(), &state) == 0);
  CHECK((state.st_mode & 0777) == 0640);
  const mode_t mask = umask(0);
  umask(mask);
  REQUIRE(stat((folder.path() + "/two").c_str(), &state) == 0);
  CHECK((state.st_mode & 0777) == (0666 & ~mask));
}

TEST_CASE("a disk that is full leaves everything as it was") {
  const Folder folder;
  folder.save("a.pdf", "old a");
  const std::string large(100000, 'x');
  std::string error;
  {
    const FileSizeLimit limit(4096);
    error = error_of(folder.path(), {{"a.pdf", "new a"}, {"b.pdf", large}, {"c.pdf", "c"}});
  }
  INFO(error);
  CHECK(holds(error, "b.pdf"));
  CHECK(holds(error, "too large"));
  CHECK(names_in(folder.path()) == std::set<std::string>{"a.pdf"});
  CHECK(slurp(folder.path() + "/a.pdf") == "old a");
}

TEST_CASE("a file system without room left leaves everything as it was") {
  const Folder folder;
  if (mount("none", folder.path().c_str(), "tmpfs", 0, "size=64k") != 0) {
    WARN("no small file system can be mounted here; the limit on file size above stands for it");
    return;
  }
  folder.save("a.pdf", "old a");
  const std::string error =
      error_of(folder.path(), {{"a.pdf", "new a"}, {"b.pdf", std::string(200000, 'x')}});
  const std::set<std::string> names = names_in(folder.path());
  const std::string kept = slurp(folder.path() + "/a.pdf");
  REQUIRE(umount(folder.path().c_str()) == 0);
  INFO(error);
  CHECK(holds(error, "b.pdf"));
  CHECK(holds(error, "No space left"));
  CHECK(names == std::set<std::string>{"a.pdf"});
  CHECK(kept == "old a");
}

TEST_CASE("a folder that can't be written to is named, with the reason") {
  const Folder folder;
  const std::string locked = folder.path() + "/locked";
  REQUIRE(mkdir(locked.c_str(), 0555) == 0);
  REQUIRE(chmod(folder.path().c_str(), 0755) == 0);
  std::string error, deeper;
  {
    const Nobody nobody(locked);
    error = error_of(locked, {{"one.pdf", "1"}});
    deeper = error_of(locked + "/more/still", {{"one.pdf", "1"}});
  }
  INFO(error);
  CHECK(holds(error, locked + "/one.pdf"));
  CHECK(holds(error, "Permission denied"));
  CHECK(holds(deeper, locked + "/more"));
  CHECK(names_in(locked).empty());
}

TEST_CASE("a failure while files are put in place takes the earlier ones back") {
  if (geteuid() != 0) {
    WARN("only root can make a file that another user must not replace; not tried");
    return;
  }
  const Folder folder;
  REQUIRE(chmod(folder.path().c_str(), 0755) == 0);
  const std::string shared = folder.path() + "/shared";
  REQUIRE(mkdir(shared.c_str(), 0755) == 0);
  folder.save("shared/m", "of root");
  folder.save("shared/a", "old");
  REQUIRE(chown((shared + "/a").c_str(), 65534, 65534) == 0);
  std::string error;
  {
    // Sticky, as /tmp is: everyone may write, nobody may replace another's file.
    const Nobody nobody(folder.path() + "/shared/a");
    REQUIRE(seteuid(0) == 0);
    REQUIRE(chmod(shared.c_str(), 01777) == 0);
    REQUIRE(seteuid(65534) == 0);
    error = error_of(shared, {{"a", "new"}, {"b", "new"}, {"m", "new"}, {"z", "new"}});
  }
  INFO(error);
  CHECK(holds(error, shared + "/m"));
  CHECK(names_in(shared) == std::set<std::string>{"a", "m"});
  CHECK(slurp(shared + "/a") == "old");
  CHECK(slurp(shared + "/m") == "of root");
}

TEST_CASE("what is no place for a file is refused before anything is written") {
  const Folder folder;
  fs::create_directory(folder.path() + "/taken");
  folder.save("file", "");
  for (const char* name : {"", ".", "..", "a/b", "/a", "../a"})
    CHECK(!error_of(folder.path(), {{"ok", "1"}, {name, "2"}}).empty());
  CHECK(holds(error_of(folder.path(), {{"ok", "1"}, {"taken", "2"}}), "taken"));
  CHECK(holds(error_of(folder.path() + "/file", {{"ok", "1"}}), "Not a directory"));
  CHECK(names_in(folder.path()) == std::set<std::string>{"taken", "file"});
}

TEST_CASE("folders made for files that then fail are taken away again") {
  const Folder folder;
  std::string error;
  {
    const FileSizeLimit limit(100);
    error = error_of(folder.path() + "/new/deep", {{"a", std::string(1000, 'x')}});
  }
  CHECK(!error.empty());
  CHECK(names_in(folder.path()).empty());
}

TEST_CASE("reading gives the bytes, or says why not") {
  const Folder folder;
  const std::string bytes("x\0y", 3);
  const std::string path = folder.save("it", bytes);
  CHECK(read_file(path, 3) == bytes);
  CHECK_THROWS_WITH(read_file(path, 2), Catch::Contains("larger than 2 bytes"));
  CHECK_THROWS_WITH(read_file(folder.path() + "/none", 9), Catch::Contains("No such file"));
  CHECK_THROWS_WITH(read_file(folder.path(), 9), Catch::Contains("Is a directory"));
  CHECK_THROWS_WITH(read_file("/dev/zero", 9), Catch::Contains("not a regular file"));
  const std::string pipe = folder.path() + "/pipe";
  REQUIRE(mkfifo(pipe.c_str(), 0600) == 0);
  CHECK_THROWS_WITH(read_file(pipe, 9), Catch::Contains("not a regular file"));
}
