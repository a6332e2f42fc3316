// Runs the program, or a tool that judges its files, and keeps what it says.
#pragma once

#include <sys/wait.h>

#include <array>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <stdexcept>
#include <string>

#include "writers/files.h"

namespace splay::test {

struct Run {
  int status = -1;
  std::string output;  // both streams
};

inline Run run(const std::string& command) {
  Run result;
  FILE* pipe = popen((command + " 2>&1").c_str(), "r");
  if (pipe == nullptr) throw std::runtime_error("can't run " + command);
  std::array<char, 4096> buffer{};
  while (const std::size_t n = fread(buffer.data(), 1, buffer.size(), pipe))
    result.output.append(buffer.data(), n);
  const int status = pclose(pipe);
  result.status = WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
  return result;
}

inline std::string program() { return SPLAYBOOK_PROGRAM; }
inline std::string project(const std::string& name) {
  return std::string(SPLAYBOOK_SOURCE_DIR) + "/projects/" + name + ".toml";
}

inline bool has(const Run& run, const std::string& words) {
  return run.output.find(words) != std::string::npos;
}

inline std::string bytes(const std::string& file) { return writers::read_file(file, 1u << 28); }
// Folders that aren't there are made.
inline void save(const std::string& file, const std::string& text) {
  std::filesystem::create_directories(std::filesystem::path(file).parent_path());
  std::ofstream(file) << text;
}
// The first `from` in the text replaced; it must be there.
inline std::string changed(std::string text, const std::string& from, const std::string& to) {
  const std::size_t at = text.find(from);
  if (at == std::string::npos) throw std::runtime_error("not in the text: " + from);
  return text.replace(at, from.size(), to);
}

// A folder of its own that goes with the test.
class Folder {
 public:
  Folder() {
    std::string name = (std::filesystem::temp_directory_path() / "splaybook-XXXXXX").string();
    if (mkdtemp(name.data()) == nullptr) throw std::runtime_error("no temporary folder");
    path_ = name;
  }
  ~Folder() { std::filesystem::remove_all(path_); }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  std::string operator/(const std::string& name) const { return (path_ / name).string(); }
  std::string path() const { return path_.string(); }
  bool empty() const { return std::filesystem::is_empty(path_); }

 private:
  std::filesystem::path path_;
};

}  // namespace splay::test
