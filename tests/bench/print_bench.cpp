// Where the time of `print` goes, for each project named: every stage's median processor time, the
// whole run of the program as a shell starts it, and the writer against its floor.
//
//   bench_print PROGRAM PROJECT...
#include <cstdio>
#include <cstdlib>
#include <string>

#include "base/figure.h"
#include "bench/timing.h"
#include "constructs/construct.h"
#include "fabrication/gluing.h"
#include "fabrication/plan.h"
#include "fabrication/proof.h"
#include "ink/lint.h"
#include "reading/reading.h"
#include "sheets/packet.h"
#include "writers/files.h"
#include "writers/pdf_content.h"
#include "writers/writers.h"

namespace {

using namespace splay;

constexpr int rounds = 11;

double row(const char* name, double ms) {
  std::printf("  %-44s %9s ms\n", name, plain_number(ms, 2).c_str());
  return ms;
}

double timed(const char* name, const std::function<void()>& work) {
  std::vector<double> times;
  for (int i = 0; i < rounds; ++i) times.push_back(bench::once_ms(work));
  return row(name, bench::median(times));
}

void measure(const std::string& program, const std::string& file) {
  std::printf("%s\n", file.c_str());
  const std::string source = writers::read_file(file, reading::largest_file);
  const auto& registry = constructs::registry();
  timed("reading", [&] { reading::read_project(source, file, registry); });
  const auto read = reading::read_project(source, file, registry);
  if (!read.project) throw std::runtime_error("not a sound project: " + file);
  const model::Project& project = *read.project;
  const double building = timed("building and audit", [&] { constructs::build(project); });
  const parts::Assembly assembly = constructs::build(project);
  const double planning =
      timed("planning, proof included", [&] { fabrication::make_plan(project, assembly); });
  const fabrication::Plan plan = fabrication::make_plan(project, assembly);
  fabrication::Plan again = plan;
  timed("of which the proof", [&] { fabrication::prove(again); });
  timed("of which the order of assembly", [&] { fabrication::order_of_assembly(plan.assembly); });
  const model::Style style;
  timed("fonts", [] { ink::FontSet fonts; });
  const ink::FontSet fonts;
  const double drawing =
      timed("drawing all pages", [&] { sheets::make_packet(plan, style, fonts); });
  std::printf("  ratio of planning and proof to building and drawing %s (goal: under 1)\n",
              plain_number(planning / (building + drawing), 2).c_str());
  const ink::Packet packet = sheets::make_packet(plan, style, fonts);
  timed("looking the pages over", [&] { ink::lint(packet, fonts, {}); });
  const std::vector<std::string> contents = bench::contents_of(packet, fonts);
  std::vector<double> writing_times, floor_times;
  for (int i = 0; i < rounds; ++i) {
    writing_times.push_back(bench::once_ms([&] { writers::pdf(packet, fonts); }));
    floor_times.push_back(bench::once_ms([&] { bench::save_only(packet, contents); }));
  }
  const double writing = row("writing the PDF", bench::median(writing_times));
  const double floor = row("libharu saving the same content strings", bench::median(floor_times));
  std::printf("  ratio of writing to that %s (goal: at most 1.5)\n",
              plain_number(writing / floor, 2).c_str());
  const std::string command = program + " print " + file + " --out /tmp/bench_print > /dev/null";
  timed("the whole program (goal: under 150 and 250)", [&] {
    if (std::system(command.c_str()) != 0) throw std::runtime_error("failed: " + command);
  });
}

}  // namespace

int main(int count, char** words) {
  for (int i = 2; i < count; ++i) measure(words[1], words[i]);
  return count > 2 ? 0 : 2;
}
