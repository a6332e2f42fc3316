// Grey pictures of pages and how far two of them differ.
#pragma once

#include <string>
#include <vector>

namespace splay::writer_tests {

struct Picture {
  int width = 0, height = 0;
  std::vector<double> grey;  // rows from the top, 0 black to 1 white
};

Picture from_png(const std::string& bytes);  // through Cairo
Picture from_pgm(const std::string& bytes);  // "P5", as pdftoppm -gray writes it

// Reads an SVG as a plain viewer would, with its own fonts by family name, and draws it through
// Cairo. Knows what the SVG writer uses and fails the test for anything else.
Picture from_svg(const std::string& bytes, double dpi);

// Means over cells of 4 by 4 dots, compared: the largest difference, the mean one, and the share of
// cells that are not white in both (so that an empty page can't pass for a match).
struct Difference {
  double largest = 0, mean = 0, inked = 0;
};
Difference compare(const Picture& a, const Picture& b);

}  // namespace splay::writer_tests
