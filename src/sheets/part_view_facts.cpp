#include "sheets/part_view_facts.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace splay::sheets {

namespace {

using parts::Operation;
using parts::Part;
using parts::Side;

const Part& member(const Context& context, int index) {
  return context.plan.assembly.parts[static_cast<std::size_t>(index)];
}

bool known_neighbour(const PartSheet& sheet) { return sheet.row.quantity() == 1; }

}  // namespace

PartSheet::PartSheet(const Context& the_context, const fabrication::PartRow& the_row)
    : context(the_context),
      row(the_row),
      part(member(the_context, the_row.members.front())),
      boundary(part.body.boundary()) {}

std::string row_name(const Context& context, const fabrication::PartRow& row) {
  constexpr std::size_t most = 2;
  if (row.quantity() > most)
    return member(context, row.members.front()).name + " and " +
           std::to_string(row.quantity() - 1) + " alike";
  std::string names;
  for (const int index : row.members)
    names += (names.empty() ? "" : ", ") + member(context, index).name;
  return names;
}

std::string operation_words(const PartSheet& sheet, const Operation& operation) {
  return known_neighbour(sheet) ? operation.name : plain_words(sheet, operation);
}

// Names end with the part they are for: "mitre to left panel", "shoulder against left front leg".
std::string plain_words(const PartSheet& sheet, const Operation& operation) {
  for (const Part& part : sheet.context.plan.assembly.parts) {
    if (!operation.name.ends_with(" " + part.name)) continue;
    const std::string words =
        operation.name.substr(0, operation.name.size() - part.name.size() - 1);
    const std::size_t last = words.rfind(' ');
    return last == std::string::npos ? words : words.substr(0, last);
  }
  return operation.name;
}

std::string neighbour_mark(const PartSheet& sheet, const Operation& operation) {
  if (!known_neighbour(sheet)) return {};
  const int self = sheet.row.members.front();
  for (const parts::Joint& joint : sheet.context.plan.assembly.joints) {
    if (joint.name != operation.joint) continue;
    for (const int other : joint.between)
      if (other != self) return sheet.context.plan.mark_of(other);
  }
  return {};
}

std::string angle_words(double radians) { return degrees_text(Angle{radians}.degrees()); }

std::string rise_words(const drafting::Kit& kit, double radians) {
  return rise_text(Angle{radians}.degrees(), kit.figures);
}

std::string setting_words(const PartSheet& sheet, const fabrication::CutReport& cut) {
  const auto words = [&](const std::string& name, double radians) {
    if (radians < square_within) return name + " square";
    return name + " " + angle_words(radians) + " (" + rise_words(sheet.kit(), radians) + ")";
  };
  return words("bevel", cut.bevel) + ", " + words("face angle", cut.face_angle);
}

std::string long_arris_words(const PartSheet& sheet, const fabrication::CutReport& cut) {
  std::string words = cut.on_face ? sheet.name(cut.long_face) : "";
  if (cut.on_edge) words += (words.empty() ? "" : ", ") + sheet.name(cut.long_edge);
  return words;
}

Side face_down(const fabrication::CutReport& cut) { return cut.long_face; }

std::string size_words(const drafting::Kit& kit, Vec3 size) {
  return kit.figures.text(size.x) + " × " + kit.figures.text(size.y) + " × " +
         kit.figures.text(size.z);
}

std::string stock_words(const Context& context, const std::string& stock) {
  const model::Stock* known = context.plan.project->stocks.find(stock);
  if (known == nullptr || known->material->empty()) return stock;
  return stock + ", " + *known->material;
}

std::string hand_words(const fabrication::PartRow& row) {
  if (row.hand == fabrication::Hand::none) return {};
  return std::string(word(row.hand)) + " hand";
}

std::string show_words(const PartSheet& sheet) {
  return sheet.part.show == parts::ShowFace::either ? "either face" : sheet.name(Side::z_high);
}

std::string capitalised(std::string text) {
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z')
    text[0] = static_cast<char>(text[0] - 'a' + 'A');
  return text;
}

}  // namespace splay::sheets
