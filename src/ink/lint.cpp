#include "ink/lint.h"

#include <algorithm>
#include <iterator>
#include <stdexcept>
#include <utility>

#include "base/figure.h"
#include "base/parallel.h"
#include "ink/lint_page.h"

namespace splay::ink {

namespace {

class Reader {
 public:
  Reader(const Page& page, const FontSet& fonts, Faults& faults) : fonts_(fonts), faults_(faults) {
    read_.page = &page;
  }

  LintPage read() {
    walk(
        read_.page->items, [&](const Item& item) { take(item); },
        [&](const Group& group) {
          open_.push_back(standing_);
          standing_.group = ++groups_;
          standing_.frame = standing_.frame || group.role == "frame";
        },
        [&](const Group&) {
          const std::size_t order = standing_.order;
          standing_ = open_.back();
          standing_.order = order;
          open_.pop_back();
        });
    return std::move(read_);
  }

 private:
  void take(const Item& item) {
    ++standing_.order;
    const std::string why = number_fault(item);
    if (!why.empty()) return fault("not-finite", why);
    std::visit([&](const auto& one) { add(one); }, item);
  }

  void add(const Stroke& stroke) {
    for (const Polyline& line : flatten(stroke.path)) {
      const std::size_t count = line.points.size();
      for (std::size_t i = count == 1 ? 0 : 1; i < count; ++i)
        read_.lines.push_back(
            {standing_, line.points[i == 0 ? 0 : i - 1], line.points[i], stroke.pen.width});
    }
  }

  void add(const Fill& fill) {
    InkedPatch patch{standing_, flatten(fill.path), {}};
    if (fill.path.points.empty()) return;
    std::vector<Vec2> points;
    for (const Polyline& line : patch.outline)
      points.insert(points.end(), line.points.begin(), line.points.end());
    patch.bounds = bounds(points);
    read_.patches.push_back(std::move(patch));
  }

  void add(const Text& text) {
    try {
      std::vector<Vec2> box = fonts_.box(text);
      if (text.utf8.find_first_not_of(' ') == std::string::npos) return;
      read_.texts.push_back({standing_, &text, std::move(box)});
    } catch (const std::invalid_argument& error) {
      fault("bad-text", std::string(error.what()) + ", at " + place_text(text.at));
    }
  }

  void add(const DimensionClaim& claim) { read_.dimensions.push_back(&claim); }
  void add(const PartClaim& claim) { read_.parts.push_back(&claim); }
  void add(const Anchor& anchor) { read_.anchors.push_back(&anchor); }
  void add(const Link& link) { read_.links.push_back(&link); }
  void add(const Group&) {}

  void fault(const std::string& rule, const std::string& text) {
    faults_.push_back({rule, read_.page->label, text});
  }

  const FontSet& fonts_;
  Faults& faults_;
  LintPage read_;
  Standing standing_;
  std::vector<Standing> open_;
  int groups_ = 0;
};

// Of a page what the checks of all pages together look at: the rest is much more.
LintPage for_all_pages(LintPage whole) {
  LintPage kept;
  kept.page = whole.page;
  kept.parts = std::move(whole.parts);
  kept.anchors = std::move(whole.anchors);
  kept.links = std::move(whole.links);
  return kept;
}

}  // namespace

LintPage read_page(const Page& page, const FontSet& fonts, Faults& faults) {
  return Reader(page, fonts, faults).read();
}

std::string place_text(Vec2 at) {
  return plain_number(at.x, 1) + ", " + plain_number(at.y, 1) + " mm";
}

std::string quoted(const Text& text) { return "\"" + text.utf8 + "\" at " + place_text(text.at); }

std::vector<LintFault> lint(const Packet& packet, const FontSet& fonts,
                            const std::vector<std::string>& marks) {
  std::vector<LintPage> pages(packet.pages.size());
  std::vector<Faults> faults_of(packet.pages.size());
  in_parallel(pages.size(), [&](std::size_t i) {
    LintPage whole = read_page(packet.pages[i], fonts, faults_of[i]);
    lint_overlaps(whole, faults_of[i]);
    lint_margins(whole, packet.least_text_height, faults_of[i]);
    lint_dimensions(whole, faults_of[i]);
    pages[i] = for_all_pages(std::move(whole));
  });
  Faults faults;
  for (Faults& each : faults_of) std::ranges::move(each, std::back_inserter(faults));
  lint_marks(pages, marks, faults);
  lint_links(pages, faults);
  return faults;
}

}  // namespace splay::ink
