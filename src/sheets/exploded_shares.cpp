#include "sheets/exploded_shares.h"

#include <algorithm>
#include <numeric>
#include <set>

#include "base/index.h"

namespace splay::sheets {

namespace {

using fabrication::Joining;
using Parts = std::vector<int>;

Parts both(const Joining& joining) {
  Parts all;
  std::ranges::set_union(joining.fixed, joining.moving, std::back_inserter(all));
  return all;
}

// Parts that joints tie together, each group ascending, in the order of their first parts.
std::vector<Parts> pieces_of(const parts::Assembly& all) {
  std::vector<int> root(all.parts.size());
  std::iota(root.begin(), root.end(), 0);
  const auto top = [&root](int i) {
    while (root[index(i)] != i) i = root[index(i)] = root[index(root[index(i)])];
    return i;
  };
  for (const parts::Joint& joint : all.joints)
    for (const int part : joint.between) {
      const int one = top(joint.between.front()), other = top(part);
      root[index(std::max(one, other))] = std::min(one, other);
    }
  std::vector<Parts> pieces;
  std::vector<std::size_t> number(all.parts.size());
  for (int part = 0; part < static_cast<int>(all.parts.size()); ++part) {
    const int first = top(part);
    if (first == part) {
      number[index(part)] = pieces.size();
      pieces.emplace_back();
    }
    pieces[number[index(first)]].push_back(part);
  }
  return pieces;
}

class Sharing {
 public:
  Sharing(const fabrication::Plan& plan, std::size_t most)
      : plan_(plan), order_(plan.glue_up.order.joinings), most_(std::max<std::size_t>(most, 2)) {}

  std::vector<ExplodedShare> shares() {
    Parts all(plan_.assembly.parts.size());
    std::iota(all.begin(), all.end(), 0);
    if (all.size() <= most_) return {part_by_part(all, "")};
    std::set<std::vector<std::string>> shown;
    for (const Parts& piece : pieces_of(plan_.assembly)) {
      std::vector<std::string> marks;
      for (const int part : piece) marks.push_back(plan_.mark_of(part));
      std::ranges::sort(marks);
      if (piece.size() > 1 && shown.insert(marks).second) add(piece, name_of(piece));
    }
    return std::move(shares_);
  }

 private:
  std::string name_of(const Parts& piece) const {
    constexpr std::size_t most_names = 3;
    std::vector<std::string> names;
    for (const int part : piece) {
      const auto item = index(plan_.assembly.parts[index(part)].item);
      const std::string& name = plan_.project->items[item]->name;
      if (std::ranges::find(names, name) == names.end()) names.push_back(name);
    }
    std::string text;
    for (std::size_t i = 0; i < std::min(names.size(), most_names); ++i)
      text += (i == 0 ? "" : ", ") + names[i];
    if (names.size() > most_names)
      text += " and " + std::to_string(names.size() - most_names) + " more";
    return text;
  }

  ExplodedShare part_by_part(const Parts& parts, const std::string& name) const {
    ExplodedShare share{name, {}, {}};
    for (const int part : parts) share.blocks.push_back({{part}, ""});
    for (std::size_t j = 0; j < order_.size(); ++j)
      if (std::ranges::includes(parts, both(order_[j])))
        share.joinings.push_back(static_cast<int>(j));
    return share;
  }

  // The joining that made up just these parts, or -1.
  int made_by(const Parts& parts) const {
    for (std::size_t j = order_.size(); j-- > 0;)
      if (both(order_[j]) == parts) return static_cast<int>(j);
    return -1;
  }

  void add(const Parts& piece, const std::string& name) {
    if (piece.size() <= most_) {
      shares_.push_back(part_by_part(piece, name));
      return;
    }
    ExplodedShare share{name, {{piece, ""}}, {}};
    // The largest block is taken apart until all have room, or there are as many as have.
    while (share.blocks.size() < most_) {
      const auto largest = std::ranges::max_element(
          share.blocks, {}, [](const ExplodedBlock& block) { return block.parts.size(); });
      const int last = largest->parts.size() > most_ ? made_by(largest->parts) : -1;
      if (last < 0) break;
      share.joinings.push_back(last);
      largest->parts = order_[index(last)].fixed;
      share.blocks.insert(largest + 1, {order_[index(last)].moving, ""});
    }
    std::ranges::sort(share.joinings);
    int number = 0;
    for (ExplodedBlock& block : share.blocks)
      if (block.parts.size() > 1) block.name = name + ", sub-assembly " + std::to_string(++number);
    const std::vector<ExplodedBlock> blocks = share.blocks;
    // What no joining takes apart is drawn as it is, part by part.
    if (blocks.size() == 1) {
      shares_.push_back(part_by_part(piece, name));
      return;
    }
    shares_.push_back(std::move(share));
    for (const ExplodedBlock& block : blocks)
      if (block.parts.size() > 1) add(block.parts, block.name);
  }

  const fabrication::Plan& plan_;
  const std::vector<Joining>& order_;
  std::size_t most_;
  std::vector<ExplodedShare> shares_;
};

}  // namespace

std::vector<int> ExplodedShare::parts() const {
  Parts all;
  for (const ExplodedBlock& block : blocks)
    all.insert(all.end(), block.parts.begin(), block.parts.end());
  std::ranges::sort(all);
  return all;
}

std::vector<ExplodedShare> exploded_shares(const fabrication::Plan& plan, std::size_t most) {
  return Sharing(plan, most).shares();
}

}  // namespace splay::sheets
