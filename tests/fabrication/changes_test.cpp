// Two plans of one piece side by side: each kind of change is told, and nothing else.
#include "fabrication/changes.h"

#include <algorithm>

#include "support/piece.h"

using namespace splay;
using fabrication::PartChange;

namespace {

std::string rail(const std::string& name, double along, const std::string& rest = "") {
  return "[board." + name + "]\nstock = \"oak\"\nlength = 500\nwidth = 60\nat = [0, 0, " +
         plain_number(along, 0) + "]\n" + rest;
}

std::string end_cut(const std::string& name, const std::string& angle) {
  return "[board." + name + ".cut.end]\ncut = \"angles\"\nalong = 480\nface_angle = \"" + angle +
         "\"\n";
}

test::Built with_rails(const std::string& rails) {
  return test::build(test::job("mm") + test::board("oak", "20 mm") + test::board("ash", "20 mm") +
                     rails);
}

std::vector<PartChange> changes(const std::string& before, const std::string& now) {
  return fabrication::part_changes(with_rails(before).plan, with_rails(now).plan);
}

bool says(const PartChange& change, const std::string& words) {
  return std::ranges::find(change.what, words) != change.what.end();
}

}  // namespace

TEST_CASE("a plan beside itself has no change") {
  CHECK(changes(rail("a", 0) + rail("b", 100), rail("a", 0) + rail("b", 100)).empty());
}

TEST_CASE("a part that comes and one that goes are told as that") {
  const auto came = changes(rail("a", 0), rail("a", 0) + rail("b", 100, end_cut("b", "20 deg")));
  REQUIRE(came.size() == 1);
  CHECK(came[0].name == "b");
  CHECK((came[0].is_new && !came[0].is_gone));
  const auto went = changes(rail("a", 0) + rail("b", 100, end_cut("b", "20 deg")), rail("a", 0));
  REQUIRE(went.size() == 1);
  CHECK(went[0].name == "b");
  CHECK((went[0].is_gone && went[0].mark.empty() && !went[0].mark_before.empty()));
}

TEST_CASE("one more of a kind is a change of its number") {
  const auto more = changes(rail("a", 0), rail("a", 0) + rail("b", 100));
  REQUIRE(more.size() == 1);
  CHECK(says(more[0], "1 off to 2"));
}

TEST_CASE("an angle, a cut and a stock that change are told with both states") {
  const auto turned =
      changes(rail("a", 0, end_cut("a", "20 deg")), rail("a", 0, end_cut("a", "25 deg")));
  REQUIRE(turned.size() == 1);
  CHECK(std::ranges::any_of(turned[0].what, [](const std::string& words) {
    return words.find("face angle 20.00° to 25.00°") != std::string::npos;
  }));
  // Less than the figures show is a change all the same.
  const auto little =
      changes(rail("a", 0, end_cut("a", "20 deg")), rail("a", 0, end_cut("a", "20.001 deg")));
  REQUIRE(little.size() == 1);
  CHECK(std::ranges::any_of(little[0].what, [](const std::string& words) {
    return words.find("face angle by under 0.01°") != std::string::npos;
  }));
  const auto cut = changes(rail("a", 0), rail("a", 0, end_cut("a", "20 deg")));
  REQUIRE(cut.size() == 1);
  CHECK(says(cut[0], "new: end"));
  CHECK_FALSE(cut[0].steps.empty());
  std::string other = rail("a", 0);
  other.replace(other.find("oak"), 3, "ash");
  const auto stock = changes(rail("a", 0), other);
  REQUIRE(stock.size() == 1);
  CHECK(says(stock[0], "stock oak to ash"));
}
