// The arithmetic itself, done by muParser. Values go in as variables and never as digits, so that
// no locale has a say; only the operators and functions below exist.
#pragma once

#include <memory>
#include <string>
#include <vector>

namespace splay::reading {

// A formula in the parser's notation: + - *, neg(a), min(a,b), max(a,b), abs(a), and, with the
// place to blame as last argument: div(a,b,at), sqrt(a,at), sin(a), cos(a), tan(a,at), asin(a,at),
// acos(a,at), atan(a). Angles in radians.
class Arithmetic {
 public:
  Arithmetic();
  ~Arithmetic();
  Arithmetic(const Arithmetic&) = delete;
  Arithmetic& operator=(const Arithmetic&) = delete;

  void clear();                      // forgets all values
  std::string value(double number);  // the name a value has in formulas from now on

  // Throws Trouble: a division by zero, a root of a negative number, a result that isn't finite.
  double evaluate(const std::string& formula);

 private:
  class Parser;
  std::vector<double> values_;
  std::unique_ptr<Parser> parser_;
};

}  // namespace splay::reading
