// The demo projects, for tests that go through them all.
#pragma once

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

namespace splay::test {

// Files of projects/, by name.
inline std::vector<std::filesystem::path> demos() {
  std::vector<std::filesystem::path> files;
  for (const auto& entry :
       std::filesystem::directory_iterator(std::string(SPLAYBOOK_SOURCE_DIR) + "/projects"))
    if (entry.path().extension() == ".toml") files.push_back(entry.path());
  std::sort(files.begin(), files.end());
  return files;
}

// Their names without ".toml".
inline std::vector<std::string> demo_names() {
  std::vector<std::string> names;
  for (const std::filesystem::path& file : demos()) names.push_back(file.stem().string());
  return names;
}

inline std::string text_of(const std::filesystem::path& file) {
  std::stringstream text;
  text << std::ifstream(file).rdbuf();
  return text.str();
}

}  // namespace splay::test
