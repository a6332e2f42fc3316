// watch: prints again at every save. Linux tells of saves through inotify(7), so that nothing is
// asked again and again and a save is answered at once.
#include <sys/inotify.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstring>
#include <iostream>
#include <set>
#include <stdexcept>
#include <system_error>
#include <utility>

#include "commands.h"

namespace splay {

namespace {

namespace fs = std::filesystem;

// The saves of some files: written in place, or replaced by another of their name, as editors do.
class Saves {
 public:
  Saves() : number_(::inotify_init1(0)) {
    if (number_ < 0) refuse("saves");
  }
  ~Saves() { ::close(number_); }
  Saves(const Saves&) = delete;
  Saves& operator=(const Saves&) = delete;

  // A folder that is not there can't be watched: `needed` says whether that is an error.
  void follow(const fs::path& file, bool needed) {
    const fs::path folder = fs::absolute(file).parent_path();
    const int watched = ::inotify_add_watch(number_, folder.c_str(), IN_CLOSE_WRITE | IN_MOVED_TO);
    if (watched >= 0)
      followed_.insert({watched, file.filename().string()});
    else if (needed)
      refuse(folder.string());
  }

  void wait() {
    while (!next_is_a_save()) {
    }
  }

 private:
  [[noreturn]] static void refuse(const std::string& what) {
    throw std::runtime_error("can't watch " + what + ": " + std::generic_category().message(errno));
  }

  bool next_is_a_save() {
    alignas(inotify_event) std::array<char, 1 << 14> events{};
    const ssize_t got = ::read(number_, events.data(), events.size());
    if (got < 0 && errno == EINTR) return false;
    if (got <= 0) throw std::runtime_error("can't watch any longer");
    bool saved = false;
    for (ssize_t at = 0; at < got;) {
      inotify_event event{};
      std::memcpy(&event, events.data() + at, sizeof event);
      const char* name = events.data() + at + sizeof event;
      saved = saved || (event.len > 0 && followed_.contains({event.wd, name}));
      at += static_cast<ssize_t>(sizeof event) + static_cast<ssize_t>(event.len);
    }
    return saved;
  }

  std::set<std::pair<int, std::string>> followed_;  // the folder's watch, the name in it
  int number_;
};

// The style may name other signs than before, or lie in another folder.
void follow_style(const Call& call, Saves& saves) {
  const fs::path style = style_path(call, call.whom);
  saves.follow(style, false);
  for (const fs::path& sign : sign_paths(style)) saves.follow(sign, false);
}

// Whether pages were printed; whatever is wrong has been said.
bool try_to_print(const Call& call) try {
  const Piece piece = open_piece(call);
  if (!piece.project || withheld(piece)) return false;
  for (const std::string& file : print_piece(call, piece).files)
    std::cout << "printed " << file << '\n';
  return true;
} catch (const std::exception& error) {
  std::cerr << error.what() << '\n';
  return false;
}

}  // namespace

int watch(const Call& call) {
  Saves saves;
  saves.follow(call.file, true);
  bool any = false;
  while (true) {
    follow_style(call, saves);
    if (try_to_print(call))
      any = true;
    else
      std::cerr << (any ? "The last good packet stays as it is.\n" : "Nothing is printed yet.\n");
    std::cout.flush();
    saves.wait();
  }
}

}  // namespace splay
