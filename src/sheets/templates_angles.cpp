// The angles of a piece that a bevel gauge is set to.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "sheets/templates_shape.h"

namespace splay::sheets {

namespace {

class Angles {
 public:
  void add(double radians, const std::string& what) {
    constexpr double least = 0.0005, same = 0.00004;
    double angle = std::abs(radians);
    if (angle > std::numbers::pi) return;
    if (angle < least || std::abs(angle - std::numbers::pi / 2) < least ||
        std::abs(angle - std::numbers::pi) < least)
      return;
    for (Entry& entry : entries_) {
      if (std::abs(entry.radians - angle) > same) continue;
      if (std::ranges::find(entry.names, what) == entry.names.end()) entry.names.push_back(what);
      return;
    }
    entries_.push_back({angle, {what}});
  }
  std::vector<GaugeAngle> take() {
    std::ranges::stable_sort(entries_, {}, &Entry::radians);
    std::vector<GaugeAngle> list;
    for (const Entry& entry : entries_) {
      GaugeAngle angle{entry.radians, ""};
      constexpr std::size_t most = 4;
      for (std::size_t i = 0; i < std::min(most, entry.names.size()); ++i)
        angle.names += (i == 0 ? "" : "; ") + entry.names[i];
      if (entry.names.size() > most) angle.names += "; ...";
      list.push_back(std::move(angle));
    }
    return list;
  }

 private:
  struct Entry {
    double radians;
    std::vector<std::string> names;
  };
  std::vector<Entry> entries_;
};

}  // namespace

std::vector<GaugeAngle> gauge_angles(const Context& context) {
  Angles angles;
  for (const fabrication::PartRow& row : context.plan.rows) {
    for (const fabrication::CutReport& cut : row.cuts) {
      angles.add(cut.bevel, "bevel of " + row.mark);
      angles.add(cut.face_angle, "face angle of " + row.mark);
    }
  }
  for (const parts::NamedAngle& angle : context.plan.assembly.angles)
    angles.add(angle.radians, angle.name);
  return angles.take();
}

}  // namespace splay::sheets
