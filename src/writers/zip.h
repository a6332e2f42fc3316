// One .zip of many files (APPNOTE.TXT of the ZIP format) through libzip.
#pragma once

#include "model/field.h"
#include "writers/formats.h"

namespace splay::writers {

// The files in one folder, deflated, all dated `date` (years before 1980 are that year: the format
// knows no earlier ones), so that the same files give the same bytes. Throws std::runtime_error.
std::string zip(const Files& files, const std::string& folder, model::Date date);

// The files of a .zip that holds one folder, by their names in it. Throws std::runtime_error for
// what is no such .zip, is damaged, or holds more than `limit` bytes.
Files unzip(const std::string& bytes, std::uint64_t limit);

}  // namespace splay::writers
