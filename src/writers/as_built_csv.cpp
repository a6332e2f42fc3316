// The as-built record: measured sizes beside the designed ones, and what they differ by.
#include "base/figure.h"
#include "fabrication/as_built.h"
#include "writers/csv.h"
#include "writers/formats.h"

namespace splay::writers {

Files write_as_built(const Subject& subject) {
  constexpr int places = 3;
  if (subject.as_built == nullptr || !subject.as_built->given) return {};
  std::string file =
      csv_record({"size", "designed mm", "measured mm", "difference mm", "designed as printed"});
  const FigureStyle figures = subject.plan.project->job.figures();
  for (const fabrication::Measured& line : fabrication::measured(subject.plan, *subject.as_built))
    file += csv_record({line.what, plain_number(line.designed, places),
                        plain_number(line.measured, places),
                        plain_number(line.difference(), places), figures.with_unit(line.designed)});
  for (const std::string& note : *subject.as_built->notes)
    file += csv_record({"note: " + note, "", "", "", ""});
  return {{subject.name + "-as-built.csv", file}};
}

}  // namespace splay::writers
