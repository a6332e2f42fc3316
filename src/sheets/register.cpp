#include <array>

#include "sheets/kinds.h"
#include "sheets/sheet.h"

namespace splay::sheets {

// In the order of the binder. A new sheet is one file and one line here.
std::span<const SheetKind> registry() {
  static constexpr std::array kinds{
      SheetKind{"cover", "Cover and index", make_cover, true},
      SheetKind{"elevations", "Elevations and section", make_elevations},
      SheetKind{"cut-list", "Cut list", make_cut_list},
      SheetKind{"part-views", "Part views", make_part_views},
      SheetKind{"joint-details", "Joint details", make_joint_details},
      SheetKind{"saw-steps", "Saw steps", make_saw_steps},
      SheetKind{"stock", "Sheets and boards", make_stock},
      SheetKind{"buying", "Buying list", make_buying},
      SheetKind{"quote", "Quote", make_quote},
      SheetKind{"hold", "Hardware, finish, balance", make_hold},
      SheetKind{"checks", "Checks and cautions", make_checks},
      SheetKind{"labels", "Part labels", make_labels},
      SheetKind{"signs", "Signs used in this binder", make_signs},
  };
  return kinds;
}

}  // namespace splay::sheets
