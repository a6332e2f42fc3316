#include "sheets/client_words.h"

#include <algorithm>

namespace splay::sheets {

std::string joined(const std::vector<std::string>& words) {
  std::string text;
  for (const std::string& word : words) text += (text.empty() ? "" : ", ") + word;
  return text;
}

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

void add_chapter(const Context& context, drafting::Story& story, const char* title,
                 drafting::Story more, double width) {
  story.push_back(drafting::heading(context.kit, title, width));
  drafting::add(story, std::move(more));
  story.back().space_after = 6;
}

}  // namespace splay::sheets
