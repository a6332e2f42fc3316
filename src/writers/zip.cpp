#include "writers/zip.h"

#include <zip.h>

#include <memory>
#include <stdexcept>

namespace splay::writers {

namespace {

[[noreturn]] void fail(const std::string& what) { throw std::runtime_error("zip: " + what); }

struct Error {
  zip_error_t error{};
  Error() { zip_error_init(&error); }
  ~Error() { zip_error_fini(&error); }
  Error(const Error&) = delete;
  Error& operator=(const Error&) = delete;
  [[noreturn]] void raise() { fail(zip_error_strerror(&error)); }
};

// A source in memory that outlives the archive made from it.
using Source = std::unique_ptr<zip_source_t, decltype(&zip_source_free)>;
using Archive = std::unique_ptr<zip_t, decltype(&zip_discard)>;

std::string all_bytes(zip_source_t* source) {
  if (zip_source_open(source) != 0) fail("can't read what was written");
  zip_source_seek(source, 0, SEEK_END);
  std::string bytes(static_cast<std::size_t>(zip_source_tell(source)), '\0');
  zip_source_seek(source, 0, SEEK_SET);
  const zip_int64_t got = zip_source_read(source, bytes.data(), bytes.size());
  zip_source_close(source);
  if (got != static_cast<zip_int64_t>(bytes.size())) fail("can't read what was written");
  return bytes;
}

std::uint16_t dos_date(model::Date date) {
  constexpr int first_year = 1980;
  if (date.year < first_year) date = {first_year, 1, 1};
  return static_cast<std::uint16_t>((date.year - first_year) << 9 | date.month << 5 | date.day);
}

void add(zip_t* archive, const std::string& name, const std::string& bytes, model::Date date) {
  constexpr unsigned level = 6;
  zip_source_t* source = zip_source_buffer(archive, bytes.data(), bytes.size(), 0);
  const zip_int64_t index =
      source == nullptr ? -1 : zip_file_add(archive, name.c_str(), source, ZIP_FL_ENC_UTF_8);
  if (index < 0) {
    if (source != nullptr) zip_source_free(source);
    fail(name + ": " + zip_strerror(archive));
  }
  const auto at = static_cast<zip_uint64_t>(index);
  if (zip_set_file_compression(archive, at, ZIP_CM_DEFLATE, level) != 0 ||
      zip_file_set_dostime(archive, at, 0, dos_date(date), 0) != 0)
    fail(name + ": " + zip_strerror(archive));
}

std::string contents(zip_t* archive, zip_uint64_t index, const zip_stat_t& state) {
  const std::unique_ptr<zip_file_t, decltype(&zip_fclose)> file(zip_fopen_index(archive, index, 0),
                                                                zip_fclose);
  std::string bytes(state.size, '\0');
  // One read more than there is: the check sum is compared at the end.
  char past = 0;
  if (!file ||
      zip_fread(file.get(), bytes.data(), bytes.size()) != static_cast<zip_int64_t>(bytes.size()) ||
      zip_fread(file.get(), &past, 1) != 0)
    fail(std::string(state.name) + " is damaged");
  return bytes;
}

}  // namespace

std::string zip(const Files& files, const std::string& folder, model::Date date) {
  Error error;
  const Source source(zip_source_buffer_create(nullptr, 0, 0, &error.error), zip_source_free);
  if (!source) error.raise();
  zip_source_keep(source.get());  // the archive has a share in it
  Archive archive(zip_open_from_source(source.get(), ZIP_TRUNCATE, &error.error), zip_discard);
  if (!archive) {
    zip_source_free(source.get());
    error.raise();
  }
  for (const auto& [name, bytes] : files) add(archive.get(), folder + "/" + name, bytes, date);
  if (zip_close(archive.get()) != 0) fail(zip_strerror(archive.get()));
  static_cast<void>(archive.release());
  return all_bytes(source.get());
}

Files unzip(const std::string& bytes, std::uint64_t limit) {
  Error error;
  zip_source_t* source = zip_source_buffer_create(bytes.data(), bytes.size(), 0, &error.error);
  if (source == nullptr) error.raise();
  const Archive archive(zip_open_from_source(source, ZIP_RDONLY | ZIP_CHECKCONS, &error.error),
                        zip_discard);
  if (!archive) {
    zip_source_free(source);
    error.raise();
  }
  Files files;
  std::string folder;
  const auto count = static_cast<zip_uint64_t>(zip_get_num_entries(archive.get(), 0));
  for (zip_uint64_t i = 0; i < count; ++i) {
    zip_stat_t state;
    if (zip_stat_index(archive.get(), i, 0, &state) != 0) fail(zip_strerror(archive.get()));
    const std::string name(state.name);
    const std::size_t slash = name.find('/');
    if (slash == std::string::npos || name.find('/', slash + 1) != std::string::npos ||
        (!folder.empty() && name.substr(0, slash) != folder))
      fail("not the archive of one piece: " + name);
    folder = name.substr(0, slash);
    if (state.size > limit) fail(name + " is too large");
    limit -= state.size;
    files[name.substr(slash + 1)] = contents(archive.get(), i, state);
  }
  return files;
}

}  // namespace splay::writers
