// The program on one screen: text, project, assembly, plan, packet.
#pragma once

#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "fabrication/plan.h"
#include "ink/fonts.h"
#include "ink/ink.h"
#include "ink/lint.h"
#include "model/as_built.h"
#include "model/project.h"
#include "model/style.h"

namespace splay {

// A project read and planned. `plan` is meaningful only when there is no diagnostic.
struct Piece {
  std::string file_name, source;
  std::vector<Diagnostic> diagnostics;
  std::unique_ptr<model::Project> project;  // null when there is a diagnostic
  fabrication::Plan plan;                   // points to the project
  model::AsBuilt as_built;
};

// What the command line may say over the file.
struct Overrides {
  std::optional<model::PaperSize> paper;
  packing::Effort effort;  // on the layout of each stock
};

// Throws std::runtime_error when the file can't be read.
Piece make_piece(const std::filesystem::path& file, const Overrides& overrides);
// The same of a text that was read already; `file_name` is for messages.
Piece make_piece(std::string source, std::string file_name, const Overrides& overrides);

// The page faults of a packet as text, one line each; empty when the pages are sound.
std::string page_faults(const ink::Packet& packet, const ink::FontSet& fonts,
                        const ink::PartsWanted& wanted);

}  // namespace splay
