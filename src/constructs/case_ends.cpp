// What a shelf, partition, rail or stile runs between.
#include <algorithm>

#include "constructs/case_build.h"

namespace splay::constructs {

namespace {

// Where the face crosses the line at `across`, measured along the strip; nothing when it ends
// before.
std::optional<double> crossing(const HostFace& host, bool upright, double across) {
  const Vec2 a = upright ? Vec2{host.from.y, host.from.x} : host.from;
  const Vec2 b = upright ? Vec2{host.to.y, host.to.x} : host.to;
  constexpr double slack = 1e-6;
  if (across < std::min(a.y, b.y) - slack || across > std::max(a.y, b.y) + slack)
    return std::nullopt;
  if (std::abs(b.y - a.y) < slack) return std::nullopt;
  return a.x + (b.x - a.x) * (across - a.y) / (b.y - a.y);
}

struct Candidate {
  const HostFace* host;
  double at;     // along the strip, at its middle
  bool forward;  // the face looks along the strip: it can hold the first end
};

std::vector<Candidate> candidates(const std::vector<HostFace>& hosts, bool upright, double middle) {
  std::vector<Candidate> found;
  for (const HostFace& host : hosts) {
    const std::optional<double> at = crossing(host, upright, middle);
    if (at) found.push_back({&host, *at, (upright ? host.face.n.y : host.face.n.x) > 0});
  }
  return found;
}

}  // namespace

Ends find_ends(const std::vector<HostFace>& hosts, const std::vector<std::string>& between,
               std::size_t outer_count, bool upright, double low, double high, std::string& fault) {
  const std::vector<Candidate> all = candidates(hosts, upright, (low + high) / 2);
  Ends ends;
  double at_first = 0;
  int pairs = 0;
  for (const Candidate& one : all) {
    for (const Candidate& other : all) {
      if (!one.forward || other.forward || one.at >= other.at) continue;
      const bool outer =
          one.host < hosts.data() + outer_count && other.host < hosts.data() + outer_count;
      const bool wanted =
          between.empty() ? outer : one.host->name == between[0] && other.host->name == between[1];
      if (!wanted) continue;
      // The nearest faces that look at each other: nothing of the wanted ones in between.
      const bool nearer = ends.first == nullptr || (one.at >= at_first && other.at > one.at);
      const bool clear = std::none_of(all.begin(), all.end(), [&](const Candidate& c) {
        return (between.empty() ? c.host < hosts.data() + outer_count : false) && c.at > one.at &&
               c.at < other.at;
      });
      if (!clear) continue;
      ++pairs;
      if (nearer) {
        ends = {one.host, other.host};
        at_first = one.at;
      }
    }
  }
  if (ends.first == nullptr) {
    fault = between.empty()
                ? "it meets no two sides there"
                : "at that place " + between[0] + " and " + between[1] + " do not face each other";
    return {};
  }
  if (pairs > 1 && between.empty()) {
    fault = "it could go in more than one place there; say `between` which two it runs";
    return {};
  }
  for (const HostFace* host : {ends.first, ends.second}) {
    if (!crossing(*host, upright, low) || !crossing(*host, upright, high)) {
      fault = "its end would cross the corner of " + host->name;
      return {};
    }
  }
  return ends;
}

}  // namespace splay::constructs
