// The commands of the program, one file each (command_*.cpp), and what they are called with.
#pragma once

#include <cstdint>
#include <filesystem>
#include <string>
#include <vector>

#include "pipeline.h"

namespace splay {

enum Exit { done = 0, wrong_project = 1, wrong_call = 2, no_file = 3 };

struct Call {
  std::string file, style, paper, out = "output", word, whom = "shop";
  std::int64_t effort = 0;
};

// Each returns the exit status; all throw std::runtime_error for a file that can't be read or
// written.
int check(const Call& call);
int print(const Call& call);
int report(const Call& call);
int explain(const Call& call);

// What the commands share.
Piece open_piece(const Call& call);  // says what is wrong with the file on standard error
void show_findings(const Piece& piece, std::ostream& out);
// Shows the findings when one says stop.
bool withheld(const Piece& piece);
model::Style style_of(const Call& call);
// The check figure of what a client signs: SHA-256 of the file but its [approval] table.
std::string check_figure(const Piece& piece);
std::string base_name(const Call& call, const Piece& piece);  // "canted-tea-cabinet-B"

}  // namespace splay
