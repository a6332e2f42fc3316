#include "constructs/corners.h"

#include <algorithm>

namespace splay::constructs {

void CornerChoiceNamed::fields(model::FieldVisitor& visit) {
  model::choose<CornerKind, 2>(visit, model::may("joint", "joint of this corner"), joint,
                               {"mitre", "butt"});
  visit.text(model::may("through", "butt: the panel that runs through"), through);
}

std::vector<RingCorner> resolve_corners(const std::vector<std::string>& sides, CornerKind general,
                                        const std::vector<std::string>& through,
                                        const model::Tables<CornerChoiceNamed>* named,
                                        std::string& fault) {
  const auto runs_through = [&](const std::string& side) {
    return std::find(through.begin(), through.end(), side) != through.end();
  };
  std::vector<RingCorner> corners;
  for (std::size_t i = 0; i < sides.size(); ++i) {
    const std::string& before = sides[(i + sides.size() - 1) % sides.size()];
    const std::string& after = sides[i];
    RingCorner corner{general, runs_through(before)};
    bool clear = runs_through(before) != runs_through(after);
    const CornerChoiceNamed* choice = nullptr;
    if (named != nullptr) {
      choice = named->find(before + "-" + after);
      if (choice == nullptr) choice = named->find(after + "-" + before);
    }
    if (choice != nullptr) {
      corner.kind = choice->joint.given ? choice->joint.value : general;
      if (choice->through.given) {
        corner.before_through = *choice->through == before;
        clear = *choice->through == before || *choice->through == after;
      }
    }
    if (corner.kind == CornerKind::butt && !clear)
      fault = "At the butted corner of " + before + " and " + after +
              " it is not said which of the two runs through.";
    corners.push_back(corner);
  }
  return corners;
}

void check_side(const std::vector<std::string>& sides, const std::string& side, SourceSpan at,
                model::Complaints& complaints) {
  if (std::find(sides.begin(), sides.end(), side) != sides.end()) return;
  std::string list;
  for (const std::string& each : sides) list += (list.empty() ? "" : ", ") + each;
  const std::string_view near = nearest_word(side, {sides.begin(), sides.end()});
  complaints.complain({at, "unknown-side", "a side named \"" + side + "\"", list,
                       near.empty() ? "use one of the outline's sides"
                                    : "did you mean \"" + std::string(near) + "\"?"});
}

}  // namespace splay::constructs
