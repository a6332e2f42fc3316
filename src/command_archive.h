// What the commands on archives share.
#pragma once

#include <filesystem>

namespace splay {

// Writes jobs.csv, the index of the archives in a folder, anew from their manifests.
void write_index(const std::filesystem::path& folder);

}  // namespace splay
