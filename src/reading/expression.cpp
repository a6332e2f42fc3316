#include "reading/expression.h"

#include <algorithm>
#include <cstdlib>
#include <vector>

#include "base/diagnostic.h"
#include "base/quantity.h"
#include "reading/functions.h"

namespace splay::reading {

namespace {

constexpr int deepest_parentheses = 32;
constexpr int highest_power = 4;

// A part of the text: its formula, what it counts and which bytes it is.
struct Piece {
  std::string formula;
  Kind kind;
  std::size_t at = 0;
  std::size_t end = 0;
};

class Translator {
 public:
  Translator(std::string_view text, const Sizes& sizes, Unit unit, Arithmetic& arithmetic)
      : text_(text), tokens_(tokens_of(text)), sizes_(sizes), unit_(unit), arithmetic_(arithmetic) {
    arithmetic_.clear();
  }

  Piece whole() {
    if (here().type == Token::Type::end)
      throw Trouble{0, text_.size(), "empty-text", "an empty text", "a size: 23 1/4", ""};
    Piece piece = sum();
    if (here().type != Token::Type::end) refuse_here();
    return piece;
  }

 private:
  const Token& here() const { return tokens_[next_]; }
  bool symbol(char c) const { return here().type == Token::Type::symbol && here().symbol == c; }
  std::string text_of(const Token& token) const {
    return std::string(text_.substr(token.at, token.bytes));
  }

  [[noreturn]] void fail(std::size_t at, std::size_t end, std::string code, std::string found,
                         std::string allowed, std::string hint) const {
    throw Trouble{
        at, end - at, std::move(code), std::move(found), std::move(allowed), std::move(hint)};
  }

  // Something stands where an operator or the end should.
  [[noreturn]] void refuse_here() const {
    const Token& token = here();
    const std::size_t end = token.at + token.bytes;
    if (token.type == Token::Type::symbol && token.symbol != '(')
      fail(token.at, end, "bad-expression", "\"" + text_of(token) + "\" is not expected here",
           "an operator or the end", "");
    const bool after_number = next_ > 0 && tokens_[next_ - 1].type == Token::Type::number;
    const bool known = token.type != Token::Type::name || sizes_.contains(token.text) ||
                       is_unit(token.text) || function_of(token.text) != nullptr;
    if (after_number && !known) refuse_unit(token);
    fail(token.at, end, "missing-operator", "no operator before \"" + text_of(token) + "\"",
         "+ - * /", "write 2*width, not 2 width");
  }

  [[noreturn]] void refuse_unit(const Token& token) const {
    constexpr std::string_view words = "in, ft, mm, cm, m; deg; times";
    const std::string_view near = nearest_word(
        token.text, {"inches", "inch", "foot", "feet", "degrees", "degree", "deg", "times"});
    fail(token.at, token.at + token.bytes, "unknown-unit",
         "\"" + text_of(token) + "\" is no unit that is known here", std::string(words),
         near.empty() ? "" : "did you mean \"" + std::string(near) + "\"?");
  }

  Piece sum() {
    Piece left = product();
    while (symbol('+') || symbol('-')) {
      const char sign = here().symbol;
      ++next_;
      Piece right = product();
      agree(left, right, sign == '+' ? "added to" : "taken from");
      left.formula = "(" + left.formula + sign + right.formula + ")";
      left.end = right.end;
    }
    return left;
  }

  Piece product() {
    Piece left = signed_primary();
    while (symbol('*') || symbol('/')) {
      const bool times = symbol('*');
      ++next_;
      Piece right = signed_primary();
      const int sign = times ? 1 : -1;
      left.kind = {left.kind.length + sign * right.kind.length,
                   left.kind.angle + sign * right.kind.angle, left.kind.bare && right.kind.bare};
      left.formula = times ? "(" + left.formula + "*" + right.formula + ")"
                           : "div(" + left.formula + "," + right.formula + "," + place(right) + ")";
      left.end = right.end;
      refuse_power(left);
    }
    return left;
  }

  void refuse_power(const Piece& piece) const {
    if (std::abs(piece.kind.length) > highest_power || std::abs(piece.kind.angle) > highest_power)
      fail(piece.at, piece.end, "wrong-kind", "too many sizes multiplied together",
           "a length, an angle or a plain number", "");
  }

  Piece signed_primary() {
    bool negative = false;
    const std::size_t at = here().at;
    while (symbol('+') || symbol('-')) {
      negative = negative != symbol('-');
      ++next_;
    }
    Piece piece = primary();
    if (negative) piece.formula = "neg(" + piece.formula + ")";
    piece.at = at;
    return piece;
  }

  Piece primary() {
    const Token token = here();
    const std::size_t end = token.at + token.bytes;
    if (token.type == Token::Type::number) {
      ++next_;
      return {arithmetic_.value(token.amount.value), token.amount.kind, token.at, end};
    }
    if (token.type == Token::Type::name) return named(token);
    if (!symbol('('))
      fail(token.at, std::max(end, token.at + 1), "bad-expression",
           token.type == Token::Type::end
               ? "the text stops where a number should follow"
               : "\"" + text_of(token) + "\" stands where a number should",
           "a number, a name of [sizes], a function or (", "");
    open(token);
    Piece piece = sum();
    piece.at = token.at;
    piece.end = close();
    return piece;
  }

  void open(const Token& token) {
    ++next_;
    if (++depth_ > deepest_parentheses)
      fail(token.at, token.at + 1, "bad-expression", "parentheses are nested too deep",
           std::to_string(deepest_parentheses) + " levels", "name the parts in [sizes]");
  }

  std::size_t close() {
    if (here().type == Token::Type::end)
      fail(here().at, here().at + 1, "bad-expression", "a parenthesis is not closed", ")", "");
    if (!symbol(')')) refuse_here();
    --depth_;
    return tokens_[next_++].at + 1;
  }

  Piece named(const Token& token) {
    ++next_;
    if (const Function* function = function_of(token.text)) return call(*function, token);
    const auto found = sizes_.find(token.text);
    if (found == sizes_.end()) refuse_name(token);
    if (!found->second.has_value()) {
      Trouble elsewhere{token.at, token.bytes, "", "", "", ""};
      elsewhere.told_elsewhere = true;
      throw elsewhere;
    }
    const Amount& amount = *found->second;
    return {arithmetic_.value(amount.value), amount.kind, token.at, token.at + token.bytes};
  }

  [[noreturn]] void refuse_name(const Token& token) const {
    constexpr std::size_t most_compared = 1000;
    std::vector<std::string_view> known;
    for (const Function& function : functions()) known.push_back(function.word);
    std::string allowed;
    for (const auto& [name, amount] : sizes_) {
      if (known.size() > most_compared) break;
      known.push_back(name);
      if (allowed.size() < 200) allowed += (allowed.empty() ? "" : ", ") + name;
    }
    const std::string_view near = nearest_word(token.text, known);
    std::string hint;
    if (!near.empty()) {
      hint = "did you mean \"" + std::string(near) + "\"?";
    } else if (is_unit(token.text)) {
      hint = "a unit follows a number";
    }
    fail(token.at, token.at + token.bytes, "unknown-name",
         "\"" + text_of(token) + "\" is no name of [sizes]",
         allowed.empty() ? "[sizes] has no names yet" : allowed, hint);
  }

  Piece call(const Function& function, const Token& token) {
    const std::string name(token.text);
    if (!symbol('('))
      fail(token.at, token.at + token.bytes, "bad-expression",
           "\"" + name + "\" is a function and has no parentheses", name + "(...)", "");
    open(here());
    std::vector<Piece> given{sum()};
    while (symbol(',')) {
      ++next_;
      given.push_back(sum());
    }
    const std::size_t end = close();
    const bool many = function.rule == Rule::choice;
    if (many ? given.size() < 2 : given.size() != 1)
      fail(token.at, end, "bad-expression",
           name + " has " + std::to_string(given.size()) + (given.size() == 1 ? " part" : " parts"),
           many ? "two or more" : "one", "");
    Piece result = many ? chosen(name, given) : applied(function, name, given.front());
    result.at = token.at;
    result.end = end;
    return result;
  }

  Piece chosen(const std::string& name, std::vector<Piece>& given) {
    Piece result = given.front();
    for (std::size_t i = 1; i < given.size(); ++i) {
      agree(result, given[i], "compared with");
      result.formula = name + "(" + result.formula + "," + given[i].formula + ")";
      result.end = given[i].end;
    }
    return result;
  }

  Piece applied(const Function& function, const std::string& name, Piece given) {
    if (function.rule == Rule::root) {
      if (given.kind.length % 2 != 0 || given.kind.angle % 2 != 0)
        fail(given.at, given.end, "wrong-kind",
             "the square root of " + std::string(kind_name(given.kind)), "an area or a number", "");
      given.kind = {given.kind.length / 2, given.kind.angle / 2, given.kind.bare};
    } else if (function.rule == Rule::from_angle) {
      need(given, angle_kind, name);
      given.kind = plain_kind;
    } else if (function.rule == Rule::to_angle) {
      need(given, plain_kind, name);
      given.kind = angle_kind;
    }
    const std::string blamed = function.partial ? "," + place(given) : "";
    given.formula = name + "(" + given.formula + blamed + ")";
    return given;
  }

  void need(Piece& piece, Kind wanted, const std::string& name) {
    if (piece.kind.bare) become(piece, wanted);
    if (piece.kind != wanted)
      fail(piece.at, piece.end, "wrong-kind", name + " of " + std::string(kind_name(piece.kind)),
           std::string(kind_name(wanted)), "");
  }

  // Two pieces that are added or compared; a bare number takes the other's kind.
  void agree(Piece& left, Piece& right, const std::string& what) {
    if (left.kind.bare && !right.kind.bare) become(left, right.kind);
    if (right.kind.bare && !left.kind.bare) become(right, left.kind);
    if (left.kind != right.kind)
      fail(left.at, right.end, "mixed-kinds",
           std::string(kind_name(right.kind)) + " is " + what + " " +
               std::string(kind_name(left.kind)),
           "two of the same kind", "");
  }

  void become(Piece& piece, Kind kind) {
    if (kind == length_kind || kind == angle_kind)
      piece.formula = "(" + piece.formula + "*" + arithmetic_.value(bare_to(kind, 1, unit_)) + ")";
    if (kind == length_kind || kind == angle_kind || kind == plain_kind) piece.kind = kind;
  }

  std::string place(const Piece& piece) { return arithmetic_.value(static_cast<double>(piece.at)); }

  std::string_view text_;
  std::vector<Token> tokens_;
  const Sizes& sizes_;
  Unit unit_;
  Arithmetic& arithmetic_;
  std::size_t next_ = 0;
  int depth_ = 0;
};

}  // namespace

double bare_to(Kind wanted, double value, Unit unit) {
  if (wanted == length_kind) return unit == Unit::inch ? value * Length::mm_per_inch : value;
  if (wanted == angle_kind) return Angle::degrees(value).rad;
  return value;
}

Amount Evaluator::evaluate(std::string_view text, const Sizes& sizes) {
  const Piece piece = Translator(text, sizes, unit_, arithmetic_).whole();
  return {arithmetic_.evaluate(piece.formula), piece.kind};
}

double Evaluator::evaluate_as(Kind wanted, std::string_view text, const Sizes& sizes) {
  const Amount amount = evaluate(text, sizes);
  if (amount.kind.bare) return bare_to(wanted, amount.value, unit_);
  if (amount.kind == wanted) return amount.value;
  std::string hint;
  if (wanted == length_kind && amount.kind == plain_kind)
    hint = "in [sizes] a number without a unit is a length; a plain one is written \"3 times\"";
  throw Trouble{0,
                text.size(),
                "wrong-kind",
                "this is " + std::string(kind_name(amount.kind)),
                std::string(kind_name(wanted)),
                hint};
}

}  // namespace splay::reading
