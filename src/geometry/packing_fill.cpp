#include "geometry/packing_fill.h"

#include <algorithm>

namespace splay::packing {

namespace {

constexpr int most_nodes = 4000;

class Filling {
 public:
  Filling(const Supply& supply, const std::vector<char>& skip)
      : supply_(supply), rest_(supply.length.size() + 1, 0), count_(supply.count) {
    for (std::size_t i = 0; i < count_.size(); ++i)
      if (!skip.empty() && skip[i] != 0) count_[i] = 0;
    for (std::size_t i = count_.size(); i-- > 0;)
      rest_[i] = rest_[i + 1] + supply.length[i] * count_[i];
  }

  std::vector<int> run(Units room, int must) {
    taken_.assign(count_.size(), 0);
    if (must >= 0) {
      const auto m = static_cast<std::size_t>(must);
      if (supply_.length[m] > room) return taken_;
      taken_[m] = 1;
      room -= supply_.length[m];
      if (count_[m] > 0) {
        --count_[m];
        for (std::size_t i = 0; i <= m; ++i) rest_[i] -= supply_.length[m];
      }
    }
    best_ = taken_;
    least_left_ = room;
    search(0, room);
    return best_;
  }

 private:
  void search(std::size_t i, Units room) {
    if (room < least_left_) {
      least_left_ = room;
      best_ = taken_;
    }
    if (least_left_ == 0 || ++nodes_ > most_nodes) return;
    for (; i < count_.size(); ++i) {
      if (room - rest_[i] >= least_left_) return;  // all that is left would not do better
      const auto most = static_cast<int>(std::min<Units>(count_[i], room / supply_.length[i]));
      for (int n = most; n > 0; --n) {
        taken_[i] += n;
        search(i + 1, room - n * supply_.length[i]);
        taken_[i] -= n;
        if (least_left_ == 0 || nodes_ > most_nodes) return;
      }
    }
  }

  const Supply& supply_;
  std::vector<Units> rest_;  // length of all pieces from here on
  std::vector<int> count_, taken_, best_;
  Units least_left_ = 0;
  int nodes_ = 0;
};

}  // namespace

std::vector<int> fullest(const Supply& supply, Units room, int must,
                         const std::vector<char>& skip) {
  return Filling(supply, skip).run(room, must);
}

}  // namespace splay::packing
