// Board feet, prices, the maker's sums and the quote.
#include "fabrication/buying.h"

#include "fabrication/shop.h"

using namespace splay;
using fabrication::board_feet;
using fabrication::make_bill;
using model::Tally;

namespace {

constexpr double inch = Length::mm_per_inch, foot = 12 * inch;

std::string bought_boards(const std::string& rest, const std::string& thickness) {
  return "[stock.oak]\nkind = \"board\"\nmaterial = \"White oak\"\nthickness = \"" + thickness +
         "\"\n" + rest;
}

const fabrication::StockBill& only_stock(const fabrication::Bill& bill) {
  REQUIRE(bill.stock.size() == 1);
  return bill.stock[0];
}

}  // namespace

// scribd.com/doc/30300194, a worked example: a board of 9 in, 4 ft long and 2 in thick is 6 board
// feet, 42 dollars at 7.
TEST_CASE("a board of nine inches by four feet by two inches") {
  for (const Tally tally : {Tally::volume, Tally::next_inch_and_foot, Tally::surface_measure})
    CHECK(board_feet(4 * foot, 9 * inch, 2 * inch, tally) == Approx(6));
  const test::Built piece = test::build(
      test::bare_job() +
      bought_boards("size = [48, 9]\nend_trim = 0\nprice = 7\nsold_as = \"2 in\"\n", "1 3/4 in") +
      test::panels("sill", 1, "oak", "48", "9"));
  const fabrication::Bill bill = make_bill(piece.plan);
  CHECK(only_stock(bill).billed == Approx(6));
  CHECK(only_stock(bill).cents == 4200);
  CHECK(bill.cost == 4200);
}

// woodworkingtalk.com, "Pricing and BF calculations when purchasing lumber": two boards of 5 1/2 in
// by 8 ft are 7.33 board feet by volume, and 8 on a bill that counts the width to the next inch.
// Counting 5/4 as 6/4 is the same yard's custom; its sum is derived.
TEST_CASE("the yard's count is kept apart from the volume") {
  CHECK(2 * board_feet(8 * foot, 5.5 * inch, inch, Tally::volume) == Approx(7.3333).epsilon(1e-4));
  CHECK(2 * board_feet(8 * foot, 5.5 * inch, inch, Tally::next_inch_and_foot) == Approx(8));
  const auto two = [](const std::string& rest) {
    return test::build(test::bare_job() +
                       bought_boards("size = [96, \"5 1/2\"]\nend_trim = 0\n"
                                     "tally = \"next inch and foot\"\nprice = 5\n" +
                                         rest,
                                     "3/4 in") +
                       test::panels("rail", 2, "oak", "96", "5 1/2"));
  };
  const test::Built plain = two("");
  const fabrication::Bill bill = make_bill(plain.plan);
  CHECK(only_stock(bill).bought == 2);
  CHECK(only_stock(bill).planned == Approx(22.0 / 3));
  CHECK(only_stock(bill).billed == Approx(8));
  CHECK(only_stock(bill).cents == 4000);
  // 2 x 6 x 8 x 1.5 / 12 = 12 against 2 x 5.5 x 8 x 1.25 / 12 = 9.17.
  const test::Built five_quarter = two("sold_as = \"5/4\"\nbilled_as = \"6/4\"\n");
  const fabrication::Bill dearer = make_bill(five_quarter.plan);
  CHECK(only_stock(dearer).planned == Approx(9.1667).epsilon(1e-4));
  CHECK(only_stock(dearer).billed == Approx(12));
}

// NHLA tally as lumber sellers state it: surface measure is width times whole feet of length over
// 12, rounded to a whole foot of surface, times the thickness; 1 x 6 x 96 in is 4 board feet.
TEST_CASE("surface measure") {
  CHECK(board_feet(96 * inch, 6 * inch, inch, Tally::surface_measure) == Approx(4));
  CHECK(board_feet(8.9 * foot, 7.25 * inch, inch, Tally::surface_measure) == Approx(5));  // 4.83
  CHECK(board_feet(8 * foot, 7.25 * inch, 2 * inch, Tally::surface_measure) == Approx(10));
  CHECK(board_feet(96 * inch, 6 * inch, 0.75 * inch, Tally::volume) == Approx(4));  // under an inch
}

TEST_CASE("finished, rough and planned board feet, and the waste factor") {
  const auto with = [](const std::string& waste) {
    return test::build(
        test::job() + "[shop]\nblank_allowance = 1\n[shop.saw]\nkerf = \"1/8\"\n" +
        bought_boards("size = [96, 6]\nend_trim = 0\nsold_as = \"4/4\"\nprice = 10\n" + waste,
                      "3/4 in") +
        test::panels("rail", 2, "oak", "46", "5"));
  };
  const test::Built piece = with("");
  const fabrication::Bill plain = make_bill(piece.plan);
  CHECK(only_stock(plain).finished == Approx(2 * 46 * 5 * 0.75 / 144));
  CHECK(only_stock(plain).rough == Approx(2 * 47 * 6 * 1.0 / 144));
  CHECK(only_stock(plain).planned == Approx(4));
  CHECK(only_stock(plain).billed == Approx(4));
  const test::Built little = with("waste = 30\n");  // 2.396 x 1.3 = 3.1 is less than the board
  CHECK(only_stock(make_bill(little.plan)).billed == Approx(4));
  const test::Built much = with("waste = 100\n");  // 4.79 is more
  CHECK(only_stock(make_bill(much.plan)).billed == Approx(2 * 2 * 46 * 5 * 0.75 / 144));
}

// Wood by the cubic metre of its nominal thickness: common practice, no source. Plain arithmetic:
// two boards of 2400 x 150 x 27 mm are 0.01944 cubic metres, 17.50 at 900.
TEST_CASE("a metric job reckons boards by volume, unless its price or tally is in board feet") {
  const auto with = [](const std::string& rest) {
    return test::build(
        test::bare_job("3 mm", "mm") +
        bought_boards("size = [2400, 150]\nend_trim = 0\nsold_as = 27\nprice = 900\n" + rest,
                      "20 mm") +
        test::panels("rail", 2, "oak", "2300", "140"));
  };
  const test::Built piece = with("");
  const fabrication::Bill plain = make_bill(piece.plan);
  const fabrication::StockBill& wood = only_stock(plain);
  CHECK(wood.by_volume);
  CHECK(wood.finished == Approx(2 * 2300.0 * 140 * 20));
  CHECK(wood.rough == Approx(2 * 2300.0 * 140 * 27));
  CHECK(wood.planned == Approx(2 * 2400.0 * 150 * 27));
  CHECK(wood.billed == Approx(wood.planned));
  CHECK(wood.per == model::PricePer::cubic_metre);
  CHECK(wood.quantity == Approx(0.01944));
  CHECK(wood.cents == 1750);
  REQUIRE(plain.maker.size() == 1);
  CHECK(plain.maker[0].reckoning == "0.0194 cubic metres at 900.00");
  const test::Built thicker = with("billed_as = 30\nwaste = 100\n");
  const fabrication::Bill raised = make_bill(thicker.plan);
  CHECK(only_stock(raised).billed == Approx(2 * 2 * 2300.0 * 140 * 20 * 30 / 27));
  for (const char* rest : {"per = \"board foot\"\n", "tally = \"surface measure\"\n"}) {
    const test::Built feet = with(rest);
    const fabrication::Bill bill = make_bill(feet.plan);
    CHECK_FALSE(only_stock(bill).by_volume);
    CHECK(only_stock(bill).planned == Approx(2 * 2400.0 * 150 * 27 / (144 * 25.4 * 25.4 * 25.4)));
  }
}

TEST_CASE("sheets, off-cuts, hardware in packs, sundries, work: every line, and the quote") {
  const test::Built piece = test::build(
      test::bare_job() +
      "[stock.panel]\nkind = \"sheet\"\nmaterial = \"Birch plywood\"\nthickness = \"3/4\"\n"
      "size = [96, 48]\nprice = 84.50\n[stock.panel.off_cut.old]\nsize = [48, 24]\n"
      "[buying]\ncurrency = \"USD\"\nlabour_rate = 40\nmarkup = 20\ntax = 5\n"
      "[buying.hardware.dowel]\nfitting = \"dowel\"\nprice = 3.10\npack = 50\n"
      "[buying.sundry.oil]\nwhat = \"Hard oil\"\nquantity = 0.5\nprice = 31\n"
      "[buying.work.cutting]\nhours = 2.5\n[buying.work.finish]\nhours = 1\nrate = 30\n" +
      test::panels("side", 5, "panel", "47", "23"));
  fabrication::Plan plan = piece.plan;
  for (int i = 0; i < 51; ++i)
    plan.assembly.fittings.push_back({"dowel", "8 x 40 mm", {}, {}, 8, 40, {}, ""});
  plan.assembly.fittings.push_back({"hinge", "2 in", {}, {}, 0, 0, {}, ""});
  const fabrication::Bill bill = make_bill(plan);
  REQUIRE(bill.hardware.size() == 2);
  CHECK(bill.hardware[0].packs == 2);
  CHECK(bill.hardware[0].cents == 620);
  CHECK_FALSE(bill.hardware[1].priced);
  REQUIRE(bill.unpriced.size() == 1);
  CHECK(bill.unpriced[0] == "hinge, 2 in");
  // One sheet, and an off-cut a quarter as large at the same price.
  CHECK(only_stock(bill).cents == 8450);
  CHECK(only_stock(bill).owned_cents == 2113);
  const std::int64_t cost = 8450 + 2113 + 620 + 1550 + 10000 + 3000;
  CHECK(bill.cost == cost);
  std::int64_t lines = 0;
  for (const fabrication::MoneyLine& line : bill.maker) lines += line.cents;
  CHECK(lines == bill.cost);
  // Materials 105.63, hardware and sundries 21.70, work 130.00, each times 1.2, in whole
  // hundredths.
  REQUIRE(bill.quote.size() == 3);
  CHECK(bill.quote[0].cents == 12676);
  CHECK(bill.quote[1].cents == 2604);
  CHECK(bill.quote[2].cents == 15600);
  CHECK(bill.quote_net == 12676 + 2604 + 15600);
  CHECK(bill.quote_tax == 1544);
  CHECK(bill.quote_total == bill.quote_net + bill.quote_tax);
}

TEST_CASE("glue is reckoned from the surfaces that meet") {
  // Two sides stand with their ends, 18 by 200, between top and bottom.
  const test::Built piece = test::build(
      test::bare_job("3.2 mm", "mm") +
      "[stock.panel]\nkind = \"sheet\"\nthickness = 18\nsize = [2440, 1220]\n"
      "[buying.glue]\nprice = 10\nspread = 250\n"
      "[case.box]\noutline = { bottom = 600, height = 400 }\ndepth = 200\nstock = \"panel\"\n"
      "corners = \"butt\"\nthrough = [\"bottom\", \"top\"]\n");
  REQUIRE_THAT(piece.stops(), Catch::Equals(""));
  const fabrication::Bill bill = make_bill(piece.plan);
  CHECK(bill.joint_area == Approx(4 * 18 * 200));
  CHECK(bill.glue_kg == Approx(4 * 18 * 200 * 1e-6 * 0.25));
}

TEST_CASE("edge band by the metre or in rolls") {
  const auto banded = [](const std::string& rest) {
    return test::build(
        test::job("mm") + "[shop]\nblank_allowance = 20\n" + test::sheet("panel", "18 mm") +
        "[stock.band]\nkind = \"edge band\"\nthickness = 1\nprice = 2\n" + rest +
        "[case.box]\noutline = { bottom = 600, height = 400 }\ndepth = 200\nstock = \"panel\"\n"
        "corners = \"mitre\"\nfront = { edge = \"band\", stock = \"band\" }\n");
  };
  const auto bill_of = [](const test::Built& piece) {
    for (const fabrication::StockBill& each : make_bill(piece.plan).stock)
      if (each.stock == "band") return each;
    FAIL("no band");
    return fabrication::StockBill{};
  };
  const test::Built metres = banded("");
  const fabrication::StockBill by_length = bill_of(metres);
  CHECK(by_length.rough == Approx(by_length.finished + 4 * 20));
  CHECK(by_length.quantity == Approx(by_length.rough / 1000));
  CHECK(by_length.cents == std::llround(by_length.rough / 1000 * 200));
  const test::Built rolls = banded("size = [1000, 22]\nper = \"piece\"\n");
  // 600 and 400 twice with 20 over, at most 1000 to a roll: 620 + ... two to a roll never fit but
  // 420 + 420.
  CHECK(bill_of(rolls).bought == 3);
  CHECK(bill_of(rolls).cents == 600);
}

TEST_CASE("money as text") {
  CHECK(fabrication::money_text(0) == "0.00");
  CHECK(fabrication::money_text(5) == "0.05");
  CHECK(fabrication::money_text(123450) == "1,234.50");
  CHECK(fabrication::money_text(123456789) == "1,234,567.89");
  CHECK(fabrication::money_text(-999) == "-9.99");
}
