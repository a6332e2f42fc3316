#include "constructs/construct.h"

#include <algorithm>

namespace splay::constructs {

std::string part_name(const parts::Builder& builder, const model::Item& item,
                      const std::string& name) {
  const auto& items = builder.project().items;
  const auto makers = std::count_if(items.begin(), items.end(), [](const auto& each) {
    const auto* construct = dynamic_cast<const Construct*>(each.get());
    return construct != nullptr && construct->makes_parts();
  });
  return makers > 1 ? item.name + " " + name : name;
}

void refuse(parts::Builder& builder, Refusal refusal) {
  builder.report({Level::stop,
                  std::move(refusal.code),
                  {std::move(refusal.about)},
                  std::move(refusal.text),
                  std::move(refusal.remedy),
                  refusal.span});
}

int find_part(parts::Builder& builder, const std::string& name, const std::string& about,
              SourceSpan span) {
  const int found = builder.find(name);
  if (found >= 0) return found;
  std::vector<std::string_view> known;
  std::string list;
  for (int i = 0; i < builder.count(); ++i) {
    known.push_back(builder.part(i).name);
    list += (i == 0 ? "" : ", ") + builder.part(i).name;
  }
  const std::string_view near = nearest_word(name, known);
  refuse(builder,
         {"unknown-part", about,
          about + " names a part \"" + name + "\", and none of that name was built before it.",
          near.empty() ? (list.empty() ? "Put what it needs in front of it in the file."
                                       : "Parts built so far: " + list + ".")
                       : "Did you mean \"" + std::string(near) + "\"?",
          span});
  return -1;
}

Vec3 point_of(const PointField& field) {
  if (field->size() != 3) return {};
  return {(*field)[0].mm, (*field)[1].mm, (*field)[2].mm};
}

void check_point(const PointField& field, model::Complaints& complaints) {
  if (!field.given || field->size() == 3) return;
  complaints.complain({field.span, "wrong-count", std::to_string(field->size()) + " lengths",
                       "a point: [x, y, z], to the right, to the back, up",
                       "write three lengths, for instance [0, 0, \"17 1/2\"]"});
}

double stock_thickness(const parts::Builder& builder, const std::string& stock) {
  const model::Stock* found = builder.project().stocks.find(stock);
  return found == nullptr ? 0 : found->thickness->mm;
}

}  // namespace splay::constructs
