#include "sheets/symbols.h"

#include <algorithm>

namespace splay::sheets {

namespace {

using Verb = model::SymbolPath::Verb;

ink::Path path_of(const model::SymbolPath& path, Vec2 middle, double scale) {
  ink::Path drawn;
  for (const Verb verb : path.verbs)
    drawn.verbs.push_back(verb == Verb::move    ? ink::Path::Verb::move
                          : verb == Verb::line  ? ink::Path::Verb::line
                          : verb == Verb::curve ? ink::Path::Verb::curve
                                                : ink::Path::Verb::close);
  for (const Vec2 point : path.points)
    drawn.points.push_back({(point.x - middle.x) * scale, (middle.y - point.y) * scale});
  return drawn;
}

std::shared_ptr<const drafting::Symbol> symbol_of(const model::SymbolFile& file) {
  if (!file.symbol) return nullptr;
  const model::Symbol& symbol = *file.symbol;
  const double scale = 1 / std::max(symbol.size.x, symbol.size.y);
  const Vec2 middle = symbol.low + symbol.size * 0.5;
  auto drawn = std::make_shared<drafting::Symbol>();
  drawn->width = symbol.size.x * scale;
  drawn->height = symbol.size.y * scale;
  for (const model::SymbolShape& shape : symbol.shapes) {
    const ink::Path path = path_of(shape.path, middle, scale);
    if (shape.fill) drawn->items.emplace_back(ink::Fill{path, *shape.fill});
    if (shape.stroke)
      drawn->items.emplace_back(ink::Stroke{
          path, {shape.stroke->width * scale, ink::Dash::continuous, shape.stroke->grey}});
  }
  return drawn;
}

}  // namespace

drafting::Symbols symbols_of(const model::Symbols& symbols) {
  return {symbol_of(symbols.face_side), symbol_of(symbols.face_edge), symbol_of(symbols.triangle),
          symbol_of(symbols.shop)};
}

}  // namespace splay::sheets
