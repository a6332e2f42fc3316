#include "reading/symbol_reader.h"

#include <algorithm>
#include <cmath>

#include "reading/symbol_shape.h"
#include "reading/symbol_transform.h"
#include "reading/symbol_xml.h"

namespace splay::reading {

namespace {

using tinyxml2::XMLAttribute;
using tinyxml2::XMLElement;

// What stands around an element.
struct Around {
  SvgPaint paint;
  SvgMatrix matrix;
  int depth = 1;
};

bool is_one_of(std::string_view words, std::string_view word) {
  while (!words.empty()) {
    const std::size_t end = std::min(words.find(' '), words.size());
    if (words.substr(0, end) == word) return true;
    words.remove_prefix(std::min(end + 1, words.size()));
  }
  return false;
}

std::string listed(std::string_view words) {
  std::string list;
  for (const char c : words)
    if (c == ' ')
      list += ", ";
    else
      list += c;
  return list;
}

Vec2 on_curve(Vec2 p, Vec2 c1, Vec2 c2, Vec2 q, double t) {
  const double u = 1 - t;
  return p * (u * u * u) + c1 * (3 * u * u * t) + c2 * (3 * u * t * t) + q * (t * t * t);
}

class SymbolReader {
 public:
  SymbolReader(SymbolXml& xml, Faults& faults) : xml_(xml), faults_(faults) {}

  std::optional<model::Symbol> read() {
    const XMLElement& root = *xml_.root();
    if (std::string_view(root.Name()) != "svg") {
      xml_.complain(root.GetLineNum(), root.Name(), "not-svg", "the element " + shown(root.Name()),
                    "the one element svg", "is this an SVG file?");
      return std::nullopt;
    }
    Around around;
    read_root(root, around);
    if (faults_.none()) inside(root, around);
    if (faults_.none() && symbol_.shapes.empty())
      xml_.complain(root.GetLineNum(), "svg", "nothing-drawn", "nothing is filled or stroked",
                    "a path or a shape with a fill or a stroke", "");
    if (!faults_.none()) return std::nullopt;
    return std::move(symbol_);
  }

 private:
  void complain(const XMLAttribute& at, std::string code, std::string_view allowed,
                std::string hint = "") {
    xml_.complain(at.GetLineNum(), at.Name(), std::move(code),
                  std::string(at.Name()) + " is \"" + shown(at.Value()) + "\"",
                  std::string(allowed), std::move(hint));
  }

  // Every attribute is one that is known.
  void known_only(const XMLElement& element, std::string_view own) {
    constexpr std::string_view everywhere = "id";
    for (const XMLAttribute* at = element.FirstAttribute(); at != nullptr; at = at->Next()) {
      const std::string_view name = at->Name();
      if (is_one_of(everywhere, name) || is_one_of(paint_names, name) || is_one_of(own, name))
        continue;
      const bool style = name == "style" || name == "class";
      xml_.complain(at->GetLineNum(), name, "unknown-attribute",
                    "the attribute " + shown(name) + " of " + shown(element.Name()),
                    listed(own) + ", " + listed(paint_names) + ", id",
                    style ? "say fill and stroke each by itself"
                          : "save it as a plain SVG of paths and shapes");
    }
  }

  void paint(const XMLElement& element, SvgPaint& paint) {
    for (const XMLAttribute* at = element.FirstAttribute(); at != nullptr; at = at->Next()) {
      if (!is_one_of(paint_names, at->Name())) continue;
      const std::string_view allowed = paint_attribute(at->Name(), at->Value(), paint);
      if (!allowed.empty()) complain(*at, "bad-attribute", allowed);
    }
  }

  void read_root(const XMLElement& root, Around& around) {
    known_only(root, "xmlns version viewBox width height");
    paint(root, around.paint);
    const XMLAttribute* space = root.FindAttribute("xmlns");
    if (space != nullptr && std::string_view(space->Value()) != "http://www.w3.org/2000/svg")
      complain(*space, "bad-attribute", "http://www.w3.org/2000/svg");
    const XMLAttribute* box = root.FindAttribute("viewBox");
    constexpr std::string_view allowed =
        "viewBox: left, top, width and height, from 0.01 on, one side at most 50 times the other";
    if (box == nullptr) {
      xml_.complain(root.GetLineNum(), "svg", "missing-attribute", "svg has no viewBox",
                    std::string(allowed), "");
      return;
    }
    const auto n = svg_numbers(box->Value());
    constexpr double least = 0.01, most_ratio = 50;
    const bool good = n && n->size() == 4 && (*n)[2] >= least && (*n)[3] >= least &&
                      (*n)[2] <= most_ratio * (*n)[3] && (*n)[3] <= most_ratio * (*n)[2];
    if (!good) return complain(*box, "bad-attribute", allowed);
    symbol_.low = {(*n)[0], (*n)[1]};
    symbol_.size = {(*n)[2], (*n)[3]};
  }

  void inside(const XMLElement& parent, const Around& around) {
    xml_.refuse_text(parent);
    for (const XMLElement* child = parent.FirstChildElement(); child != nullptr;
         child = child->NextSiblingElement())
      read_element(*child, around);
  }

  void read_element(const XMLElement& element, const Around& around) {
    const std::string_view name = element.Name();
    if (++elements_ > most_symbol_elements || around.depth >= deepest_symbol) {
      if (!limit_told_)
        xml_.complain(element.GetLineNum(), name, "too-much-drawn",
                      "more elements than a sign may have, or deeper within each other",
                      std::to_string(most_symbol_elements) + " elements, " +
                          std::to_string(deepest_symbol) + " within each other",
                      "");
      limit_told_ = true;
      return;
    }
    if (name == "title" || name == "desc") return;
    const SvgShapeKind* shape = svg_shape(name);
    if (shape == nullptr && name != "g") {
      xml_.complain(element.GetLineNum(), name, "unknown-element", "the element " + shown(name),
                    svg_shape_names() + ", g, title, desc",
                    name == "text" ? "turn lettering into paths"
                                   : "draw it with paths and shapes, black, white or grey");
      return;
    }
    known_only(element, shape == nullptr ? "transform" : shape->attributes);
    Around here{around.paint, around.matrix, around.depth + 1};
    paint(element, here.paint);
    if (const XMLAttribute* at = element.FindAttribute("transform")) {
      const auto matrix = svg_transform(at->Value());
      if (!matrix)
        complain(*at, "bad-transform",
                 "translate(x y), scale(s), rotate(degrees), rotate(degrees x y), "
                 "matrix(a b c d e f)");
      else
        here.matrix = around.matrix * *matrix;
    }
    if (shape == nullptr) return inside(element, here);
    xml_.refuse_text(element);
    for (const XMLElement* child = element.FirstChildElement(); child != nullptr;
         child = child->NextSiblingElement())
      if (!is_one_of("title desc", child->Name()))
        xml_.complain(child->GetLineNum(), child->Name(), "unknown-element",
                      shown(child->Name()) + " within " + shown(name), "title, desc", "");
    draw(element, *shape, here);
  }

  void draw(const XMLElement& element, const SvgShapeKind& kind, const Around& here) {
    const std::size_t before = faults_.count();
    const ShapeReader numbers(element, xml_);
    SymbolPathMaker maker;
    kind.make(numbers, maker);
    if (faults_.count() != before) return;
    model::SymbolShape shape{maker.path(), {}, {}};
    for (Vec2& p : shape.path.points) p = here.matrix(p);
    if (kind.has_inside) shape.fill = here.paint.fill;
    if (shape.fill && kind.free_form && !here.paint.even_odd)
      xml_.complain(element.GetLineNum(), element.Name(), "needs-even-odd",
                    std::string(element.Name()) + " is filled by the rule nonzero",
                    "fill-rule=\"evenodd\", or no fill",
                    "say fill-rule=\"evenodd\" in svg: it holds for everything in it");
    add_stroke(element, here, shape);
    if (!shape.fill && !shape.stroke) return;
    check_place(element, shape.path);
    points_ += shape.path.points.size();
    if (points_ > most_symbol_points && !limit_told_) {
      limit_told_ = true;
      xml_.complain(element.GetLineNum(), element.Name(), "too-much-drawn",
                    "more points than a sign may have",
                    std::to_string(most_symbol_points) + " points of lines and curves", "");
    }
    if (faults_.none()) symbol_.shapes.push_back(std::move(shape));
  }

  void add_stroke(const XMLElement& element, const Around& here, model::SymbolShape& shape) {
    if (!here.paint.stroke || here.paint.width == 0) return;
    const auto scale = here.matrix.scale();
    if (!scale)
      xml_.complain(element.GetLineNum(), element.Name(), "uneven-stroke",
                    std::string(element.Name()) +
                        " is stroked where its transform stretches it more one way than the other",
                    "transforms that keep angles, or no stroke", "");
    const double width = here.paint.width * scale.value_or(0);
    if (width > 0) shape.stroke = model::SymbolPen{width, *here.paint.stroke};
    const double widest = std::max(symbol_.size.x, symbol_.size.y);
    if (!(width <= widest))
      xml_.complain(element.GetLineNum(), element.Name(), "bad-attribute",
                    "a line wider than the view box", "a stroke-width within the view box", "");
  }

  bool in_box(Vec2 p) const {
    const double slack = 1e-6 * std::max(symbol_.size.x, symbol_.size.y);
    const Vec2 high = symbol_.low + symbol_.size;
    return p.x >= symbol_.low.x - slack && p.x <= high.x + slack && p.y >= symbol_.low.y - slack &&
           p.y <= high.y + slack;
  }

  // Every corner, and every curve at sixteen places.
  void check_place(const XMLElement& element, const model::SymbolPath& path) {
    using Verb = model::SymbolPath::Verb;
    constexpr int places = 16;
    bool good = true;
    Vec2 at{};
    std::size_t next = 0;
    for (const Verb verb : path.verbs) {
      if (verb == Verb::close) continue;
      const Vec2* p = &path.points[next];
      if (verb == Verb::curve)
        for (int i = 1; i < places; ++i)
          good = good && in_box(on_curve(at, p[0], p[1], p[2], static_cast<double>(i) / places));
      next += verb == Verb::curve ? 3 : 1;
      at = path.points[next - 1];
      good = good && in_box(at);
    }
    if (!good)
      xml_.complain(element.GetLineNum(), element.Name(), "outside-view-box",
                    std::string(element.Name()) + " leaves the view box",
                    "everything within the viewBox of svg", "make the viewBox larger");
  }

  SymbolXml& xml_;
  Faults& faults_;
  model::Symbol symbol_;
  std::size_t elements_ = 0, points_ = 0;
  bool limit_told_ = false;
};

}  // namespace

SymbolReading read_symbol(std::string_view source) {
  Faults faults;
  SymbolReading reading;
  SymbolXml xml(source, faults);
  if (faults.none()) reading.symbol = SymbolReader(xml, faults).read();
  reading.diagnostics = std::move(faults).finish();
  return reading;
}

}  // namespace splay::reading
