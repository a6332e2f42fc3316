#include "sheets/part_view_facts.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "fabrication/cuts.h"

namespace splay::sheets {

namespace {

using parts::Operation;
using parts::OperationKind;
using parts::Part;
using parts::Side;

constexpr double on_surface = 1e-5;  // mm
constexpr double square_to = 1e-6;   // radians: a cut nearer than this is square

bool is_cut(const Operation& operation) {
  return operation.kind == OperationKind::end_cut || operation.kind == OperationKind::edge_cut;
}

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

std::vector<const fabrication::PartRow*> rows_in_order(const fabrication::Plan& plan) {
  std::vector<const fabrication::PartRow*> rows;
  for (std::size_t i = 0; i < plan.rows.size(); ++i) {
    const fabrication::PartRow& row = plan.rows[i];
    const auto pair = static_cast<std::size_t>(row.pair);
    if (row.pair >= 0 && pair < i) continue;
    const std::size_t first = rows.size();
    rows.push_back(&row);
    if (row.pair < 0) continue;
    rows.push_back(&plan.rows[pair]);
    if (row.hand == fabrication::Hand::right) std::swap(rows[first], rows[first + 1]);
  }
  return rows;
}

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

const Face* face_on(const Boundary& boundary, const Plane& plane) {
  const Face* largest = nullptr;
  for (const Face& face : boundary.faces) {
    const bool on_plane = std::ranges::all_of(face.loops.front(), [&](Vec3 corner) {
      return std::abs(plane.distance(corner)) < on_surface;
    });
    if (on_plane && (largest == nullptr || face.area > largest->area)) largest = &face;
  }
  return largest;
}

Vec3 middle_of(const Face& face) {
  Box box;
  for (const Vec3 corner : face.loops.front()) box.add(corner);
  return (box.low + box.high) * 0.5;
}

std::vector<Cut> standing_cuts(const PartSheet& sheet) {
  std::vector<Cut> cuts;
  const auto add = [&](const Operation& operation, const Plane& plane, bool end) {
    const Face* face = face_on(sheet.boundary, plane);
    if (face == nullptr) return;
    Operation read = operation;
    read.kind = end ? OperationKind::end_cut : OperationKind::edge_cut;
    read.cut = plane;
    const fabrication::CutReport report = fabrication::read_cut(read, sheet.part);
    cuts.push_back({&operation, end, plane, report, middle_of(*face), report.bevel > square_to,
                    report.face_angle > square_to});
  };
  for (const Operation& operation : sheet.part.operations) {
    if (is_cut(operation)) {
      add(operation, operation.cut, operation.kind == OperationKind::end_cut);
    } else if (operation.kind == OperationKind::notch) {
      for (const Plane& wall : operation.trench.walls)
        if (std::abs(wall.n.x) > std::abs(wall.n.y) && std::abs(wall.n.x) > std::abs(wall.n.z))
          add(operation, wall, true);
    }
  }
  return cuts;
}

std::vector<Vec3> corners_on(const PartSheet& sheet, Side side) {
  const double z = side == Side::z_low ? 0 : sheet.part.size.z;
  std::vector<Vec3> curved;
  for (const Edge& edge : sheet.boundary.edges)
    if (edge.smooth) curved.insert(curved.end(), {edge.a, edge.b});
  const auto near = [](const std::vector<Vec3>& points, Vec3 p) {
    return std::ranges::any_of(points, [&](Vec3 q) { return norm(p - q) < on_surface; });
  };
  std::vector<Vec3> corners;
  for (const Face& face : sheet.boundary.faces) {
    if (std::abs(face.plane.n.z) < 1 - on_surface) continue;
    if (std::abs(face.loops.front().front().z - z) > on_surface) continue;
    for (const std::vector<Vec3>& loop : face.loops)
      for (const Vec3 p : loop)
        if (!near(curved, p) && !near(corners, p)) corners.push_back(p);
  }
  return corners;
}

std::vector<const Operation*> trenches_on(const PartSheet& sheet, Side face) {
  std::vector<const Operation*> trenches;
  for (const Operation& operation : sheet.part.operations) {
    const bool trench = operation.kind == OperationKind::housing ||
                        operation.kind == OperationKind::groove ||
                        operation.kind == OperationKind::rabbet;
    if (trench && operation.trench.open == face &&
        face_on(sheet.boundary, operation.trench.floor) != nullptr)
      trenches.push_back(&operation);
  }
  return trenches;
}

bool along_length(const Operation& trench) {
  const Vec3 n = trench.trench.walls.front().n;
  return std::abs(n.y) > std::abs(n.x);
}

Side front_edge(const Part& part) {
  const double front = parts::local_front(part).y;
  return front > 0.5 ? Side::y_high : Side::y_low;
}

std::string operation_words(const PartSheet& sheet, const Operation& operation) {
  if (known_neighbour(sheet)) return operation.name;
  for (const parts::Joint& joint : sheet.context.plan.assembly.joints)
    if (joint.name == operation.joint) return joint.kind;
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
    if (radians < square_to) return name + " square";
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
