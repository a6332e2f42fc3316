// How the cost of a job grows with its parts: rooms full of splayed stools and framed panels, no
// two of one size, so that nothing is made twice. For each number of parts a process of its own
// reads, builds, plans and prints the whole shop binder, and tells processor time and peak memory.
//
//   bench_growth [PARTS...]     without numbers 40 200 1000
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cstdio>
#include <cstdlib>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

#include "base/figure.h"
#include "bench/timing.h"
#include "constructs/construct.h"
#include "fabrication/gluing.h"
#include "fabrication/plan.h"
#include "fabrication/proof.h"
#include "ink/lint.h"
#include "reading/reading.h"
#include "sheets/packet.h"
#include "writers/writers.h"

namespace {

using namespace splay;

constexpr int in_stool = 11, in_frame = 9;

std::string number(double value) { return plain_number(value, 3); }

std::string place(int item) {
  return "at = [" + number(900 * (item % 12)) + ", " + number(900 * (item / 12)) + ", 0]\n";
}

// Four legs, four aprons, two stretchers with one across, no two stools alike.
std::string stool(int item) {
  const std::string name = "table.stool" + std::to_string(item);
  const double more = 0.37 * item;
  return "[" + name + "]\nheight = " + number(430 + more / 4) +
         "\nwidth = " + number(330 + more / 3) + "\ndepth = " + number(250 + more / 5) +
         "\nsplay = [\"8 deg\", \"6 deg\"]\n" + place(item) + "[" + name +
         ".leg]\nstock = \"oak\"\nwidth = 40\nfoot_width = 27\nstraight = 75\n" + "[" + name +
         ".apron]\nstock = \"rail\"\nwidth = " + number(50 + more / 20) + "\n[" + name +
         ".stretcher.low]\nstock = \"rail\"\nwidth = 26\nat = 150\nsides = [\"left\", "
         "\"right\"]\n" +
         "[" + name + ".stretcher.cross]\nstock = \"rail\"\nwidth = 26\nthickness = 16\n" +
         "between = \"low\"\n";
}

// Eight members round a panel.
std::string frame(int item) {
  const std::string name = "frame.panel" + std::to_string(item);
  return "[" + name + "]\noutline = { sides = 8, across_flats = " + number(420 + 0.37 * item) +
         " }\nstock = \"rail\"\nwidth = 55\ncorners = \"mitre\"\n" + place(item) + "[" + name +
         ".panel]\nstock = \"thin\"\nfit = \"groove\"\n";
}

struct Job {
  std::string text;
  int parts = 0;
};

Job job_of(int wanted) {
  Job job;
  job.text =
      "[job]\ntitle = \"Growth\"\ndate = 2026-01-01\nunits = \"mm\"\n"
      "[stock.oak]\nkind = \"board\"\nmaterial = \"oak\"\nthickness = 40\n"
      "[stock.rail]\nkind = \"board\"\nmaterial = \"oak\"\nthickness = 20\n"
      "[stock.thin]\nkind = \"sheet\"\nmaterial = \"plywood\"\nthickness = 6\n"
      "size = [2440, 1220]\n";
  for (int item = 0; job.parts < wanted; ++item) {
    const bool framed = item % 2 == 1;
    job.text += framed ? frame(item) : stool(item);
    job.parts += framed ? in_frame : in_stool;
  }
  return job;
}

struct Stage {
  const char* name;
  double ms = 0;
  long memory = 0;  // most so far, MB
};

long most_memory() {
  rusage use{};
  getrusage(RUSAGE_SELF, &use);
  return use.ru_maxrss / 1024;
}

template <typename Work>
Stage stage(const char* name, Work work) {
  const double ms = bench::once_ms(work);
  return {name, ms, most_memory()};
}
constexpr int stages = 8;
using Stages = std::array<Stage, stages>;

struct Measured {
  int parts = 0;
  Stages stages;
  double all = 0;
  long memory = 0;  // MB
};

Measured measure(int wanted) {
  const Job job = job_of(wanted);
  const auto read = [&] {
    return reading::read_project(job.text, "growth.toml", constructs::registry());
  };
  reading::ProjectReading reading;
  parts::Assembly assembly;
  fabrication::Plan plan;
  ink::Packet packet;
  const ink::FontSet fonts;
  const model::Style style;
  Measured result;
  result.stages = {
      {stage("reading", [&] { reading = read(); }),
       stage("building and audit", [&] { assembly = constructs::build(reading.project.value()); }),
       stage("planning, all of it",
             [&] { plan = fabrication::make_plan(*reading.project, std::move(assembly)); }),
       stage("of which the order of assembly",
             [&] { fabrication::order_of_assembly(plan.assembly); }),
       stage("of which the proof",
             [&] {
               fabrication::Plan again = plan;
               fabrication::prove(again);
             }),
       stage("drawing all pages", [&] { packet = sheets::make_packet(plan, style, fonts); }),
       stage("looking the pages over", [&] { ink::lint(packet, fonts, {}); }),
       stage("writing the PDF", [&] { writers::pdf(packet, fonts); })}};
  for (std::size_t i = 0; i < stages; ++i)
    if (i != 3 && i != 4) result.all += result.stages[i].ms;
  result.parts = static_cast<int>(plan.assembly.parts.size());
  result.memory = most_memory();
  return result;
}

// In a process of its own, for its memory.
Measured measure_apart(int wanted) {
  std::array<int, 2> ends{};
  if (pipe(ends.data()) != 0) throw std::runtime_error("no pipe");
  const pid_t child = fork();
  if (child < 0) throw std::runtime_error("no process");
  if (child == 0) {
    const Measured own = measure(wanted);
    const bool told = write(ends[1], &own, sizeof own) == static_cast<ssize_t>(sizeof own);
    _exit(told ? 0 : 1);
  }
  close(ends[1]);
  Measured result;
  const bool heard = read(ends[0], &result, sizeof result) == static_cast<ssize_t>(sizeof result);
  close(ends[0]);
  waitpid(child, nullptr, 0);
  if (!heard) throw std::runtime_error("the measuring process failed");
  return result;
}

}  // namespace

int main(int count, char** words) {
  std::vector<int> wanted;
  for (int i = 1; i < count; ++i) wanted.push_back(std::max(1, std::atoi(words[i])));
  if (wanted.empty()) wanted = {40, 200, 1000};
  double first = 0;
  for (const int parts : wanted) {
    const Measured measured = measure_apart(parts);
    std::printf("%d parts, peak memory %ld MB (goal: under 300)\n", measured.parts,
                measured.memory);
    for (const Stage& stage : measured.stages)
      std::printf("  %-32s %8s ms a part, %4ld MB\n", stage.name,
                  plain_number(stage.ms / measured.parts, 3).c_str(), stage.memory);
    const double each = measured.all / measured.parts;
    if (first == 0) first = each;
    std::printf("  %-32s %8s ms a part, %s times that of the first (goal: at most 2)\n",
                "the whole", plain_number(each, 3).c_str(), plain_number(each / first, 2).c_str());
    std::fflush(stdout);
  }
  return 0;
}
