// Spelling of values after ISO 10303-21 (clear text encoding), from memory of the standard.
#include <catch2/catch.hpp>

#include "writers/step_file.h"

using namespace splay::writers;

TEST_CASE("reals of a STEP file have a point and give the same double again") {
  CHECK(step_real(0) == "0.");
  CHECK(step_real(-0.0) == "0.");
  CHECK(step_real(12) == "12.");
  CHECK(step_real(-3.25) == "-3.25");
  CHECK(step_real(1e-6) == "1.E-06");
  CHECK(std::stod(step_real(1.0 / 3)) == 1.0 / 3);
}

TEST_CASE("texts of a STEP file") {
  CHECK(step_text("left panel") == "'left panel'");
  CHECK(step_text("maker's \\ mark") == "'maker''s \\\\ mark'");
  CHECK(step_text("\xC3\xA9t\xC3\xA9") == "'\\X2\\00E9\\X0\\t\\X2\\00E9\\X0\\'");
  CHECK(step_text("\xF0\x9F\xAA\x91") == "'\\X4\\0001FA91\\X0\\'");
}
