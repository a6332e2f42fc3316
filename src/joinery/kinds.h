// Joints as an author names them: each finds by itself how two parts meet, shapes both and records
// what must close. Constructs use them too; a new joint is one file and one line in register.cpp.
#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "model/field.h"
#include "parts/builder.h"

namespace splay::joinery {

// The options of a joint are its fields. Parts come oversize: an end that meets a face reaches past
// it, an end in a mitre reaches past the corner, laps cross.
class JointKind : public model::Fields {
 public:
  // Shapes `host` (which keeps its face or runs through) and `guest` (which ends, enters or
  // crosses). Returns "" when done, else one sentence that says why the two can't be joined so;
  // then nothing was cut, and the builder knows that they stay apart.
  std::string make(parts::Builder& builder, int host, int guest) const;

 private:
  virtual std::string shape(parts::Builder& builder, int host, int guest) const = 0;
};

struct JointEntry {
  std::string_view word;
  std::string_view help;
  std::unique_ptr<JointKind> (*make)();
};
const std::vector<JointEntry>& registry();
const JointEntry* find_joint(std::string_view word);

}  // namespace splay::joinery
