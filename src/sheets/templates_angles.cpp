// The angles of a piece that a bevel gauge is set to.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "sheets/templates_shape.h"

namespace splay::sheets {

namespace {

class Angles {
 public:
  // `what` the angle is, of which part; "" for an angle of the piece.
  void add(double radians, const std::string& what, const std::string& of) {
    constexpr double least = 0.0005, same = 0.00004;
    double angle = std::abs(radians);
    if (angle > std::numbers::pi) return;
    if (angle < least || std::abs(angle - std::numbers::pi / 2) < least ||
        std::abs(angle - std::numbers::pi) < least)
      return;
    for (Entry& entry : entries_) {
      if (std::abs(entry.radians - angle) > same) continue;
      put(entry, what, of);
      return;
    }
    entries_.push_back({angle, {}});
    put(entries_.back(), what, of);
  }
  std::vector<GaugeAngle> take() {
    std::ranges::stable_sort(entries_, {}, &Entry::radians);
    std::vector<GaugeAngle> list;
    for (const Entry& entry : entries_) {
      GaugeAngle angle{entry.radians, ""};
      constexpr std::size_t most = 4;
      const std::size_t more = entry.names.size() > most ? entry.names.size() - most + 1 : 0;
      for (std::size_t i = 0; i < entry.names.size() - more; ++i) {
        angle.names += (i == 0 ? "" : "; ") + entry.names[i].what;
        if (!entry.names[i].of.empty()) angle.names += " of " + joined(entry.names[i].of);
      }
      if (more > 0) angle.names += " and " + std::to_string(more) + " more";
      list.push_back(std::move(angle));
    }
    return list;
  }

 private:
  struct Name {
    std::string what;
    std::vector<std::string> of;
  };
  struct Entry {
    double radians;
    std::vector<Name> names;
  };
  static void put(Entry& entry, const std::string& what, const std::string& of) {
    auto name = std::ranges::find(entry.names, what, &Name::what);
    if (name == entry.names.end()) name = entry.names.insert(name, {what, {}});
    if (!of.empty() && std::ranges::find(name->of, of) == name->of.end()) name->of.push_back(of);
  }
  std::vector<Entry> entries_;
};

}  // namespace

std::vector<GaugeAngle> gauge_angles(const Context& context) {
  Angles angles;
  for (const fabrication::PartRow& row : context.plan.rows) {
    for (const fabrication::CutReport& cut : row.cuts) {
      angles.add(cut.bevel, "bevel", row.mark);
      angles.add(cut.face_angle, "face angle", row.mark);
    }
  }
  for (const parts::NamedAngle& angle : context.plan.assembly.angles)
    angles.add(angle.radians, angle.name, "");
  return angles.take();
}

}  // namespace splay::sheets
