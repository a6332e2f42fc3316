#include <algorithm>
#include <limits>

#include "drafting/flow_fill.h"

namespace splay::drafting {

namespace {

constexpr double split_cost = 0.2;  // of a table: as bad as a column 45 % empty
constexpr double never = std::numeric_limits<double>::infinity();

// Columns in the order in which they fill; best_[c][i] is the least cost of blocks start..i in the
// first c of them.
class Leveller {
 public:
  Leveller(const Story& story, std::size_t start, std::vector<double> rooms)
      : story_(story), rooms_(std::move(rooms)), tops_(story.size() + 1, 0) {
    for (std::size_t i = 0; i < story.size(); ++i)
      tops_[i + 1] = tops_[i] + story[i].picture.height + story[i].space_after;
    best_.assign(rooms_.size() + 1, std::vector<double>(story.size() + 1, never));
    from_.assign(rooms_.size() + 1, std::vector<std::size_t>(story.size() + 1, 0));
    best_[0][start] = 0;
    for (std::size_t c = 0; c < rooms_.size(); ++c)
      for (std::size_t j = 0; j <= story.size(); ++j)
        if (best_[c][j] < never) fill(c, j);
  }

  // The blocks of each column; none when there is no way.
  std::vector<Filled> columns() const {
    std::vector<Filled> found;
    std::size_t to = story_.size();
    if (best_[rooms_.size()][to] == never) return found;
    for (std::size_t c = rooms_.size(); c > 0; --c) {
      const std::size_t from = from_[c][to];
      if (from < to) found.push_back({from, to, head_at(story_, from)});
      to = from;
    }
    std::reverse(found.begin(), found.end());
    return found;
  }

 private:
  void fill(std::size_t c, std::size_t from) {
    if (from == story_.size()) {
      offer(c, from, from, 1);  // an empty column after the end
      return;
    }
    const Picture* head = head_at(story_, from);
    const double above = head == nullptr ? 0 : head->height;
    for (std::size_t to = from + 1; to <= story_.size(); ++to) {
      const double used = above + tops_[to] - tops_[from] - story_[to - 1].space_after;
      if (used > rooms_[c] + flow_slack) break;
      if (to == story_.size() || may_break(story_, to)) {
        const double empty = std::max(0.0, 1 - used / rooms_[c]);
        offer(c, from, to, empty * empty + (head == nullptr ? 0 : split_cost));
      }
      if (to < story_.size() && story_[to].own_column) break;
    }
  }

  void offer(std::size_t c, std::size_t from, std::size_t to, double cost) {
    constexpr double alike = 1e-9;  // then the earlier column is the fuller one
    if (best_[c][from] + cost > best_[c + 1][to] + alike) return;
    best_[c + 1][to] = best_[c][from] + cost;
    from_[c + 1][to] = from;
  }

  const Story& story_;
  std::vector<double> rooms_, tops_;
  std::vector<std::vector<double>> best_;
  std::vector<std::vector<std::size_t>> from_;
};

}  // namespace

Poured levelled(const Story& story, Poured given, const Rects& first, const Rects& next,
                std::size_t from_page) {
  const auto rects = [&](std::size_t page) -> const Rects& { return page == 0 ? first : next; };
  std::vector<double> rooms;
  for (std::size_t page = from_page; page < given.size(); ++page)
    for (const ink::Rect& rect : rects(page)) rooms.push_back(rect.height());
  const std::vector<Filled> columns =
      Leveller(story, given[from_page].front().from, std::move(rooms)).columns();
  if (columns.empty()) return given;
  std::size_t column = 0;
  for (std::size_t page = from_page; page < given.size(); ++page) {
    given[page].clear();
    for (std::size_t k = 0; k < rects(page).size() && column < columns.size(); ++k)
      given[page].push_back(columns[column++]);
  }
  return given;
}

}  // namespace splay::drafting
