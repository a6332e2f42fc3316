#include "writers/files.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <stdexcept>
#include <system_error>
#include <vector>

namespace splay::writers {

namespace fs = std::filesystem;

namespace {

[[noreturn]] void fail(const std::string& what, const fs::path& path, int code) {
  throw std::runtime_error(what + " " + path.string() + ": " +
                           std::generic_category().message(code));
}

class Descriptor {
 public:
  explicit Descriptor(int number) : number_(number) {}
  ~Descriptor() {
    if (number_ >= 0) ::close(number_);
  }
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  int number() const { return number_; }
  int close() {
    const int result = ::close(number_);
    number_ = -1;
    return result;
  }

 private:
  int number_;
};

void require_plain(const std::string& name) {
  const bool plain = !name.empty() && name != "." && name != ".." &&
                     name.find('/') == std::string::npos && name.find('\0') == std::string::npos;
  if (!plain) throw std::runtime_error("\"" + name + "\" is not a plain file name");
}

// Folders made on the way, so that they can be taken away again.
std::vector<fs::path> make_folder(const fs::path& folder) {
  std::vector<fs::path> made;
  fs::path so_far;
  for (const fs::path& step : fs::absolute(folder).lexically_normal()) {
    so_far /= step;
    if (step.empty() || ::mkdir(so_far.c_str(), 0777) == 0) {
      if (!step.empty()) made.push_back(so_far);
      continue;
    }
    const int code = errno;
    std::error_code ignored;
    if (fs::is_directory(so_far, ignored)) continue;
    for (auto path = made.rbegin(); path != made.rend(); ++path) ::rmdir(path->c_str());
    fail("can't make the folder", so_far, code == EEXIST ? ENOTDIR : code);
  }
  return made;
}

void write_all(const Descriptor& file, const fs::path& target, const std::string& bytes) {
  std::size_t done = 0;
  while (done < bytes.size()) {
    const ssize_t wrote = ::write(file.number(), bytes.data() + done, bytes.size() - done);
    if (wrote < 0 && errno == EINTR) continue;
    if (wrote < 0) fail("can't write", target, errno);
    if (wrote == 0) fail("can't write", target, ENOSPC);
    done += static_cast<std::size_t>(wrote);
  }
}

// All files of one call: temporary ones first, then put in place; what has been done is undone
// unless finish() was reached.
class Batch {
 public:
  explicit Batch(fs::path folder) : folder_(std::move(folder)), made_(make_folder(folder_)) {}
  Batch(const Batch&) = delete;
  Batch& operator=(const Batch&) = delete;

  ~Batch() {
    if (finished_) return;
    for (auto entry = entries_.rbegin(); entry != entries_.rend(); ++entry) undo(*entry);
    for (auto path = made_.rbegin(); path != made_.rend(); ++path) ::rmdir(path->c_str());
  }

  void prepare(const std::string& name, const std::string& bytes) {
    const fs::path target = folder_ / name;
    struct stat old {};
    const bool exists = ::lstat(target.c_str(), &old) == 0;
    if (exists && !S_ISREG(old.st_mode) && !S_ISLNK(old.st_mode))
      fail("can't write", target, S_ISDIR(old.st_mode) ? EISDIR : EEXIST);
    Descriptor file = open_temporary(target);
    if (exists && S_ISREG(old.st_mode)) ::fchmod(file.number(), old.st_mode & 0777);
    write_all(file, target, bytes);
    if (::fsync(file.number()) != 0 || file.close() != 0) fail("can't write", target, errno);
  }

  void place() {
    for (Entry& entry : entries_) place(entry);
  }

  void finish() {
    finished_ = true;
    for (const Entry& entry : entries_) {
      if (entry.state == State::exchanged) ::unlink(entry.temporary.c_str());  // the old file
      if (entry.state == State::moved) ::unlink(entry.old.c_str());
    }
    const Descriptor folder(::open(folder_.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
    if (folder.number() >= 0) ::fsync(folder.number());
  }

 private:
  // moved: the old file lies under the name of `old`.
  enum class State { waiting, placed, exchanged, moved };
  struct Entry {
    fs::path temporary, target, old;
    State state = State::waiting;
  };

  Descriptor open_temporary(const fs::path& target) {
    constexpr int most_tries = 1000;
    for (int i = 0; i < most_tries; ++i) {
      const fs::path temporary = folder_ / (".splaybook-" + std::to_string(::getpid()) + "-" +
                                            std::to_string(next_++) + ".tmp");
      const int number =
          ::open(temporary.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC | O_NOFOLLOW, 0666);
      if (number < 0 && errno == EEXIST) continue;
      if (number < 0) fail("can't write", target, errno);
      entries_.push_back({temporary, target, temporary.string() + "-old"});
      return Descriptor(number);
    }
    fail("can't write", target, EEXIST);
  }

  // An existing file changes places with the temporary one, so that it can be had back; on a file
  // system that can't do that it is moved aside first.
  static void place(Entry& entry) {
    const char* from = entry.temporary.c_str();
    const char* to = entry.target.c_str();
    if (::renameat2(AT_FDCWD, from, AT_FDCWD, to, RENAME_EXCHANGE) == 0) {
      entry.state = State::exchanged;
      return;
    }
    const bool cannot_exchange = errno == EINVAL || errno == ENOSYS;
    if (cannot_exchange && ::rename(to, entry.old.c_str()) == 0) entry.state = State::moved;
    if (::rename(from, to) != 0) fail("can't write", entry.target, errno);
    if (entry.state == State::waiting) entry.state = State::placed;
  }

  static void undo(const Entry& entry) {
    const char* temporary = entry.temporary.c_str();
    if (entry.state == State::exchanged) ::rename(temporary, entry.target.c_str());
    if (entry.state == State::moved) ::rename(entry.old.c_str(), entry.target.c_str());
    if (entry.state == State::placed) ::unlink(entry.target.c_str());
    ::unlink(temporary);
  }

  fs::path folder_;
  std::vector<fs::path> made_;
  std::vector<Entry> entries_;
  int next_ = 0;
  bool finished_ = false;
};

}  // namespace

void write_files(const fs::path& folder, const std::map<std::string, std::string>& files) {
  for (const auto& [name, bytes] : files) require_plain(name);
  Batch batch(folder);
  for (const auto& [name, bytes] : files) batch.prepare(name, bytes);
  batch.place();
  batch.finish();
}

std::string read_file(const fs::path& path, std::size_t limit) {
  // Not waiting for a pipe that nobody writes to.
  const Descriptor file(::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK));
  if (file.number() < 0) fail("can't read", path, errno);
  struct stat state {};
  if (::fstat(file.number(), &state) != 0) fail("can't read", path, errno);
  if (!S_ISREG(state.st_mode)) {
    if (S_ISDIR(state.st_mode)) fail("can't read", path, EISDIR);
    throw std::runtime_error("can't read " + path.string() + ": not a regular file");
  }
  std::string bytes;
  std::string part(1 << 16, '\0');
  while (true) {
    const ssize_t got = ::read(file.number(), part.data(), part.size());
    if (got < 0 && errno == EINTR) continue;
    if (got < 0) fail("can't read", path, errno);
    if (got == 0) return bytes;
    bytes.append(part, 0, static_cast<std::size_t>(got));
    if (bytes.size() > limit)
      throw std::runtime_error("can't read " + path.string() + ": larger than " +
                               std::to_string(limit) + " bytes");
  }
}

}  // namespace splay::writers
