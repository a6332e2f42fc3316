// Steps that are the same cut as the one drawn: the rows under its card. Internal to src/sheets.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "drafting/flow.h"
#include "sheets/saw_steps_work.h"
#include "sheets/sheet.h"

namespace splay::sheets {

// Steps of one part, one after the other, of which nothing is to be told apart: one row.
std::vector<JoinedSteps> runs_of(const Context& context, const JoinedSteps& steps);
std::string ids_of(const JoinedSteps& run);  // "P-L.6", "P-L.6 to 13"

// Boxes to tick, one for each piece, `side` high, and how many more there are than boxes.
drafting::Picture tick_boxes(const drafting::Kit& kit, std::size_t pieces, double side);

// A table of the runs after the first: the step, what is cut, what differs. `head` is drawn over
// what of it stands in a new column.
drafting::Story run_rows(const Context& context, const std::vector<JoinedSteps>& runs, double width,
                         const drafting::Picture& head);

}  // namespace splay::sheets
