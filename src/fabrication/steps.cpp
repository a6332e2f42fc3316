#include "fabrication/steps.h"

#include <algorithm>
#include <array>

namespace splay::fabrication {

namespace {

template <class E, std::size_t N>
std::string_view pick(const std::array<std::string_view, N>& words, E value) {
  return words[static_cast<std::size_t>(value)];
}

}  // namespace

Position Step::position() const {
  switch (static_cast<int>(face) / 2) {
    case 0:
      return Position::on_end;
    case 1:
      return Position::on_edge;
    default:
      return Position::flat;
  }
}

bool Step::at_fence() const {
  return guide == Guide::fence && tool != Tool::thickness && tool != Tool::edging;
}

bool Step::at_gauge() const { return guide == Guide::gauge && tool != Tool::thickness; }

bool Step::has(Flag flag) const {
  return std::find(flags.begin(), flags.end(), flag) != flags.end();
}

std::string_view word(Machine machine) {
  static constexpr std::array<std::string_view, 9> words = {"table saw", "mitre saw", "band saw",
                                                            "track saw", "router",    "drill",
                                                            "jointer",   "planer",    "hand tools"};
  return pick(words, machine);
}

std::string_view word(Position position) {
  static constexpr std::array<std::string_view, 3> words = {"flat", "on edge", "on end"};
  return pick(words, position);
}

std::string_view word(Tool tool) {
  static constexpr std::array<std::string_view, 7> words = {
      "blade", "dado stack", "along lines", "clear to lines", "bore", "thickness", "edging"};
  return pick(words, tool);
}

std::string_view word(Guide guide) {
  static constexpr std::array<std::string_view, 3> words = {"fence", "gauge", "marks"};
  return pick(words, guide);
}

std::string_view word(Turned turned) {
  static constexpr std::array<std::string_view, 6> words = {
      "first", "as before", "end for end", "face for face", "over the ends", "another side down"};
  return pick(words, turned);
}

std::string_view word(Flag flag) {
  static constexpr std::array<std::string_view, 13> words = {"try one first",
                                                             "same setting",
                                                             "complement",
                                                             "tall fence",
                                                             "sacrificial fence",
                                                             "guard off",
                                                             "narrow off-cut",
                                                             "small piece",
                                                             "stop block ahead of the blade",
                                                             "square the corners by hand",
                                                             "packed level",
                                                             "chosen way",
                                                             "sloped jig"};
  return pick(words, flag);
}

}  // namespace splay::fabrication
