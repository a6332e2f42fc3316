// The cut list for a spreadsheet: one record for each kind of part, lengths in millimetres and as
// they are printed in the binder.
#include "base/figure.h"
#include "fabrication/row_order.h"
#include "writers/csv.h"
#include "writers/formats.h"

namespace splay::writers {

namespace {

using fabrication::PartRow;

constexpr int places = 3;  // of a millimetre

std::string millimetres(double mm) { return plain_number(mm, places); }

std::vector<std::string> record(const fabrication::Plan& plan, const PartRow& row) {
  const FigureStyle figures = plan.project->job.figures();
  std::string material;
  for (const fabrication::StockUse& stock : plan.stock)
    if (stock.name == row.stock) material = stock.material;
  std::string cuts;
  for (const fabrication::CutReport& cut : row.cuts)
    cuts += (cuts.empty() ? "" : "\n") + cut.name + ": face angle " +
            degrees_text(Angle{cut.face_angle}.degrees()) + ", bevel " +
            degrees_text(Angle{cut.bevel}.degrees());
  return {row.mark,
          row.name,
          std::to_string(row.quantity()),
          std::string(fabrication::word(row.hand)),
          row.stock,
          material,
          figures.text(row.finished.x),
          figures.text(row.finished.y),
          figures.text(row.finished.z),
          millimetres(row.finished.x),
          millimetres(row.finished.y),
          millimetres(row.finished.z),
          millimetres(row.long_point),
          millimetres(row.short_point),
          millimetres(row.blank.x),
          millimetres(row.blank.y),
          millimetres(row.blank.z),
          plain_number(row.mass, places),
          cuts};
}

}  // namespace

Files write_cut_list(const Subject& subject) {
  const std::string unit = *subject.plan.project->job.units == Unit::inch ? " in" : " as printed";
  std::string file =
      csv_record({"mark", "part", "off", "hand", "stock", "material", "length" + unit,
                  "width" + unit, "thickness" + unit, "length mm", "width mm", "thickness mm",
                  "long point mm", "short point mm", "blank length mm", "blank width mm",
                  "blank thickness mm", "mass kg", "cuts"});
  for (const PartRow* row : fabrication::rows_in_order(subject.plan))
    file += csv_record(record(subject.plan, *row));
  return {{subject.name + "-cut-list.csv", file}};
}

}  // namespace splay::writers
