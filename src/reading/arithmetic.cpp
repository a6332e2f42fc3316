#include "reading/arithmetic.h"

#include <muParserBase.h>

#include <cmath>

#include "reading/tokens.h"

namespace splay::reading {

namespace {

[[noreturn]] void blame(double at, std::string code, std::string found, std::string allowed) {
  throw Trouble{static_cast<std::size_t>(at), 1, std::move(code), std::move(found),
                std::move(allowed),           ""};
}

std::string name_of(std::size_t value) {
  std::string name = "v";
  name += std::to_string(value);
  return name;
}

double negative(double a) { return -a; }
double least(double a, double b) { return a < b ? a : b; }
double greatest(double a, double b) { return a > b ? a : b; }
double absolute(double a) { return std::abs(a); }
double sine(double a) { return std::sin(a); }
double cosine(double a) { return std::cos(a); }
double arc_tangent(double a) { return std::atan(a); }

double quotient(double a, double b, double at) {
  if (b == 0) blame(at, "zero-division", "a division by zero", "a divisor that is not zero");
  return a / b;
}

double root(double a, double at) {
  if (a < 0) blame(at, "no-such-value", "the square root of a negative number", "zero or more");
  return std::sqrt(a);
}

double tangent(double a, double at) {
  constexpr double right_angle_slack = 1e-12;
  if (std::abs(std::cos(a)) < right_angle_slack)
    blame(at, "no-such-value", "the tangent of a right angle", "an angle that is not upright");
  return std::tan(a);
}

double arc_sine(double a, double at) {
  if (std::abs(a) > 1) blame(at, "no-such-value", "the arc sine of more than 1", "-1 to 1");
  return std::asin(a);
}

double arc_cosine(double a, double at) {
  if (std::abs(a) > 1) blame(at, "no-such-value", "the arc cosine of more than 1", "-1 to 1");
  return std::acos(a);
}

}  // namespace

// The bare base class: it knows no functions, no constants and no way to read digits.
class Arithmetic::Parser : public mu::ParserBase {
 public:
  Parser() {
    Parser::InitCharSets();
    Parser::InitFun();
  }
  void InitCharSets() override {
    DefineNameChars("abcdefghijklmnopqrstuvwxyz0123456789");
    DefineOprtChars("+-*");
    DefineInfixOprtChars("+-*");
  }
  void InitFun() override {
    DefineFun("neg", negative);
    DefineFun("min", least);
    DefineFun("max", greatest);
    DefineFun("abs", absolute);
    DefineFun("sin", sine);
    DefineFun("cos", cosine);
    DefineFun("atan", arc_tangent);
    DefineFun("div", quotient);
    DefineFun("sqrt", root);
    DefineFun("tan", tangent);
    DefineFun("asin", arc_sine);
    DefineFun("acos", arc_cosine);
  }
  void InitConst() override {}
  void InitOprt() override {}
};

Arithmetic::Arithmetic() : parser_(std::make_unique<Parser>()) {}
Arithmetic::~Arithmetic() = default;

void Arithmetic::clear() { values_.clear(); }

std::string Arithmetic::value(double number) {
  values_.push_back(number);
  return name_of(values_.size());
}

double Arithmetic::evaluate(const std::string& formula) {
  if (formula == name_of(1)) return values_.front();  // the usual case: one quantity
  parser_->ClearVar();
  for (std::size_t i = 0; i < values_.size(); ++i) parser_->DefineVar(name_of(i + 1), &values_[i]);
  parser_->SetExpr(formula);
  const double result = parser_->Eval();
  if (!std::isfinite(result))
    throw Trouble{0,
                  std::string::npos,
                  "too-large",
                  "the result is too large for a number",
                  "a size that can be built",
                  ""};
  return result;
}

}  // namespace splay::reading
