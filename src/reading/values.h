// One value of the file as a number, text or date, or a fault.
#pragma once

#include <optional>

#include "model/field.h"
#include "reading/expression.h"
#include "reading/faults.h"
#include "reading/source_text.h"

namespace splay::reading {

// A number or text of any kind; a bare one becomes a length in the job's unit.
std::optional<Amount> read_amount(const toml::node& node, const SourceText& source,
                                  Evaluator& evaluator, const Sizes& sizes, Faults& faults);

// Everything a value needs to be read in its place.
class ValueReader {
 public:
  ValueReader(const SourceText& source, Evaluator& evaluator, const Sizes& sizes, Faults& faults)
      : source_(source), evaluator_(evaluator), sizes_(sizes), faults_(faults) {}

  // Lengths in mm, angles in radians; within the range.
  std::optional<double> quantity(const toml::node& node, std::string_view name, Kind wanted,
                                 model::Range range) const;
  std::optional<int> whole(const toml::node& node, std::string_view name, model::Range range) const;
  std::optional<std::string> text(const toml::node& node, std::string_view name) const;
  std::optional<model::Date> date(const toml::node& node, std::string_view name) const;
  std::optional<bool> flag(const toml::node& node, std::string_view name) const;

  SourceSpan span(const toml::node& node) const { return source_.span(node.source()); }
  const SourceText& source() const { return source_; }
  Faults& faults() const { return faults_; }
  void wrong_type(const toml::node& node, std::string_view name, std::string allowed,
                  std::string hint = "") const;

 private:
  bool in_range(const toml::node& node, std::string_view name, Kind wanted, double value,
                model::Range range) const;

  const SourceText& source_;
  Evaluator& evaluator_;
  const Sizes& sizes_;
  Faults& faults_;
};

// "more than 0 and at most 393.701 in", "from 2 to 128", "0 to 45 deg".
std::string range_text(model::Range range, Kind kind, Unit unit);

// 1 to `most` characters, none of them a control character; otherwise says what is wrong with it.
std::optional<Diagnostic> refuse_text(std::string_view text, std::string_view what,
                                      std::size_t most);

}  // namespace splay::reading
