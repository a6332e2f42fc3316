// Areas of finish against plain arithmetic; what is finished when; names that are nothing.
#include "fabrication/finish.h"

#include "support/piece.h"

using namespace splay;
using namespace splay::fabrication;

namespace {

// Two boards 600 x 200 x 20, the second glued on the first.
std::string finished_boards(const std::string& more) {
  const std::string place = "stock = \"oak\"\nlength = 600\nwidth = 200\nanchor = \"corner\"\n";
  return test::job("mm") + test::board("oak", "20 mm") + "[board.a]\nat = [0, 0, 0]\n" + place +
         "[board.b]\nat = [0, 0, 20]\n" + place +
         "[joint.j]\nkind = \"glued\"\nhost = \"a\"\nguest = \"b\"\n" + more;
}

}  // namespace

TEST_CASE("finish is reckoned on what no joint covers") {
  const test::Built built =
      test::build(finished_boards("[finish.oil]\ncoats = 3\ncoverage = 12\n"));
  REQUIRE(built.stops().empty());
  const std::vector<FinishJob> jobs = plan_finish(built.plan);
  REQUIRE(jobs.size() == 1);
  const double one = 2 * (600.0 * 200 + 600 * 20 + 200 * 20);
  CHECK(open_area(built.plan, 0) == Approx(one - 600 * 200));
  CHECK(jobs[0].area == Approx(2 * (one - 600 * 200)));
  CHECK(jobs[0].litres == Approx(jobs[0].area * 1e-6 * 3 / 12));
  CHECK(jobs[0].parts.size() == 2);
  CHECK(jobs[0].before.empty());
}

TEST_CASE("finishes share out the parts") {
  const test::Built built = test::build(
      finished_boards("[finish.rest]\nkind = \"wax\"\n[finish.lid]\nkind = \"shellac\"\non = "
                      "[\"b\"]\nbefore = [\"b\"]\n"));
  const std::vector<FinishJob> jobs = plan_finish(built.plan);
  REQUIRE(jobs.size() == 2);
  CHECK(jobs[0].parts == std::vector<int>{0});
  CHECK(jobs[1].parts == std::vector<int>{1});
  CHECK(jobs[1].before == std::vector<int>{1});
  CHECK(jobs[0].litres == 0);
  CHECK_FALSE(built.found("part-without-finish"));
}

TEST_CASE("a panel loose in grooves is finished before it is put in") {
  const test::Built built = test::build(
      test::job() + test::board("rail", "3/4") + test::sheet("thin", "1/4") +
      "[frame.f]\noutline = { bottom = 20, height = 30 }\nstock = \"rail\"\nwidth = 2\ncorners = "
      "\"mitre\"\npanel = { stock = \"thin\", fit = \"groove\", into = \"3/8\", clearance = "
      "\"1/32\" "
      "}\n[finish.oil]\n");
  CAPTURE(built.stops());
  const std::vector<FinishJob> jobs = plan_finish(built.plan);
  REQUIRE(jobs.size() == 1);
  REQUIRE(jobs[0].before.size() == 1);
  CHECK(built.plan.assembly.parts[static_cast<std::size_t>(jobs[0].before[0])].stock == "thin");
}

TEST_CASE("names in a finish are looked up") {
  CHECK(test::build(finished_boards("[finish.oil]\non = [\"lid\"]\n")).found("finish-on-nothing"));
  CHECK(test::build(finished_boards("[finish.oil]\nstocks = [\"ash\"]\n"))
            .found("finish-on-nothing"));
  CHECK(test::build(finished_boards("[finish.oil]\non = [\"a\"]\n")).found("part-without-finish"));
}

// Usual caution of the trade and of fire services: rags with drying oil heat themselves.
TEST_CASE("cautions go by the kind of finish") {
  const auto says = [](model::FinishKind kind, const char* word) {
    for (const std::string& each : finish_cautions(kind))
      if (each.find(word) != std::string::npos) return true;
    return false;
  };
  CHECK(says(model::FinishKind::oil, "Rags"));
  CHECK_FALSE(says(model::FinishKind::shellac, "Rags"));
  CHECK(says(model::FinishKind::shellac, "vapour"));
  CHECK(says(model::FinishKind::soap, "data sheet"));
}
