// print and report: a packet of pages, or everything computed, from one file.
#include <algorithm>
#include <iostream>

#include "commands.h"
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

sheets::Issue issue_of(const Piece& piece, const std::string& whom) {
  return {whom == "client" ? sheets::ForWhom::client : sheets::ForWhom::shop, check_figure(piece),
          &piece.as_built};
}

Issued issue_packet(const Piece& piece, const Look& look, const std::string& whom) {
  const sheets::Issue issue = issue_of(piece, whom);
  Issued issued{sheets::make_packet(piece.plan, look.style, *look.fonts, issue), {}};
  issued.faults = page_faults(issued.packet, *look.fonts,
                              sheets::parts_wanted(piece.plan, look.style, issue.whom));
  return issued;
}

Printed print_piece(const Call& call, const Piece& piece) {
  const Look look = look_of(call);
  const auto [packet, faults] = issue_packet(piece, look, call.whom);
  if (!faults.empty())
    std::cerr << "The drawing hand failed on these pages; look at them before you cut:\n" << faults;
  writers::Files files = files_of(
      {piece.plan, packet, *look.fonts, base_name(call, piece), call.whom, &piece.as_built},
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
  const Printed printed = print_piece(call, piece);
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
  const Look look = look_of(call);
  const ink::Packet packet = sheets::make_packet(piece.plan, look.style, *look.fonts);
  std::cout << writers::report(piece.plan, &packet);
  return done;
}

}  // namespace splay
