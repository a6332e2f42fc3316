// Sets of parts as bits.
#pragma once

#include <algorithm>
#include <bit>
#include <cstdint>
#include <vector>

#include "geometry/short_list.h"

namespace splay::fabrication {

class PartSet {
 public:
  PartSet() = default;
  explicit PartSet(std::size_t parts) {
    for (std::size_t i = 0; i < (parts + 63) / 64; ++i) words_.push_back(0);
  }
  void add(int part) { words_[word(part)] |= bit(part); }
  bool has(int part) const { return (words_[word(part)] & bit(part)) != 0; }
  bool empty() const {
    return std::all_of(words_.begin(), words_.end(), [](std::uint64_t w) { return w == 0; });
  }
  int count() const {
    int sum = 0;
    for (const std::uint64_t w : words_) sum += std::popcount(w);
    return sum;
  }
  int first() const {  // -1 when empty
    for (std::size_t i = 0; i < words_.size(); ++i)
      if (words_[i] != 0) return static_cast<int>(64 * i) + std::countr_zero(words_[i]);
    return -1;
  }
  bool meets(const PartSet& other) const {
    for (std::size_t i = 0; i < words_.size(); ++i)
      if ((words_[i] & other.words_[i]) != 0) return true;
    return false;
  }
  bool within(const PartSet& other) const {
    for (std::size_t i = 0; i < words_.size(); ++i)
      if ((words_[i] & ~other.words_[i]) != 0) return false;
    return true;
  }
  PartSet& operator|=(const PartSet& other) {
    for (std::size_t i = 0; i < words_.size(); ++i) words_[i] |= other.words_[i];
    return *this;
  }
  PartSet& operator&=(const PartSet& other) {
    for (std::size_t i = 0; i < words_.size(); ++i) words_[i] &= other.words_[i];
    return *this;
  }
  PartSet& operator-=(const PartSet& other) {
    for (std::size_t i = 0; i < words_.size(); ++i) words_[i] &= ~other.words_[i];
    return *this;
  }
  friend PartSet operator|(PartSet a, const PartSet& b) { return a |= b; }
  friend PartSet operator&(PartSet a, const PartSet& b) { return a &= b; }
  friend PartSet operator-(PartSet a, const PartSet& b) { return a -= b; }
  bool operator==(const PartSet& other) const {
    return std::equal(words_.begin(), words_.end(), other.words_.begin(), other.words_.end());
  }
  struct Hash {
    std::size_t operator()(const PartSet& set) const {
      std::uint64_t hash = 14695981039346656037U;  // FNV-1a, by words
      for (const std::uint64_t word : set.words_) hash = (hash ^ word) * 1099511628211U;
      return static_cast<std::size_t>(hash ^ (hash >> 32));
    }
  };
  template <class Visit>
  void each(Visit visit) const {  // ascending
    for (std::size_t i = 0; i < words_.size(); ++i)
      for (std::uint64_t left = words_[i]; left != 0; left &= left - 1)
        visit(static_cast<int>(64 * i) + std::countr_zero(left));
  }
  std::vector<int> list() const {
    std::vector<int> all;
    each([&](int part) { all.push_back(part); });
    return all;
  }

 private:
  static std::size_t word(int part) { return static_cast<std::size_t>(part) / 64; }
  static std::uint64_t bit(int part) { return std::uint64_t{1} << (part % 64); }
  ShortList<std::uint64_t, 4> words_;
};

}  // namespace splay::fabrication
