#include "reading/values.h"

#include <cmath>

#include "base/utf8.h"
#include "reading/in_order.h"

namespace splay::reading {

namespace {

constexpr std::size_t longest_line = 300;  // characters of a text

std::optional<double> number_of(const toml::node& node) {
  if (const auto* whole = node.as_integer()) return static_cast<double>(whole->get());
  if (const auto* real = node.as_floating_point()) return real->get();
  return std::nullopt;
}

void complain(const Trouble& trouble, const toml::node& node, const SourceText& source,
              Faults& faults) {
  if (trouble.told_elsewhere) return;
  faults.complain({source.inside(node, trouble.at, trouble.bytes), trouble.code, trouble.found,
                   trouble.allowed, trouble.hint});
}

Diagnostic not_finite(const toml::node& node, const SourceText& source) {
  return {source.span(node.source()), "not-finite", "this is not a finite number",
          "a number that can be measured", ""};
}

std::string amount_text(double value, Kind kind, Unit unit) {
  constexpr int places = 3;
  constexpr double longest_shown = 1e9;
  if (kind == length_kind && unit == Unit::inch) value /= Length::mm_per_inch;
  if (kind == angle_kind) value = Angle{value}.degrees();
  if (std::abs(value) > longest_shown) return value > 0 ? "over 1000000000" : "under -1000000000";
  return plain_number(value, places);
}

std::string_view unit_text(Kind kind, Unit unit) {
  if (kind == length_kind) return unit == Unit::inch ? " in" : " mm";
  return kind == angle_kind ? " deg" : "";
}

}  // namespace

std::optional<Amount> read_amount(const toml::node& node, const SourceText& source,
                                  Evaluator& evaluator, const Sizes& sizes, Faults& faults) {
  Amount amount;
  if (const auto number = number_of(node)) {
    amount = {*number, bare_kind};
  } else if (const auto* text = node.as_string()) {
    try {
      amount = evaluator.evaluate(text->get(), sizes);
    } catch (const Trouble& trouble) {
      complain(trouble, node, source, faults);
      return std::nullopt;
    }
  } else {
    faults.complain({source.span(node.source()), "wrong-type",
                     "a size is " + std::string(type_name(node)),
                     "a number, or a text such as \"23 1/4\" or \"width / 2\"", ""});
    return std::nullopt;
  }
  if (amount.kind.bare)
    amount = {bare_to(length_kind, amount.value, evaluator.unit()), length_kind};
  if (!std::isfinite(amount.value)) {
    faults.complain(not_finite(node, source));
    return std::nullopt;
  }
  if (amount.kind == length_kind || amount.kind == angle_kind || amount.kind == plain_kind)
    return amount;
  faults.complain({source.span(node.source()), "wrong-kind",
                   "this is " + std::string(kind_name(amount.kind)),
                   "a length, an angle or a plain number", ""});
  return std::nullopt;
}

void ValueReader::wrong_type(const toml::node& node, std::string_view name, std::string allowed,
                             std::string hint) const {
  faults_.complain({span(node), "wrong-type",
                    std::string(name) + " is " + std::string(type_name(node)), std::move(allowed),
                    std::move(hint)});
}

std::optional<double> ValueReader::quantity(const toml::node& node, std::string_view name,
                                            Kind wanted, model::Range range) const {
  double value = 0;
  if (const auto number = number_of(node)) {
    value = bare_to(wanted, *number, evaluator_.unit());
  } else if (const auto* text = node.as_string()) {
    try {
      value = evaluator_.evaluate_as(wanted, text->get(), sizes_);
    } catch (const Trouble& trouble) {
      complain(trouble, node, source_, faults_);
      return std::nullopt;
    }
  } else {
    wrong_type(node, name, std::string(kind_name(wanted)) + ", as a number or a text");
    return std::nullopt;
  }
  if (!std::isfinite(value)) {
    faults_.complain(not_finite(node, source_));
    return std::nullopt;
  }
  if (!in_range(node, name, wanted, value, range)) return std::nullopt;
  return value;
}

bool ValueReader::in_range(const toml::node& node, std::string_view name, Kind wanted, double value,
                           model::Range range) const {
  constexpr double slack = 1e-9;  // 45 deg computed twice need not be the same double
  const bool low = range.above_least ? value <= range.least : value < range.least - slack;
  if (!low && value <= range.most + slack) return true;
  const Unit unit = evaluator_.unit();
  const double in_other = unit == Unit::inch ? value / Length::mm_per_inch : value * 25.4;
  const bool other_fits = wanted == length_kind && in_other > range.least && in_other <= range.most;
  std::string hint;
  if (other_fits && number_of(node) && value > range.least)
    hint = unit == Unit::inch ? "the job is in inches; millimetres are written \"590 mm\""
                              : "the job is in millimetres; inches are written \"23 1/4 in\"";
  faults_.complain({span(node), "out-of-range",
                    std::string(name) + " is " + amount_text(value, wanted, unit) +
                        std::string(unit_text(wanted, unit)),
                    range_text(range, wanted, unit), hint});
  return false;
}

std::optional<int> ValueReader::whole(const toml::node& node, std::string_view name,
                                      model::Range range) const {
  const auto value = quantity(node, name, plain_kind, range);
  if (!value) return std::nullopt;
  if (std::abs(*value - std::round(*value)) > 1e-9) {
    faults_.complain({span(node), "not-whole", std::string(name) + " is " + plain_number(*value, 3),
                      "a whole number", ""});
    return std::nullopt;
  }
  return static_cast<int>(std::lround(*value));
}

std::optional<std::string> ValueReader::text(const toml::node& node, std::string_view name) const {
  const auto* text = node.as_string();
  if (text == nullptr) {
    wrong_type(node, name, "a text", "put it in quotes");
    return std::nullopt;
  }
  if (auto refusal = refuse_text(text->get(), name, longest_line)) {
    refusal->span = span(node);
    faults_.complain(std::move(*refusal));
    return std::nullopt;
  }
  return text->get();
}

std::optional<model::Date> ValueReader::date(const toml::node& node, std::string_view name) const {
  const auto* date = node.as_date();
  if (date == nullptr) {
    wrong_type(node, name, "a date: 2026-03-02", node.is_string() ? "take the quotes away" : "");
    return std::nullopt;
  }
  return model::Date{date->get().year, date->get().month, date->get().day};
}

std::optional<bool> ValueReader::flag(const toml::node& node, std::string_view name) const {
  if (const auto* flag = node.as_boolean()) return flag->get();
  wrong_type(node, name, "true or false", node.is_string() ? "take the quotes away" : "");
  return std::nullopt;
}

std::string range_text(model::Range range, Kind kind, Unit unit) {
  const std::string end = amount_text(range.most, kind, unit) + std::string(unit_text(kind, unit));
  if (range.above_least)
    return "more than " + amount_text(range.least, kind, unit) + ", at most " + end;
  return amount_text(range.least, kind, unit) + " to " + end;
}

std::optional<Diagnostic> refuse_text(std::string_view text, std::string_view what,
                                      std::size_t most) {
  const std::string name(what);
  if (text.find_first_not_of(" \t") == std::string_view::npos)
    return Diagnostic{{}, "empty-text", name + " is empty", "a text", ""};
  for (std::size_t at = 0; at < text.size();) {
    const Character c = first_character(text.substr(at));
    if (c.bytes == 0 || is_control(c.code))
      return Diagnostic{{},
                        "control-character",
                        name + " has a line break, tab or other character that cannot be printed",
                        "letters, digits, marks and spaces",
                        ""};
    at += c.bytes;
  }
  if (const std::size_t count = character_count(text); count > most)
    return Diagnostic{{},
                      "text-too-long",
                      name + " has " + std::to_string(count) + " characters",
                      "at most " + std::to_string(most),
                      ""};
  return std::nullopt;
}

}  // namespace splay::reading
