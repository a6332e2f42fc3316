// How long fonts, lint and writers take, in one run side by side. The floor for the PDF writer is
// libharu saving the same content strings into pages that hold nothing else.
//
//   bench_writers [rounds]
#include <algorithm>
#include <charconv>
#include <cstdio>
#include <cstring>
#include <functional>
#include <string>
#include <vector>

#include "base/figure.h"
#include "bench/timing.h"
#include "ink/lint.h"
#include "writers/pdf_content.h"
#include "writers/writers.h"

namespace {

using namespace splay;
using namespace splay::ink;
using namespace splay::bench;

// Pages with lines and texts scattered by a fixed linear congruence: every run draws the same.
class Scatter {
 public:
  double next(double range) {
    state_ = state_ * 1664525u + 1013904223u;
    return static_cast<double>(state_ >> 8) / (1u << 24) * range;
  }

  Page page(int lines, int texts) {
    Page page;
    page.title = "Scattered";
    page.label = "1";
    const std::vector<double> widths = {0.25, 0.35, 0.5, 0.7};
    for (int i = 0; i < lines; ++i) {
      const Vec2 from{20 + next(180), 10 + next(270)};
      const Pen pen{widths[static_cast<std::size_t>(i) * 4 / static_cast<std::size_t>(lines)],
                    i % 10 == 0 ? Dash::dashed : Dash::continuous, 0};
      page.items.emplace_back(Stroke{
          Path{}.move(from).line({std::min(200.0, from.x + next(30)), from.y + next(7)}), pen});
    }
    for (int i = 0; i < texts; ++i) {
      Text text;
      text.at = {20 + next(150), 10 + next(270)};
      text.utf8 = "Part " + plain_number(next(2000), 1) + " at " + degrees_text(next(90));
      text.face = i % 8 == 0 ? Face::bold : Face::regular;
      page.items.emplace_back(text);
    }
    return page;
  }

  Packet packet(int pages, int lines, int texts) {
    Packet packet;
    packet.title = packet.identity = "Benchmark";
    for (int i = 0; i < pages; ++i) packet.pages.push_back(page(lines, texts));
    return packet;
  }

 private:
  std::uint32_t state_ = 2026;
};

void row(const char* name, double ms) {
  std::printf("%-52s %9s ms\n", name, plain_number(ms, 2).c_str());
}

double timed(const char* name, int rounds, const std::function<void()>& work) {
  std::vector<double> times;
  for (int i = 0; i < rounds; ++i) times.push_back(once_ms(work));
  row(name, median(times));
  return median(times);
}

}  // namespace

int main(int count, char** words) {
  int rounds = 9;
  if (count > 1) std::from_chars(words[1], words[1] + std::strlen(words[1]), rounds);
  rounds = std::max(rounds, 1);

  timed("FontSet found and opened", rounds, [] { FontSet fonts; });
  const FontSet fonts;
  Scatter scatter;
  const Packet small = scatter.packet(3, 200, 60);
  timed("PDF of 3 pages, 200 lines and 60 texts each", rounds, [&] { writers::pdf(small, fonts); });

  const Packet large = scatter.packet(40, 2000, 250);
  const std::vector<std::string> contents = bench::contents_of(large, fonts);
  std::vector<double> whole, floor;
  for (int i = 0; i < rounds; ++i) {
    whole.push_back(once_ms([&] { writers::pdf(large, fonts); }));
    floor.push_back(once_ms([&] { save_only(large, contents); }));
  }
  row("PDF of 40 pages, 2,000 lines and 250 texts each", median(whole));
  row("  libharu saving the same content strings", median(floor));
  std::printf("  ratio %s (goal: at most 1.5)\n",
              plain_number(median(whole) / median(floor), 2).c_str());

  const Packet thirty = scatter.packet(30, 2000, 250);
  std::size_t faults = 0;
  timed("lint of 30 such pages (scattered: many faults)", rounds,
        [&] { faults = lint(thirty, fonts, {}).size(); });
  std::printf("  %zu faults found\n", faults);
  timed("SVG of one such page", rounds, [&] { writers::svg(large.pages[0], fonts); });
  timed("PNG of one such page at 150 dpi", rounds,
        [&] { writers::png(large.pages[0], fonts, 150); });
  return 0;
}
