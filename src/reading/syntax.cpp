#include "reading/syntax.h"

#include <algorithm>
#include <array>

#include "base/utf8.h"
#include "reading/in_order.h"
#include "reading/tokens.h"

namespace splay::reading {

namespace {

constexpr int most_lines_mended = 20;
constexpr std::size_t largest_mended = 1u << 18;  // bytes: every line mended costs a parse

std::string_view trimmed(std::string_view text) {
  const std::size_t first = text.find_first_not_of(" \t\r\n");
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(" \t\r\n") - first + 1);
}

// A line "key = value" whose value is on that line and is neither text, list nor table.
struct SimpleLine {
  std::string_view key;
  std::string_view value;
  std::size_t value_at = 0;  // byte in the line
};

std::optional<SimpleLine> simple_line(std::string_view line) {
  const std::size_t equals = line.find('=');
  if (equals == std::string_view::npos) return std::nullopt;
  SimpleLine found;
  found.key = trimmed(line.substr(0, equals));
  const auto in_key = [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_' ||
           c == '-' || c == '.';
  };
  if (found.key.empty() || !std::all_of(found.key.begin(), found.key.end(), in_key))
    return std::nullopt;
  const std::string_view rest = line.substr(equals + 1);
  found.value = trimmed(rest.substr(0, rest.find('#')));
  if (found.value.empty()) return std::nullopt;
  constexpr std::string_view openers = "\"'[{";
  if (openers.find(found.value.front()) != std::string_view::npos) return std::nullopt;
  found.value_at = static_cast<std::size_t>(found.value.data() - line.data());
  return found;
}

bool is_quantity(std::string_view text) {
  try {
    return tokens_of(text).size() > 1;
  } catch (const Trouble&) {
    return false;
  }
}

std::string quoted(std::string_view text) {
  const char quote = text.find('"') == std::string_view::npos ? '"' : '\'';
  return quote + std::string(text) + quote;
}

// A size, word or other text that only lacks its quotes: the commonest slip in such a file.
std::optional<Diagnostic> unquoted(const SourceText& source, int line) {
  const std::string_view row = source.line(line);
  const auto simple = simple_line(row);
  if (!simple) return std::nullopt;
  // A number or a date that went wrong is not helped by quotes.
  if (simple->value.find_first_not_of("0123456789+-._:") == std::string_view::npos)
    return std::nullopt;
  const bool letters = first_character(simple->value).code >= U'A';
  if (!is_quantity(simple->value) && !letters && simple->value.find(',') == std::string_view::npos)
    return std::nullopt;
  std::string wanted = quoted(simple->value);
  const bool truth = simple->value == "True" || simple->value == "False" ||
                     simple->value == "TRUE" || simple->value == "FALSE";
  if (truth) wanted = simple->value.front() == 'T' ? "true" : "false";
  const auto start = static_cast<std::size_t>(row.data() - source.text().data());
  return Diagnostic{source.at_offset(start + simple->value_at, character_count(simple->value)),
                    "unquoted-text",
                    "\"" + shown(simple->value) + "\" is neither a plain number nor in quotes", "",
                    "write " + std::string(simple->key) + " = " + shown(wanted)};
}

// What toml++ reports, by a part of its report, and what we say.
struct Wording {
  std::string_view report;
  std::string_view code, found, allowed, hint;
};
constexpr std::array<Wording, 19> wordings{{
    {"cannot redefine", "repeated-key", "this name is already used in its table", "each name once",
     "join the two, or give one another name"},
    {"cannot insert", "repeated-key", "this table is already complete where it was written inline",
     "each table in one place", "move the keys to where the table is first written"},
    {"while parsing array: encountered end", "unclosed-bracket", "a list is not closed", "]", ""},
    {"while parsing inline table", "bad-table", "a table in braces is not as it should be",
     "{ name = value, name = value } on one line", ""},
    {"table header", "bad-header", "a table header is not as it should be",
     "[job], [stock.NAME], alone on its line", ""},
    {"while parsing array", "bad-list", "a list is not as it should be", "[96, \"48 1/2\"]",
     "a fraction or a unit needs quotes"},
    {"expected '='", "missing-equals", "there is no = after the name", "name = value",
     "a name with spaces needs quotes"},
    {"while parsing string", "bad-quotes", "a text in quotes is not closed or not as it should be",
     "\"text\" on one line; \\\" for a quote mark in it", ""},
    {"literal string", "bad-quotes", "a text in single quotes is not closed", "'text' on one line",
     ""},
    {"leading zeroes", "bad-number", "a number starts with a zero", "a number without it",
     "where the zero matters, as in a job number, put it in quotes"},
    {"while parsing date", "bad-date", "there is no such day", "a date: 2026-03-02", ""},
    {"while parsing time", "bad-date", "there is no such time", "a date: 2026-03-02", ""},
    {"not representable", "bad-number", "the number is too large", "a size that can be built", ""},
    {"integer", "bad-number", "the number is not as it should be", "digits: 23",
     "a fraction or a unit needs quotes: \"23 1/4\""},
    {"floating", "bad-number", "the number is not as it should be",
     "digits on both sides of one point: 0.5", ""},
    {"control character", "bad-line", "there is a control character", "printable text", ""},
    {"expected value", "missing-value", "there is no value after the =", "a number or a text", ""},
    {"comment or whitespace", "bad-line", "something follows the value", "one value on a line",
     "text, a fraction or a unit needs quotes"},
    {"", "bad-line", "the line cannot be read", "a [table], name = value or # a remark", ""},
}};

Diagnostic worded(const toml::parse_error& error, const SourceText& source) {
  const std::string_view report = error.description();
  const auto wording =
      std::find_if(wordings.begin(), wordings.end(), [&](const Wording& candidate) {
        return report.find(candidate.report) != std::string_view::npos;
      });
  SourceSpan span = source.span(error.source());
  const auto last = static_cast<int>(character_count(source.line(span.line)));
  span.column = std::clamp(span.column, 1, std::max(last + 1, 1));
  return {span, std::string(wording->code), std::string(wording->found),
          std::string(wording->allowed), std::string(wording->hint)};
}

void blank_line(std::string& text, const SourceText& source, int line) {
  const std::string_view row = source.line(line);
  const auto start = static_cast<std::size_t>(row.data() - source.text().data());
  std::fill_n(text.begin() + static_cast<std::ptrdiff_t>(start), row.size(), ' ');
}

}  // namespace

std::optional<toml::table> parse(const SourceText& source, Faults& faults) {
  std::string text(source.text());
  for (int round = 0; round < most_lines_mended; ++round) {
    try {
      toml::table root = toml::parse(std::string_view(text));
      return round == 0 ? std::optional<toml::table>(std::move(root)) : std::nullopt;
    } catch (const toml::parse_error& error) {
      const auto line = static_cast<int>(error.source().begin.line);
      auto slip = unquoted(source, line);
      const bool simple = simple_line(source.line(line)).has_value();
      // After a line that is not simple, what follows may be wrong only because of it.
      if (simple || round == 0) faults.complain(slip ? *slip : worded(error, source));
      if (!simple || text.size() > largest_mended) return std::nullopt;
      blank_line(text, source, line);
    }
  }
  return std::nullopt;
}

}  // namespace splay::reading
