// new: a project file to start from, and schema: what an editor wants to know of one.
#include <algorithm>
#include <cctype>
#include <iostream>
#include <stdexcept>

#include "commands.h"
#include "constructs/construct.h"
#include "reading/reading.h"
#include "writers/files.h"
#include "writers/project_schema.h"
#include "writers/report_schema.h"

namespace splay {

namespace {

namespace fs = std::filesystem;

std::vector<fs::path> starter_folders() {
  return shared_folders("starters", SPLAYBOOK_SOURCE_STARTERS);
}

fs::path starter_file(const std::string& name) {
  for (const fs::path& folder : starter_folders())
    if (fs::is_regular_file(folder / (name + ".toml"))) return folder / (name + ".toml");
  return {};
}

std::vector<std::string> starters() {
  std::vector<std::string> names;
  for (const fs::path& folder : starter_folders()) {
    if (!fs::is_directory(folder)) continue;
    for (const fs::directory_entry& entry : fs::directory_iterator(folder))
      if (entry.path().extension() == ".toml") names.push_back(entry.path().stem().string());
  }
  std::ranges::sort(names);
  names.erase(std::unique(names.begin(), names.end()), names.end());
  return names;
}

// "hall-bench" is called "Hall bench".
std::string title_of(std::string name) {
  std::ranges::replace(name, '-', ' ');
  if (!name.empty()) name[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(name[0])));
  return name;
}

// The first title in the text, put in place of the starter's own.
void set_title(std::string& text, const std::string& title) {
  const std::string key = "\ntitle = \"";
  const std::size_t from = text.find(key);
  if (from == std::string::npos) return;
  const std::size_t start = from + key.size();
  text.replace(start, text.find('"', start) - start, title);
}

}  // namespace

int start_new(const Call& call) {
  const fs::path starter = starter_file(call.starter);
  if (starter.empty()) {
    std::cerr << "No starter is called \"" << call.starter << "\". There are:";
    for (const std::string& name : starters()) std::cerr << ' ' << name;
    std::cerr << '\n';
    return wrong_call;
  }
  fs::path file = call.file;
  if (file.extension() != ".toml") file += ".toml";
  if (file.filename().string().find_first_of("\"\\\n") != std::string::npos) {
    std::cerr << "A project's name has no quotes or backslashes.\n";
    return wrong_call;
  }
  if (fs::exists(file)) throw std::runtime_error(file.string() + " is there already");
  std::string text = writers::read_file(starter, reading::largest_file);
  set_title(text, title_of(file.stem().string()));
  const fs::path folder = file.has_parent_path() ? file.parent_path() : fs::path(".");
  writers::write_files(folder, {{file.filename().string(), text}});
  std::cout << file.string() << '\n';
  return done;
}

int schema(const Call& call) {
  std::cout << (call.word == "report" ? writers::report_schema()
                                      : writers::project_schema(constructs::registry()));
  return done;
}

}  // namespace splay
