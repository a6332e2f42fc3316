// What a part view, a cut list row and a label say of a part: read from its solid, its operations
// and its row, put in a maker's words.
#pragma once

#include <string>
#include <vector>

#include "fabrication/row_order.h"
#include "sheets/sheet.h"

namespace splay::sheets {

// One row of the plan with its drawn part. Points into the context, which outlives it.
struct PartSheet {
  const Context& context;
  const fabrication::PartRow& row;
  const parts::Part& part;
  Boundary boundary;  // of the part's body, part frame

  PartSheet(const Context& the_context, const fabrication::PartRow& the_row);
  const drafting::Kit& kit() const { return context.kit; }
  const std::string& name(parts::Side side) const { return parts::side_name(part, side); }
};

using fabrication::rows_in_order;

// "left panel"; "left block, right block"; "side 1 panel and 5 alike".
std::string row_name(const Context& context, const fabrication::PartRow& row);

// "mitre to left panel"; without the neighbour when the row's parts meet different ones.
std::string operation_words(const PartSheet& sheet, const parts::Operation& operation);
std::string plain_words(const PartSheet& sheet, const parts::Operation& operation);  // "mitre"
// The marks of what a joint joins the part to; "" when there is none or they differ in the row.
std::string neighbour_mark(const PartSheet& sheet, const parts::Operation& operation);

// "bevel 37.50° (9 7/32 in 12), face angle square": what the machine is set to.
std::string setting_words(const PartSheet& sheet, const fabrication::CutReport& cut);
// "outside" or "outside, front edge": the arris that stands furthest out.
std::string long_arris_words(const PartSheet& sheet, const fabrication::CutReport& cut);
// The face on the table so that the blade leans over the part and not over the offcut (common
// practice, no source).
parts::Side face_down(const fabrication::CutReport& cut);

// "27 7/16 × 15 1/4 × 23/32".
std::string size_words(const drafting::Kit& kit, Vec3 size);
std::string angle_words(double radians);  // "37.50°"
std::string rise_words(const drafting::Kit& kit, double radians);
std::string stock_words(const Context& context, const std::string& stock);  // "panel, plywood"
std::string hand_words(const fabrication::PartRow& row);                    // "left hand", ""
std::string show_words(const PartSheet& sheet);  // "outside" or "either face"
std::string capitalised(std::string text);

}  // namespace splay::sheets
