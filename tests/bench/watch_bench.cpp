// How long `watch` takes from a save to the new PDF in its place, for each project named: the least
// and the middle of several saves, by the clock on the wall. The file system tells of the PDF's
// arrival (inotify(7)); each save changes a comment, so that the PDF changes too.
//
//   bench_watch PROGRAM PROJECT...
#include <signal.h>
#include <sys/inotify.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

namespace {

namespace fs = std::filesystem;

constexpr int saves = 9;

// Files that arrive in a folder.
class Arrivals {
 public:
  explicit Arrivals(const fs::path& folder) : number_(::inotify_init1(0)) {
    if (number_ < 0 || ::inotify_add_watch(number_, folder.c_str(), IN_MOVED_TO) < 0)
      throw std::runtime_error("can't watch " + folder.string());
  }
  ~Arrivals() { ::close(number_); }
  Arrivals(const Arrivals&) = delete;
  Arrivals& operator=(const Arrivals&) = delete;

  void wait_for_pdf() const {
    for (bool arrived = false; !arrived;) {
      alignas(inotify_event) std::array<char, 1 << 12> events{};
      const ssize_t got = ::read(number_, events.data(), events.size());
      if (got <= 0) throw std::runtime_error("can't watch any longer");
      for (ssize_t at = 0; at < got;) {
        inotify_event event{};
        std::memcpy(&event, events.data() + at, sizeof event);
        const std::string name = events.data() + at + sizeof event;
        arrived = arrived || name.ends_with(".pdf");
        at += static_cast<ssize_t>(sizeof event) + static_cast<ssize_t>(event.len);
      }
    }
  }

 private:
  int number_;
};

// The program, until the end of its scope.
class Watching {
 public:
  Watching(const std::string& program, const fs::path& file, const fs::path& out)
      : child_(::fork()) {
    if (child_ < 0) throw std::runtime_error("no process");
    if (child_ != 0) return;
    if (std::freopen("/dev/null", "w", stdout) == nullptr) ::_exit(1);
    ::execl(program.c_str(), program.c_str(), "watch", file.c_str(), "--out", out.c_str(),
            static_cast<char*>(nullptr));
    ::_exit(1);
  }
  ~Watching() {
    ::kill(child_, SIGTERM);
    ::waitpid(child_, nullptr, 0);
  }
  Watching(const Watching&) = delete;
  Watching& operator=(const Watching&) = delete;

 private:
  pid_t child_;
};

void measure(const std::string& program, const fs::path& project, const fs::path& folder) {
  const fs::path file = folder / project.filename(), out = folder / "out";
  fs::create_directories(out);
  std::stringstream text;
  text << std::ifstream(project).rdbuf();
  const auto save = [&](int number) {
    std::ofstream(file) << text.str() << "# save " << number << '\n';
  };
  save(0);
  const Arrivals arrivals(out);
  const Watching watching(program, file, out);
  arrivals.wait_for_pdf();
  std::vector<double> times;
  for (int i = 1; i <= saves; ++i) {
    ::usleep(100000);  // the program listens again
    const auto start = std::chrono::steady_clock::now();
    save(i);
    arrivals.wait_for_pdf();
    const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - start;
    times.push_back(took.count());
  }
  std::ranges::sort(times);
  std::printf("%-32s best %4.0f ms, middle %4.0f ms from the save to the PDF (goal: under 300)\n",
              project.filename().c_str(), times.front(), times[times.size() / 2]);
  std::fflush(stdout);
}

}  // namespace

int main(int count, char** words) {
  const fs::path folder = fs::temp_directory_path() / ("bench_watch" + std::to_string(::getpid()));
  for (int i = 2; i < count; ++i) measure(words[1], words[i], folder);
  fs::remove_all(folder);
  return count > 2 ? 0 : 2;
}
