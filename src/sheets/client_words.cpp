#include "sheets/client_words.h"

#include <algorithm>

namespace splay::sheets {

std::string materials_text(const Context& context) {
  std::vector<std::string> names;
  for (const fabrication::StockUse& stock : context.plan.stock) {
    const std::string& name = stock.material.empty() ? stock.name : stock.material;
    if (stock.pieces > 0 && std::ranges::find(names, name) == names.end()) names.push_back(name);
  }
  return joined(names);
}

std::string drawings_text(const Context& context) {
  const model::Job& job = context.job();
  return (job.number->empty() ? "" : *job.number + ", ") + "revision " + *job.revision + " of " +
         model::iso_date(*job.date);
}

}  // namespace splay::sheets
