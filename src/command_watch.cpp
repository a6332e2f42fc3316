// watch: prints again at every save. Linux tells of saves through inotify(7), so that nothing is
// asked again and again and a save is answered at once.
#include <sys/inotify.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstring>
#include <iostream>
#include <stdexcept>
#include <system_error>

#include "commands.h"

namespace splay {

namespace {

namespace fs = std::filesystem;

// The saves of one file: written in place, or replaced by another of its name, as editors do.
class Saves {
 public:
  explicit Saves(const fs::path& file)
      : name_(file.filename().string()), number_(::inotify_init1(0)) {
    const fs::path folder = fs::absolute(file).parent_path();
    if (number_ < 0 ||
        ::inotify_add_watch(number_, folder.c_str(), IN_CLOSE_WRITE | IN_MOVED_TO) < 0)
      throw std::runtime_error("can't watch " + folder.string() + ": " +
                               std::generic_category().message(errno));
  }
  ~Saves() {
    if (number_ >= 0) ::close(number_);
  }
  Saves(const Saves&) = delete;
  Saves& operator=(const Saves&) = delete;

  void wait() {
    while (!next_is_a_save()) {
    }
  }

 private:
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
      saved = saved || (event.len > 0 && name_ == name);
      at += static_cast<ssize_t>(sizeof event) + static_cast<ssize_t>(event.len);
    }
    return saved;
  }

  std::string name_;
  int number_;
};

// Whether pages were printed; whatever is wrong has been said.
bool try_to_print(const Call& call, const ink::FontSet& fonts) try {
  const Piece piece = open_piece(call);
  if (!piece.project || withheld(piece)) return false;
  for (const std::string& file : print_piece(call, piece, fonts).files)
    std::cout << "printed " << file << '\n';
  return true;
} catch (const std::exception& error) {
  std::cerr << error.what() << '\n';
  return false;
}

}  // namespace

int watch(const Call& call) {
  Saves saves(call.file);
  const ink::FontSet fonts;
  bool any = false;
  while (true) {
    if (try_to_print(call, fonts))
      any = true;
    else
      std::cerr << (any ? "The last good packet stays as it is.\n" : "Nothing is printed yet.\n");
    std::cout.flush();
    saves.wait();
  }
}

}  // namespace splay
