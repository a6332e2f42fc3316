// What an author says of finishing: [finish.NAME].
#pragma once

#include <string>
#include <vector>

#include "model/field.h"

namespace splay::model {

// What it is made of decides which cautions stand beside it.
enum class FinishKind { oil, wax, shellac, varnish, lacquer, water_based, two_part, paint, soap };

struct Finish : Fields {
  std::string name;
  Given<FinishKind> kind{FinishKind::oil};
  Given<std::string> product;  // as its label names it
  Given<int> coats{2};
  Given<double> coverage{0.0};             // m2 a litre and coat, from its data sheet; 0: unknown
  Given<std::vector<std::string>> on;      // parts by name
  Given<std::vector<std::string>> stocks;  // or all parts of these stocks
  Given<std::vector<std::string>> before;  // parts finished before assembly
  Given<std::string> between;              // what is done between coats
  void fields(FieldVisitor& visit) override;
};

}  // namespace splay::model
