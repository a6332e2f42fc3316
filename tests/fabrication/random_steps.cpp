// Random projects from a seed: every step of every part is proven and every joint closes when the
// parts are cut by their steps.
#include <cmath>
#include <random>

#include "fabrication/steps_check.h"

using namespace splay;

namespace {

// Not std::uniform_real_distribution, whose figures differ from library to library.
class Chance {
 public:
  explicit Chance(unsigned seed) : engine_(seed) {}
  double between(double low, double high) {
    return low + (high - low) * (static_cast<double>(engine_()) / 4294967296.0);
  }
  bool coin() { return between(0, 1) < 0.5; }
  std::string word(std::initializer_list<const char*> words) {
    const auto at = static_cast<std::size_t>(between(0, 1) * static_cast<double>(words.size()));
    return words.begin()[std::min(at, words.size() - 1)];
  }
  std::string mm(double low, double high) { return plain_number(between(low, high), 3); }
  std::string degrees(double low, double high) {
    return "\"" + plain_number(between(low, high), 3) + " deg\"";
  }

 private:
  std::mt19937 engine_;
};

std::string start(Chance& chance) {
  return test::job("mm") + "[shop.saw]\ntilts = \"" + chance.word({"left", "right"}) +
         "\"\nwidest_stack = " + (chance.coin() ? "20" : "0") + "\nkerf = " + chance.mm(2.2, 3.6) +
         "\n" + test::sheet("panel", chance.mm(15, 22) + " mm") + test::sheet("back", "6 mm") +
         test::board("leg", "120 mm") + test::board("oak", "20 mm") + test::board("thin", "16 mm");
}

std::string canted_case(Chance& chance) {
  const double width = chance.between(500, 1100), height = chance.between(400, 800);
  std::string text = start(chance) + "[case.c]\noutline = { bottom = " + plain_number(width, 3) +
                     ", height = " + plain_number(height, 3) + ", lean_in = [" +
                     chance.degrees(-12, 18) + ", " + chance.degrees(-12, 18) +
                     "] }\ndepth = " + chance.mm(180, 380) + "\nstock = \"panel\"\ncorners = " +
                     chance.word({"\"mitre\"", "\"butt\"\nthrough = [\"bottom\", \"top\"]"}) + "\n";
  if (chance.coin())
    text += "[case.c.back]\nstock = \"back\"\nfit = \"" + chance.word({"rabbet", "groove"}) +
            "\"\ninto = 8\nclearance = 1\n";
  if (chance.coin())
    text += "[case.c.shelf.a]\ntop_at = " + plain_number(height * chance.between(0.35, 0.6), 3) +
            "\nset_back = 5\nends = { housing = 5, floor = \"" +
            chance.word({"square to walls", "parallel to face"}) + "\"" +
            (chance.coin() ? ", stopped = 12" : "") + " }\n";
  return text;
}

std::string ring(Chance& chance) {
  return start(chance) + "[case.r]\noutline = { sides = " +
         std::to_string(static_cast<int>(chance.between(3, 13))) +
         ", across_flats = " + chance.mm(300, 800) + " }\ndepth = " + chance.mm(120, 300) +
         "\nstock = \"panel\"\ncorners = \"mitre\"\n";
}

std::string stand(Chance& chance) {
  const double height = chance.between(350, 900);
  const std::string brace = "stock = \"thin\"\nwidth = " + chance.mm(25, 40) + "\n";
  return start(chance) + "[stand.s]\nheight = " + plain_number(height, 3) +
         "\nwidth = " + chance.mm(600, 1100) + "\ndepth = " + chance.mm(400, 600) +
         "\nlean_in = [" + chance.degrees(-6, 12) + ", " + chance.degrees(-6, 12) +
         "]\nlean_in_depth = [" + chance.degrees(-5, 8) + ", " + chance.degrees(-5, 8) +
         "]\n[stand.s.leg]\nstock = \"leg\"\ntop_width = " + chance.mm(45, 90) +
         "\nfoot_width = " + chance.mm(25, 45) + "\nthickness = " + chance.mm(20, 40) +
         "\ntaper = \"" + chance.word({"inside", "outside", "both"}) + "\"\n" +
         "[stand.s.brace.rail]\n" + brace + "at = " + plain_number(0.88 * height, 3) +
         "\n[stand.s.brace.tie]\n" + brace + "at = " + plain_number(0.76 * height, 3) +
         "\nruns = \"left and right\"\n";
}

std::string table(Chance& chance) {
  const double width = chance.between(38, 60);
  return start(chance) + "[table.t]\nheight = " + chance.mm(380, 780) +
         "\nwidth = " + chance.mm(600, 1200) + "\ndepth = " + chance.mm(450, 800) + "\nsplay = [" +
         chance.degrees(0, 12) + ", " + chance.degrees(0, 12) +
         "]\n[table.t.leg]\nstock = \"leg\"\nwidth = " + plain_number(width, 3) +
         "\ndepth = " + plain_number(width, 3) +
         "\nfoot_width = " + plain_number(width * chance.between(0.5, 1), 3) + "\ntaper = \"" +
         chance.word({"inside", "outside", "all"}) + "\"\nroll = \"" +
         chance.word({"front", "side", "line of lean"}) +
         "\"\n[table.t.apron]\nstock = \"oak\"\nwidth = " + chance.mm(50, 90) + "\nface = \"" +
         chance.word({"plumb", "with the legs"}) + "\"\n";
}

struct Count {
  int built = 0, steps = 0, machine = 0;
};

void prove_many(unsigned seed, int times, std::string (*write)(Chance&), Count& count) {
  Chance chance(seed);
  for (int i = 0; i < times; ++i) {
    const std::string text = write(chance);
    INFO("seed " << seed << ", project " << i << "\n" << text);
    const test::Built built = test::build(text);
    if (built.stops() != "" && test::unproven(built.plan).empty()) continue;
    ++count.built;
    count.steps += static_cast<int>(built.plan.steps.size());
    for (const fabrication::Step& step : built.plan.steps)
      count.machine += step.machine != fabrication::Machine::hand;
    test::check_steps(built.plan);
  }
}

}  // namespace

TEST_CASE("200 random canted cases are proven") {
  Count count;
  prove_many(20261101, 200, canted_case, count);
  CHECK(count.built >= 190);
  CHECK(count.machine > count.steps * 3 / 4);
}

TEST_CASE("100 random rings are proven") {
  Count count;
  prove_many(20261102, 100, ring, count);
  CHECK(count.built >= 90);
  CHECK(count.machine > count.steps * 3 / 4);
}

TEST_CASE("100 random stands are proven") {
  Count count;
  prove_many(20261103, 100, stand, count);
  CHECK(count.built >= 80);
}

TEST_CASE("100 random tables are proven") {
  Count count;
  prove_many(20261104, 100, table, count);
  CHECK(count.built >= 70);
}
