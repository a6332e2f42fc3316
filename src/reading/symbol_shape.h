// The shapes an SVG may draw with, and their own attributes.
#pragma once

#include <string>
#include <string_view>

#include "reading/in_order.h"
#include "reading/symbol_paint.h"
#include "reading/symbol_path.h"
#include "reading/symbol_scan.h"
#include "reading/symbol_xml.h"

namespace splay::reading {

// The attributes of one element as numbers; complains of what is none.
class ShapeReader {
 public:
  ShapeReader(const tinyxml2::XMLElement& element, SymbolXml& xml) : element_(element), xml_(xml) {}
  double number(const char* name, double when_left_out = 0) const;
  double size(const char* name) const;  // needed, over 0
  // Not below 0; nothing when it is left out.
  std::optional<double> radius(const char* name) const;
  std::vector<Vec2> points(std::size_t least) const;
  void path_data(SymbolPathMaker& path) const;

 private:
  std::optional<double> read(const char* name) const;
  void missing(const char* name, const char* allowed) const;

  const tinyxml2::XMLElement& element_;
  SymbolXml& xml_;
};

struct SvgShapeKind {
  std::string_view name, attributes;  // its own, with spaces between
  void (*make)(const ShapeReader& from, SymbolPathMaker& path);
  bool has_inside = true;  // can be filled
  bool free_form = false;  // may cross itself
};

const SvgShapeKind* svg_shape(std::string_view name);  // null for others
std::string svg_shape_names();

}  // namespace splay::reading
