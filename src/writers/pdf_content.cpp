#include "writers/pdf_content.h"

#include <array>
#include <cmath>
#include <optional>

#include "ink/outline.h"
#include "writers/fixed.h"
#include "writers/pens.h"

namespace splay::writers {

namespace {

using ink::Path;

// Draws one page. Operators that set what is set already are left out, and strokes with one pen
// that follow each other are one path: both halve the text that has to be compressed.
class PageContent {
 public:
  PageContent(const ink::FontSet& fonts, std::vector<FontCodes>& codes)
      : fonts_(fonts), codes_(codes) {}

  std::string draw(const ink::Page& page) {
    out_ = "1 j\n";
    ink::walk(page.items, [&](const ink::Item& item) {
      if (const auto* stroke = std::get_if<ink::Stroke>(&item)) draw(*stroke);
      if (const auto* fill = std::get_if<ink::Fill>(&item)) draw(*fill);
      if (const auto* text = std::get_if<ink::Text>(&item)) draw(*text);
    });
    leave();
    return std::move(out_);
  }

 private:
  enum class State { page, path, text };

  void draw(const ink::Stroke& stroke) {
    if (stroke.path.verbs.empty()) return;
    constexpr std::size_t longest_path = 1000;  // pieces; viewers slow down on very long ones
    if (state_ != State::path || !pen_ || !(*pen_ == stroke.pen) || pieces_ > longest_path) {
      leave();
      take(stroke.pen);
      state_ = State::path;
      pieces_ = 0;
    }
    put(stroke.path);
    pieces_ += stroke.path.verbs.size();
  }

  void draw(const ink::Fill& fill) {
    if (fill.path.verbs.empty()) return;
    leave();
    set_fill_grey(fill.grey);
    put(fill.path);
    out_ += "f*\n";
  }

  void draw(const ink::Text& text) {
    if (text.utf8.empty()) return;
    for (const ink::PlacedRun& placed : fonts_.place(text)) {
      if (state_ != State::text) {
        leave();
        out_ += "BT\n";
        state_ = State::text;
      }
      set_fill_grey(text.grey);
      set_font(placed.run.font, placed.run.size);
      put(placed, text.turn);
    }
  }

  void leave() {
    if (state_ == State::path) out_ += "S\n";
    if (state_ == State::text) out_ += "ET\n";
    state_ = State::page;
  }

  void take(const ink::Pen& pen) {
    const ink::Pen before = pen_.value_or(ink::Pen{-1, ink::Dash::continuous, 0});
    if (pen.width != before.width) number(pen.width * points_per_mm), out_ += " w\n";
    if (pen.grey != before.grey) number(pen.grey), out_ += " G\n";
    const bool dash_changed =
        pen.dash != before.dash || (pen.dash != ink::Dash::continuous && pen.width != before.width);
    if (dash_changed) {
      out_ += '[';
      for (const double length : dash_lengths(pen)) number(length * points_per_mm), out_ += ' ';
      out_ += "] 0 d\n";
    }
    if (!pen_ || round_ends(pen) != round_ends(before)) out_ += round_ends(pen) ? "1 J\n" : "0 J\n";
    pen_ = pen;
  }

  void set_fill_grey(double grey) {
    if (grey == fill_grey_) return;
    number(grey);
    out_ += " g\n";
    fill_grey_ = grey;
  }

  void set_font(int font, double size_mm) {
    if (font == font_ && size_mm == size_) return;
    out_ += "/F";
    out_ += static_cast<char>('0' + font);
    out_ += ' ';
    number(size_mm * points_per_mm);
    out_ += " Tf\n";
    font_ = font;
    size_ = size_mm;
  }

  void put(const ink::PlacedRun& placed, double turn) {
    if (turn == 0) {
      out_ += "1 0 0 1 ";
    } else {
      const double c = std::cos(turn), s = std::sin(turn);
      for (const double part : {c, s, -s, c}) append_fixed(out_, part, 6), out_ += ' ';
    }
    point(placed.at);
    out_ += "Tm(";
    FontCodes& codes = codes_[static_cast<std::size_t>(placed.run.font)];
    for (std::size_t i = 0; i < placed.run.glyphs.size(); ++i) {
      const unsigned code = codes.code_of(placed.run.characters[i], placed.run.glyphs[i]);
      out_ += static_cast<char>(code >> 8);
      out_ += static_cast<char>(code & 0xFF);
    }
    out_ += ")Tj\n";
  }

  void put(const Path& path) {
    std::size_t next = 0;
    for (const Path::Verb verb : path.verbs) {
      switch (verb) {
        case Path::Verb::move:
          point(path.points[next++]);
          out_ += "m\n";
          break;
        case Path::Verb::line:
          point(path.points[next++]);
          out_ += "l\n";
          break;
        case Path::Verb::curve:
          for (int i = 0; i < 3; ++i) point(path.points[next++]);
          out_ += "c\n";
          break;
        case Path::Verb::close:
          out_ += "h\n";
          break;
      }
    }
  }

  void point(Vec2 p) {
    number(p.x * points_per_mm);
    out_ += ' ';
    number(p.y * points_per_mm);
    out_ += ' ';
  }

  void number(double value) { append_fixed(out_, value, 3); }

  const ink::FontSet& fonts_;
  std::vector<FontCodes>& codes_;
  std::string out_;
  State state_ = State::page;
  std::size_t pieces_ = 0;
  std::optional<ink::Pen> pen_;
  double fill_grey_ = 0;
  int font_ = -1;
  double size_ = 0;
};

}  // namespace

std::string pdf_content(const ink::Page& page, const ink::FontSet& fonts,
                        std::vector<FontCodes>& codes) {
  require_sound(page);
  codes.resize(fonts.files().size());
  return PageContent(fonts, codes).draw(page);
}

}  // namespace splay::writers
