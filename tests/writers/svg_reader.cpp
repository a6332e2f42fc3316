#include <cairo.h>
#include <fontconfig/fontconfig.h>
#include <tinyxml2.h>

#include <catch2/catch.hpp>
#include <charconv>
#include <cmath>
#include <cstring>
#include <numbers>
#include <set>
#include <string_view>

#include "base/utf8.h"
#include "writers/picture.h"

namespace splay::writer_tests {

namespace {

using tinyxml2::XMLElement;

std::string attribute(const XMLElement& element, const char* name) {
  const char* value = element.Attribute(name);
  return value == nullptr ? "" : value;
}

// The numbers of a list; letters and commas part them.
std::vector<double> numbers(std::string_view text) {
  std::vector<double> found;
  while (!text.empty()) {
    double value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error == std::errc{}) {
      found.push_back(value);
      text.remove_prefix(static_cast<std::size_t>(end - text.data()));
    } else {
      text.remove_prefix(1);
    }
  }
  return found;
}

double number(const XMLElement& element, const char* name) {
  const std::vector<double> found = numbers(attribute(element, name));
  INFO(name);
  REQUIRE(found.size() == 1);
  return found[0];
}

class Viewer {
 public:
  Viewer(const XMLElement& root, double dpi) {
    const std::vector<double> box = numbers(attribute(root, "viewBox"));
    REQUIRE(box.size() == 4);
    // One unit is one millimetre on paper.
    CHECK(attribute(root, "width").ends_with("mm"));
    CHECK(number(root, "width") == box[2]);
    CHECK(number(root, "height") == box[3]);
    const double scale = dpi / 25.4;
    surface_ = cairo_image_surface_create(CAIRO_FORMAT_RGB24,
                                          static_cast<int>(std::lround(box[2] * scale)),
                                          static_cast<int>(std::lround(box[3] * scale)));
    context_ = cairo_create(surface_);
    cairo_scale(context_, scale, scale);
    cairo_font_options_t* options = cairo_font_options_create();
    cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
    cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
    cairo_set_font_options(context_, options);
    cairo_font_options_destroy(options);
  }
  ~Viewer() {
    cairo_destroy(context_);
    cairo_surface_destroy(surface_);
    // Fonts by family name stay in caches of Cairo and fontconfig, which the leak check would
    // count.
    cairo_debug_reset_static_data();
    FcFini();
  }
  Viewer(const Viewer&) = delete;
  Viewer& operator=(const Viewer&) = delete;

  void draw_children(const XMLElement& parent) {
    for (const XMLElement* one = parent.FirstChildElement(); one != nullptr;
         one = one->NextSiblingElement())
      draw(*one);
  }

  std::string png() const {
    std::string bytes;
    cairo_surface_write_to_png_stream(
        surface_,
        [](void* out, const unsigned char* part, unsigned length) {
          static_cast<std::string*>(out)->append(reinterpret_cast<const char*>(part), length);
          return CAIRO_STATUS_SUCCESS;
        },
        &bytes);
    return bytes;
  }

 private:
  void draw(const XMLElement& element) {
    const std::string name = element.Name();
    INFO(name);
    if (name == "g") return draw_children(element);
    if (name == "title") return;
    if (name == "rect") {
      cairo_rectangle(context_, 0, 0, number(element, "width"), number(element, "height"));
      paint(attribute(element, "fill"));
      return cairo_fill(context_);
    }
    if (name == "path") return draw_path(element);
    REQUIRE(name == "text");
    draw_text(element);
  }

  void paint(const std::string& colour) {
    REQUIRE(colour.size() == 7);
    REQUIRE(colour.substr(1, 2) == colour.substr(3, 2));
    int level = 0;
    std::from_chars(colour.data() + 1, colour.data() + 3, level, 16);
    cairo_set_source_rgb(context_, level / 255.0, level / 255.0, level / 255.0);
  }

  void draw_path(const XMLElement& element) {
    trace(attribute(element, "d"));
    if (attribute(element, "fill") != "none") {
      REQUIRE(attribute(element, "fill-rule") == "evenodd");
      cairo_set_fill_rule(context_, CAIRO_FILL_RULE_EVEN_ODD);
      paint(attribute(element, "fill"));
      return cairo_fill(context_);
    }
    paint(attribute(element, "stroke"));
    cairo_set_line_width(context_, number(element, "stroke-width"));
    REQUIRE(attribute(element, "stroke-linejoin") == "round");
    cairo_set_line_join(context_, CAIRO_LINE_JOIN_ROUND);
    cairo_set_line_cap(context_, attribute(element, "stroke-linecap") == "round"
                                     ? CAIRO_LINE_CAP_ROUND
                                     : CAIRO_LINE_CAP_BUTT);
    const std::vector<double> dashes = numbers(attribute(element, "stroke-dasharray"));
    cairo_set_dash(context_, dashes.data(), static_cast<int>(dashes.size()), 0);
    cairo_stroke(context_);
  }

  void trace(const std::string& data) {
    for (std::size_t at = 0; at < data.size();) {
      const std::size_t next = data.find_first_of("MLCZ", at + 1);
      const std::vector<double> n = numbers(data.substr(at + 1, next - at - 1));
      switch (data[at]) {
        case 'M':
          cairo_move_to(context_, n.at(0), n.at(1));
          break;
        case 'L':
          cairo_line_to(context_, n.at(0), n.at(1));
          break;
        case 'C':
          cairo_curve_to(context_, n.at(0), n.at(1), n.at(2), n.at(3), n.at(4), n.at(5));
          break;
        default:
          REQUIRE(data[at] == 'Z');
          cairo_close_path(context_);
      }
      at = next == std::string::npos ? data.size() : next;
    }
  }

  void draw_text(const XMLElement& element) {
    const std::string families = attribute(element, "font-family");
    const std::string family = families.substr(1, families.find('\'', 1) - 1);
    cairo_select_font_face(context_, family.c_str(),
                           attribute(element, "font-style") == "italic" ? CAIRO_FONT_SLANT_ITALIC
                                                                        : CAIRO_FONT_SLANT_NORMAL,
                           attribute(element, "font-weight") == "bold" ? CAIRO_FONT_WEIGHT_BOLD
                                                                       : CAIRO_FONT_WEIGHT_NORMAL);
    cairo_set_font_size(context_, number(element, "font-size"));
    const std::string fill = attribute(element, "fill");
    paint(fill.empty() ? "#000000" : fill);
    cairo_save(context_);
    const std::vector<double> turn = numbers(attribute(element, "transform"));
    if (!turn.empty()) {
      cairo_translate(context_, turn.at(1), turn.at(2));
      cairo_rotate(context_, turn.at(0) * std::numbers::pi / 180);
      cairo_translate(context_, -turn.at(1), -turn.at(2));
    }
    draw_letters(element.GetText(), numbers(attribute(element, "x")), number(element, "y"));
    cairo_restore(context_);
  }

  void draw_letters(std::string_view text, const std::vector<double>& x, double y) {
    for (const double at : x) {
      const Character c = first_character(text);
      REQUIRE(c.bytes > 0);
      cairo_move_to(context_, at, y);
      cairo_show_text(context_, std::string(text.substr(0, c.bytes)).c_str());
      text.remove_prefix(c.bytes);
    }
    cairo_new_path(context_);
    CHECK(text.empty());
  }

  cairo_surface_t* surface_;
  cairo_t* context_;
};

}  // namespace

Picture from_svg(const std::string& bytes, double dpi) {
  tinyxml2::XMLDocument file;
  REQUIRE(file.Parse(bytes.data(), bytes.size()) == tinyxml2::XML_SUCCESS);
  const XMLElement* root = file.RootElement();
  REQUIRE(root != nullptr);
  REQUIRE(std::strcmp(root->Name(), "svg") == 0);
  Viewer viewer(*root, dpi);
  viewer.draw_children(*root);
  return from_png(viewer.png());
}

}  // namespace splay::writer_tests
