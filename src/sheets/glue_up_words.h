// What the glue-up pages say. Internal to src/sheets.
#pragma once

#include <string>
#include <vector>

#include "sheets/sheet.h"

namespace splay::sheets {

std::string marks_words(const Context& context, const std::vector<int>& parts);  // "A, B-L"
// "B-L left panel"; more than one: their marks and what they are.
std::string parts_words(const Context& context, const std::vector<int>& parts);
std::string joints_words(const Context& context,
                         const std::vector<int>& joints);                         // kinds, dry ones
std::string joint_marks(const Context& context, const std::vector<int>& joints);  // "A to B-L"
// Of parts, without edging that is on a panel among them.
std::vector<int> but_edging(const Context& context, std::vector<int> parts);
// By what it adds and to what: "stand: left leg, right leg, to stage 1".
std::string stage_title(const Context& context, const fabrication::GlueStage& stage);
std::string time_words(const Context& context, const fabrication::GlueStage& stage);
std::string clamp_words(const fabrication::Clamping& row);
std::string caul_words(const Context& context, const fabrication::Clamping& row);
std::vector<std::string> stage_notes(const Context& context, const fabrication::GlueStage& stage);
std::string glue_words(const Context& context);
std::vector<std::string> dry_fit_lines(const Context& context);
std::vector<std::string> glue_cautions(const Context& context);
std::string force_text(const Context& context, double newtons);  // "96 lbf", "430 N"

}  // namespace splay::sheets
