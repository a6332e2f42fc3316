// What an author says of buying: where stock comes from, what may be done with it on the saw, and
// what things cost. Prices are plain numbers in the currency of [buying].
#pragma once

#include <string>
#include <vector>

#include "model/field.h"

namespace splay::model {

// An off-cut of a sheet on hand.
struct OffCutOnHand : Fields {
  std::string name;
  Given<std::vector<Length>> size;  // along the grain, across it
  Given<int> count{1};
  void fields(FieldVisitor& visit) override;
  void check(Complaints& complaints) const override;
};

// A board that lies on the rack, or several alike.
struct BoardOnRack : Fields {
  std::string name;
  Given<Length> length, width;
  Given<int> count{1};
  Given<std::vector<Length>> defects;  // from, to, from, to ...: along the board from its left end
  void fields(FieldVisitor& visit) override;
  void check(Complaints& complaints) const override;
};

enum class MatchRun { side_by_side, end_to_end };

// Parts cut next to each other from one sheet or board so that the figure runs through them.
struct Match : Fields {
  std::string name;
  Given<std::vector<std::string>> parts;  // by name, from the left or from below
  Given<MatchRun> run{MatchRun::side_by_side};
  void fields(FieldVisitor& visit) override;
  void check(Complaints& complaints) const override;
};

enum class Tally {
  volume,              // thickness x width x length as measured
  next_inch_and_foot,  // width counted up to the inch, length up to the foot
  surface_measure      // NHLA: width x whole feet of length over 12, rounded to whole feet of area
};

enum class PricePer { piece, square_metre, square_foot, cubic_metre, board_foot, metre, foot };

// The fields of a stock that say how it is bought and broken down (part of model::Stock).
struct Supply {
  Given<Length> kerf;                        // of the saw that breaks it down; else the shop's saw
  Given<Length> edge_trim{Length{}};         // off each edge of a sheet or long edge of a board
  Given<Length> end_trim{Length{25}};        // off each end of a board: checks
  Given<Length> keep;                        // an off-cut with both sides at least this is kept
  Given<std::vector<std::string>> may_turn;  // parts whose grain is free
  Tables<Match> matches;
  Tables<OffCutOnHand> off_cuts;
  Tables<BoardOnRack> rack;
  Given<std::vector<Length>> lengths;  // boards the yard sells
  Given<std::vector<Length>> widths;   // least and most of the yard's random widths
  Given<Length> rough;                 // thickness before planing, as measured
  Given<Length> planing{Length{5}};    // off the thickness, both faces together
  Given<Length> jointing{Length{6}};   // extra width of each strip of a glued-up panel
  Given<Length> sold_as;               // the name's thickness: 5/4 in
  Given<Length> billed_as;             // the thickness the yard bills
  Given<Tally> tally{Tally::volume};
  Given<double> price{0.0};
  Given<PricePer> per{PricePer::piece};
  Given<double> waste{0.0};  // percent over the finished quantity
  void fields(FieldVisitor& visit);
  void check(const std::string& table, bool sheet, Complaints& complaints) const;

 private:
  void break_down(FieldVisitor& visit);
  void boards(FieldVisitor& visit);
  void billing(FieldVisitor& visit);
};

// What a piece of hardware costs.
struct HardwarePrice : Fields {
  std::string name;
  Given<std::string> fitting, size;  // as the hardware list has them; no size: any
  Given<double> price{0.0};          // of a pack
  Given<int> pack{1};                // how many are in it
  void fields(FieldVisitor& visit) override;
};

// Anything else that is bought: finish, abrasives, delivery.
struct Sundry : Fields {
  std::string name;
  Given<std::string> what;
  Given<double> quantity{1.0}, price{0.0};
  void fields(FieldVisitor& visit) override;
};

// Hours of one kind of work.
struct Work : Fields {
  std::string name;
  Given<double> hours{0.0};
  Given<double> rate{0.0};  // an hour, over that of [buying]
  void fields(FieldVisitor& visit) override;
};

struct Glue : Fields {
  Given<std::string> what{std::string("Glue")};
  Given<double> price{0.0};     // a kilogram
  Given<double> spread{200.0};  // grams on a square metre of joint
  void fields(FieldVisitor& visit) override;
};

struct Buying : Fields {
  Given<std::string> currency;
  Given<double> labour_rate{0.0};  // an hour
  Given<double> markup{0.0};       // percent on everything, for the quote
  Given<double> tax{0.0};          // percent on the quote
  Given<std::vector<std::string>> terms;
  Glue glue;
  Tables<HardwarePrice> hardware;
  Tables<Sundry> sundries;
  Tables<Work> work;
  void fields(FieldVisitor& visit) override;
  void check(Complaints& complaints) const override;
};

}  // namespace splay::model
