// Published problems of cutting and packing, with what is known of their best layouts. The data are
// not in this repository: SPLAYBOOK_BENCHMARKS names a folder with them (benchmark_data.h); without
// it these tests pass and say that they skip. Times are processor time of one core: they are shown
// for comparison and nothing is held to them, since a machine may be busy.
//
// gcut: Beasley, JORS 36 (1985) 297-306; optima also with turning: table by G. Cintra, University
// of
//   Sao Paulo. cgcut: Christofides, Whitlock, Operations Research 25 (1977) 30-44.
// ngcut: Beasley, Operations Research 33 (1985) 49-64. okp: Fekete, Schepers (1997).
// strips C1-C7: Hopper, Turton, EJOR 128 (2001) 34-57.
// sheets, classes 1-6: Berkey, Wang, JORS 38 (1987) 423-429; 7-10: Martello, Vigo, Management
// Science
//   44 (1998) 388-399; best known with turning: Goncalves, Resende, IJPE 145 (2013).
// lengths: Falkenauer, J. Heuristics 2 (1996); Waescher, Gau, OR Spektrum 18 (1996); Scholl, Klein,
//   Juergens, Computers & OR 24 (1997).
#include <catch2/catch.hpp>

#include <cmath>
#include <ctime>
#include <iostream>
#include <map>

#include "base/figure.h"
#include "geometry/packing_bound.h"
#include "geometry/packing_cuts.h"
#include "geometry/packing_knapsack.h"
#include "geometry/packing_lengths.h"
#include "geometry/packing_search.h"
#include "packing/benchmark_data.h"
#include "packing/verify.h"

namespace splay::packing {
namespace {

bool skipped(const char* what) {
  if (!benchmark::folder().empty()) return false;
  std::cout << "SKIPPED: " << what
            << ": SPLAYBOOK_BENCHMARKS does not name the folder of the published problems\n";
  return true;
}

class Clock {
 public:
  double seconds() const { return static_cast<double>(std::clock() - start_) / CLOCKS_PER_SEC; }

 private:
  std::clock_t start_ = std::clock();
};

void row(const std::string& name, double ours, const std::string& published, double seconds) {
  std::cout << name << "  ours " << plain_number(ours, 0) << "  published " << published << "  "
            << plain_number(seconds, 3) << " s\n";
}

double checked_value(const benchmark::SheetProblem& problem, const CutTree& tree, bool limited) {
  std::vector<Piece> pieces;
  std::vector<std::int64_t> most;
  for (const Offer& o : problem.offers) {
    pieces.push_back(o.piece);
    most.push_back(limited ? o.copies : problem.width * problem.height);
  }
  REQUIRE(verify::tree(tree, problem.width, problem.height, pieces, most) == verify::sound);
  double value = 0;
  for (const int region : regions_with(tree, Content::piece))
    value += problem.offers[static_cast<std::size_t>(tree[static_cast<std::size_t>(region)].piece)]
                 .value;
  return value;
}

TEST_CASE("Published: one sheet, any number of copies", "[benchmark]") {
  if (skipped("gcut")) return;
  for (const std::vector<std::string>& known : benchmark::table("optima.csv")) {
    if (known[0] != "gcut") continue;
    for (const bool turning : {false, true}) {
      benchmark::SheetProblem problem = benchmark::gcut(std::stoi(known[1].substr(4)));
      for (Offer& o : problem.offers) o.piece.may_turn = turning;
      const Clock clock;
      const GuillotineTable table =
          GuillotineTable::for_sheet(problem.offers, problem.width, problem.height);
      const CutTree tree = table.cuts(problem.width, problem.height);
      const double seconds = clock.seconds();
      const double value = checked_value(problem, tree, false);
      const std::string& optimum = known[turning ? 4 : 3];
      row(problem.name + (turning ? " turning" : ""), value, optimum, seconds);
      CHECK(value == std::stod(optimum));
    }
  }
}

// The optimum, proven, for all but problem 15 of the published list, where both values are
// recalled.
TEST_CASE("Published: one sheet, limited copies", "[benchmark]") {
  if (skipped("ngcut and cgcut")) return;
  std::map<std::string, std::string> optima;
  for (const std::vector<std::string>& known : benchmark::table("optima.csv")) {
    if (known[0] == "ngcut") optima["ngcut" + known[1].substr(16)] = known[3];
    if (known[0] == "cgcut") optima[known[1]] = known[3];
  }
  std::vector<benchmark::SheetProblem> problems = benchmark::ngcut();
  problems.resize(16);  // the rest are okp1 to okp5
  for (int number = 1; number <= 3; ++number) problems.push_back(benchmark::cgcut(number));
  for (const benchmark::SheetProblem& problem : problems) {
    const Clock clock;
    const Knapsack best = best_cutting(problem.offers, problem.width, problem.height, {40000, {}});
    const double seconds = clock.seconds();
    CHECK(checked_value(problem, best.tree, true) == best.value);
    row(problem.name, best.value, optima.at(problem.name), seconds);
    CHECK(best.value == std::stod(optima.at(problem.name)));
    CHECK(best.proven);
  }
}

// The published values allow layouts that no saw can cut, so ours may only be as good.
TEST_CASE("Published: the harder limited problems are never exceeded", "[benchmark]") {
  if (skipped("okp")) return;
  for (const std::vector<std::string>& known : benchmark::table("optima.csv")) {
    if (known[0] != "okp") continue;
    const benchmark::SheetProblem problem = benchmark::okp(std::stoi(known[1].substr(3, 1)));
    const Clock clock;
    const Knapsack best = best_cutting(problem.offers, problem.width, problem.height, {40000, {}});
    CHECK(checked_value(problem, best.tree, true) == best.value);
    row(problem.name + (best.proven ? " (proven)" : ""), best.value, known[3], clock.seconds());
    CHECK(best.value <= std::stod(known[3]));
    CHECK(best.value >= 0.99 * std::stod(known[3]));
  }
}

TEST_CASE("Published: strips", "[benchmark]") {
  if (skipped("strips")) return;
  double excess = 0;
  int count = 0;
  for (const benchmark::PieceProblem& problem : benchmark::strips()) {
    const Clock clock;
    const Packing packing = pack_strip(problem.width, problem.pieces, {10000, {}});
    const double seconds = clock.seconds();
    REQUIRE(verify::placed_once(packing, problem.pieces) == verify::sound);
    REQUIRE(packing.unplaced.empty());
    const Units height = packing.sheets[0].tree.height();
    row(problem.name, static_cast<double>(height), std::to_string(problem.height), seconds);
    CHECK(height >= problem.height);
    excess += static_cast<double>(height) / static_cast<double>(problem.height) - 1;
    ++count;
  }
  REQUIRE(count == 21);
  std::cout << "strips: on average " << plain_number(100 * excess / count, 2)
            << " % over the best height of any layout\n";
  CHECK(excess / count <= 0.05);
}

TEST_CASE("Published: 500 orders of sheets", "[benchmark]") {
  if (skipped("sheets")) return;
  struct Group {
    double ours = 0, bound = 0, area = 0, known = 0, seconds = 0;
  };
  std::map<int, Group> classes;
  std::map<std::string, Group> groups;  // by class and number of pieces
  for (const benchmark::PieceProblem& problem : benchmark::sheets()) {
    const std::vector<Stock> stocks = {{problem.width, problem.height, -1, 1}};
    const Clock clock;
    const double area = area_bound(stocks, problem.pieces);
    double bound = std::max(area, dual_feasible_bound(stocks, problem.pieces));
    Packing packing = pack_sheets(stocks, problem.pieces, {2000, {}}, bound);
    if (packing.cost > bound)
      bound = std::max(bound, column_bound(stocks, problem.pieces, {100, {}}));
    improve_sheets(packing, stocks, problem.pieces, {10000, {}}, bound);
    const double seconds = clock.seconds();
    REQUIRE(verify::placed_once(packing, problem.pieces) == verify::sound);
    REQUIRE(packing.unplaced.empty());
    CHECK(packing.cost >= bound);
    const int number = std::stoi(problem.name.substr(2, 2));
    const int pieces = static_cast<int>(problem.pieces.size());
    for (Group* group :
         {&classes[number], &groups[std::to_string(number) + "/" + std::to_string(pieces)]}) {
      group->ours += packing.cost;
      group->bound += bound;
      group->area += area;
      group->seconds += seconds;
    }
  }
  for (const std::vector<std::string>& known :
       benchmark::table("bpp2d/bwmv_group_best_known.csv")) {
    const Group& group = groups.at(known[0] + "/" + known[1]);
    classes[std::stoi(known[0])].known += std::stod(known[8]);
    CHECK(group.ours >= std::stod(known[5]));  // the published sum of the area bounds
    CHECK(group.area == std::stod(known[5]));
  }
  Group all;
  for (const auto& [number, group] : classes) {
    row("class " + std::to_string(number) + "  proven " + plain_number(group.bound, 0), group.ours,
        plain_number(group.known, 0), group.seconds);
    all.ours += group.ours;
    all.bound += group.bound;
    all.known += group.known;
    all.seconds += group.seconds;
  }
  row("sheets  proven " + plain_number(all.bound, 0), all.ours, plain_number(all.known, 0),
      all.seconds);
  CHECK(all.known == 6988);
  CHECK(all.ours <= 1.03 * all.known);
}

TEST_CASE("Published: lengths from bars", "[benchmark]") {
  if (skipped("lengths")) return;
  std::map<std::string, std::string> best;  // "15", or "14-15" where it is not settled
  for (const std::vector<std::string>& known : benchmark::table("optima.csv"))
    if (known[0] == "bpp1d") best[known[1]] = known[3];
  const Clock clock;
  int optimal = 0, count = 0;
  for (const benchmark::LengthProblem& problem : benchmark::lengths()) {
    CAPTURE(problem.name);
    const Clock own_clock;
    const LengthPlan plan = cut_lengths({{{problem.bar}, -1, 1}}, problem.lengths, {5000, {}});
    const double seconds = own_clock.seconds();
    std::vector<int> seen(problem.lengths.size(), 0);
    for (const FilledBar& bar : plan.bars) {
      Units used = 0;
      for (const int piece : bar.pieces[0]) {
        used += problem.lengths[static_cast<std::size_t>(piece)];
        ++seen[static_cast<std::size_t>(piece)];
      }
      CHECK(used <= problem.bar);
    }
    CHECK(seen == std::vector<int>(problem.lengths.size(), 1));
    const std::string& known = best.at(problem.name);
    const int least = std::stoi(known);
    const std::size_t dash = known.find('-');
    const int most = dash == std::string::npos ? least : std::stoi(known.substr(dash + 1));
    const int ours = static_cast<int>(plan.bars.size());
    CHECK(ours <= most + 1);
    CHECK(ours >= least);
    CHECK(plan.bound <= most);
    CHECK(plan.bound <= ours);
    if (ours > most) row(problem.name, ours, known, seconds);
    optimal += ours <= most ? 1 : 0;
    ++count;
  }
  std::cout << "lengths: " << optimal << " of " << count
            << " at the best known, the others one over, " << plain_number(clock.seconds(), 1)
            << " s\n";
  CHECK(count == 72);
}

}  // namespace
}  // namespace splay::packing
