// print and report: a packet of pages, or everything computed, from one file.
#include <algorithm>
#include <iostream>

#include "commands.h"
#include "sheets/packet.h"
#include "writers/files.h"
#include "writers/formats.h"
#include "writers/report.h"

namespace splay {

namespace {

writers::Files files_of(const writers::Subject& subject, const std::vector<std::string>& words) {
  writers::Files files;
  for (const writers::Format& format : writers::formats())
    if (std::ranges::find(words, format.word) != words.end()) files.merge(format.make(subject));
  return files;
}

}  // namespace

Printed print_piece(const Call& call, const Piece& piece, const ink::FontSet& fonts) {
  const bool client = call.whom == "client";
  const sheets::Issue issue{client ? sheets::ForWhom::client : sheets::ForWhom::shop,
                            check_figure(piece)};
  const model::Style style = style_of(call);
  const ink::Packet packet = sheets::make_packet(piece.plan, style, fonts, issue);
  const std::string faults =
      page_faults(packet, fonts, sheets::parts_wanted(piece.plan, style, issue.whom));
  if (!faults.empty())
    std::cerr << "The drawing hand failed on these pages; look at them before you cut:\n" << faults;
  writers::Files files =
      files_of({piece.plan, packet, fonts, base_name(call, piece), call.whom, &piece.as_built},
               call.formats);
  writers::write_files(call.out, files);
  Printed printed{{}, packet.pages.size()};
  for (const auto& [name, bytes] : files)
    printed.files.push_back((std::filesystem::path(call.out) / name).string());
  return printed;
}

int print(const Call& call) {
  if (call.whom == "archive") return archive(call);
  const Piece piece = open_piece(call);
  if (!piece.project || withheld(piece)) return wrong_project;
  const ink::FontSet fonts;
  const Printed printed = print_piece(call, piece, fonts);
  for (const std::string& file : printed.files) {
    std::cout << file;
    if (file.ends_with(".pdf")) std::cout << ": " << printed.pages << " pages";
    std::cout << '\n';
  }
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
