#include <optional>

#include "reading/in_order.h"
#include "reading/symbol_path.h"
#include "reading/symbol_scan.h"

namespace splay::reading {

namespace {

char upper(char c) { return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c; }

// One command after the other; each repeats as long as numbers follow.
class DataReader {
 public:
  DataReader(std::string_view data, SymbolPathMaker& path) : scan_(data), path_(path) {}

  std::string read() {
    scan_.skip_space();
    if (scan_.at_end()) return "it draws nothing";
    if (upper(scan_.peek()) != 'M') return "it begins with \"" + here() + "\", not with M or m";
    while (!scan_.at_end()) {
      const char letter = scan_.peek();
      if (std::string_view("MLHVCSQTAZ").find(upper(letter)) == std::string_view::npos)
        return "\"" + here() + "\" is no command";
      scan_.take();
      if (!all_of(letter))
        return std::string("after ") + letter + " a number that is needed is not there, at \"" +
               here() + "\"";
    }
    return "";
  }

 private:
  std::string here() const { return scan_.at_end() ? std::string("the end") : shown(scan_.here()); }

  bool all_of(char letter) {
    relative_ = letter >= 'a';
    char command = upper(letter);
    scan_.skip_space();
    if (command == 'Z') {
      path_.close();
      last_ = 'Z';
      return true;
    }
    bool first = true;
    while (first || starts_number()) {
      if (!one(command)) return false;
      last_ = command;
      if (command == 'M') command = 'L';
      scan_.skip_comma();
      first = false;
    }
    return true;
  }

  bool starts_number() const {
    const char c = scan_.peek();
    return (c >= '0' && c <= '9') || c == '-' || c == '+' || c == '.';
  }

  bool one(char command) {
    switch (command) {
      case 'M':
      case 'L':
        return to(command == 'M');
      case 'H':
      case 'V':
        return along(command == 'H');
      case 'C':
      case 'S':
        return cubic(command == 'S');
      case 'Q':
      case 'T':
        return quadratic(command == 'T');
      default:
        return arc();
    }
  }

  std::optional<double> number() {
    const auto value = scan_.number();
    if (value) scan_.skip_comma();
    return value;
  }
  std::optional<Vec2> point() {
    const auto x = number();
    const auto y = x ? scan_.number() : std::nullopt;
    if (!y) return std::nullopt;
    return relative_ ? path_.at() + Vec2{*x, *y} : Vec2{*x, *y};
  }
  std::optional<Vec2> point_before_more() {
    const auto p = point();
    if (p) scan_.skip_comma();
    return p;
  }

  bool to(bool moving) {
    const auto p = point();
    if (!p) return false;
    if (moving)
      path_.move(*p);
    else
      path_.line(*p);
    return true;
  }
  bool along(bool across) {
    const auto value = scan_.number();
    if (!value) return false;
    const Vec2 at = path_.at();
    const double from = !relative_ ? 0 : across ? at.x : at.y;
    path_.line(across ? Vec2{from + *value, at.y} : Vec2{at.x, from + *value});
    return true;
  }
  // A handle that mirrors the one before, where that was of the same kind.
  Vec2 mirrored(bool same_kind) const { return same_kind ? path_.at() * 2 - handle_ : path_.at(); }
  bool cubic(bool smooth) {
    std::optional<Vec2> c1 =
        smooth ? std::optional(mirrored(last_ == 'C' || last_ == 'S')) : point_before_more();
    const auto c2 = c1 ? point_before_more() : std::nullopt;
    const auto p = c2 ? point() : std::nullopt;
    if (!p) return false;
    path_.curve(*c1, *c2, *p);
    handle_ = *c2;
    return true;
  }
  bool quadratic(bool smooth) {
    const std::optional<Vec2> c =
        smooth ? std::optional(mirrored(last_ == 'Q' || last_ == 'T')) : point_before_more();
    const auto p = c ? point() : std::nullopt;
    if (!p) return false;
    const Vec2 from = path_.at();
    path_.curve(from + (*c - from) * (2.0 / 3), *p + (*c - *p) * (2.0 / 3), *p);
    handle_ = *c;
    return true;
  }
  bool arc() {
    const auto rx = number();
    const auto ry = rx ? number() : std::nullopt;
    const auto turn = ry ? number() : std::nullopt;
    if (!turn) return false;
    const auto large = scan_.flag();
    scan_.skip_comma();
    const auto sweep = large ? scan_.flag() : std::nullopt;
    scan_.skip_comma();
    const auto p = sweep ? point() : std::nullopt;
    if (!p) return false;
    path_.arc({*rx, *ry}, *turn, *large, *sweep, *p);
    return true;
  }

  SvgScanner scan_;
  SymbolPathMaker& path_;
  bool relative_ = false;
  char last_ = 'M';
  Vec2 handle_{};
};

}  // namespace

std::string read_path_data(std::string_view data, SymbolPathMaker& path) {
  return DataReader(data, path).read();
}

}  // namespace splay::reading
