#include "reading/sizes.h"

#include <algorithm>
#include <cmath>

#include "reading/functions.h"
#include "reading/in_order.h"
#include "reading/values.h"

namespace splay::reading {

namespace {

class SizeReader {
 public:
  SizeReader(const SourceText& source, Evaluator& evaluator, Faults& faults)
      : source_(source), evaluator_(evaluator), faults_(faults) {}

  Sizes read(const toml::table& table) {
    for (const Entry& entry : in_order(table)) add(entry);
    find_references();
    for (std::size_t i = 0; i < entries_.size(); ++i) settle(i);
    return std::move(sizes_);
  }

 private:
  enum class State { waiting, open, settled };
  struct Size {
    std::string name;
    const toml::key* key = nullptr;
    const toml::node* node = nullptr;
    std::vector<std::size_t> needs{};
    State state = State::waiting;
  };

  void add(const Entry& entry) {
    const std::string name(entry.key->str());
    if (!is_name(name) || is_unit(name) || function_of(name) != nullptr || name.size() > 40) {
      faults_.complain(
          {source_.span(entry.key->source()), "bad-size-name",
           "\"" + shown(name) + "\" cannot be the name of a size",
           "up to 40 letters, digits and _, first a letter, no unit or function",
           name.find('-') == std::string::npos ? "" : "a dash would be a subtraction"});
      return;
    }
    sizes_[name] = std::nullopt;
    index_[name] = entries_.size();
    entries_.push_back({name, entry.key, entry.node});
  }

  void find_references() {
    for (Size& size : entries_) {
      const auto* text = size.node->as_string();
      if (text == nullptr) continue;
      try {
        for (const Token& token : tokens_of(text->get()))
          if (const auto found = index_.find(token.text);
              token.type == Token::Type::name && found != index_.end())
            size.needs.push_back(found->second);
      } catch (const Trouble&) {
        // told when the size itself is evaluated
      }
    }
  }

  // Evaluates what a size needs before the size, with a path of its own: a chain may be long.
  void settle(std::size_t first) {
    struct Step {
      std::size_t size;
      std::size_t next_need;
    };
    std::vector<Step> path{{first, 0}};
    while (!path.empty()) {
      Step& step = path.back();
      Size& size = entries_[step.size];
      if (size.state == State::settled) {
        path.pop_back();
        continue;
      }
      size.state = State::open;
      if (step.next_need == size.needs.size()) {
        evaluate(size);
        size.state = State::settled;
        path.pop_back();
        continue;
      }
      const std::size_t need = size.needs[step.next_need++];
      if (entries_[need].state == State::waiting) {
        path.push_back({need, 0});
      } else if (entries_[need].state == State::open) {
        std::vector<std::size_t> round;
        round.reserve(path.size());
        for (const Step& on_path : path) round.push_back(on_path.size);
        round.erase(round.begin(), std::find(round.begin(), round.end(), need));
        refuse_round(round);
      }
    }
  }

  void refuse_round(const std::vector<std::size_t>& round) {
    constexpr std::size_t most_named = 12;
    std::string names = entries_[round.front()].name;
    for (std::size_t i = 1; i < round.size() && i < most_named; ++i)
      names += " -> " + entries_[round[i]].name;
    names += round.size() > most_named ? " -> ..." : "";
    names += " -> " + entries_[round.front()].name;
    for (const std::size_t index : round) {
      entries_[index].state = State::settled;
      sizes_[entries_[index].name] = std::nullopt;
    }
    faults_.complain({source_.span(entries_[round.front()].key->source()), "size-cycle",
                      "sizes go round in a circle: " + names, "a size that something else gives",
                      "give one of them a number"});
  }

  void evaluate(const Size& size) {
    const auto amount = read_amount(*size.node, source_, evaluator_, sizes_, faults_);
    if (amount) sizes_[size.name] = *amount;
  }

  const SourceText& source_;
  Evaluator& evaluator_;
  Faults& faults_;
  std::vector<Size> entries_;
  std::map<std::string, std::size_t, std::less<>> index_;
  Sizes sizes_;
};

}  // namespace

Sizes read_sizes(const toml::table& table, const SourceText& source, Evaluator& evaluator,
                 Faults& faults) {
  return SizeReader(source, evaluator, faults).read(table);
}

}  // namespace splay::reading
