#include "writers/report_schema.h"

#include <nlohmann/json.hpp>

namespace splay::writers {

namespace {

using Json = nlohmann::ordered_json;

const Json text = {{"type", "string"}};
const Json yes_or_no = {{"type", "boolean"}};
const Json number = {{"type", "number"}};
const Json whole = {{"type", "integer"}};
const Json count = {{"type", "integer"}, {"minimum", 0}};
const Json size = {{"type", "number"}, {"minimum", 0}};
const Json number_or_null = {{"type", Json::array({"number", "null"})}};

Json list(Json of) { return {{"type", "array"}, {"items", std::move(of)}}; }

Json words(std::initializer_list<const char*> all) {
  Json one = {{"enum", Json::array()}};
  for (const char* word : all) one["enum"].push_back(word);
  return one;
}

using Keys = std::vector<std::pair<const char*, Json>>;

// Every key of `needed` is there, those of `may` can be, no others.
Json object(const Keys& needed, const Keys& may = {}) {
  Json all = {{"type", "object"},
              {"additionalProperties", false},
              {"required", Json::array()},
              {"properties", Json::object()}};
  for (const auto& [key, value] : needed) {
    all["required"].push_back(key);
    all["properties"][key] = value;
  }
  for (const auto& [key, value] : may) all["properties"][key] = value;
  return all;
}

Json job() {
  return object({{"title", text},
                 {"number", text},
                 {"client", text},
                 {"revision", text},
                 {"date", {{"type", "string"}, {"pattern", "^([0-9]{4}-[0-9]{2}-[0-9]{2})?$"}}},
                 {"units", words({"in", "mm"})}});
}

Json parts() {
  const Json box = object({{"length", size}, {"width", size}, {"thickness", size}});
  const Json cut =
      object({{"name", text}, {"side", text}, {"face_angle_deg", size}, {"bevel_deg", size}},
             {{"long_point_face", text}, {"long_point_edge", text}});
  return list(object({{"mark", text},
                      {"name", text},
                      {"quantity", count},
                      {"hand", words({"none", "left", "right"})},
                      {"stock", text},
                      {"length", size},
                      {"width", size},
                      {"thickness", size},
                      {"blank", box},
                      {"long_point", size},
                      {"short_point", size},
                      {"volume_mm3", size},
                      {"mass_kg", size},
                      {"deviation_printed_mm", number},
                      {"cuts", list(cut)}}));
}

Json joints() {
  return list(object({{"name", text},
                      {"kind", text},
                      {"between", list(text)},
                      {"dihedral_deg", number},
                      {"made", words({"in its turn", "before the cuts", "before assembly"})},
                      {"gap_mm", number_or_null},
                      {"gap_printed_mm", number_or_null}}));
}

Json steps() {
  const Json point = {{"type", "array"}, {"items", number}, {"minItems", 2}, {"maxItems", 2}};
  const Json line = object({{"from_mm", point}, {"to_mm", point}, {"lean_deg", number}});
  const Json depth = object({{"at_mm", point}, {"depth_mm", number}});
  const Keys setting = {{"tilt_deg", number},
                        {"gauge_deg", number},
                        {"stop_mm", number},
                        {"height_mm", number},
                        {"width_mm", number}};
  const Keys seldom = {{"jig_offset_mm", number},
                       {"marks_mm", list(point)},
                       {"lines", list(line)},
                       {"depths", list(depth)},
                       {"diameter_mm", number}};
  const Json side = words({"left", "right"});
  Keys needed = {{"id", text},
                 {"part", text},
                 {"operation", text},
                 {"machine", text},
                 {"tool", text},
                 {"guide", text},
                 {"position", text},
                 {"face_on_table", text},
                 {"against", text},
                 {"leads", text},
                 {"reference", side},
                 {"waste", side},
                 {"leans", side},
                 {"turned", text},
                 {"printed", object(setting, seldom)},
                 {"group", whole},
                 {"proven", yes_or_no},
                 {"deviation_mm", number},
                 {"deviation_printed_mm", number},
                 {"volume_difference_mm3", number},
                 {"flags", list(text)}};
  needed.insert(needed.end(), setting.begin(), setting.end());
  Keys may = {{"same_as", text}, {"unproven_why", text}, {"remark", text}};
  may.insert(may.end(), seldom.begin(), seldom.end());
  return list(object(needed, may));
}

Json chains() {
  return list(object({{"name", text},
                      {"parts", list(text)},
                      {"cuts", count},
                      {"turn_per_tenth_deg", number},
                      {"gap_per_tenth_mm", number},
                      {"division_deg", number},
                      {"gap_per_division_mm", number},
                      {"gap_printed_mm", number},
                      {"allowed_mm", number},
                      {"tolerance_deg", number}}));
}

Json stock() {
  const Keys rect = {{"x", number}, {"y", number}, {"length", size}, {"width", size}};
  Keys left_over = rect, piece = rect;
  left_over.emplace_back("name", text);
  for (const char* key : {"glued_from", "resawn_into"}) piece.emplace_back(key, count);
  piece.emplace_back("part", text);
  piece.emplace_back("turned", yes_or_no);
  const Json cut = object({{"axis", words({"across", "along"})},
                           {"at", number},
                           {"from", number},
                           {"to", number},
                           {"trim", yes_or_no}});
  const Json layout = object({{"name", text},
                              {"count", count},
                              {"length", size},
                              {"width", size},
                              {"on_hand", yes_or_no},
                              {"pieces", list(object(piece))},
                              {"cuts", list(cut)},
                              {"off_cuts", list(object(left_over))},
                              {"defects", list(object(rect))}});
  const Json wood =
      object({{"finished", size}, {"rough", size}, {"planned", size}, {"billed", size}});
  return list(object({{"name", text},
                      {"kind", text},
                      {"material", text},
                      {"thickness", size},
                      {"pieces", count},
                      {"used_area_mm2", size},
                      {"length", size}},
                     {{"sheets", count},
                      {"boards", count},
                      {"bought", count},
                      {"waste_percent", number},
                      {"bound", whole},
                      {"bought_if_grain_free", whole},
                      {"layouts", list(layout)},
                      {"board_feet", wood},
                      {"cubic_metres", wood},
                      {"waste_factor_percent", number}}));
}

Json money() {
  const Json line = object({{"what", text}, {"reckoning", text}, {"amount", number}});
  Json sums = object({{"currency", text},
                      {"maker", list(line)},
                      {"cost", number},
                      {"quote", list(line)},
                      {"net", number},
                      {"tax", number},
                      {"total", number},
                      {"without_price", list(text)}});
  return {{"anyOf", Json::array({Json{{"type", "null"}}, std::move(sums)})}};
}

Json glue_up() {
  const Json names = list(text);
  const Json step =
      object({{"bring", names}, {"to", names}, {"way", list(number)}, {"joints", names}});
  const Json caul = object(
      {{"on", text}, {"angle_deg", size}, {"length", size}, {"width", size}, {"thick_edge", size}});
  const Json row = object(
      {{"how", words({"clamps", "band", "tape hinge", "screws", "hands"})}, {"joints", names}},
      {{"count", count},
       {"kind", text},
       {"force_each_n", size},
       {"force_n", size},
       {"enough", yes_or_no},
       {"from", text},
       {"reach", size},
       {"axis", list(number)},
       {"cauls", list(caul)},
       {"head_slides_n", size},
       {"joint_slides_n", size}});
  const Json check =
      object({{"measure", text}, {"within", size}}, {{"mm", size}, {"degrees", size}});
  const Json hidden = object({{"part", text}, {"side", text}, {"gap", size}, {"behind", text}});
  return list(object({{"stage", count},
                      {"after", list(count)},
                      {"parts", names},
                      {"joints", names},
                      {"glued", yes_or_no},
                      {"comes_apart", yes_or_no},
                      {"steps", list(step)},
                      {"spreading_minutes", size},
                      {"minutes", size},
                      {"open_minutes", size},
                      {"closed_minutes", size},
                      {"cure_minutes", size},
                      {"starts_at_minute", size},
                      {"clamps_off_at_minute", size},
                      {"clamps", list(row)},
                      {"checks", list(check)},
                      {"held_at_one_end", names},
                      {"finish_first", list(hidden)}}));
}

}  // namespace

std::string report_schema() {
  const Json findings = list(object({{"level", words({"stop", "caution", "note"})},
                                     {"code", text},
                                     {"about", list(text)},
                                     {"text", text},
                                     {"remedy", text}},
                                    {{"line", count}}));
  const Json checks = list(object({{"name", text}, {"sides", list(size)}, {"height", size}},
                                  {{"diagonals", list(size)}}));
  const Json pages = list(object({{"label", text}, {"title", text}, {"paper", text}}));
  // What holds and moves is described by its keys only: it grows with the checks.
  const Json any = {{"type", "object"}};
  const Json all = object({{"job", job()},
                           {"parts", parts()},
                           {"joints", joints()},
                           {"steps", steps()},
                           {"chains", chains()},
                           {"checks", checks},
                           {"stock", stock()},
                           {"money", money()},
                           {"hardware", any},
                           {"finish", list(any)},
                           {"soundness", any},
                           {"glue_up", glue_up()},
                           {"findings", findings},
                           {"pages", pages}});
  Json schema = {
      {"$schema", "https://json-schema.org/draft/2020-12/schema"},
      {"title", "Report of a piece of furniture"},
      {"description",
       "What \"splaybook report\" writes. Lengths are millimetres, angles degrees, masses "
       "kilograms."}};
  schema.update(all);
  return schema.dump(2) + "\n";
}

}  // namespace splay::writers
