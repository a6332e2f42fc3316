// The page the client signs: what exactly it is, what signing means, places for names and days.
#include "drafting/table.h"
#include "sheets/client_words.h"
#include "sheets/kinds.h"

namespace splay::sheets {

namespace {

using drafting::Story;

// In groups of eight, which are copied with fewer slips.
std::string grouped(const std::string& digits) {
  constexpr std::size_t together = 8;
  std::string text;
  for (std::size_t i = 0; i < digits.size(); i += together)
    text += (text.empty() ? "" : " ") + digits.substr(i, together);
  return text;
}

Story what_is_signed(const Context& context, double width) {
  const model::Project& project = *context.plan.project;
  drafting::Table table;
  table.columns = {{.head = "What is signed", .share = 0, .wrap = false}, {.head = ""}};
  const auto row = [&](const char* name, std::string value) {
    if (!value.empty()) table.rows.push_back({{name, std::move(value)}, {}, false});
  };
  row("Piece", *project.job.title);
  row("Made for", *project.job.client);
  row("Drawings", drawings_text(context));
  row("Width × height × depth", overall_text(context));
  const std::size_t open = project.client.choices->size();
  row("Choices still open", open == 0 ? "none" : std::to_string(open));
  row("Check figure (SHA-256)", grouped(context.check_figure));
  if (project.approval.given)
    row("Signed before",
        *project.approval.by + ", " + model::iso_date(*project.approval.date) +
            (*project.approval.sha256 == context.check_figure ? ": exactly these drawings"
                                                              : ": other drawings than these"));
  return drafting::table(context.kit, table, width);
}

Story signatures(const Context& context, double width) {
  drafting::Table table;
  table.columns = {{.head = ""},
                   {.head = "Name", .share = 2},
                   {.head = "Day"},
                   {.head = "Signature", .share = 2}};
  for (const char* who : {"For the client", "For the workshop"})
    table.rows.push_back({{std::string(who) + "\n ", "", "", ""}, {}, false});
  return drafting::table(context.kit, table, width);
}

// Where the piece will stand, as measured there.
Story sizes_on_site(const Context& context, double width) {
  drafting::Table table;
  table.columns = {{.head = "Width"},
                   {.head = "Height"},
                   {.head = "Depth"},
                   {.head = "Way in, narrowest", .share = 0},
                   {.head = "By, day"}};
  table.rows.push_back({{"\n ", "", "", "", ""}, {}, false});
  return drafting::table(context.kit, table, width);
}

}  // namespace

std::vector<ink::Page> make_client_sign_off(const Context& given) {
  const Context context = for_reading(given);
  const double width = story_width(context);
  Story story;
  const auto chapter = [&](const char* title, Story more) {
    add_chapter(context, story, title, std::move(more), width);
  };
  chapter("Sign-off", what_is_signed(context, width));
  chapter("Sizes measured on site", sizes_on_site(context, width));
  chapter("What signing means",
          {drafting::body_text(
              context.kit,
              "These drawings show what will be made: its sizes, its materials and its finish. "
              "Nothing is cut before both have signed and no choice is open. A change after that "
              "makes a new revision, which is drawn and signed again; pages of the old one are "
              "void.",
              width)});
  chapter("Signatures", signatures(context, width));
  return story_pages(context, "Sign-off", story);
}

}  // namespace splay::sheets
