#include <tinyxml2.h>

#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include "ink/outline.h"
#include "writers/fixed.h"
#include "writers/pens.h"
#include "writers/writers.h"

namespace splay::writers {

namespace {

using ink::Path;
using tinyxml2::XMLElement;

constexpr int svg_places = 4;  // of a millimetre

std::string text_of(double value) {
  std::string text;
  append_fixed(text, value, svg_places);
  return text;
}

std::string grey_text(double grey) {
  constexpr const char* hex = "0123456789abcdef";
  const auto level = static_cast<unsigned>(std::lround(grey * 255));
  std::string text = "#";
  for (int i = 0; i < 3; ++i) text += hex[level >> 4], text += hex[level & 15];
  return text;
}

// Draws one page, y down from the upper edge as SVG has it.
class SvgPage {
 public:
  SvgPage(const ink::Page& page, const ink::FontSet& fonts) : page_(page), fonts_(fonts) {}

  std::string write() {
    file_.InsertEndChild(file_.NewDeclaration());
    XMLElement* root = file_.NewElement("svg");
    file_.InsertEndChild(root);
    const std::string width = text_of(page_.paper.width), height = text_of(page_.paper.height);
    root->SetAttribute("xmlns", "http://www.w3.org/2000/svg");
    root->SetAttribute("width", (width + "mm").c_str());
    root->SetAttribute("height", (height + "mm").c_str());
    root->SetAttribute("viewBox", ("0 0 " + width + " " + height).c_str());
    root->InsertNewChildElement("title")->SetText(page_.title.c_str());
    XMLElement* sheet = root->InsertNewChildElement("rect");
    sheet->SetAttribute("width", width.c_str());
    sheet->SetAttribute("height", height.c_str());
    sheet->SetAttribute("fill", "#ffffff");
    parent_ = root;
    ink::walk(
        page_.items, [&](const ink::Item& item) { draw(item); },
        [&](const ink::Group& group) {
          parent_ = parent_->InsertNewChildElement("g");
          parent_->SetAttribute("class", group.role.c_str());
        },
        [&](const ink::Group&) { parent_ = parent_->Parent()->ToElement(); });
    tinyxml2::XMLPrinter printer;
    file_.Print(&printer);
    return {printer.CStr(), static_cast<std::size_t>(printer.CStrSize() - 1)};
  }

 private:
  void draw(const ink::Item& item) {
    if (const auto* stroke = std::get_if<ink::Stroke>(&item)) draw(*stroke);
    if (const auto* fill = std::get_if<ink::Fill>(&item)) draw(*fill);
    if (const auto* text = std::get_if<ink::Text>(&item))
      for (const ink::PlacedRun& placed : fonts_.place(*text)) draw(*text, placed);
  }

  void draw(const ink::Stroke& stroke) {
    XMLElement* path = parent_->InsertNewChildElement("path");
    path->SetAttribute("d", path_data(stroke.path).c_str());
    path->SetAttribute("fill", "none");
    path->SetAttribute("stroke", grey_text(stroke.pen.grey).c_str());
    path->SetAttribute("stroke-width", text_of(stroke.pen.width).c_str());
    path->SetAttribute("stroke-linejoin", "round");
    path->SetAttribute("stroke-linecap", round_ends(stroke.pen) ? "round" : "butt");
    std::string dashes;
    for (const double length : dash_lengths(stroke.pen))
      dashes += (dashes.empty() ? "" : " ") + text_of(length);
    if (!dashes.empty()) path->SetAttribute("stroke-dasharray", dashes.c_str());
  }

  void draw(const ink::Fill& fill) {
    XMLElement* path = parent_->InsertNewChildElement("path");
    path->SetAttribute("d", path_data(fill.path).c_str());
    path->SetAttribute("fill", grey_text(fill.grey).c_str());
    path->SetAttribute("fill-rule", "evenodd");
  }

  // A place for every letter, so that a viewer's own spacing can't shift a dimension.
  void draw(const ink::Text& text, const ink::PlacedRun& placed) {
    const double y = down(placed.at.y);
    std::string letters;
    double x = placed.at.x;
    for (const double advance : placed.run.advances) {
      letters += (letters.empty() ? "" : " ") + text_of(x);
      x += advance;
    }
    XMLElement* element = parent_->InsertNewChildElement("text");
    element->SetAttribute("x", letters.c_str());
    element->SetAttribute("y", text_of(y).c_str());
    if (text.turn != 0) {
      std::string turn = "rotate(";
      append_fixed(turn, -text.turn * 180 / std::numbers::pi, 6);
      turn += " " + text_of(placed.at.x) + " " + text_of(y) + ")";
      element->SetAttribute("transform", turn.c_str());
    }
    const std::string& family = fonts_.files()[static_cast<std::size_t>(placed.run.font)].family;
    element->SetAttribute("font-family", ("'" + family + "', sans-serif").c_str());
    element->SetAttribute("font-size", text_of(placed.run.size).c_str());
    const bool own_face = placed.run.font == static_cast<int>(text.face);
    if (own_face && text.face == ink::Face::bold) element->SetAttribute("font-weight", "bold");
    if (own_face && text.face == ink::Face::italic) element->SetAttribute("font-style", "italic");
    if (text.grey != 0) element->SetAttribute("fill", grey_text(text.grey).c_str());
    element->SetAttribute("xml:space", "preserve");
    element->SetText(placed.run.utf8.c_str());
  }

  std::string path_data(const Path& path) const {
    std::string data;
    std::size_t next = 0;
    const auto put = [&](char letter, int points) {
      data += letter;
      for (int i = 0; i < points; ++i, ++next) {
        if (i > 0) data += ' ';
        append_fixed(data, path.points[next].x, svg_places);
        data += ' ';
        append_fixed(data, down(path.points[next].y), svg_places);
      }
    };
    for (const Path::Verb verb : path.verbs) {
      switch (verb) {
        case Path::Verb::move:
          put('M', 1);
          break;
        case Path::Verb::line:
          put('L', 1);
          break;
        case Path::Verb::curve:
          put('C', 3);
          break;
        case Path::Verb::close:
          put('Z', 0);
          break;
      }
    }
    return data;
  }

  double down(double y) const { return page_.paper.height - y; }

  const ink::Page& page_;
  const ink::FontSet& fonts_;
  tinyxml2::XMLDocument file_;
  XMLElement* parent_ = nullptr;
};

}  // namespace

std::string svg(const ink::Page& page, const ink::FontSet& fonts) {
  require_sound(page);
  return SvgPage(page, fonts).write();
}

}  // namespace splay::writers
