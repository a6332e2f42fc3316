// Small pieces that are glued up, for tests. `more` is put at the end of the file.
#pragma once

#include <string>

#include "support/piece.h"

namespace splay::test {

// Two boards face to face, ten inches by two and a half in common.
inline std::string two_boards(const std::string& more) {
  return job() + board("oak", "1 in") +
         "[board.lower]\nstock = \"oak\"\nat = [0, 0, 0]\nlength = 10\nwidth = \"2 1/2\"\n"
         "[board.upper]\nstock = \"oak\"\nlength = 10\nwidth = \"2 1/2\"\nat = [0, 0, 1]\n"
         "[joint.faces]\nkind = \"glued\"\nhost = \"lower\"\nguest = \"upper\"\n" +
         more;
}

// A ladder: two stiles and rails between them, all mortised.
inline std::string ladder(int rails, const std::string& more) {
  std::string text = job("mm") + board("oak", "25 mm") +
                     "[board.left]\nstock = \"oak\"\nlength = " + std::to_string(rails * 150) +
                     "\nwidth = 50\nturn = 90\nat = [50, 0, 0]\n"
                     "[board.right]\nstock = \"oak\"\nlength = " +
                     std::to_string(rails * 150) + "\nwidth = 50\nturn = 90\nat = [450, 0, 0]\n";
  for (int r = 0; r < rails; ++r) {
    const std::string name = "rail " + std::to_string(r + 1);
    text += "[board.\"" + name + "\"]\nstock = \"oak\"\nlength = 420\nwidth = 60\nat = [15, " +
            std::to_string(r * 150 + 45) + ", 0]\n";
    for (const char* side : {"left", "right"})
      text += "[joint." + std::string(side) + std::to_string(r + 1) +
              "]\nkind = \"mortise and tenon\"\nhost = \"" + side + "\"\nguest = \"" + name +
              "\"\n";
  }
  return text + more;
}

inline std::string leaning_case(const std::string& more) {
  return job("mm") + sheet("panel", "18 mm") +
         "[case.c]\noutline = { bottom = 800, height = 600, lean_in = [\"12 deg\", \"0 deg\"] }\n"
         "depth = 300\nstock = \"panel\"\ncorners = \"mitre\"\n"
         "[case.c.shelf.a]\ntop_at = 300\nends = { housing = 6, floor = \"square to walls\" }\n" +
         more;
}

}  // namespace splay::test
