#include "fabrication/row_order.h"

#include <algorithm>

namespace splay::fabrication {

std::vector<const PartRow*> rows_in_order(const Plan& plan) {
  std::vector<const PartRow*> rows;
  for (std::size_t i = 0; i < plan.rows.size(); ++i) {
    const PartRow& row = plan.rows[i];
    const auto pair = static_cast<std::size_t>(row.pair);
    if (row.pair >= 0 && pair < i) continue;
    const std::size_t first = rows.size();
    rows.push_back(&row);
    if (row.pair < 0) continue;
    rows.push_back(&plan.rows[pair]);
    if (row.hand == Hand::right) std::swap(rows[first], rows[first + 1]);
  }
  return rows;
}

std::vector<std::string> marks_in_order(const Plan& plan, const std::vector<int>& parts) {
  std::vector<std::string> marks;
  for (const PartRow* row : rows_in_order(plan))
    if (std::ranges::any_of(
            row->members, [&](int part) { return std::ranges::find(parts, part) != parts.end(); }))
      marks.push_back(row->mark);
  return marks;
}

}  // namespace splay::fabrication
