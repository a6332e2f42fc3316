#include <cairo-ft.h>
#include <cairo.h>
#include <zlib.h>

#include <cmath>
#include <memory>
#include <optional>
#include <stdexcept>
#include <string>
#include <vector>

#include "ink/outline.h"
#include "writers/pens.h"
#include "writers/writers.h"

namespace splay::writers {

namespace {

using ink::Path;

template <auto destroy>
struct Destroy {
  template <class T>
  void operator()(T* thing) const {
    destroy(thing);
  }
};
using Surface = std::unique_ptr<cairo_surface_t, Destroy<cairo_surface_destroy>>;
using Context = std::unique_ptr<cairo_t, Destroy<cairo_destroy>>;
using Options = std::unique_ptr<cairo_font_options_t, Destroy<cairo_font_options_destroy>>;

void check(cairo_status_t status) {
  if (status != CAIRO_STATUS_SUCCESS)
    throw std::runtime_error(std::string("Cairo can't draw the page: ") +
                             cairo_status_to_string(status));
}

using FontFace = std::unique_ptr<cairo_font_face_t, Destroy<cairo_font_face_destroy>>;

// Cairo keeps a font in a cache of its own for as long as it likes, so it is given a share in the
// FreeType face.
FontFace cairo_font(std::shared_ptr<void> freetype_face) {
  FontFace font(cairo_ft_font_face_create_for_ft_face(static_cast<FT_Face>(freetype_face.get()),
                                                      FT_LOAD_NO_HINTING));
  static const cairo_user_data_key_t key{};
  using Share = std::shared_ptr<void>;
  auto share = std::make_unique<Share>(std::move(freetype_face));
  check(cairo_font_face_set_user_data(font.get(), &key, share.get(), [](void* held) {
    const std::unique_ptr<Share> done(static_cast<Share*>(held));
  }));
  static_cast<void>(share.release());
  return font;
}

// Draws one page in dots, y down. Strokes with one pen that follow each other are stroked together:
// Cairo takes many times as long for them one by one.
class PngPage {
 public:
  PngPage(const ink::Page& page, const ink::FontSet& fonts, double dpi)
      : page_(page), fonts_(fonts), scale_(dpi / 25.4), faces_(fonts.files().size()) {
    const auto dots = [&](double mm) { return static_cast<int>(std::lround(mm * scale_)); };
    surface_.reset(cairo_image_surface_create(CAIRO_FORMAT_RGB24, dots(page.paper.width),
                                              dots(page.paper.height)));
    check(cairo_surface_status(surface_.get()));
    context_.reset(cairo_create(surface_.get()));
    cairo_set_source_rgb(context_.get(), 1, 1, 1);
    cairo_paint(context_.get());
    cairo_set_line_join(context_.get(), CAIRO_LINE_JOIN_ROUND);
    cairo_set_tolerance(context_.get(), 0.05);
    const Options options(cairo_font_options_create());
    cairo_font_options_set_hint_style(options.get(), CAIRO_HINT_STYLE_NONE);
    cairo_font_options_set_hint_metrics(options.get(), CAIRO_HINT_METRICS_OFF);
    cairo_font_options_set_antialias(options.get(), CAIRO_ANTIALIAS_GRAY);
    cairo_set_font_options(context_.get(), options.get());
  }

  void draw() {
    ink::walk(page_.items, [&](const ink::Item& item) {
      if (const auto* stroke = std::get_if<ink::Stroke>(&item)) draw(*stroke);
      if (const auto* fill = std::get_if<ink::Fill>(&item)) draw(*fill);
      if (const auto* text = std::get_if<ink::Text>(&item)) draw(*text);
    });
    finish_strokes();
    check(cairo_status(context_.get()));
  }

  // Another page on this one, dot for dot; its upper left corner comes to `corner` (mm).
  void paint(const PngPage& other, Vec2 corner) const {
    const Vec2 at = dots(corner);
    cairo_set_source_surface(context_.get(), other.surface_.get(), std::round(at.x),
                             std::round(at.y));
    cairo_paint(context_.get());
    check(cairo_status(context_.get()));
  }

  std::string write() const {
    std::string file;
    check(cairo_surface_write_to_png_stream(
        surface_.get(),
        [](void* out, const unsigned char* bytes, unsigned length) {
          static_cast<std::string*>(out)->append(reinterpret_cast<const char*>(bytes), length);
          return CAIRO_STATUS_SUCCESS;
        },
        &file));
    return file;
  }

 private:
  void draw(const ink::Stroke& stroke) {
    constexpr std::size_t most_pieces = 1000;
    if (pen_ && (!(*pen_ == stroke.pen) || pieces_ > most_pieces)) finish_strokes();
    if (!pen_) cairo_new_path(context_.get());
    pen_ = stroke.pen;
    pieces_ += stroke.path.verbs.size();
    put(stroke.path);
  }

  void finish_strokes() {
    if (!pen_) return;
    set_grey(pen_->grey);
    cairo_set_line_width(context_.get(), pen_->width * scale_);
    cairo_set_line_cap(context_.get(),
                       round_ends(*pen_) ? CAIRO_LINE_CAP_ROUND : CAIRO_LINE_CAP_BUTT);
    std::vector<double> dashes = dash_lengths(*pen_);
    for (double& length : dashes) length *= scale_;
    cairo_set_dash(context_.get(), dashes.data(), static_cast<int>(dashes.size()), 0);
    cairo_stroke(context_.get());
    pen_.reset();
    pieces_ = 0;
  }

  void draw(const ink::Fill& fill) {
    finish_strokes();
    set_grey(fill.grey);
    cairo_set_fill_rule(context_.get(), CAIRO_FILL_RULE_EVEN_ODD);
    cairo_new_path(context_.get());
    put(fill.path);
    cairo_fill(context_.get());
  }

  void draw(const ink::Text& text) {
    finish_strokes();
    set_grey(text.grey);
    const Vec2 along{std::cos(text.turn), std::sin(text.turn)};
    for (const ink::PlacedRun& placed : fonts_.place(text)) {
      cairo_set_font_face(context_.get(), face(placed.run.font));
      const double size = placed.run.size * scale_;
      cairo_matrix_t matrix;
      cairo_matrix_init(&matrix, along.x * size, -along.y * size, along.y * size, along.x * size, 0,
                        0);
      cairo_set_font_matrix(context_.get(), &matrix);
      std::vector<cairo_glyph_t> glyphs;
      Vec2 at = placed.at;
      for (std::size_t i = 0; i < placed.run.glyphs.size(); ++i) {
        const Vec2 dot = dots(at);
        glyphs.push_back({placed.run.glyphs[i], dot.x, dot.y});
        at = at + along * placed.run.advances[i];
      }
      cairo_show_glyphs(context_.get(), glyphs.data(), static_cast<int>(glyphs.size()));
    }
  }

  void put(const Path& path) const {
    std::size_t next = 0;
    const auto take = [&] { return dots(path.points[next++]); };
    for (const Path::Verb verb : path.verbs) {
      switch (verb) {
        case Path::Verb::move: {
          const Vec2 p = take();
          cairo_move_to(context_.get(), p.x, p.y);
          break;
        }
        case Path::Verb::line: {
          const Vec2 p = take();
          cairo_line_to(context_.get(), p.x, p.y);
          break;
        }
        case Path::Verb::curve: {
          const Vec2 a = take(), b = take(), p = take();
          cairo_curve_to(context_.get(), a.x, a.y, b.x, b.y, p.x, p.y);
          break;
        }
        case Path::Verb::close:
          cairo_close_path(context_.get());
          break;
      }
    }
  }

  Vec2 dots(Vec2 mm) const { return {mm.x * scale_, (page_.paper.height - mm.y) * scale_}; }
  void set_grey(double grey) const { cairo_set_source_rgb(context_.get(), grey, grey, grey); }

  cairo_font_face_t* face(int font) {
    auto& slot = faces_[static_cast<std::size_t>(font)];
    if (!slot) slot = cairo_font(fonts_.freetype_face(font));
    return slot.get();
  }

  const ink::Page& page_;
  const ink::FontSet& fonts_;
  double scale_;  // dots to the millimetre
  std::vector<FontFace> faces_;
  Surface surface_;
  Context context_;
  std::optional<ink::Pen> pen_;
  std::size_t pieces_ = 0;
};

void put_32(std::string& out, unsigned long value) {
  for (int shift = 24; shift >= 0; shift -= 8) out += static_cast<char>(value >> shift & 0xFF);
}

// The chunk pHYs tells a program that prints the picture how large it is; Cairo writes none. It
// stands after the header, the signature and chunk of 33 bytes (PNG specification, W3C).
void state_resolution(std::string& file, double dpi) {
  constexpr std::size_t header_end = 33;
  const auto dots_per_metre = static_cast<unsigned long>(std::lround(dpi / 0.0254));
  std::string chunk = "pHYs";
  put_32(chunk, dots_per_metre);
  put_32(chunk, dots_per_metre);
  chunk += '\1';  // the unit is the metre
  std::string whole;
  put_32(whole, static_cast<unsigned long>(chunk.size()) - 4);
  whole += chunk;
  put_32(whole,
         crc32(0, reinterpret_cast<const Bytef*>(chunk.data()), static_cast<uInt>(chunk.size())));
  if (file.size() < header_end) throw std::runtime_error("Cairo wrote no PNG");
  file.insert(header_end, whole);
}

}  // namespace

std::string png(const ink::Page& page, const ink::FontSet& fonts, double dpi,
                const std::vector<Inset>& insets) {
  require_sound(page);
  const auto sound = [](double each) { return each >= 1 && each <= 10000; };
  if (!sound(dpi)) throw std::invalid_argument("a picture needs 1 to 10,000 dpi");
  PngPage picture(page, fonts, dpi);
  picture.draw();
  for (const Inset& inset : insets) {
    require_sound(*inset.page);
    if (!sound(dpi * inset.scale)) throw std::invalid_argument("an inset page is too small");
    PngPage small(*inset.page, fonts, dpi * inset.scale);
    small.draw();
    picture.paint(small, inset.corner);
  }
  std::string file = picture.write();
  state_resolution(file, dpi);
  return file;
}

}  // namespace splay::writers
