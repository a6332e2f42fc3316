// A small made-up kind of furniture, to read files without any real construct.
#pragma once

#include <string>

#include "model/project.h"
#include "reading/reading.h"

namespace reading_test {

using namespace splay;

enum class Ends { butt, housed };

struct Ledge : model::Fields {
  std::string name;
  model::Given<Length> top_at;
  model::Given<Ends> ends{Ends::butt};
  void fields(model::FieldVisitor& visit) override;
};

struct Outline : model::Fields {
  model::Given<Length> bottom, top;
  model::Given<std::vector<Angle>> lean;
  void fields(model::FieldVisitor& visit) override;
};

struct Crate : model::Item {
  Outline outline;
  model::Given<Length> depth;
  model::Given<Angle> cant;
  model::Given<double> load{1.5};
  model::Given<int> count{1};
  model::Given<bool> lid{false};
  model::Given<std::string> stock, beside, remark;
  model::Given<model::Date> bought;
  model::Given<std::vector<std::string>> through;
  model::Given<std::vector<Length>> sizes;
  model::Given<std::vector<Vec2>> plan;
  model::Tables<Ledge> ledges;
  void fields(model::FieldVisitor& visit) override;
  void check(model::Complaints& complaints) const override;
};

struct Stool : model::Item {
  model::Given<Length> height;
  void fields(model::FieldVisitor& visit) override;
};

const model::Registry& furniture();

// A sound file: a job in inches, sizes, a stock and whatever `more` adds.
std::string file_with(const std::string& more, const std::string& sizes = "");

// [crate.body] with what it needs and `more` in it.
std::string crate(const std::string& more);

reading::ProjectReading read(const std::string& text);
std::string all_text(const reading::ProjectReading& reading, const std::string& source);
bool has_code(const reading::ProjectReading& reading, std::string_view code);
const Crate& first_crate(const reading::ProjectReading& reading);

}  // namespace reading_test
