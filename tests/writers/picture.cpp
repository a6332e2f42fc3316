#include "writers/picture.h"

#include <cairo.h>

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <cstring>
#include <memory>
#include <sstream>

namespace splay::writer_tests {

namespace {

struct Source {
  const std::string& bytes;
  std::size_t at = 0;
};

cairo_status_t read_part(void* from, unsigned char* to, unsigned length) {
  auto* source = static_cast<Source*>(from);
  if (source->bytes.size() - source->at < length) return CAIRO_STATUS_READ_ERROR;
  std::memcpy(to, source->bytes.data() + source->at, length);
  source->at += length;
  return CAIRO_STATUS_SUCCESS;
}

// Mean grey of the cell of 4 by 4 dots, fewer at the edge.
double cell(const Picture& picture, int left, int top) {
  double sum = 0;
  int count = 0;
  for (int y = top; y < std::min(top + 4, picture.height); ++y)
    for (int x = left; x < std::min(left + 4, picture.width); ++x, ++count)
      sum += picture.grey[static_cast<std::size_t>(y) * static_cast<std::size_t>(picture.width) +
                          static_cast<std::size_t>(x)];
  return sum / count;
}

}  // namespace

Picture from_png(const std::string& bytes) {
  Source source{bytes};
  cairo_surface_t* surface = cairo_image_surface_create_from_png_stream(read_part, &source);
  REQUIRE(cairo_surface_status(surface) == CAIRO_STATUS_SUCCESS);
  Picture picture{
      cairo_image_surface_get_width(surface), cairo_image_surface_get_height(surface), {}};
  const int stride = cairo_image_surface_get_stride(surface);
  const unsigned char* data = cairo_image_surface_get_data(surface);
  for (int y = 0; y < picture.height; ++y)
    for (int x = 0; x < picture.width; ++x) {
      std::uint32_t dot = 0;
      std::memcpy(&dot, data + y * stride + 4 * x, 4);
      picture.grey.push_back(static_cast<double>((dot >> 8) & 0xFF) / 255);
    }
  cairo_surface_destroy(surface);
  return picture;
}

Picture from_pgm(const std::string& bytes) {
  std::istringstream stream(bytes);
  std::string kind;
  int width = 0, height = 0, most = 0;
  stream >> kind >> width >> height >> most;
  stream.get();
  REQUIRE(kind == "P5");
  REQUIRE(most == 255);
  Picture picture{width, height, {}};
  for (int i = 0; i < width * height; ++i)
    picture.grey.push_back(static_cast<double>(stream.get()) / 255);
  REQUIRE(stream);
  return picture;
}

Difference compare(const Picture& a, const Picture& b) {
  // A renderer may round half a dot up or down.
  REQUIRE(std::abs(a.width - b.width) <= 1);
  REQUIRE(std::abs(a.height - b.height) <= 1);
  Difference difference;
  int cells = 0, inked = 0;
  for (int y = 0; y + 4 <= std::min(a.height, b.height); y += 4)
    for (int x = 0; x + 4 <= std::min(a.width, b.width); x += 4, ++cells) {
      const double in_a = cell(a, x, y), in_b = cell(b, x, y);
      difference.largest = std::max(difference.largest, std::abs(in_a - in_b));
      difference.mean += std::abs(in_a - in_b);
      inked += in_a < 0.98 || in_b < 0.98 ? 1 : 0;
    }
  difference.mean /= cells;
  difference.inked = static_cast<double>(inked) / cells;
  return difference;
}

}  // namespace splay::writer_tests
