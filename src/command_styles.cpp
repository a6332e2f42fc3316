// Styles by name, and what is wrong with one.
#include <stdexcept>

#include "commands.h"
#include "reading/reading.h"
#include "writers/files.h"

namespace splay {

StyleFile find_style(const std::string& name, const std::vector<std::filesystem::path>& folders) {
  std::filesystem::path path = name;
  for (const std::filesystem::path& folder : folders)
    if (!std::filesystem::exists(path)) path = folder / (name + ".toml");
  return {path.string(), writers::read_file(path, reading::largest_file)};
}

model::Style read_style(const StyleFile& file) {
  reading::StyleReading result =
      reading::read_style(file.text, std::filesystem::path(file.path).stem().string());
  std::string faults;
  for (const Diagnostic& fault : result.diagnostics)
    faults += describe(fault, file.path, file.text);
  if (!result.style) throw std::runtime_error(faults);
  return std::move(*result.style);
}

}  // namespace splay
