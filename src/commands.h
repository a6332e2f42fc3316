// The commands of the program, one file each (command_*.cpp), and what they are called with.
#pragma once

#include <cstdint>
#include <filesystem>
#include <map>
#include <memory>
#include <string>
#include <vector>

#include "ink/fonts.h"
#include "pipeline.h"
#include "sheets/packet.h"

namespace splay {

enum Exit { done = 0, wrong_project = 1, wrong_call = 2, no_file = 3 };

struct Call {
  std::string file, old_file, style, paper, out = "output", word, whom = "shop", starter = "case";
  bool only_changed = false;
  std::vector<std::string> words;           // to look for
  std::vector<std::string> formats{"pdf"};  // words of writers/formats.h
  std::int64_t effort = 0;
};

// Each returns the exit status; all throw std::runtime_error for a file that can't be read or
// written.
int check(const Call& call);
int print(const Call& call);
int report(const Call& call);
int explain(const Call& call);
int compare(const Call& call);
int watch(const Call& call);      // until it is stopped
int start_new(const Call& call);  // a project file from a starter
int schema(const Call& call);     // of the project file or the report
int archive(const Call& call);
int check_archive(const Call& call);                 // whole, and printed again the same
int jobs(const Call& call);                          // the finished jobs among the archives
bool is_archive(const std::filesystem::path& path);  // its folder or its .zip

// What the commands share.
// A style's file and the files of the symbols it names. Throws std::runtime_error when there is
// none, or a symbol lies elsewhere than below its folder.
struct StyleFile {
  std::string path, text;
  std::map<std::string, std::string> symbols{};  // as the style names them, and their bytes
};
StyleFile read_style_file(const std::filesystem::path& path);
// A style ready to draw with.
struct Look {
  model::Style style;
  std::shared_ptr<const ink::FontSet> fonts;  // of its typeface
};
Look look_of(const StyleFile& file);  // throws std::runtime_error with all faults
Overrides overrides_of(const Call& call);
Piece open_piece(const Call& call);  // says what is wrong with the file on standard error
void show_findings(const Piece& piece, std::ostream& out);
// Shows the findings when one says stop.
bool withheld(const Piece& piece);
// Where files that come with the program may lie: beside it when installed (../share/splaybook/NAME
// from its folder), else in the source tree.
std::vector<std::filesystem::path> shared_folders(const std::string& name,
                                                  const std::filesystem::path& in_source);
// Where the style lies that was asked for, by path or by name, or the usual one.
std::filesystem::path style_path(const Call& call, const std::string& whom);
Look look_of(const Call& call);
// Where a style's signs lie, there or not; none of a style that can't be read.
std::vector<std::filesystem::path> sign_paths(const std::filesystem::path& style);
// The packet for "shop" or "client", and what the page lint says of it.
struct Issued {
  ink::Packet packet;
  std::string faults;  // one line each
};
Issued issue_packet(const Piece& piece, const Look& look, const std::string& whom);
sheets::Issue issue_of(const Piece& piece, const std::string& whom);
// Writes the packet asked for in every format asked for; says what the page lint finds.
struct Printed {
  std::vector<std::string> files;
  std::size_t pages = 0;
};
Printed print_piece(const Call& call, const Piece& piece);
// The check figure of what a client signs: SHA-256 of the file but its records.
std::string check_figure(const Piece& piece);
std::string base_name(const Call& call, const Piece& piece);  // "canted-tea-cabinet-B"

}  // namespace splay
