// Files appear whole or not at all: temporary file in the same folder, checked write, sync, rename.
#pragma once

#include <filesystem>
#include <map>
#include <string>

namespace splay::writers {

// Writes every file (name to bytes) into `folder`, which is made when missing. All temporary files
// are written and checked before the first is renamed. Throws std::runtime_error naming the file
// and the system's reason; then no file has changed and no temporary file is left.
void write_files(const std::filesystem::path& folder,
                 const std::map<std::string, std::string>& files);

// The whole file as bytes. Throws std::runtime_error for what is not a regular file, can't be read,
// or is larger than `limit` bytes.
std::string read_file(const std::filesystem::path& path, std::size_t limit);

}  // namespace splay::writers
