// compare: two revisions of one piece, and what the second makes of the first.
#include <iostream>

#include "commands.h"
#include "reading/said.h"
#include "sheets/comparison.h"
#include "writers/files.h"
#include "writers/writers.h"

namespace splay {

namespace {

struct Revision {
  Piece piece;
  Look look;
  sheets::Issue issue;
  ink::Packet packet;
};

// Nothing when the file is wrong or its pages are withheld.
std::optional<Revision> revision_of(Call call, const std::string& file) {
  call.file = file;
  Revision revision{open_piece(call), look_of(call), {}, {}};
  if (!revision.piece.project || withheld(revision.piece)) return {};
  revision.issue = issue_of(revision.piece, call.whom);
  revision.packet = sheets::make_packet(revision.piece.plan, revision.look.style,
                                        *revision.look.fonts, revision.issue);
  return revision;
}

void tell(const sheets::Comparison& comparison, std::ostream& out) {
  for (const model::Changed& change : comparison.said)
    out << change.field << ": " << (change.before.empty() ? "not said" : change.before) << " -> "
        << (change.now.empty() ? "not said" : change.now) << '\n';
  for (const fabrication::PartChange& change : comparison.parts) {
    out << "part " << (change.mark.empty() ? change.mark_before : change.mark) << " ("
        << change.name << "):";
    if (change.is_new) out << " new";
    if (change.is_gone) out << " gone";
    for (std::size_t i = 0; i < change.what.size(); ++i)
      out << (i == 0 ? " " : "; ") << change.what[i];
    if (!change.steps.empty())
      out << (change.what.empty() ? " steps " : "; steps ") << sheets::steps_words(change.steps);
    out << '\n';
  }
  for (const sheets::PageChange& change : comparison.pages)
    out << "page " << change.label << " (" << change.title
        << "): " << (change.is_new ? "new" : "changed") << '\n';
  for (const std::string& title : comparison.gone_pages) out << "page gone: " << title << '\n';
}

}  // namespace

int compare(const Call& call) {
  const std::optional<Revision> before = revision_of(call, call.old_file);
  const std::optional<Revision> now = revision_of(call, call.file);
  if (!before || !now) return wrong_project;
  const model::Job& job = now->piece.project->job;
  const sheets::Comparison comparison = sheets::compare(
      {before->piece.plan, before->packet}, {now->piece.plan, now->packet},
      model::changes(reading::all_said(before->piece.source), reading::all_said(now->piece.source)),
      *now->look.fonts);
  tell(comparison, std::cout);
  if (!comparison.any()) {
    std::cout << "No difference.\n";
    return done;
  }
  if (*job.revision == comparison.revision_before)
    std::cerr << "Both files say revision " << *job.revision
              << ": pages of the one can't be told from pages of the other.\n";
  const auto context = [&](const Revision& revision) {
    return sheets::context_of(revision.piece.plan, revision.look.style, *revision.look.fonts,
                              revision.issue);
  };
  const std::string name = base_name(call, now->piece) + "-" + call.whom;
  const std::string old_name =
      std::filesystem::path(call.old_file).stem().string() + "-" + comparison.revision_before;
  writers::write_files(call.out,
                       {{name + "-changes.pdf",
                         writers::pdf(sheets::marked_packet(context(*now), comparison, now->packet,
                                                            now->issue.whom, call.only_changed),
                                      *now->look.fonts)},
                        {old_name + "-" + call.whom + "-void.pdf",
                         writers::pdf(sheets::void_packet(context(*before), before->packet, job),
                                      *before->look.fonts)}});
  std::cout << (std::filesystem::path(call.out) / (name + "-changes.pdf")).string() << '\n';
  return done;
}

}  // namespace splay
