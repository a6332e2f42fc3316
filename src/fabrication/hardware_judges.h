// The parts of judge_hardware(). Internal to src/fabrication.
#pragma once

namespace splay::fabrication {

struct Plan;

void judge_screws(Plan& plan);
void judge_fastenings(Plan& plan);

}  // namespace splay::fabrication
