// Own kernel against OpenCASCADE on the same parts in one run, one thread: cutting and exact hidden
// lines in six views. Arguments: numbers of parts (40 200 1000). OpenCASCADE is left out of the
// hidden lines above 200 parts unless "--all" is given (it takes a minute).
#include <sys/resource.h>
#include <time.h>

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <vector>

#include "oracle/line_cover.h"
#include "oracle/occt.h"
#include "oracle/recipe.h"

namespace {

const splay::View kViews[] = {
    splay::View::front(), splay::View::right_side(),          splay::View::top(),
    splay::View::back(),  splay::View::axonometric(0.6, 0.5), splay::View::axonometric(-2.2, 0.3)};

// Of this process, so that what else the machine does is not counted.
double processor_ms() {
  timespec now{};
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
  return static_cast<double>(now.tv_sec) * 1e3 + static_cast<double>(now.tv_nsec) * 1e-6;
}

template <typename Work>
double milliseconds(Work work) {
  const double start = processor_ms();
  work();
  return processor_ms() - start;
}

// The least of several runs: what the work costs without the machine's disturbances.
template <typename Work>
double best_of(int runs, Work work) {
  double best = milliseconds(work);
  for (int i = 1; i < runs; ++i) best = std::min(best, milliseconds(work));
  return best;
}

void report(const char* work, int parts, double own, double other) {
  std::printf("%-22s %5d parts  own %9.2f ms  %7.3f ms/part", work, parts, own, own / parts);
  if (other > 0) std::printf("  OpenCASCADE %10.1f ms  ratio %6.1f", other, other / own);
  std::printf("\n");
}

void compare(int parts, bool hidden_lines_too) {
  const auto recipes = oracle::many_parts(parts);
  const int runs = std::clamp(1000 / parts, 2, 10);
  std::vector<splay::Solid> solids;
  const double own_cut = best_of(runs, [&] { solids = oracle::make_solids(recipes); });
  // Boundaries are kept once found: they are timed on solids made afresh.
  std::size_t faces = 0;
  const double own_boundary = best_of(runs, [&] {
    faces = 0;
    for (const splay::Solid& solid : oracle::make_solids(recipes))
      faces += solid.boundary().faces.size();
  });
  std::size_t lines = 0;
  const double own_lines = best_of(runs, [&] {
    const splay::Scene scene(solids);
    lines = 0;
    for (const splay::View& view : kViews) lines += scene.lines(view).size();
  });
  const double own_tones = best_of(2, [&] {
    const splay::Scene scene(solids);
    lines += scene.faces(kViews[4]).size();
  });
  std::size_t clashes = 0;
  const double own_clashes = best_of(runs, [&] { clashes = find_clashes(solids).size(); });

  std::vector<TopoDS_Shape> shapes;
  const double other_cut = milliseconds([&] { shapes = oracle::occt::make_shapes(recipes); });
  double other_lines = 0;
  if (hidden_lines_too) {
    other_lines = milliseconds([&] {
      for (const splay::View& view : kViews)
        lines += oracle::occt::hidden_lines(shapes, view).size();
    });
  }
  report("cut", parts, own_cut, other_cut);
  report("cut and boundary", parts, own_boundary, other_cut);
  report("hidden lines, 6 views", parts, own_lines, other_lines);
  report("visible faces, 1 view", parts, own_tones, 0);
  report("clashes", parts, own_clashes, 0);
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  std::printf("  (%zu faces, %zu lines and faces seen, %zu clashes, most memory so far %ld MB)\n\n",
              faces, lines, clashes, usage.ru_maxrss / 1024);
  std::fflush(stdout);
}

}  // namespace

int main(int argc, char** argv) {
  std::vector<int> counts;
  bool all = false;
  for (int i = 1; i < argc; ++i) {
    if (std::strcmp(argv[i], "--all") == 0) {
      all = true;
    } else {
      counts.push_back(std::max(1, std::atoi(argv[i])));
    }
  }
  if (counts.empty()) counts = {40, 200, 1000};
  for (const int parts : counts) compare(parts, all || parts <= 200);
}
