// The functions an expression may call, and what each does to units.
#pragma once

#include <span>
#include <string_view>

#include "reading/tokens.h"

namespace splay::reading {

enum class Rule {
  choice,      // two or more of one kind; gives that kind
  unchanged,   // gives the kind it takes
  root,        // halves the powers
  from_angle,  // takes an angle, gives a plain number
  to_angle     // takes a plain number, gives an angle
};

struct Function {
  std::string_view word;
  Rule rule;
  bool partial;  // has arguments without a value, so it is told its place to blame
};

std::span<const Function> functions();
const Function* function_of(std::string_view word);  // null when there is none

}  // namespace splay::reading
