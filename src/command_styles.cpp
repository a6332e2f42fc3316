// Styles by name, the signs they name, and what is wrong with either.
#include <algorithm>
#include <stdexcept>
#include <system_error>
#include <utility>

#include "commands.h"
#include "reading/reading.h"
#include "reading/symbol_reader.h"
#include "sheets/sheet.h"
#include "writers/files.h"

namespace splay {

namespace fs = std::filesystem;

namespace {

reading::StyleReading read_alone(const StyleFile& file) {
  return reading::read_style(file.text, fs::path(file.path).stem().string(), sheets::page_kinds());
}

// The symbol's whole path, links followed: it must end below the folder.
fs::path below(const fs::path& folder, const std::string& name) {
  const fs::path base = fs::canonical(folder);
  fs::path found = fs::canonical(folder / name);
  const auto [end, ignored] = std::ranges::mismatch(base, found);
  if (end != base.end())
    throw std::runtime_error("it is a link to " + found.string() +
                             ", which lies elsewhere than the style");
  return found;
}

// What every symbol's file holds; one fault for each that can't be had.
std::string read_symbol_files(model::Style& style, StyleFile& file) {
  const fs::path path = file.path;
  const fs::path folder = path.has_parent_path() ? path.parent_path() : fs::path(".");
  std::string faults;
  for (const model::SymbolFile* symbol : style.symbols.all()) {
    const std::string& name = *symbol->file;
    const auto refuse = [&](const std::string& why) {
      faults += describe({symbol->file.span, "no-symbol", "\"" + name + "\" can't be had: " + why,
                          "an SVG file below the style's folder, " + folder.string(), ""},
                         file.path, file.text);
    };
    if (!symbol->file.given) continue;
    try {
      file.symbols[name] = writers::read_file(below(folder, name), reading::largest_symbol + 1);
    } catch (const fs::filesystem_error& error) {
      refuse(error.code().message());
    } catch (const std::runtime_error& error) {
      refuse(error.what());
    }
  }
  return faults;
}

// The sign, or what is wrong with it: the style's place that names it, then the places in its file.
std::string read_one_symbol(const StyleFile& file, model::SymbolFile& symbol) {
  const std::string& name = *symbol.file;
  const auto bytes = file.symbols.find(name);
  if (bytes == file.symbols.end()) throw std::runtime_error(file.path + ": no file of " + name);
  reading::SymbolReading result = reading::read_symbol(bytes->second);
  if (result.symbol) {
    symbol.symbol = std::make_shared<const model::Symbol>(std::move(*result.symbol));
    return "";
  }
  std::string faults =
      describe({symbol.file.span, "bad-symbol", "\"" + name + "\" can't be drawn as it is meant",
                "what is said of it below", ""},
               file.path, file.text);
  for (const Diagnostic& fault : result.diagnostics)
    faults += describe(fault, (fs::path(file.path).parent_path() / name).string(), bytes->second);
  return faults;
}

std::shared_ptr<const ink::FontSet> fonts_of(const StyleFile& file, const model::Style& style) {
  const model::Given<std::string>& typeface = style.typeface;
  if (!typeface.given) return std::make_shared<const ink::FontSet>();
  try {
    return std::make_shared<const ink::FontSet>(*typeface);
  } catch (const std::runtime_error& error) {
    throw std::runtime_error(describe({typeface.span, "no-typeface", error.what(),
                                       "a family with upright, bold and italic TrueType fonts",
                                       "`fc-list : family` names those that are installed"},
                                      file.path, file.text));
  }
}

}  // namespace

std::vector<fs::path> sign_paths(const fs::path& path) try {
  std::vector<fs::path> paths;
  const reading::StyleReading result =
      read_alone({path.string(), writers::read_file(path, reading::largest_file)});
  if (result.style)
    for (const model::SymbolFile* symbol : std::as_const(result.style->symbols).all())
      if (symbol->file.given) paths.push_back(path.parent_path() / *symbol->file);
  return paths;
} catch (const std::runtime_error&) {
  return {};
}

StyleFile read_style_file(const fs::path& path) {
  StyleFile file{path.string(), writers::read_file(path, reading::largest_file)};
  reading::StyleReading result = read_alone(file);
  if (!result.style) return file;  // its faults are told when it is read for use
  const std::string faults = read_symbol_files(*result.style, file);
  if (!faults.empty()) throw std::runtime_error(faults);
  return file;
}

Look look_of(const StyleFile& file) {
  reading::StyleReading result = read_alone(file);
  std::string faults;
  for (const Diagnostic& fault : result.diagnostics)
    faults += describe(fault, file.path, file.text);
  if (!result.style) throw std::runtime_error(faults);
  for (model::SymbolFile* symbol : result.style->symbols.all())
    if (symbol->file.given) faults += read_one_symbol(file, *symbol);
  if (!faults.empty()) throw std::runtime_error(faults);
  std::shared_ptr<const ink::FontSet> fonts = fonts_of(file, *result.style);
  return {std::move(*result.style), std::move(fonts)};
}

}  // namespace splay
