#include "writers/manifest.h"

#include <cairo.h>
#include <hpdf.h>
#include <tinyxml2.h>
#include <zip.h>
#include <zlib.h>

#include <nlohmann/json.hpp>
#include <stdexcept>

#include "writers/digest.h"
#include "writers/files.h"

namespace splay::writers {

using Json = nlohmann::ordered_json;

std::string text(const Manifest& manifest) {
  Json fonts = Json::array();
  for (const Manifest::Font& font : manifest.fonts)
    fonts.push_back({{"family", font.family}, {"version", font.version}, {"sha256", font.sha256}});
  Json from = {{"source", manifest.source},
               {"paper", manifest.paper},
               {"effort", manifest.effort},
               {"styles", manifest.styles}};
  if (!manifest.symbols.empty()) from["symbols"] = manifest.symbols;
  const Json all = {{"job",
                     {{"number", manifest.number},
                      {"title", manifest.title},
                      {"client", manifest.client},
                      {"revision", manifest.revision},
                      {"date", manifest.date},
                      {"width_mm", manifest.width},
                      {"height_mm", manifest.height},
                      {"depth_mm", manifest.depth},
                      {"hours", manifest.hours < 0 ? Json(nullptr) : Json(manifest.hours)},
                      {"photos", manifest.photos}}},
                    {"made_with", {{"versions", manifest.versions}, {"fonts", fonts}}},
                    {"made_from", from},
                    {"sha256", manifest.files}};
  return all.dump(2) + "\n";
}

Manifest read_manifest(const std::string& text) try {
  const Json all = Json::parse(text);
  const Json &job = all.at("job"), &from = all.at("made_from"), &with = all.at("made_with");
  Manifest manifest;
  job.at("number").get_to(manifest.number);
  job.at("title").get_to(manifest.title);
  job.at("client").get_to(manifest.client);
  job.at("revision").get_to(manifest.revision);
  job.at("date").get_to(manifest.date);
  job.at("width_mm").get_to(manifest.width);
  job.at("height_mm").get_to(manifest.height);
  job.at("depth_mm").get_to(manifest.depth);
  if (!job.at("hours").is_null()) job.at("hours").get_to(manifest.hours);
  job.at("photos").get_to(manifest.photos);
  with.at("versions").get_to(manifest.versions);
  for (const Json& font : with.at("fonts"))
    manifest.fonts.push_back({font.at("family").get<std::string>(),
                              font.at("version").get<std::string>(),
                              font.at("sha256").get<std::string>()});
  from.at("source").get_to(manifest.source);
  from.at("paper").get_to(manifest.paper);
  from.at("effort").get_to(manifest.effort);
  from.at("styles").get_to(manifest.styles);
  if (from.contains("symbols")) from.at("symbols").get_to(manifest.symbols);
  all.at("sha256").get_to(manifest.files);
  return manifest;
} catch (const Json::exception& error) {
  throw std::runtime_error(std::string("the manifest can't be read: ") + error.what());
}

std::string sums(const Manifest& manifest, const std::string& manifest_text) {
  std::map<std::string, std::string> all = manifest.files;
  all[manifest_name] = sha256(manifest_text);
  std::string lines;
  for (const auto& [name, sum] : all) lines += sum + "  " + name + "\n";
  return lines;
}

std::map<std::string, std::string> library_versions() {
  return {{"libharu", HPDF_GetVersion()},
          {"cairo", cairo_version_string()},
          {"zlib", zlibVersion()},
          {"libzip", zip_libzip_version()},
          {"tinyxml2", std::to_string(TIXML2_MAJOR_VERSION) + "." +
                           std::to_string(TIXML2_MINOR_VERSION) + "." +
                           std::to_string(TIXML2_PATCH_VERSION)}};
}

std::vector<Manifest::Font> fonts_used(const ink::FontSet& fonts) {
  constexpr std::size_t largest = 64u << 20;
  std::vector<Manifest::Font> used;
  for (const ink::FontSet::File& file : fonts.files())
    used.push_back({file.family, file.version, sha256(read_file(file.path, largest))});
  return used;
}

}  // namespace splay::writers
