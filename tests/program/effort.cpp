// More effort for the layouts, asked for on the command line.
#include <catch2/catch.hpp>

#include "program/run.h"

using namespace splay;

TEST_CASE("effort is counted in steps: the same report every time, and no progress into a file") {
  const std::string report =
      test::program() + " report --effort 2000 " + test::project("canted-tea-cabinet");
  const test::Run first = test::run(report), second = test::run(report);
  CHECK(first.status == 0);
  CHECK(first.output == second.output);
  CHECK(first.output.find("layouts:") == std::string::npos);
  CHECK(first.output.find("\"bound\"") != std::string::npos);
  CHECK(test::run(test::program() + " report --effort lots " + test::project("canted-tea-cabinet"))
            .status == 2);
}
