// The way in: what passes where, how a piece that doesn't is taken apart, and what to measure on
// site before any wood is cut.
#include <algorithm>

#include "sheets/hold_stories.h"
#include "sheets/part_view_facts.h"
#include "sheets/piece_picture.h"

namespace splay::sheets {

namespace {

using drafting::Cell;
using drafting::Story;
using fabrication::KnockDown;
using fabrication::Passage;
using fabrication::SubAssembly;

std::string verdict(bool passes) { return passes ? "passes" : "does not pass"; }

drafting::Column by_hand(const char* head) { return {.head = head, .share = 1, .least = 26}; }

// Each mark once with its count, in the order of the cut list: "A, B (2), C-L".
std::string marks_in(const Context& context, const SubAssembly& piece) {
  std::vector<std::string> texts;
  for (const fabrication::PartRow* row : fabrication::rows_in_order(context.plan)) {
    const auto count = std::ranges::count_if(row->members, [&](int part) {
      return std::ranges::find(piece.parts, part) != piece.parts.end();
    });
    if (count == 0) continue;
    std::string text = row->mark;
    if (count > 1) text += " (" + std::to_string(count) + ")";
    texts.push_back(std::move(text));
  }
  return joined(texts);
}

drafting::Picture drawing_of(const Context& context, const SubAssembly& piece) {
  constexpr double width = 30, height = 20, air = 1.5;
  std::vector<Solid> solids;
  for (const int part : piece.parts)
    solids.push_back(context.plan.assembly.parts[static_cast<std::size_t>(part)].world);
  drafting::Picture picture{{}, width, height};
  draw_solids(context, solids, {{air, air - height}, {width - air, -air}}, picture.items);
  return picture;
}

Story pieces_table(const Context& context, const KnockDown& apart, double width) {
  drafting::Table table;
  table.columns = {figures("No"),
                   {.head = "As it stands", .share = 0},
                   words("Parts"),
                   words("Smallest box"),
                   figures(*context.job().units == Unit::inch ? "lb" : "kg"),
                   words("Verdict", 0)};
  int number = 0;
  for (const SubAssembly& piece : apart.pieces) {
    const bool passes = std::ranges::all_of(piece.passages, &Passage::passes);
    const double pounds = piece.mass / 0.45359237;
    table.rows.push_back(
        {{Cell::bold(std::to_string(++number)), Cell::drawn(drawing_of(context, piece)),
          marks_in(context, piece), size_words(context.kit, piece.size),
          plain_number(*context.job().units == Unit::inch ? pounds : piece.mass, 1),
          verdict(passes)},
         {},
         false});
  }
  return drafting::table(context.kit, table, width);
}

Story joints_table(const Context& context, const KnockDown& apart, double width) {
  drafting::Table table;
  table.columns = {words("Joint left dry"), words("Kind", 0), words("What holds it then")};
  for (const fabrication::DryJoint& dry : apart.joints) {
    const parts::Joint& joint = context.plan.assembly.joints[static_cast<std::size_t>(dry.joint)];
    table.rows.push_back({{Cell::bold(joint.name), joint.kind, dry.how}, {}, false});
  }
  return drafting::table(context.kit, table, width);
}

class Chapter {
 public:
  Chapter(const Context& context, double width)
      : context_(context), sound_(context.plan.soundness), width_(width) {}

  Story story() {
    ways();
    knock_down();
    on_site();
    return std::move(story_);
  }

 private:
  std::string text(double mm) const { return context_.kit.figures.text(mm); }
  void say(const std::string& paragraph) {
    story_.push_back(drafting::body_text(context_.kit, paragraph, width_));
    story_.back().space_after = 3;
  }
  void put(Story more) {
    drafting::add(story_, std::move(more));
    story_.back().space_after = 3;
  }

  void ways() {
    const fabrication::Balance& whole = sound_.balances.front();
    const Vec3 size = whole.high - whole.low;
    story_.push_back(drafting::heading(context_.kit, "The way in", width_));
    say("Overall " + text(size.x) + " wide, " + text(size.y) + " deep, " + text(size.z) +
        " high. To be turned up from lying it needs " +
        context_.kit.figures.with_unit(sound_.turned_up) + " of height, and room for the hands.");
    if (sound_.passages.empty()) return;
    drafting::Table table;
    table.columns = {words("Way"), figures("Takes\nacross"), figures("Takes\nup"), figures("Long"),
                     words("Verdict", 0)};
    for (const Passage& passage : sound_.passages)
      table.rows.push_back({{Cell::bold(passage.name), text(passage.across), text(passage.up),
                             text(passage.along), verdict(passage.passes)},
                            {},
                            false});
    put(drafting::table(context_.kit, table, width_));
  }

  void knock_down() {
    const KnockDown& apart = sound_.knock_down;
    if (!apart.found()) return;
    story_.push_back(
        drafting::heading(context_.kit, "To be taken apart: a break that passes", width_));
    say("Whole it does not go in. " +
        std::string(apart.joints.empty() ? "Nothing joins its "
                                         : "With the joints below left dry, what is glued makes ") +
        std::to_string(apart.pieces.size()) +
        " sub-assemblies; each passes every way given, and they go together on the spot along "
        "straight lines, as tried with the solids.");
    put(pieces_table(context_, apart, width_));
    if (!apart.joints.empty()) put(joints_table(context_, apart, width_));
    say("A proposal: fittings carry what glue would have carried, so choose their sizes by their "
        "maker's figures, drill for them before glueing up, put the whole together once in the "
        "shop and mark both sides of every dry joint.");
  }

  // What the figures above rest on. Common practice, no source.
  void on_site() {
    const fabrication::Balance& whole = sound_.balances.front();
    const Vec3 size = whole.high - whole.low;
    const model::Room& room = context_.plan.project->room;
    const bool stands = *room.standing == model::Standing::on_the_floor;
    drafting::Table table;
    table.columns = {words("Measure on site"), figures("As given,\nor needs"), by_hand("Measured")};
    const auto row = [&](const std::string& what, const std::string& figure) {
      table.rows.push_back({{what, figure, ""}, {}, false});
    };
    for (std::size_t i = 0; i < room.ways.size(); ++i) {
      const model::Way& way = room.ways[i];
      row(way.name + ", clear width", text(way.width->mm));
      row(way.name + ", clear height", text(way.height->mm));
      if (way.turns_into.given) row(way.name + ", width it turns into", text(way.turns_into->mm));
    }
    if (room.ways.empty()) row("Narrowest door, stairs or landing, clear width and height", "");
    row("Ceiling", text(room.ceiling.given ? room.ceiling->mm : sound_.turned_up));
    row("Width of its place: below, in the middle, above", text(size.x));
    row("Depth of its place", text(size.y));
    row("Height of its place: left, right", text(size.z));
    if (stands) row("Floor out of level over its width, over its depth", "");
    row("Wall out of plumb over its height", "");
    if (stands) row("Skirting: height, thickness", "");
    row(stands ? "Studs or sound wall for an anchor" : "Studs or sound wall for its fixings", "");
    story_.push_back(drafting::heading(context_.kit, "Measure on site before cutting", width_));
    put(drafting::table(context_.kit, table, width_));
  }

  const Context& context_;
  const fabrication::Soundness& sound_;
  double width_;
  Story story_;
};

}  // namespace

Story way_story(const Context& context, double width) {
  if (context.plan.soundness.balances.empty()) return {};
  return Chapter(context, width).story();
}

}  // namespace splay::sheets
