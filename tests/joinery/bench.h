// Two straight parts on a bench of their own, for tests of joints.
#pragma once

#include <catch2/catch.hpp>
#include <memory>
#include <string>

#include "joinery/kinds.h"
#include "parts/audit.h"
#include "parts/builder.h"
#include "support/chance.h"

namespace splay::test {

struct Bench {
  std::unique_ptr<model::Project> project = std::make_unique<model::Project>();
  parts::Builder builder{*project};

  int add(const std::string& name, const Rigid& place, Solid body);
  // A bar of the given width and thickness, its axis from x = from to x = to of its own frame.
  int bar(const std::string& name, const Rigid& place, double from, double to, double width,
          double thickness);
  double volume(int part) const { return builder.part(part).body.volume(); }
};

// A joint that was made: the finished pieces, sound in every respect.
struct Made {
  parts::Assembly assembly;
  const parts::Joint& joint() const { return assembly.joints.front(); }
  const parts::Part& part(const std::string& name) const;
  const parts::Operation& operation(const std::string& part_name, const std::string& name) const;
};

// Makes the joint, finishes, and requires: no refusal, no stop, every mate within 1e-6 mm.
Made make_sound(Bench&& bench, const joinery::JointKind& kind, int host, int guest);

// The sentence of a joint that can't be made; requires that nothing was cut or recorded.
std::string refusal(Bench& bench, const joinery::JointKind& kind, int host, int guest);

// Any place and orientation within a metre.
Rigid any_frame(Chance& chance);

constexpr double deg = std::numbers::pi / 180;

inline void give(model::Given<Length>& field, double mm) {
  field.value = {mm};
  field.given = true;
}

// A host along its own x and a guest whose centre line meets the middle of one of the host's sides.
struct Tee {
  double host_width = 60, host_thickness = 45;
  double guest_width = 40, guest_thickness = 20;
  double lean = 0;   // of the guest towards the host's length, radians
  double skew = 0;   // of the guest across the host
  double roll = 0;   // of the guest about its own length
  int face = 3;      // of the host: 2 y_low, 3 y_high, 4 z_low, 5 z_high
  double taper = 0;  // of the face it meets, along the host's length
  double past = 60;  // how far the guest reaches past the face
  double host_length = 600, guest_length = 300;  // the guest's outside the host
  Rigid world;                                   // where all of it stands
  double cosine() const;                         // of the guest's line to the face's normal
  double room() const;                           // length of the guest's line inside the host
};
// Host is part 0, guest part 1.
Bench lay(const Tee& tee);
Tee random_tee(Chance& chance, double most_lean, double most_skew, double most_roll);

}  // namespace splay::test
