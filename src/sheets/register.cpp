#include <array>

#include "sheets/kinds.h"
#include "sheets/sheet.h"

namespace splay::sheets {

namespace {

constexpr std::string_view told_nowhere_else = "carries cautions that stand nowhere else";

// What a kind of the shop binder is besides its word, title and maker.
struct More {
  std::string_view kept{}, claim{}, anchors{};
  bool needs_index = false, takes_long = false;
};

constexpr SheetKind shop(std::string_view word, std::string_view title,
                         std::vector<ink::Page> (*make)(const Context&), More more = {}) {
  return {word,           title,      make,         ForWhom::shop,
          more.kept,      more.claim, more.anchors, more.needs_index,
          more.takes_long};
}
constexpr SheetKind client(std::string_view word, std::string_view title,
                           std::vector<ink::Page> (*make)(const Context&), More more = {}) {
  return {word,           title,      make,         ForWhom::client,
          more.kept,      more.claim, more.anchors, more.needs_index,
          more.takes_long};
}

}  // namespace

// In the order of the packets. A new sheet is one file and one line here.
std::span<const SheetKind> registry() {
  static constexpr std::array kinds{
      shop("cover", "Cover and index", make_cover,
           {.kept = "has the index, and how every figure was rounded", .needs_index = true}),
      shop("elevations", "Elevations and section", make_elevations, {.takes_long = true}),
      shop("exploded", "Exploded view", make_exploded),
      shop("cut-list", "Cut list", make_cut_list, {.claim = "row"}),
      shop("part-views", "Part views", make_part_views,
           {.claim = "view", .anchors = "part ", .takes_long = true}),
      shop("joint-details", "Joint details", make_joint_details),
      shop("saw-steps", "Saw steps", make_saw_steps,
           {.kept = told_nowhere_else, .takes_long = true}),
      shop("glue-up", "Glue-up", make_glue_up, {.kept = told_nowhere_else, .takes_long = true}),
      shop("stock", "Sheets and boards", make_stock),
      shop("buying", "Buying list", make_buying),
      shop("hold", "Hardware, finish, balance", make_hold, {.kept = told_nowhere_else}),
      shop("quote", "Quote", make_quote),
      shop("checks", "Checks and cautions", make_checks, {.kept = told_nowhere_else}),
      shop("rods", "Setting-out strips", make_rods),
      shop("templates", "Templates", make_templates),
      shop("labels", "Part labels", make_labels),
      shop("record", "As-built record", make_record),
      shop("signs", "Signs used in this binder", make_signs),
      client("client-cover", "Drawings for approval", make_client_cover,
             {.kept = "says what the set is and holds", .needs_index = true}),
      client("client-views", "Views", make_client_views),
      client("client-open", "Opened", make_client_open),
      client("client-materials", "Materials and finish", make_client_materials),
      client("client-price", "Quote", make_client_price),
      client("client-sign-off", "Sign-off", make_client_sign_off, {.kept = "is what is signed"}),
  };
  return kinds;
}

std::vector<model::PageKind> page_kinds() {
  std::vector<model::PageKind> kinds;
  for (const SheetKind& kind : registry()) kinds.push_back({kind.word, kind.kept});
  return kinds;
}

}  // namespace splay::sheets
