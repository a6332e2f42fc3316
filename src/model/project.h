// What the author said: the project file as values, before anything is built.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "base/figure.h"
#include "model/buying.h"
#include "model/client.h"
#include "model/field.h"
#include "model/finish.h"
#include "model/glue_up.h"
#include "model/hardware.h"
#include "model/machines.h"
#include "model/paper.h"
#include "model/room.h"
#include "model/timber.h"

namespace splay::model {

std::string iso_date(const Date& date);  // "2026-03-02" (ISO 8601), "" for the empty date

struct Job : Fields {
  Given<std::string> title, number, client, maker;
  Given<std::string> revision{"A"};
  Given<Date> date;
  Given<Unit> units{Unit::millimetre};
  Given<int> fraction{32};
  Given<int> decimals{1};
  Given<PaperSize> paper{PaperSize::a4};
  Given<bool> two_sided{false};  // binding margin changes sides on even pages
  Given<std::vector<std::string>> notes;
  void fields(FieldVisitor& visit) override;
  void check(Complaints& complaints) const override;
  FigureStyle figures() const;
};

enum class StockKind { sheet, board, edge_band };

// What parts are made of. Thickness is as measured, never the name's.
struct Stock : Fields {
  std::string name;
  Given<StockKind> kind{StockKind::sheet};
  Given<std::string> material;  // for the cut list: "birch plywood"
  Given<Length> thickness;
  Given<std::vector<Length>> size;    // sheet: along the grain, across the grain
  Given<bool> grain{true};            // the show faces have a grain direction
  Given<bool> two_good_faces{false};  // either face may be the show face
  Given<double> density{650.0};       // kg/m3
  Timber timber;
  Supply supply;
  void fields(FieldVisitor& visit) override;
  void check(Complaints& complaints) const override;
  double weight() const;  // kg/m3: as given, else the species', else the default
};

struct Shop : Fields {
  Saw saw;
  MitreSaw mitre_saw;
  TrackSaw track_saw;
  BandSaw band_saw;
  Router router;
  Drill drill;
  Jointer jointer;
  Planer planer;
  Given<Length> largest_gap{Length{0.5}};     // that a joint may show when it is put together
  Given<Length> blank_allowance{Length{10}};  // over the finished size, in length and in width
  Given<Length> accuracy{Length{0.5}};        // a finished size is off by no more than this
  // mm that cuts may take off the play of a door or drawer front in all: the opening, the front and
  // both out of square, each off by the accuracy at the worst.
  double off_in_all() const { return 3 * accuracy->mm; }
  void fields(FieldVisitor& visit) override;
};

// A thing to build. Constructs derive from it; reading only fills it.
struct Item : Fields {
  std::string kind;  // the word of its table: "case"
  std::string name;  // the author's word: "body"
};

struct ItemKind {
  std::string_view word;
  std::string_view help;
  std::unique_ptr<Item> (*make)();
};
using Registry = std::vector<ItemKind>;

struct Project {
  std::string file_name;
  std::string source;  // the whole text, as read
  Job job;
  Shop shop;
  Buying buying;
  Room room;
  GlueUp glue_up;
  Client client;
  Approval approval;
  Tables<Hardware> hardware;
  Tables<Finish> finishes;
  Tables<Stock> stocks;
  std::vector<std::unique_ptr<Item>> items;  // in file order
};

}  // namespace splay::model
