// print --for archive: a folder and a .zip with all that was issued and all it was made from; and
// check of one: it is whole, and what it was made from still gives the same bytes.
#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cmath>
#include <cstdio>
#include <iostream>
#include <stdexcept>
#include <system_error>

#include "command_archive.h"
#include "commands.h"
#include "writers/digest.h"
#include "writers/files.h"
#include "writers/manifest.h"
#include "writers/report_schema.h"
#include "writers/zip.h"

namespace splay {

namespace fs = std::filesystem;

namespace {

using writers::Files;
using writers::Manifest;

constexpr std::uint64_t largest_archive = std::uint64_t{1} << 30;  // bytes, unpacked

// What an archive is made from; read from the disk, or from an archive.
struct Recipe {
  Piece piece;
  std::string name;                         // "canted-tea-cabinet-B"
  std::map<std::string, StyleFile> styles;  // by packet; their names in the archive
  std::map<std::string, Look> looks;        // of the same
};

void put(Files& files, const std::string& name, const std::string& bytes) {
  const auto [at, fresh] = files.emplace(name, bytes);
  if (!fresh && at->second != bytes)
    throw std::runtime_error("two files of the archive would be called " + name);
}

// An archive has no folders: "style-bold-symbols-triangle.svg".
std::string archived_name(const StyleFile& style, std::string symbol) {
  std::ranges::replace(symbol, '/', '-');
  return fs::path(style.path).stem().string() + "-" + symbol;
}

// Everything but the manifest.
Files make_files(const Recipe& recipe, std::string& faults) {
  const Piece& piece = recipe.piece;
  Files files;
  put(files, fs::path(piece.file_name).filename().string(), piece.source);
  put(files, "report.schema.json", writers::report_schema());
  for (const auto& [whom, style] : recipe.styles) {
    put(files, style.path, style.text);
    for (const auto& [name, bytes] : style.symbols) put(files, archived_name(style, name), bytes);
    const Look& look = recipe.looks.at(whom);
    const Issued issued = issue_packet(piece, look, whom);
    faults += issued.faults;
    const writers::Subject subject{piece.plan,  issued.packet, *look.fonts,
                                   recipe.name, whom,          &piece.as_built};
    for (const writers::Format& format : writers::formats())
      if ((format.of_pages && format.word == "pdf") || (!format.of_pages && whom == "shop"))
        for (const auto& [name, bytes] : format.make(subject)) put(files, name, bytes);
  }
  return files;
}

// mm: what sums of doubles leave beyond it says nothing of the piece.
double to_thousandth(double mm) { return std::round(mm * 1000) / 1000; }

std::vector<Manifest::Font> fonts_of(const Recipe& recipe) {
  std::vector<Manifest::Font> fonts;
  for (const auto& [whom, look] : recipe.looks)
    for (const Manifest::Font& font : writers::fonts_used(*look.fonts))
      if (std::ranges::find(fonts, font) == fonts.end()) fonts.push_back(font);
  return fonts;
}

Manifest manifest_of(const Recipe& recipe, const Call& call, const Files& files) {
  const model::Job& job = recipe.piece.project->job;
  const Vec3 size = parts::bounds(recipe.piece.plan.assembly).size();
  Manifest manifest;
  manifest.number = *job.number;
  manifest.title = *job.title;
  manifest.client = *job.client;
  manifest.revision = *job.revision;
  manifest.date = model::iso_date(*job.date);
  manifest.width = to_thousandth(size.x);
  manifest.height = to_thousandth(size.z);
  manifest.depth = to_thousandth(size.y);
  const model::AsBuilt& built = recipe.piece.as_built;
  if (built.hours.given) manifest.hours = *built.hours;
  manifest.photos = *built.photos;
  manifest.versions = writers::library_versions();
  manifest.versions["splaybook"] = SPLAYBOOK_VERSION;
  manifest.fonts = fonts_of(recipe);
  manifest.source = fs::path(recipe.piece.file_name).filename().string();
  manifest.paper = call.paper;
  manifest.effort = call.effort;
  for (const auto& [whom, style] : recipe.styles) {
    manifest.styles[whom] = style.path;
    for (const auto& [name, bytes] : style.symbols)
      manifest.symbols[whom][name] = archived_name(style, name);
  }
  for (const auto& [name, bytes] : files) manifest.files[name] = writers::sha256(bytes);
  return manifest;
}

void add_manifest(const Manifest& manifest, Files& files) {
  const std::string text = writers::text(manifest);
  files[writers::manifest_name] = text;
  files[writers::sums_name] = writers::sums(manifest, text);
}

// The folder appears whole: it is filled under another name in the same place.
void place_folder(const fs::path& folder, const Files& files) {
  const fs::path partial =
      folder.parent_path() / (".splaybook-" + std::to_string(::getpid()) + "-archive");
  try {
    writers::write_files(partial, files);
    if (::renameat2(AT_FDCWD, partial.c_str(), AT_FDCWD, folder.c_str(), RENAME_NOREPLACE) != 0)
      throw std::runtime_error("can't write " + folder.string() + ": " +
                               std::generic_category().message(errno));
  } catch (...) {
    std::error_code ignored;
    fs::remove_all(partial, ignored);
    throw;
  }
}

// Nothing but one file of the folder is read at a time, and never more than an archive may hold.
Files files_in(const fs::path& folder) {
  Files files;
  for (const fs::directory_entry& entry : fs::directory_iterator(folder))
    files[entry.path().filename().string()] = writers::read_file(entry.path(), largest_archive);
  return files;
}

Files open_archive(const fs::path& path) {
  return fs::is_directory(path)
             ? files_in(path)
             : writers::unzip(writers::read_file(path, largest_archive), largest_archive);
}

// Whether the place is free; an archive that is there already is left alone, the same one told.
bool is_there(const fs::path& path, const Files& files) {
  if (!fs::exists(path)) return false;
  if (open_archive(path) != files)
    throw std::runtime_error(path.string() +
                             " holds another state of this revision, and an archive is never "
                             "changed: give this state a revision of its own");
  std::cout << path.string() << ": there already, the same\n";
  return true;
}

// Faults of the sums, one line each.
std::string damage(const Manifest& manifest, const Files& files) {
  std::string faults;
  for (const auto& [name, sum] : manifest.files) {
    const auto found = files.find(name);
    if (found == files.end())
      faults += name + ": missing\n";
    else if (writers::sha256(found->second) != sum)
      faults += name + ": not as it was archived\n";
  }
  for (const auto& [name, bytes] : files)
    if (!manifest.files.contains(name) && name != writers::manifest_name &&
        name != writers::sums_name)
      faults += name + ": not in the manifest\n";
  const auto sums = files.find(writers::sums_name);
  if (sums == files.end() ||
      sums->second != writers::sums(manifest, files.at(writers::manifest_name)))
    faults += std::string(writers::sums_name) + ": does not fit the manifest\n";
  return faults;
}

// What this program is made with that the archive was not.
std::string other_tools(const Manifest& then, const Recipe& recipe) {
  std::string text;
  std::map<std::string, std::string> now = writers::library_versions();
  now["splaybook"] = SPLAYBOOK_VERSION;
  for (const auto& [tool, version] : now) {
    const auto found = then.versions.find(tool);
    const std::string was = found == then.versions.end() ? "none" : found->second;
    if (was != version) text += tool + " " + version + ", then " + was + "\n";
  }
  for (const Manifest::Font& font : fonts_of(recipe))
    if (std::ranges::find(then.fonts, font) == then.fonts.end())
      text += "the font " + font.family + " is another file than then\n";
  return text;
}

const std::string& held(const Files& files, const std::string& name) {
  const auto found = files.find(name);
  if (found == files.end()) throw std::runtime_error("the archive does not hold " + name);
  return found->second;
}

Recipe recipe_of(const Manifest& manifest, const Files& files, const std::string& name) {
  Call call;
  call.paper = manifest.paper;
  call.effort = manifest.effort;
  Recipe recipe{
      make_piece(held(files, manifest.source), manifest.source, overrides_of(call)), name, {}, {}};
  for (const auto& [whom, style] : manifest.styles)
    recipe.styles[whom] = {style, held(files, style)};
  for (const auto& [whom, symbols] : manifest.symbols)
    for (const auto& [symbol, file] : symbols)
      recipe.styles[whom].symbols[symbol] = held(files, file);
  for (const auto& [whom, style] : recipe.styles) recipe.looks.emplace(whom, look_of(style));
  return recipe;
}

}  // namespace

int archive(const Call& call) {
  Recipe recipe{open_piece(call), {}, {}, {}};
  if (!recipe.piece.project || withheld(recipe.piece)) return wrong_project;
  recipe.name = base_name(call, recipe.piece);
  for (const char* whom : {"shop", "client"}) {
    StyleFile style = read_style_file(style_path(call, whom));
    recipe.looks.emplace(whom, look_of(style));
    style.path = "style-" + fs::path(style.path).filename().string();
    recipe.styles[whom] = std::move(style);
  }
  std::string faults;
  Files files = make_files(recipe, faults);
  if (!faults.empty()) std::cerr << "The drawing hand failed on these pages:\n" << faults;
  add_manifest(manifest_of(recipe, call, files), files);
  const fs::path folder = fs::path(call.out) / (recipe.name + "-archive");
  const fs::path packed = folder.string() + ".zip";
  const bool folder_there = is_there(folder, files), packed_there = is_there(packed, files);
  if (!folder_there) {
    place_folder(folder, files);
    std::cout << folder.string() << ": " << files.size() << " files\n";
  }
  if (!packed_there) {
    writers::write_files(call.out,
                         {{packed.filename().string(),
                           writers::zip(files, recipe.name, *recipe.piece.project->job.date)}});
    std::cout << packed.string() << '\n';
  }
  write_index(call.out);
  return done;
}

bool is_archive(const fs::path& path) {
  return path.extension() == ".zip" || fs::exists(path / writers::manifest_name);
}

int check_archive(const Call& call) {
  const Files files = open_archive(call.file);
  const auto found = files.find(writers::manifest_name);
  if (found == files.end()) throw std::runtime_error(call.file + " has no manifest");
  const Manifest manifest = writers::read_manifest(found->second);
  const std::string faults = damage(manifest, files);
  if (!faults.empty()) {
    std::cout << faults;
    return wrong_project;
  }
  std::cout << files.size() << " files, whole\n";
  const std::string stem = fs::path(manifest.source).stem().string();
  const Recipe recipe = recipe_of(manifest, files, stem + "-" + manifest.revision);
  const std::string others = other_tools(manifest, recipe);
  if (!others.empty()) std::cout << "Not the tools it was made with:\n" << others;
  if (!recipe.piece.project || recipe.piece.plan.stopped()) {
    std::cout << "Its source can't be printed with these tools.\n";
    return wrong_project;
  }
  std::string page_faults_now;
  const Files again = make_files(recipe, page_faults_now);
  std::string differs;
  for (const auto& [name, bytes] : again) {
    const auto old = files.find(name);
    if (old == files.end() || old->second != bytes) differs += name + ": printed otherwise now\n";
  }
  std::cout << (differs.empty() ? "printed again, every byte the same\n" : differs);
  return differs.empty() ? done : wrong_project;
}

}  // namespace splay
