#include "reading/tokens.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "base/diagnostic.h"
#include "base/quantity.h"
#include "reading/marks.h"

namespace splay::reading {

namespace {

struct UnitWord {
  std::string_view word;
  Kind kind;
  double value;
};
constexpr double degree = Angle::degrees(1).rad;
constexpr std::array<UnitWord, 15> units{{{"in", length_kind, 25.4},
                                          {"inch", length_kind, 25.4},
                                          {"inches", length_kind, 25.4},
                                          {"ft", length_kind, 12 * 25.4},
                                          {"foot", length_kind, 12 * 25.4},
                                          {"feet", length_kind, 12 * 25.4},
                                          {"mm", length_kind, 1},
                                          {"cm", length_kind, 10},
                                          {"m", length_kind, 1000},
                                          {"deg", angle_kind, degree},
                                          {"degree", angle_kind, degree},
                                          {"degrees", angle_kind, degree},
                                          {"times", plain_kind, 1},
                                          {"piece", plain_kind, 1},
                                          {"pieces", plain_kind, 1}}};
constexpr double foot = 12 * 25.4;

const UnitWord* unit_of(std::string_view word) {
  const auto found = std::find_if(units.begin(), units.end(),
                                  [&](const UnitWord& unit) { return unit.word == word; });
  return found == units.end() ? nullptr : &*found;
}

class Assembler {
 public:
  explicit Assembler(std::string_view text) : text_(text), marks_(marks_of(text)) {}

  std::vector<Token> tokens() {
    std::vector<Token> out;
    while (here().type != Mark::Type::end) {
      if (starts_number()) {
        out.push_back(quantity());
      } else {
        out.push_back(other());
      }
    }
    Token end;
    end.at = text_.size();
    out.push_back(end);
    return out;
  }

 private:
  // Part of a quantity: a number with where it ends; `fraction` when a slash joined two numbers.
  struct Number {
    double value = 0;
    std::size_t at = 0;
    std::size_t end = 0;
    bool fraction = false;
  };

  const Mark& here(std::size_t ahead = 0) const {
    return marks_[std::min(next_ + ahead, marks_.size() - 1)];
  }
  bool symbol(char c, std::size_t ahead = 0) const {
    return here(ahead).type == Mark::Type::symbol && here(ahead).symbol == c;
  }
  bool starts_number() const { return here().type == Mark::Type::digits || symbol('v'); }
  bool joined(std::size_t ahead) const { return here(ahead).end() == here(ahead + 1).at; }

  bool fraction_ahead(std::size_t ahead) const {
    return here(ahead).type == Mark::Type::digits && here(ahead).whole && symbol('/', ahead + 1) &&
           here(ahead + 2).type == Mark::Type::digits && here(ahead + 2).whole && joined(ahead) &&
           joined(ahead + 1);
  }

  Number fraction() {
    const Mark over = here();
    const Mark under = here(2);
    next_ += 3;
    if (under.value == 0)
      throw Trouble{over.at, under.end() - over.at, "zero-division", "a fraction over nothing", "",
                    ""};
    if (symbol('/') || (over.at > 0 && divided_before(over.at)))
      throw Trouble{over.at,
                    under.end() - over.at,
                    "ambiguous-fraction",
                    "a division next to a fraction can be read two ways",
                    "",
                    "put parentheses round what belongs together"};
    return {over.value / under.value, over.at, under.end(), true};
  }

  bool divided_before(std::size_t at) const {
    const std::size_t last = text_.find_last_not_of(" \t", at - 1);
    return last != std::string_view::npos && text_[last] == '/';
  }

  Number number() {
    if (symbol('v')) {
      const Mark mark = here();
      ++next_;
      return {mark.value, mark.at, mark.end(), true};
    }
    if (fraction_ahead(0)) return fraction();
    const Mark whole = here();
    ++next_;
    Number result{whole.value, whole.at, whole.end(), false};
    if (!whole.whole) return result;
    if (symbol('v') || fraction_ahead(0)) {
      const Number part = symbol('v') ? number() : mixed_part(whole);
      return {whole.value + part.value, whole.at, part.end, true};
    }
    refuse_dash(whole);
    return result;
  }

  Number mixed_part(const Mark& whole) {
    const Number part = fraction();
    if (part.value >= 1)
      throw Trouble{whole.at,
                    part.end - whole.at,
                    "bad-expression",
                    "a whole number is followed by a fraction that is not less than one",
                    "a mixed number: 23 1/4",
                    ""};
    return part;
  }

  // 23-1/4 is a mixed number to one shop and a subtraction to another.
  void refuse_dash(const Mark& whole) const {
    if (!symbol('-') || !fraction_ahead(1) || here().at != whole.end() || !joined(0)) return;
    if (here(1).value >= here(3).value) return;
    const std::string number(whole.text);
    const std::string part(text_.substr(here(1).at, here(3).end() - here(1).at));
    throw Trouble{whole.at,
                  here(3).end() - whole.at,
                  "ambiguous-dash",
                  "\"" + number + "-" + part + "\" can be read as " + number + " and " + part +
                      " or as " + number + " less " + part,
                  "\"" + number + " " + part + "\" or \"" + number + " - " + part + "\"",
                  ""};
  }

  Token quantity() {
    const Number first = number();
    const bool comma = symbol(',') && here(1).type == Mark::Type::digits;
    if (comma && depth_ == 0 && joined(0) && first.end == here().at)
      throw Trouble{first.at,        here(1).end() - first.at,
                    "decimal-comma", "a number with a decimal comma",
                    "a point: 23.5", ""};
    const Mark mark = here();
    if (mark.type == Mark::Type::word) return with_word(first, mark);
    if (mark.type != Mark::Type::symbol) return token(first.at, first.end, first.value, bare_kind);
    switch (mark.symbol) {
      case 'f':
        ++next_;
        return feet(first, mark.end());
      case 'i':
        ++next_;
        return token(first.at, mark.end(), first.value * Length::mm_per_inch, length_kind);
      case 'd':
        ++next_;
        return token(first.at, mark.end(), first.value * degree, angle_kind);
      case '%':
        ++next_;
        return token(first.at, mark.end(), std::atan(first.value / 100), angle_kind);
      default:
        return token(first.at, first.end, first.value, bare_kind);
    }
  }

  Token with_word(const Number& first, const Mark& mark) {
    const UnitWord* unit = unit_of(mark.text);
    if (unit == nullptr) return token(first.at, first.end, first.value, bare_kind);
    ++next_;
    if (mark.text == "in" && starts_number()) return slope(first);
    if (unit->value == foot) return feet(first, mark.end());
    return token(first.at, mark.end(), first.value * unit->value, unit->kind);
  }

  Token slope(const Number& rise) {
    const Number run = number();
    if (run.value == 0)
      throw Trouble{rise.at,
                    run.end - rise.at,
                    "zero-division",
                    "a slope over no run",
                    "",
                    "write a right angle as 90 deg"};
    return token(rise.at, run.end, std::atan2(rise.value, run.value), angle_kind);
  }

  // The inches that may follow feet: 2 ft 6 1/2 in.
  Token feet(const Number& first, std::size_t end) {
    const double mm = first.value * foot;
    const std::size_t back = next_;
    if (!starts_number()) return token(first.at, end, mm, length_kind);
    const Number rest = number();
    const UnitWord* unit = here().type == Mark::Type::word ? unit_of(here().text) : nullptr;
    const bool inch = symbol('i') || (unit != nullptr && unit->value == Length::mm_per_inch);
    if (!inch) {
      next_ = back;
      return token(first.at, end, mm, length_kind);
    }
    const std::size_t last = here().end();
    ++next_;
    return token(first.at, last, mm + rest.value * Length::mm_per_inch, length_kind);
  }

  Token other() {
    const Mark mark = here();
    ++next_;
    Token out;
    out.at = mark.at;
    out.bytes = mark.bytes;
    if (mark.type == Mark::Type::word) {
      out.type = Token::Type::name;
      out.text = mark.text;
      return out;
    }
    constexpr std::string_view arithmetic = "+-*/(),";
    if (arithmetic.find(mark.symbol) == std::string_view::npos)
      throw Trouble{mark.at,
                    mark.bytes,
                    "bad-expression",
                    "\"" + std::string(text_.substr(mark.at, mark.bytes)) + "\" follows no number",
                    "a number before its unit",
                    ""};
    depth_ += mark.symbol == '(' ? 1 : mark.symbol == ')' ? -1 : 0;
    out.type = Token::Type::symbol;
    out.symbol = mark.symbol;
    return out;
  }

  static Token token(std::size_t at, std::size_t end, double value, Kind kind) {
    Token out;
    out.type = Token::Type::number;
    out.at = at;
    out.bytes = end - at;
    out.amount = {value, kind};
    return out;
  }

  std::string_view text_;
  std::vector<Mark> marks_;
  std::size_t next_ = 0;
  int depth_ = 0;
};

}  // namespace

std::string_view kind_name(Kind kind) {
  if (kind == length_kind) return "a length";
  if (kind == angle_kind) return "an angle";
  if (kind.bare) return "a number without a unit";
  if (kind == plain_kind) return "a plain number";
  if (kind == Kind{2, 0, false}) return "an area";
  return "a mixture of lengths and angles";
}

std::vector<Token> tokens_of(std::string_view text) {
  if (text.size() > longest_text)
    throw Trouble{0,
                  text.size(),
                  "expression-too-long",
                  "the text has " + std::to_string(text.size()) + " bytes",
                  "at most " + std::to_string(longest_text),
                  "name its parts in [sizes]"};
  return Assembler(text).tokens();
}

bool is_unit(std::string_view word) { return unit_of(word) != nullptr; }

bool is_name(std::string_view word) {
  const auto letter = [](char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); };
  const auto more = [&](char c) { return letter(c) || (c >= '0' && c <= '9') || c == '_'; };
  return !word.empty() && letter(word.front()) && std::all_of(word.begin(), word.end(), more);
}

}  // namespace splay::reading
