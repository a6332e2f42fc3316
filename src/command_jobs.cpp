// jobs: the finished jobs among the archives of a folder, and their index as a file.
#include <algorithm>
#include <cctype>
#include <iostream>

#include "base/figure.h"
#include "command_archive.h"
#include "commands.h"
#include "writers/csv.h"
#include "writers/files.h"
#include "writers/manifest.h"

namespace splay {

namespace {

namespace fs = std::filesystem;

constexpr std::size_t largest_manifest = 16u << 20;
constexpr const char* ending = "-archive";

struct Finished {
  std::string archive;  // the folder's name
  writers::Manifest manifest;
};

// In the order of their dates, then of their folders.
std::vector<Finished> finished_in(const fs::path& folder) {
  std::vector<Finished> all;
  if (!fs::is_directory(folder)) return all;
  for (const fs::directory_entry& entry : fs::directory_iterator(folder)) {
    const fs::path manifest = entry.path() / writers::manifest_name;
    const std::string name = entry.path().filename().string();
    if (!name.ends_with(ending) || name.starts_with(".") || !fs::exists(manifest)) continue;
    all.push_back({name, writers::read_manifest(writers::read_file(manifest, largest_manifest))});
  }
  std::ranges::sort(all, [](const Finished& a, const Finished& b) {
    return std::tie(a.manifest.date, a.archive) < std::tie(b.manifest.date, b.archive);
  });
  return all;
}

std::vector<std::string> record(const Finished& job) {
  const writers::Manifest& m = job.manifest;
  std::string photos;
  for (const std::string& photo : m.photos) photos += (photos.empty() ? "" : "; ") + photo;
  return {m.number,
          m.title,
          m.client,
          m.revision,
          m.date,
          plain_number(m.width, 1),
          plain_number(m.height, 1),
          plain_number(m.depth, 1),
          m.hours < 0 ? "" : plain_number(m.hours, 2),
          photos,
          job.archive};
}

std::string lower(std::string text) {
  for (char& c : text) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return text;
}

bool has_all(const std::vector<std::string>& fields, const std::vector<std::string>& words) {
  std::string all;
  for (const std::string& field : fields) all += lower(field) + "\n";
  return std::ranges::all_of(
      words, [&](const std::string& word) { return all.find(lower(word)) != std::string::npos; });
}

}  // namespace

void write_index(const fs::path& folder) {
  std::string file =
      writers::csv_record({"number", "title", "client", "revision", "date", "width mm", "height mm",
                           "depth mm", "hours", "photos", "archive"});
  for (const Finished& job : finished_in(folder)) file += writers::csv_record(record(job));
  writers::write_files(folder, {{"jobs.csv", file}});
}

int jobs(const Call& call) {
  bool any = false;
  for (const Finished& job : finished_in(call.out)) {
    const std::vector<std::string> fields = record(job);
    if (!has_all(fields, call.words)) continue;
    any = true;
    std::cout << fields[4] << "  " << fields[0] << "  " << fields[1] << ", revision " << fields[3]
              << "\n  for " << fields[2] << "; " << fields[5] << " x " << fields[6] << " x "
              << fields[7] << " mm (width, height, depth)";
    if (!fields[8].empty()) std::cout << "; " << fields[8] << " hours";
    if (!fields[9].empty()) std::cout << "\n  photos: " << fields[9];
    std::cout << "\n  " << (fs::path(call.out) / fields.back()).string() << '\n';
  }
  if (!any) {
    std::cerr << "No archive in " << call.out << (call.words.empty() ? "." : " has");
    for (const std::string& word : call.words)
      std::cerr << (&word == &call.words.front() ? " \"" : " and \"") << word << '"';
    std::cerr << (call.words.empty() ? "\n" : " in its number, title, client, date or photos.\n");
  }
  return done;
}

}  // namespace splay
