// A list of plain values that keeps short ones in place: the loops of cell faces have mostly four
// to six corners, and each cut copies them all.
#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <initializer_list>
#include <type_traits>

namespace splay {

template <class T, std::uint32_t N>
class ShortList {
  static_assert(std::is_trivially_copyable_v<T>);

 public:
  ShortList() = default;
  ShortList(std::initializer_list<T> values) : ShortList(values.begin(), values.end()) {}
  template <class Iterator>
  ShortList(Iterator first, Iterator last) {
    for (; first != last; ++first) push_back(*first);
  }
  ShortList(const ShortList& other) { copy(other); }
  ShortList(ShortList&& other) noexcept { take(other); }
  ShortList& operator=(const ShortList& other) {
    if (this == &other) return *this;
    size_ = 0;
    copy(other);
    return *this;
  }
  ShortList& operator=(ShortList&& other) noexcept {
    if (this == &other) return *this;
    release();
    take(other);
    return *this;
  }
  ~ShortList() { release(); }

  std::size_t size() const { return size_; }
  bool empty() const { return size_ == 0; }
  T* begin() { return data_; }
  T* end() { return data_ + size_; }
  const T* begin() const { return data_; }
  const T* end() const { return data_ + size_; }
  T& operator[](std::size_t i) { return data_[i]; }
  const T& operator[](std::size_t i) const { return data_[i]; }
  const T& front() const { return data_[0]; }
  const T& back() const { return data_[size_ - 1]; }

  void push_back(T value) {
    if (size_ == capacity_) grow(2 * capacity_);
    data_[size_++] = value;
  }

 private:
  void copy(const ShortList& other) {
    if (other.size_ > capacity_) grow(other.size_);
    std::copy(other.begin(), other.end(), data_);
    size_ = other.size_;
  }
  void take(ShortList& other) {
    if (other.data_ == other.own_) {
      copy(other);
      return;
    }
    data_ = other.data_;
    size_ = other.size_;
    capacity_ = other.capacity_;
    other.data_ = other.own_;
    other.size_ = 0;
    other.capacity_ = N;
  }
  void grow(std::uint32_t capacity) {
    T* larger = new T[capacity];
    std::copy(begin(), end(), larger);
    const std::uint32_t size = size_;
    release();
    data_ = larger;
    size_ = size;
    capacity_ = capacity;
  }
  void release() {
    if (data_ != own_) delete[] data_;
    data_ = own_;
    size_ = 0;
    capacity_ = N;
  }

  T own_[N];
  T* data_ = own_;
  std::uint32_t size_ = 0, capacity_ = N;
};

}  // namespace splay
