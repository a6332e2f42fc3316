#include "model/style.h"

namespace splay::model {

namespace {

constexpr Range pen{0.1, 2.0, false};        // mm
constexpr Range capitals{2.5, 20.0, false};  // mm
constexpr Range grey{0, 1, false};           // 0 black, 1 white

}  // namespace

void Style::fields(FieldVisitor& visit) {
  visit.length(may("wide", "width of outlines that are seen"), wide, pen);
  visit.length(may("narrow", "width of hidden, dimension and hatching lines"), narrow, pen);
  visit.length(may("frame", "width of the border and the title block"), frame, pen);
  visit.length(may("lettering", "capital height of notes and tables"), lettering, capitals);
  visit.length(may("figures", "capital height of dimensions"), figures, capitals);
  visit.length(may("heading", "capital height of headings"), heading, capitals);
  visit.length(may("title", "capital height of the page title"), title, capitals);
  visit.number(may("tone_light", "grey of a face turned to the light, 0 black to 1 white"),
               tone_light, grey);
  visit.number(may("tone_mid", "grey of a face seen in between"), tone_mid, grey);
  visit.number(may("tone_dark", "grey of a face turned away"), tone_dark, grey);
}

void Style::check(Complaints& complaints) const {
  constexpr double slack = 1e-9;
  if (wide->mm < 2 * narrow->mm - slack)
    complaints.complain({wide.given ? wide.span : narrow.span, "lines-too-alike",
                         "wide lines are less than twice as wide as narrow ones",
                         "wide at least twice narrow (ISO 128-2)", ""});
  if (!(*tone_light > *tone_mid && *tone_mid > *tone_dark)) {
    const auto& odd = tone_mid.given ? tone_mid : tone_light.given ? tone_light : tone_dark;
    complaints.complain({odd.span, "tones-out-of-order", "the three greys are not in order",
                         "tone_light over tone_mid over tone_dark", ""});
  }
}

}  // namespace splay::model
