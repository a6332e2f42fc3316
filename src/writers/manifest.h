// What an archive holds and what it was made with, as JSON, so that it can be proven whole and
// printed again.
#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <vector>

#include "ink/fonts.h"
#include "writers/formats.h"

namespace splay::writers {

struct Manifest {
  struct Font {
    std::string family, version, sha256;
    bool operator==(const Font&) const = default;
  };
  // The finished job, for an index: lengths in mm, hours negative when nobody counted them.
  std::string number, title, client, revision, date;
  double width = 0, height = 0, depth = 0, hours = -1;
  std::vector<std::string> photos;
  // What it was made with.
  std::map<std::string, std::string> versions;  // "cairo": "1.16.0"
  std::vector<Font> fonts;
  std::string source;                         // the project file's name
  std::string paper;                          // "" as the file says
  std::int64_t effort = 0;                    // of the layouts
  std::map<std::string, std::string> styles;  // packet ("shop") to the style's file
  // Packet to the style's words for its symbols to their files.
  std::map<std::string, std::map<std::string, std::string>> symbols;
  // SHA-256 of every other file, by name.
  std::map<std::string, std::string> files;
};

inline constexpr const char* manifest_name = "manifest.json";
inline constexpr const char* sums_name = "manifest.sha256";

std::string text(const Manifest& manifest);
// Throws std::runtime_error for what is no manifest.
Manifest read_manifest(const std::string& text);

// The same sums as sha256sum(1) writes and checks them, the manifest's own among them.
std::string sums(const Manifest& manifest, const std::string& manifest_text);

std::map<std::string, std::string> library_versions();
std::vector<Manifest::Font> fonts_used(const ink::FontSet& fonts);

}  // namespace splay::writers
