#include "writers/report_hold.h"

#include <nlohmann/json.hpp>

#include "fabrication/finish.h"
#include "fabrication/hardware.h"
#include "writers/json_words.h"

namespace splay::writers {

using Json = nlohmann::ordered_json;
using fabrication::Plan;

Json report_hardware(const Plan& plan) {
  const fabrication::HardwareList all = fabrication::list_hardware(plan);
  Json list = Json::array(), bands = Json::array();
  for (const fabrication::HardwareLine& line : all.lines) {
    list.push_back({{"what", line.what},
                    {"size", line.size},
                    {"count", line.count},
                    {"spare", line.spare},
                    {"on", line.on},
                    {"counted", line.why}});
    if (line.priced) list.back()["pack"] = {{"price", line.price}, {"of", line.pack}};
  }
  Json fastenings = Json::array();
  for (const fabrication::TopFastening& each : fabrication::top_fastenings(plan))
    fastenings.push_back({{"rail", plan.mark_of(each.rail)},
                          {"top", plan.mark_of(each.top)},
                          {"kind", each.kind},
                          {"count", each.count},
                          {"along_rail", each.along_rail},
                          {"shrinks", each.shrinks},
                          {"swells", each.swells},
                          {"slot", each.slot},
                          {"needs", each.needs},
                          {"off_rail", each.set_back}});
  for (const fabrication::EdgeBand& band : all.bands)
    bands.push_back({{"stock", band.stock}, {"length", band.length}, {"strips", band.strips}});
  return {{"list", list},
          {"edge_band", bands},
          {"fastenings", fastenings},
          {"glue", {{"area_mm2", all.glue_area}, {"mass_kg", all.glue_kg}}}};
}

Json report_finish(const Plan& plan) {
  Json list = Json::array();
  for (const fabrication::FinishJob& job : fabrication::plan_finish(plan)) {
    Json parts = Json::array(), before = Json::array();
    for (const int part : job.parts)
      parts.push_back(plan.assembly.parts[static_cast<std::size_t>(part)].name);
    for (const int part : job.before)
      before.push_back(plan.assembly.parts[static_cast<std::size_t>(part)].name);
    list.push_back({{"name", job.finish->name},
                    {"coats", *job.finish->coats},
                    {"parts", parts},
                    {"before_assembly", before},
                    {"area_mm2", job.area},
                    {"litres", job.litres}});
  }
  return list;
}

namespace {

Json balances(const Plan& plan) {
  Json list = Json::array();
  for (const fabrication::Balance& balance : plan.soundness.balances) {
    Json edges = Json::array();
    for (const fabrication::TippingEdge& edge : balance.edges)
      edges.push_back({{"way", edge.way},
                       {"reach", edge.reach},
                       {"angle_deg", Angle{edge.angle}.degrees()},
                       {"force_n", edge.force}});
    list.push_back({{"open", balance.open},
                    {"loaded", balance.loaded},
                    {"mass_kg", balance.mass},
                    {"centre", point(balance.centre)},
                    {"low", point(balance.low)},
                    {"high", point(balance.high)},
                    {"pulled_out", balance.pulled},
                    {"hanging_kg", balance.hangs},
                    {"edges", edges}});
  }
  return list;
}

Json passages(const std::vector<fabrication::Passage>& all) {
  Json ways = Json::array();
  for (const fabrication::Passage& passage : all)
    ways.push_back({{"name", passage.name},
                    {"across", passage.across},
                    {"up", passage.up},
                    {"along", passage.along},
                    {"passes", passage.passes}});
  return ways;
}

Json loads(const Plan& plan) {
  Json list = Json::array();
  for (const fabrication::DrawerLoad& load : plan.soundness.loads)
    list.push_back({{"name", load.name}, {"volume_mm3", load.volume}, {"mass_kg", load.mass}});
  return list;
}

// Null where the piece passes whole.
Json knock_down(const Plan& plan) {
  const fabrication::KnockDown& apart = plan.soundness.knock_down;
  if (apart.pieces.empty() && apart.too_large.empty()) return nullptr;
  Json joints = Json::array(), pieces = Json::array(), too_large = Json::array();
  for (const fabrication::DryJoint& dry : apart.joints)
    joints.push_back({{"name", plan.assembly.joints[static_cast<std::size_t>(dry.joint)].name},
                      {"held_by", dry.how}});
  for (const fabrication::SubAssembly& piece : apart.pieces) {
    Json parts = Json::array();
    for (const int part : piece.parts)
      parts.push_back(plan.assembly.parts[static_cast<std::size_t>(part)].name);
    pieces.push_back({{"parts", parts},
                      {"size", point(piece.size)},
                      {"mass_kg", piece.mass},
                      {"turned_up", piece.turned_up},
                      {"ways", passages(piece.passages)}});
  }
  for (const int part : apart.too_large) too_large.push_back(plan.mark_of(part));
  return {{"dry_joints", joints}, {"sub_assemblies", pieces}, {"too_large", too_large}};
}

}  // namespace

Json report_soundness(const Plan& plan) {
  const fabrication::Soundness& sound = plan.soundness;
  const auto mark = [&](int row) { return plan.rows[static_cast<std::size_t>(row)].mark; };
  Json changes = Json::array(), shelves = Json::array(), plays = Json::array(),
       openings = Json::array(), slots = Json::array();
  for (const fabrication::WidthChange& change : sound.changes)
    changes.push_back({{"part", mark(change.row)},
                       {"width", change.width},
                       {"at_driest", change.least},
                       {"at_dampest", change.greatest},
                       {"held_by", change.held_by},
                       {"held_width", change.held_width},
                       {"stops", change.stops}});
  for (const fabrication::PinSlot& slot : sound.slots)
    slots.push_back({{"part", mark(slot.row)},
                     {"pin_in", slot.pin_in},
                     {"off_middle", slot.off},
                     {"pin", slot.pin},
                     {"length", slot.length},
                     {"needs", slot.needs},
                     {"enough", slot.enough()}});
  for (const fabrication::ShelfSag& sag : sound.shelves) {
    Json entry = {{"part", mark(sag.row)}, {"span", sag.span}, {"load_n", sag.load}};
    if (sag.known) {
      entry["sag"] = sag.sag;
      entry["later"] = sag.later;
      entry["limit"] = sag.limit;
      entry["holds"] = sag.holds();
      entry["can_span"] = sag.can_span;
      entry["joined"] = sag.joined;
    }
    shelves.push_back(std::move(entry));
  }
  for (const fabrication::Play& play : sound.plays)
    plays.push_back({{"name", play.name},
                     {"way", play.way},
                     {"gaps", play.gaps},
                     {"swells", play.swells},
                     {"cuts", play.cuts},
                     {"enough", play.enough()}});
  for (const fabrication::Opening& opening : sound.openings)
    openings.push_back({{"name", opening.name},
                        {"travel", opening.travel},
                        {"opens", opening.opens},
                        {"touches", opening.touches}});
  return {{"moisture_percent",
           {{"made", sound.made}, {"driest", sound.driest}, {"dampest", sound.dampest}}},
          {"movement", changes},
          {"play", plays},
          {"openings", openings},
          {"slots", slots},
          {"shelves", shelves},
          {"balance", balances(plan)},
          {"full_drawers", loads(plan)},
          {"ways", passages(sound.passages)},
          {"knock_down", knock_down(plan)},
          {"turned_up", sound.turned_up}};
}

}  // namespace splay::writers
