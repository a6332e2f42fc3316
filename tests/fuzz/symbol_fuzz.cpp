// Bytes to a sign: whatever they are, faults with places or a symbol, never both; what is drawn is
// finite and within the limits, and can be drawn.
#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <string_view>

#include "fuzz/target.h"
#include "ink/outline.h"
#include "reading/symbol_reader.h"
#include "sheets/symbols.h"

namespace {

using namespace splay;

void require(bool holds) {
  if (!holds) std::abort();
}

void judge(const model::Symbol& symbol) {
  using Verb = model::SymbolPath::Verb;
  require(symbol.size.x > 0 && symbol.size.y > 0 && !symbol.shapes.empty());
  require(symbol.shapes.size() <= reading::most_symbol_elements);
  const double side = std::max(symbol.size.x, symbol.size.y);
  const Vec2 high = symbol.low + symbol.size;
  std::size_t points = 0;
  for (const model::SymbolShape& shape : symbol.shapes) {
    require(shape.fill || shape.stroke);
    if (shape.stroke) require(shape.stroke->width > 0 && shape.stroke->width <= side);
    points += shape.path.points.size();
    require(!shape.path.verbs.empty() && shape.path.verbs.front() == Verb::move);
    std::size_t next = 0;
    for (const Verb verb : shape.path.verbs) {
      next += verb == Verb::close ? 0 : verb == Verb::curve ? 3 : 1;
      require(next <= shape.path.points.size());
      if (next == 0 || verb == Verb::close) continue;
      const Vec2 at = shape.path.points[next - 1];
      const double slack = 1e-5 * side;
      require(at.x >= symbol.low.x - slack && at.x <= high.x + slack);
      require(at.y >= symbol.low.y - slack && at.y <= high.y + slack);
    }
    require(next == shape.path.points.size());
    // Handles may stand outside; a curve that stays inside at sixteen places has none far off.
    for (const Vec2 p : shape.path.points)
      require(std::isfinite(p.x) && std::isfinite(p.y) && norm(p - symbol.low) <= 1000 * side);
  }
  require(points <= reading::most_symbol_points);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  reading::SymbolReading result = reading::read_symbol(text);
  require(result.symbol.has_value() == result.diagnostics.empty());
  for (const Diagnostic& fault : result.diagnostics)
    require(!describe(fault, "fuzz.svg", text).empty() && !fault.found.empty());
  if (!result.symbol) return 0;
  judge(*result.symbol);
  model::Symbols symbols;
  symbols.shop.symbol = std::make_shared<const model::Symbol>(std::move(*result.symbol));
  const drafting::Symbols drawn = sheets::symbols_of(symbols);
  for (const ink::Item& item : drawn.shop->items) require(ink::number_fault(item).empty());
  return 0;
}
