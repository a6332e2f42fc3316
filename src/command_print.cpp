// print and report: a packet of pages, or everything computed, from one file.
#include <iostream>

#include "commands.h"
#include "sheets/packet.h"
#include "writers/files.h"
#include "writers/report.h"
#include "writers/writers.h"

namespace splay {

int print(const Call& call) {
  const Piece piece = open_piece(call);
  if (!piece.project || withheld(piece)) return wrong_project;
  const ink::FontSet fonts;
  const bool client = call.whom == "client";
  const sheets::Issue issue{client ? sheets::ForWhom::client : sheets::ForWhom::shop,
                            check_figure(piece)};
  const ink::Packet packet = sheets::make_packet(piece.plan, style_of(call), fonts, issue);
  const std::string faults = page_faults(piece.plan, packet, fonts, !client);
  if (!faults.empty())
    std::cerr << "The drawing hand failed on these pages; look at them before you cut:\n" << faults;
  const std::string name = base_name(call, piece) + "-" + call.whom + ".pdf";
  writers::write_files(call.out, {{name, writers::pdf(packet, fonts)}});
  std::cout << (std::filesystem::path(call.out) / name).string() << ": " << packet.pages.size()
            << " pages\n";
  return done;
}

int report(const Call& call) {
  const Piece piece = open_piece(call);
  if (!piece.project) return wrong_project;
  if (piece.plan.stopped()) {
    std::cout << writers::report(piece.plan, nullptr);
    return wrong_project;
  }
  const ink::FontSet fonts;
  const ink::Packet packet = sheets::make_packet(piece.plan, style_of(call), fonts);
  std::cout << writers::report(piece.plan, &packet);
  return done;
}

}  // namespace splay
