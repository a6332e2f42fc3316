// Comma-separated values (RFC 4180): fields parted by commas, records ended by CR LF, a field with
// a comma, quote or line break in quotes, a quote inside doubled.
#pragma once

#include <string>
#include <vector>

namespace splay::writers {

inline std::string csv_field(const std::string& text) {
  if (text.find_first_of(",\"\r\n") == std::string::npos) return text;
  std::string quoted = "\"";
  for (const char c : text) {
    if (c == '"') quoted += '"';
    quoted += c;
  }
  return quoted + "\"";
}

inline std::string csv_record(const std::vector<std::string>& fields) {
  std::string record;
  for (std::size_t i = 0; i < fields.size(); ++i)
    record += (i == 0 ? "" : ",") + csv_field(fields[i]);
  return record + "\r\n";
}

}  // namespace splay::writers
