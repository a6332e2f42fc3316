// How pages look: pens, lettering, tones. Read from styles/*.toml by the same reader as a project.
#pragma once

#include "model/field.h"

namespace splay::model {

struct Style : Fields {
  std::string name = "bench";
  // Line widths, mm: a series of ISO 128-2 (wide to narrow at least 2:1).
  Given<Length> wide{Length{0.5}}, narrow{Length{0.25}}, frame{Length{0.7}};
  // Capital heights, mm (ISO 3098 series; 2.5 is the least ever printed).
  Given<Length> lettering{Length{2.5}}, figures{Length{3.5}}, heading{Length{5}}, title{Length{7}};
  Given<double> tone_light{0.93}, tone_mid{0.82}, tone_dark{0.68};  // greys of a toned view
  void fields(FieldVisitor& visit) override;
  void check(Complaints& complaints) const override;
};

}  // namespace splay::model
