#include "ink/fonts.h"

#include <algorithm>
#include <array>
#include <atomic>
#include <charconv>
#include <cmath>
#include <mutex>
#include <optional>
#include <set>
#include <stdexcept>
#include <unordered_map>

#include "base/utf8.h"
#include "ink/font_face.h"
#include "ink/font_files.h"

namespace splay::ink {

namespace {

constexpr int face_count = 3;
constexpr int fallback = 3;

std::vector<FontWanted> wanted(const std::string& typeface) {
  const std::string package = typeface == usual_typeface ? "fonts-liberation" : "";
  return {{typeface, Cut::upright, package},
          {typeface, Cut::bold, package},
          {typeface, Cut::italic, package},
          {"DejaVu Sans Condensed", Cut::upright, "fonts-dejavu-extra"}};
}

// Hebrew, Arabic and their neighbours, and their presentation forms (Unicode block table).
bool right_to_left(char32_t c) {
  return (c >= 0x0590 && c <= 0x08FF) || (c >= 0xFB1D && c <= 0xFDFF) ||
         (c >= 0xFE70 && c <= 0xFEFF) || (c >= 0x10800 && c <= 0x10FFF) ||
         (c >= 0x1E800 && c <= 0x1EFFF);
}

std::string code_name(char32_t c) {
  std::array<char, 8> digits{};
  const auto end =
      std::to_chars(digits.data(), digits.data() + digits.size(), static_cast<std::uint32_t>(c), 16)
          .ptr;
  std::string hex(digits.data(), end);
  std::transform(hex.begin(), hex.end(), hex.begin(),
                 [](char d) { return d >= 'a' ? static_cast<char>(d - 'a' + 'A') : d; });
  return "U+" + std::string(hex.size() < 4 ? 4 - hex.size() : 0, '0') + hex;
}

struct Placed {
  int font = 0;
  GlyphMeasure measure;
};

struct Extent {
  double width = 0;          // mm
  double low = 0, high = 0;  // mm over the base line
};

}  // namespace

struct FontSet::Impl {
  std::vector<File> files;
  std::vector<FontFace> faces;
  std::vector<double> capital;  // height of H, thousandths of the em
  // What was measured once is kept. FreeType's faces and the rarer characters are looked at under
  // the lock; a slot of a usual character is only read when it is marked as filled.
  mutable std::mutex faces_in_use;
  mutable std::array<std::unordered_map<char32_t, std::optional<Placed>>, face_count> known;
  struct Slot {
    std::atomic<bool> filled{false};
    std::optional<Placed> placed;
  };
  static constexpr char32_t small_codes = 0x180;  // Latin: most of every page
  mutable std::array<std::array<Slot, small_codes>, face_count> small;

  std::optional<Placed> look_up(char32_t c, int face) const {
    if (is_control(c) || right_to_left(c)) return std::nullopt;
    for (const int font : {face, fallback}) {
      const FontFace& file = faces[static_cast<std::size_t>(font)];
      const std::uint32_t glyph = file.glyph_of(c);
      if (glyph != 0) return Placed{font, file.measure(glyph)};
    }
    return std::nullopt;
  }

  const std::optional<Placed>& find(char32_t c, Face face) const {
    const auto row = static_cast<std::size_t>(face);
    if (c < small_codes) {
      Slot& slot = small[row][c];
      if (slot.filled.load(std::memory_order_acquire)) return slot.placed;
      const std::scoped_lock lock(faces_in_use);
      if (!slot.filled.load(std::memory_order_relaxed)) {
        slot.placed = look_up(c, static_cast<int>(face));
        slot.filled.store(true, std::memory_order_release);
      }
      return slot.placed;
    }
    const std::scoped_lock lock(faces_in_use);
    const auto [entry, fresh] = known[row].try_emplace(c);
    if (fresh) entry->second = look_up(c, static_cast<int>(face));
    return entry->second;
  }

  double size_mm(int font, double height) const {
    return height * 1000 / capital[static_cast<std::size_t>(font)];
  }

  // Calls use(bytes of the character, its code, where it is drawn from).
  template <class Use>
  void each(std::string_view utf8, Face face, Use&& use) const {
    while (!utf8.empty()) {
      const Character c = first_character(utf8);
      if (c.bytes == 0) throw std::invalid_argument("a text is not valid UTF-8");
      const std::optional<Placed>& placed = find(c.code, face);
      if (!placed) {
        if (is_control(c.code))
          throw std::invalid_argument("a text holds the control character " + code_name(c.code));
        throw std::invalid_argument("no font can draw " + code_name(c.code) + " \"" +
                                    std::string(utf8.substr(0, c.bytes)) + "\"");
      }
      use(utf8.substr(0, c.bytes), c.code, *placed);
      utf8.remove_prefix(c.bytes);
    }
  }

  Extent extent(std::string_view utf8, double height, Face face) const {
    Extent extent{0, 0, height};
    each(utf8, face, [&](std::string_view, char32_t, const Placed& placed) {
      const double thousandth = size_mm(placed.font, height) / 1000;
      extent.width += placed.measure.advance * thousandth;
      extent.low = std::min(extent.low, placed.measure.low * thousandth);
      extent.high = std::max(extent.high, placed.measure.high * thousandth);
    });
    return extent;
  }
};

FontSet::FontSet(const std::string& typeface) : impl_(std::make_unique<Impl>()) {
  const std::vector<FontWanted> fonts = wanted(typeface);
  const std::vector<std::string> paths = find_font_files(fonts);
  for (std::size_t i = 0; i < paths.size(); ++i) {
    const FontFace& face = impl_->faces.emplace_back(paths[i]);
    impl_->files.push_back({paths[i], fonts[i].family, face.version()});
    impl_->capital.push_back(face.capital_height());
    if (!(impl_->capital.back() > 0))
      throw std::runtime_error("the font file " + paths[i] + " has no letter H");
  }
}

FontSet::~FontSet() = default;

const std::vector<FontSet::File>& FontSet::files() const { return impl_->files; }

std::vector<Run> FontSet::runs(std::string_view utf8, double height, Face face) const {
  std::vector<Run> runs;
  impl_->each(utf8, face, [&](std::string_view bytes, char32_t code, const Placed& placed) {
    if (runs.empty() || runs.back().font != placed.font) {
      Run run;
      run.font = placed.font;
      run.size = impl_->size_mm(placed.font, height);
      runs.push_back(std::move(run));
    }
    Run& run = runs.back();
    run.utf8 += bytes;
    run.characters += code;
    run.glyphs.push_back(placed.measure.glyph);
    run.advances.push_back(placed.measure.advance * run.size / 1000);
  });
  return runs;
}

double FontSet::width(std::string_view utf8, double height, Face face) const {
  return impl_->extent(utf8, height, face).width;
}

bool FontSet::can_draw(std::string_view utf8) const {
  while (!utf8.empty()) {
    const Character c = first_character(utf8);
    if (c.bytes == 0 || !impl_->find(c.code, Face::regular)) return false;
    utf8.remove_prefix(c.bytes);
  }
  return true;
}

namespace {

double shift(Align align, double width) {
  return align == Align::left ? 0 : align == Align::right ? -width : -width / 2;
}

}  // namespace

std::vector<Vec2> FontSet::box(const Text& text) const {
  const Extent extent = impl_->extent(text.utf8, text.height, text.face);
  const Vec2 along{std::cos(text.turn), std::sin(text.turn)};
  const Vec2 up = left_of(along);
  const Vec2 start = text.at + along * shift(text.align, extent.width);
  const Vec2 end = start + along * extent.width;
  return {start + up * extent.low, end + up * extent.low, end + up * extent.high,
          start + up * extent.high};
}

std::vector<PlacedRun> FontSet::place(const Text& text) const {
  std::vector<Run> pieces = runs(text.utf8, text.height, text.face);
  std::vector<double> widths;
  double total = 0;
  for (const Run& run : pieces) {
    double width = 0;
    for (const double advance : run.advances) width += advance;
    widths.push_back(width);
    total += width;
  }
  const Vec2 along{std::cos(text.turn), std::sin(text.turn)};
  double along_mm = shift(text.align, total);
  std::vector<PlacedRun> placed;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    placed.push_back({std::move(pieces[i]), text.at + along * along_mm});
    along_mm += widths[i];
  }
  return placed;
}

std::vector<std::uint32_t> FontSet::closure(int font,
                                            const std::vector<std::uint32_t>& glyphs) const {
  const FontFace& face = impl_->faces.at(static_cast<std::size_t>(font));
  const std::scoped_lock lock(impl_->faces_in_use);
  std::set<std::uint32_t> whole{0};
  std::vector<std::uint32_t> waiting = glyphs;
  while (!waiting.empty()) {
    const std::uint32_t glyph = waiting.back();
    waiting.pop_back();
    if (!whole.insert(glyph).second) continue;
    const std::vector<std::uint32_t> parts = face.components(glyph);
    waiting.insert(waiting.end(), parts.begin(), parts.end());
  }
  return {whole.begin(), whole.end()};
}

int FontSet::advance(int font, std::uint32_t glyph) const {
  const std::scoped_lock lock(impl_->faces_in_use);
  return impl_->faces.at(static_cast<std::size_t>(font)).measure(glyph).advance;
}

std::shared_ptr<void> FontSet::freetype_face(int font) const {
  return impl_->faces.at(static_cast<std::size_t>(font)).handle();
}

}  // namespace splay::ink
