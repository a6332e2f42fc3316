// What a stage of the glue-up is called: by what it adds, and to what.
#include <algorithm>

#include "base/index.h"
#include "fabrication/row_order.h"
#include "sheets/glue_up_words.h"

namespace splay::sheets {

namespace {

using fabrication::GlueStage;

// The names of the parts that no stage before had, in the order of the cut list.
std::vector<std::string> new_in(const Context& context, const GlueStage& stage) {
  const fabrication::GlueUpPlan& plan = context.plan.glue_up;
  const auto brought = [&](const GlueStage& each) {
    std::vector<int> parts;
    for (const int number : each.joinings)
      for (const std::vector<int>* side :
           {&plan.order.joinings[index(number)].fixed, &plan.order.joinings[index(number)].moving})
        parts.insert(parts.end(), side->begin(), side->end());
    return but_edging(context, parts);
  };
  std::vector<int> parts = brought(stage);
  for (const GlueStage& earlier : plan.stages) {
    if (&earlier == &stage) break;
    for (const int part : brought(earlier)) std::erase(parts, part);
  }
  std::vector<std::string> names;
  for (const fabrication::PartRow* row : fabrication::rows_in_order(context.plan))
    for (const int part : row->members)
      if (std::ranges::find(parts, part) != parts.end())
        names.push_back(context.plan.assembly.parts[index(part)].name);
  return names;
}

// What several names begin with, when it is a word of its own: "stand" of "stand left leg" and
// "stand rail".
std::string first_word_of_all(const std::vector<std::string>& names) {
  if (names.size() < 2) return {};
  const std::string word = names.front().substr(0, names.front().find(' '));
  const bool all = std::ranges::all_of(
      names, [&](const std::string& name) { return name.starts_with(word + " "); });
  return all ? word : "";
}

// "1", "1 and 2", "3, 4 and 5".
std::string stage_numbers(const std::vector<int>& stages) {
  std::string text;
  for (std::size_t i = 0; i < stages.size(); ++i)
    text += (i == 0 ? "" : i + 1 == stages.size() ? " and " : ", ") + std::to_string(stages[i] + 1);
  return text;
}

// As many names as a heading has room for, and how many more.
std::string some_of(const std::vector<std::string>& names, std::size_t skipped) {
  constexpr std::size_t room = 30;  // letters
  std::string text;
  for (std::size_t i = 0; i < names.size(); ++i) {
    const std::string name = names[i].substr(skipped);
    const std::size_t more = names.size() - i;
    if (i > 0 && more > 1 && text.size() + name.size() > room)
      return text + " and " + std::to_string(more) + " more";
    text += (i == 0 ? "" : ", ") + name;
  }
  return text;
}

}  // namespace

std::string stage_title(const Context& context, const GlueStage& stage) {
  const std::vector<std::string> names = new_in(context, stage);
  const std::string shared = first_word_of_all(names);
  std::string text =
      shared.empty() ? some_of(names, 0) : shared + ": " + some_of(names, shared.size() + 1);
  if (!stage.needs.empty())
    text += std::string(names.empty() ? "stage" : ", to stage") +
            (stage.needs.size() > 1 ? "s " : " ") + stage_numbers(stage.needs);
  return text + (stage.glued ? "" : stage.undone ? " (dry: it comes apart again)" : " (no glue)");
}

}  // namespace splay::sheets
