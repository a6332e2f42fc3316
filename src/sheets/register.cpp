#include <array>

#include "sheets/kinds.h"
#include "sheets/sheet.h"

namespace splay::sheets {

// In the order of the packets. A new sheet is one file and one line here.
std::span<const SheetKind> registry() {
  constexpr ForWhom client = ForWhom::client, shop = ForWhom::shop;
  constexpr bool long_work = true;
  static constexpr std::array kinds{
      SheetKind{"cover", "Cover and index", make_cover, true},
      SheetKind{"elevations", "Elevations and section", make_elevations, false, shop, long_work},
      SheetKind{"exploded", "Exploded view", make_exploded},
      SheetKind{"cut-list", "Cut list", make_cut_list},
      SheetKind{"part-views", "Part views", make_part_views, false, shop, long_work},
      SheetKind{"joint-details", "Joint details", make_joint_details},
      SheetKind{"saw-steps", "Saw steps", make_saw_steps, false, shop, long_work},
      SheetKind{"glue-up", "Glue-up", make_glue_up, false, shop, long_work},
      SheetKind{"stock", "Sheets and boards", make_stock},
      SheetKind{"buying", "Buying list", make_buying},
      SheetKind{"hold", "Hardware, finish, balance", make_hold},
      SheetKind{"quote", "Quote", make_quote},
      SheetKind{"checks", "Checks and cautions", make_checks},
      SheetKind{"rods", "Setting-out strips", make_rods},
      SheetKind{"templates", "Templates", make_templates},
      SheetKind{"labels", "Part labels", make_labels},
      SheetKind{"record", "As-built record", make_record},
      SheetKind{"signs", "Signs used in this binder", make_signs},
      SheetKind{"client-cover", "Drawings for approval", make_client_cover, true, client},
      SheetKind{"client-views", "Views", make_client_views, false, client},
      SheetKind{"client-open", "Opened", make_client_open, false, client},
      SheetKind{"client-materials", "Materials and finish", make_client_materials, false, client},
      SheetKind{"client-price", "Quote", make_client_price, false, client},
      SheetKind{"client-sign-off", "Sign-off", make_client_sign_off, false, client},
  };
  return kinds;
}

}  // namespace splay::sheets
