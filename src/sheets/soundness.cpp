// Movement, load and balance: the figures behind the cautions, with their formulas and sources.
#include "fabrication/soundness.h"

#include <algorithm>
#include <cmath>

#include "drafting/table.h"
#include "sheets/hold_stories.h"
#include "sheets/part_view_facts.h"
#include "sheets/soundness_words.h"

namespace splay::sheets {

namespace {

using drafting::Cell;
using drafting::Story;
using fabrication::Balance;
using fabrication::Soundness;

class Page {
 public:
  Page(const Context& context, double width)
      : context_(context), sound_(context.plan.soundness), width_(width) {}

  Story story() {
    movement();
    play();
    load();
    balance();
    return std::move(story_);
  }

 private:
  std::string text(double mm) const { return context_.kit.figures.text(mm); }
  const fabrication::PartRow& row(int index) const {
    return context_.plan.rows[static_cast<std::size_t>(index)];
  }
  bool inch() const { return *context_.job().units == Unit::inch; }
  // A change of size: to a hundredth of a millimetre or a thousandth of an inch, for it is small.
  std::string small(double mm) const {
    return inch() ? plain_number(mm / 25.4, 3) : plain_number(mm, 2);
  }
  std::string kilograms(double kg) const {
    return plain_number(kg, 1) + " kg" +
           (inch() ? ", " + plain_number(kg / 0.45359237, 1) + " lb" : "");
  }
  std::string newtons(double n) const {
    return plain_number(n, 0) + " N" +
           (inch() ? ", " + plain_number(n / 4.4482216, 0) + " lbf" : "");
  }

  void heading(const char* title) {
    story_.push_back(drafting::heading(context_.kit, title, width_));
  }
  void say(const std::string& paragraph) {
    story_.push_back(drafting::body_text(context_.kit, paragraph, width_));
    story_.back().space_after = 3;
  }
  void put(const drafting::Table& table) {
    drafting::add(story_, drafting::table(context_.kit, table, width_));
    story_.back().space_after = 3;
  }

  void reckoned(const std::vector<Reckoned>& lines) {
    drafting::add(story_, reckoned_table(context_, lines, width_));
    story_.back().space_after = 3;
  }

  void movement() {
    if (sound_.changes.empty()) return;
    heading("Movement: solid wood across the grain");
    drafting::Table table;
    table.columns = {words("Part"),
                     figures("Width"),
                     figures("At the\ndriest"),
                     figures("At the\ndampest"),
                     figures("Slot longer\nby"),
                     figures("Room in\na groove")};
    const bool panels = !sound_.panels.empty();
    if (panels) table.columns.push_back(figures("Room\nit has"));
    table.columns.push_back(words("Held by"));
    for (const fabrication::WidthChange& change : in_order(sound_.changes)) {
      const double half = std::max(-change.least, change.greatest) / 2;
      const double room = std::max(0.0, change.greatest) / 2 + 25.4 / 16;
      std::string held = change.held_by.empty()
                             ? "free"
                             : change.held_by + " over " + text(change.held_width) +
                                   (change.stops ? ": too much" : "");
      table.rows.push_back(
          {{Cell::bold(row(change.row).mark + "  " + row(change.row).name), text(change.width),
            small(change.least), "+" + small(change.greatest), text(2 * half), text(room)},
           {},
           false});
      std::vector<Cell>& cells = table.rows.back().cells;
      if (panels) cells.emplace_back(room_it_has(change.row));
      cells.emplace_back(std::move(held));
    }
    put(table);
    reckoned(movement_reckoned(context_));
    slots();
  }

  void slots() {
    for (const fabrication::PinSlot& slot : sound_.slots)
      say("Pins of " + slot.pin_in + " in slots of " + row(slot.row).mark + ": " + text(slot.off) +
          " from its middle the slot is " + text(slot.length) + " long and needs " +
          text(slot.needs) + ", the pin (" + text(slot.pin) +
          ") and the movement to either side; glue only the pin in the middle.");
  }

  // As the cut list has them.
  std::vector<fabrication::WidthChange> in_order(
      std::vector<fabrication::WidthChange> changes) const {
    const auto place = [order = rows_in_order(context_.plan),
                        this](const fabrication::WidthChange& change) {
      return std::ranges::find(order, &row(change.row)) - order.begin();
    };
    std::ranges::stable_sort(changes, {}, place);
    return changes;
  }

  std::string room_it_has(int of) const {
    const auto found = std::ranges::find(sound_.panels, of, &fabrication::PanelRoom::row);
    return found == sound_.panels.end() ? "" : text(found->room / 2);
  }

  void play() {
    if (sound_.plays.empty() && sound_.openings.empty()) return;
    heading("Play of doors and drawers");
    if (!sound_.plays.empty()) {
      drafting::Table table;
      table.columns = {words("What"),       words("Along", 0),   figures("Both gaps"),
                       figures("Swelling"), figures("Accuracy"), figures("Needs"),
                       words("Verdict", 0)};
      for (const fabrication::Play& play : sound_.plays)
        table.rows.push_back(
            {{Cell::bold(play.name), play.way, text(play.gaps), small(play.swells), text(play.cuts),
              text(play.needs()), play.enough() ? "enough" : "too little"},
             {},
             false});
      put(table);
      say("Gaps are measured between the solids. Swelling is from the moisture while it is made to "
          "the dampest. Accuracy is three times the shop's: the opening, what stands in it, and "
          "both out of square, at the worst. Gaps are made unequal where the wood swells upwards: "
          "the larger one above.");
    }
    for (const fabrication::Opening& opening : sound_.openings)
      say(capitalised(opening.name) + " comes out " +
          context_.kit.figures.with_unit(opening.opens) +
          (opening.touches.empty() ? ", all the way, as tried with the solids."
                                   : " and touches " + opening.touches + "."));
  }

  void load() {
    if (sound_.shelves.empty()) return;
    heading("Load");
    drafting::Table table;
    table.columns = {words("Part"),        figures("Span"),        figures("Load"),
                     figures("At first"),  figures("After years"), figures("Limit"),
                     figures("Can\nspan"), words("Verdict", 0)};
    bool unknown = false;
    for (const fabrication::ShelfSag& sag : sound_.shelves) {
      std::vector<Cell> cells{Cell::bold(row(sag.row).mark + "  " + row(sag.row).name),
                              text(sag.span), newtons(sag.load)};
      if (sag.known) {
        for (const double mm : {sag.sag, sag.later, sag.limit}) cells.emplace_back(small(mm));
        cells.emplace_back(text(sag.can_span));
        cells.emplace_back(sag.holds() ? "holds" : "sags");
      } else {
        unknown = true;
        for (int i = 0; i < 4; ++i) cells.emplace_back("");
        cells.emplace_back("not known");
      }
      table.rows.push_back({std::move(cells), {}, false});
    }
    put(table);
    if (!std::ranges::all_of(sound_.shelves, &fabrication::ShelfSag::rail))
      reckoned(shelves_reckoned(context_, stiffened()));
    if (std::ranges::any_of(sound_.shelves, &fabrication::ShelfSag::rail))
      say("Rails on edge under something: 200 lbf at the middle, someone leaning or sitting there "
          "(own assumption), sag = P L³ / (48 E I), limit span / 240 (building codes, from "
          "memory).");
    if (unknown) say("Not known: neither the species nor the stiffness of that stock is given.");
  }

  // What is joined along shelves; whether there is anything.
  bool stiffened() {
    bool any = false;
    for (const fabrication::ShelfSag& sag : sound_.shelves) {
      const std::string& mark = row(sag.row).mark;
      any = any || !sag.joined.empty();
      if (!sag.joined.empty() && sag.edges.size() == 2)
        say(mark + " goes down with " + joined(sag.joined) + ": at first " +
            small(sag.edges[0].sag) + " at its " + sag.edges[0].name + ", " +
            small(sag.edges[1].sag) + " at its " + sag.edges[1].name + ".");
      if (!sag.uncounted.empty())
        say(joined(sag.uncounted) + ", joined along " + mark +
            ", does not count: how stiff its stock is is not given.");
    }
    return any;
  }

  void balance() {
    if (sound_.balances.empty()) return;
    heading("Weight and balance");
    const Balance& whole = sound_.balances.front();
    say("It weighs " + kilograms(whole.mass) + ", empty and without hardware" +
        (whole.mass > 25 ? ": lift it with two at least." : "."));
    drafting::Table table;
    table.columns = {words("Stands"), words("Falls"), figures("Tipped by"),
                     figures("Push at the top")};
    for (const Balance& each : sound_.balances) {
      const Vec3 from = each.centre - each.low;
      const std::string state = each.loaded ? "Open, full" : each.open ? "Open" : "Shut";
      say("Centre of mass, " +
          std::string(each.loaded ? "open and full: "
                      : each.open ? "open: "
                                  : "shut: ") +
          text(from.x) + " from the left, " + text(from.y) + " from the front, " + text(from.z) +
          " up.");
      for (const fabrication::TippingEdge& edge : each.edges)
        table.rows.push_back({{Cell::bold(state), edge.way,
                               degrees_text(Angle{edge.angle}.degrees(), 1), newtons(edge.force)},
                              {},
                              each.open && &edge == &each.edges.front()});
    }
    if (table.rows.empty()) {
      say("It hangs: nothing to tip. Its fixings carry its weight and what is put in it: into "
          "studs or sound masonry, of a kind that their maker rates for it; local codes come "
          "before this page, and where they ask for it someone licensed designs them.");
      return;
    }
    put(table);
    say("The centre of mass from the solids and the densities of their stocks. It falls by itself "
        "when it is tipped until its centre is over the edge of its feet; the push is level, at "
        "the top, when it begins to tip." +
        pulled_out() +
        " These are figures, no test: where a standard or local rules ask for one, have it "
        "tested.");
    full_drawers();
  }

  std::string pulled_out() const {
    const Balance* worst = nullptr;
    for (const Balance& each : sound_.balances)
      if (each.open && each.pulled > 1 && (worst == nullptr || each.hangs < worst->hangs))
        worst = &each;
    if (worst == nullptr) return {};
    return std::string(worst->loaded ? " Open and full" : " Open") + ", it stands out " +
           context_.kit.figures.with_unit(worst->pulled) + " past its front feet, and " +
           (worst->hangs > 0 ? kilograms(worst->hangs) + " on the foremost edge tip it."
                             : "it falls by itself.") +
           " Anchor it to the wall's studs, heavy things low, and do not open several drawers at "
           "once.";
  }

  void full_drawers() {
    if (sound_.loads.empty()) return;
    std::vector<std::string> texts;
    for (const fabrication::DrawerLoad& load : sound_.loads)
      texts.push_back(
          load.name + " " + plain_number(load.volume * 1e-6, 1) + " dm³" +
          (inch() ? " (" + plain_number(load.volume / std::pow(304.8, 3), 2) + " cu ft)" : "") +
          ", " + kilograms(load.mass));
    say("Full drawers: " + joined(texts, "; ") +
        ". Their room from the bottom to 1/8 in under what is over them (16 CFR 1261), filled "
        "with " +
        plain_number(*context_.plan.project->room.drawer_load, 0) +
        " kg on a cubic metre; clothes weigh 136, that is 8.5 lb on a cubic foot (ASTM F2057-23, "
        "from memory).");
  }

  const Context& context_;
  const Soundness& sound_;
  double width_;
  Story story_;
};

}  // namespace

Story soundness_story(const Context& context, double width) {
  if (context.plan.soundness.balances.empty()) return {};
  return Page(context, width).story();
}

}  // namespace splay::sheets
