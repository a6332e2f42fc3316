// Fields: the one description of what an author can write.
//
// A table of the file (a job, a stock, a case, a shelf) is a Fields. It names each of its fields
// once to an abstract visitor; reading fills them, `explain` and the reference page print them, the
// editor schema lists them.
#pragma once

#include <array>
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/diagnostic.h"
#include "base/quantity.h"
#include "geometry/vec.h"

namespace splay::model {

// A value with the place where the author wrote it. Not given: `value` is the default, `span` is 0.
template <class T>
struct Given {
  T value{};
  SourceSpan span{};
  bool given = false;
  Given() = default;
  Given(T default_value) : value(std::move(default_value)) {}
  const T& operator*() const { return value; }
  const T* operator->() const { return &value; }
  explicit operator bool() const { return given; }
};

struct Date {
  int year = 0, month = 0, day = 0;
};

// What numbers a field takes. Lengths in mm, angles in radians, plain numbers as they are.
struct Range {
  double least, most;
  bool above_least = false;                 // least itself is refused
  static constexpr double longest = 10000;  // mm: nothing in a small shop is longer
  static constexpr double thinnest = 0.01;  // mm: nothing that can be held is thinner
  static constexpr Range size() { return {thinnest, longest, true}; }    // a real size, not zero
  static constexpr Range allowance() { return {0, longest, false}; }     // may be zero
  static constexpr Range place() { return {-longest, longest, false}; }  // a coordinate
  static constexpr Range degrees(double from, double to) {
    return {Angle::degrees(from).rad, Angle::degrees(to).rad, false};
  }
  static constexpr Range between(double from, double to) { return {from, to, false}; }
};

struct Field {
  std::string_view name;
  std::string_view help;  // one line, a plain sentence without its full stop
  bool required = false;
  std::string_view when_left_out{};  // what holds when it is not given, when that isn't the default
};
inline constexpr Field need(std::string_view name, std::string_view help) {
  return {name, help, true, {}};
}
inline constexpr Field may(std::string_view name, std::string_view help,
                           std::string_view when_left_out = {}) {
  return {name, help, false, when_left_out};
}

// What a word refers to, so that reading can refuse a name that doesn't exist.
enum class Refers { to_nothing, to_stock, to_item };

class Complaints {
 public:
  virtual ~Complaints() = default;
  virtual void complain(Diagnostic diagnostic) = 0;
};

class FieldVisitor;

// A table of the file.
class Fields {
 public:
  virtual ~Fields() = default;
  virtual void fields(FieldVisitor& visit) = 0;
  // Called after all fields were read without fault: what the fields must be together.
  virtual void check(Complaints&) const {}
  SourceSpan span{};   // the table's header or key
  bool given = false;  // the table is in the file
};

// Tables keyed by the author's own names: [case.body.shelf.upper].
class NamedTables {
 public:
  virtual ~NamedTables() = default;
  virtual Fields& add(std::string name) = 0;  // in file order; names are unique by TOML's rules
  virtual std::unique_ptr<Fields> sample() const = 0;  // for the reference: an empty one
};

template <class T>
class Tables : public NamedTables {
 public:
  Fields& add(std::string name) override {
    entries_.push_back(std::make_shared<T>());
    entries_.back()->name = std::move(name);
    return *entries_.back();
  }
  std::unique_ptr<Fields> sample() const override { return std::make_unique<T>(); }
  std::size_t size() const { return entries_.size(); }
  bool empty() const { return entries_.empty(); }
  const T& operator[](std::size_t i) const { return *entries_[i]; }
  const T* find(std::string_view name) const {
    for (const auto& entry : entries_)
      if (entry->name == name) return entry.get();
    return nullptr;
  }

 private:
  std::vector<std::shared_ptr<T>> entries_;
};

class FieldVisitor {
 public:
  virtual ~FieldVisitor() = default;
  virtual void length(const Field&, Given<Length>&, Range) = 0;
  virtual void angle(const Field&, Given<Angle>&, Range) = 0;
  virtual void number(const Field&, Given<double>&, Range) = 0;
  virtual void count(const Field&, Given<int>&, Range) = 0;
  virtual void flag(const Field&, Given<bool>&) = 0;
  virtual void text(const Field&, Given<std::string>&, Refers = Refers::to_nothing) = 0;
  virtual void date(const Field&, Given<Date>&) = 0;
  virtual void word(const Field&, Given<int>& index, std::span<const std::string_view> words) = 0;
  virtual void texts(const Field&, Given<std::vector<std::string>>&) = 0;
  // A list of words out of some, each with its place.
  virtual void words(const Field&, Given<std::vector<Given<int>>>& indices,
                     std::span<const std::string_view> words) = 0;
  virtual void lengths(const Field&, Given<std::vector<Length>>&, Range) = 0;
  virtual void angles(const Field&, Given<std::vector<Angle>>&, Range) = 0;
  virtual void points(const Field&, Given<std::vector<Vec2>>&) = 0;  // [[x, y], ...], mm
  virtual void table(const Field&, Fields&) = 0;
  virtual void tables(const Field&, NamedTables&) = 0;
};

// A field that takes one of an enum's words; `words` in the order of the enumerators.
template <class E, std::size_t N>
void choose(FieldVisitor& visit, const Field& field, Given<E>& value,
            const std::array<std::string_view, N>& words) {
  Given<int> index(static_cast<int>(value.value));
  visit.word(field, index, words);
  value.value = static_cast<E>(index.value);
  value.span = index.span;
  value.given = index.given;
}

}  // namespace splay::model
