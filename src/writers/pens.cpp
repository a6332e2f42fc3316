#include "writers/pens.h"

#include <stdexcept>

#include "ink/outline.h"

namespace splay::writers {

std::vector<double> dash_lengths(const ink::Pen& pen) {
  constexpr double dash = 12, gap = 3, long_dash = 24, dot = 0.5;
  std::vector<double> lengths;
  switch (pen.dash) {
    case ink::Dash::continuous:
      return {};
    case ink::Dash::dashed:
      lengths = {dash, gap};
      break;
    case ink::Dash::chain:
      lengths = {long_dash, gap, dot, gap};
      break;
    case ink::Dash::double_chain:
      lengths = {long_dash, gap, dot, gap, dot, gap};
      break;
    case ink::Dash::dotted:
      lengths = {dot, gap};
      break;
  }
  for (double& length : lengths) length *= pen.width;
  return lengths;
}

void require_sound(const ink::Page& page) {
  constexpr double largest = 5000;  // mm; a PDF page may have 200 in (ISO 32000-1, from memory)
  const auto size = [](double mm) { return mm >= 1 && mm <= largest; };
  const auto refuse = [&](const std::string& why) {
    throw std::invalid_argument("page " + page.label + " can't be drawn: " + why);
  };
  if (!size(page.paper.width) || !size(page.paper.height)) refuse("the paper has no size");
  ink::walk(page.items, [&](const ink::Item& item) {
    const std::string why = ink::number_fault(item);
    if (!why.empty()) refuse(why);
  });
}

}  // namespace splay::writers
