// What is wrong so far: bounded, so that a file of nothing but faults stays cheap.
#pragma once

#include "base/diagnostic.h"
#include "model/field.h"

namespace splay::reading {

inline constexpr std::size_t most_faults =
    200;  // reported; a last one says how many more there are

class Faults : public model::Complaints {
 public:
  void complain(Diagnostic diagnostic) override;
  bool none() const { return kept_.empty(); }
  std::size_t count() const { return count_; }  // so far, repeats and all
  std::vector<Diagnostic> finish() &&;          // in file order, without repeats

 private:
  void trim();

  std::vector<Diagnostic> kept_;
  std::size_t dropped_ = 0;
  std::size_t count_ = 0;
};

}  // namespace splay::reading
