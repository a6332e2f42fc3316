#include "sheets/saw_steps_card.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "drafting/text_block.h"
#include "sheets/part_view_facts.h"
#include "sheets/saw_steps_draw.h"
#include "sheets/saw_steps_rows.h"
#include "sheets/saw_steps_words.h"

namespace splay::sheets {

namespace {

using drafting::Items;
using drafting::Kit;
using drafting::Picture;
using fabrication::Step;

constexpr double card_pad = 1.5, card_gap = 3;
constexpr double close_lines = 1.1,
                 under = 1.7;   // between the lines of a setting, for the least letters
constexpr double tick_box = 5;  // to tick
constexpr double least_words = 40;

class Card {
 public:
  Card(const Context& context, const StepWork& work, std::string ids, double width,
       const CardPlace& place)
      : context_(context),
        kit_(context.kit),
        work_(work),
        step_(*work.step),
        ids_(std::move(ids)),
        width_(width),
        place_(place),
        fields_(setting_fields(context, work)) {}

  Picture draw() {
    head();
    if (!place_.as_before && fields_.size() > 1) strip();
    body();
    ink::Path frame, rule;
    frame.rect({{0, -depth_}, {width_, 0}});
    rule.move({0, -band()}).line({width_, -band()});
    table_.items.emplace_back(ink::Stroke{std::move(rule), kit_.thin()});
    table_.items.emplace_back(ink::Stroke{std::move(frame), {kit_.look.middle}});
    items_.insert(items_.begin(), std::move(table_));
    return {std::move(items_), width_, depth_};
  }

 private:
  const fabrication::PartRow& row() const {
    return context_.plan.rows[static_cast<std::size_t>(step_.row)];
  }

  // The head is 8 mm high, and higher for a larger number.
  double band() const { return 8 + 1.4 * std::max(0.0, kit_.look.heading - 5); }
  // How much more air larger letters want.
  double grown() const { return kit_.look.lettering / 2.5; }

  void write(Vec2 at, std::string words, double letter, ink::Face face = ink::Face::regular,
             ink::Align align = ink::Align::left) {
    table_.items.emplace_back(ink::Text{at, std::move(words), letter, 0, align, face});
  }

  // Boxes to tick, the step, what is done, of which part.
  void head() {
    const double base = -band() / 2;
    Picture boxes = tick_boxes(kit_, row().quantity(), tick_box);
    drafting::append(table_.items,
                     drafting::moved(std::move(boxes.items), {card_pad, base + tick_box / 2}));
    double x = card_pad + boxes.width + 1;
    const double id = kit_.look.heading;
    write({x, base - id / 2}, ids_, id, ink::Face::bold);
    const double id_width = kit_.width(ids_, id, ink::Face::bold);
    table_.items.emplace_back(
        ink::Link{{{x, -band() + 0.5}, {x + id_width, -0.5}}, part_anchor(row().mark)});
    x += id_width + card_gap;
    const std::string part =
        row_name(context_, row()) + ", " + std::to_string(row().quantity()) + " off";
    const double letter = kit_.look.lettering;
    const double room = width_ - card_pad - x;
    const double part_width = std::min(kit_.width(part, letter), 0.5 * room);
    write({width_ - card_pad, base - letter / 2},
          drafting::shortened(kit_, part, part_width + 0.1, letter), letter, ink::Face::regular,
          ink::Align::right);
    table_.items.emplace_back(
        drafting::fitted(kit_, capitalised(step_.name),
                         {{x, -band() + 0.4}, {width_ - card_pad - part_width - card_gap, -0.4}},
                         {.height = kit_.look.figures, .face = ink::Face::bold}));
    depth_ = band();
  }

  // The settings in boxes beside each other, each as wide as it needs; the rest is shared. What is
  // too wide together is broken after its commas, and where that is not enough set on more rows.
  void strip() {
    if (needed(0, fields_.size()) > width_)
      for (SettingField& field : fields_) {
        field.name = broken(field.name);
        field.note = broken(field.note);
      }
    for (std::size_t rows = 1;; ++rows) {
      const std::size_t each = (fields_.size() + rows - 1) / rows;
      bool fits = true;
      for (std::size_t i = 0; i < fields_.size(); i += each)
        fits = fits && needed(i, std::min(i + each, fields_.size())) <= width_;
      if (!fits && each > 1) continue;
      for (std::size_t i = 0; i < fields_.size(); i += each)
        strip_row(i, std::min(i + each, fields_.size()));
      return;
    }
  }

  static std::string broken(std::string text) {
    for (std::size_t at = 0; (at = text.find(", ", at)) != std::string::npos; ++at)
      text[at + 1] = '\n';
    return text;
  }

  double needed(const SettingField& field) const {
    const double letter = kit_.look.lettering;
    return 2 * card_pad +
           std::max({drafting::widest_line(kit_, field.name, letter, ink::Face::italic),
                     drafting::widest_line(kit_, field.value, kit_.look.figures, ink::Face::bold),
                     drafting::widest_line(kit_, field.note, letter)});
  }

  double needed(std::size_t from, std::size_t to) const {
    double sum = 0;
    for (std::size_t i = from; i < to; ++i) sum += needed(fields_[i]);
    return sum;
  }

  void strip_row(std::size_t from, std::size_t to) {
    const double sum = needed(from, to);
    const double more = (width_ - sum) / static_cast<double>(to - from);
    double height = 0, x = 0;
    std::vector<double> widths;
    for (std::size_t i = from; i < to; ++i) {
      const double own = needed(fields_[i]);
      widths.push_back(more > 0 ? own + more : own * width_ / sum);
      height = std::max(height, field(fields_[i], {0, -depth_}, widths.back(), false));
    }
    for (std::size_t i = from; i < to; ++i) {
      const double wide = widths[i - from];
      table_.items.emplace_back(
          ink::Stroke{ink::Path{}.rect({{x, -depth_ - height}, {x + wide, -depth_}}), kit_.thin()});
      field(fields_[i], {x, -depth_}, wide, true);
      x += wide;
    }
    depth_ += height;
  }

  // Its lines under the corner, written if asked; how high they stand.
  double field(const SettingField& field, Vec2 corner, double wide, bool written) {
    const double letter = kit_.look.lettering, figure = kit_.look.figures;
    const double air = close_lines * grown();
    double down = 0;
    const auto say = [&](const std::string& text, double height, ink::Face face, double above) {
      down += above;
      for (const std::string& line :
           drafting::wrap(kit_, text, wide - 2 * card_pad, height, face)) {
        down += air + height;
        if (written) write({corner.x + card_pad, corner.y - down}, line, height, face);
      }
    };
    say(field.name, letter, ink::Face::italic, 0);
    say(field.value, figure, ink::Face::bold, 0);
    say(field.note, letter, ink::Face::regular, (under - close_lines) * grown());
    return down + air;
  }

  void body() {
    Picture pictures{{}, 0, 0};
    if (work_.why.empty()) {
      pictures = end_picture(context_, work_);
      pictures =
          drafting::side_by_side(std::move(pictures), plan_picture(context_, work_), card_gap);
    }
    const double left = pictures.width > 0 ? card_pad + pictures.width + card_gap : card_pad;
    const double beside = width_ - card_pad - left, whole = width_ - 2 * card_pad;
    Picture text = words(std::max(beside, least_words));
    // Many words beside small pictures make a high card, half of it empty.
    constexpr double much_lower = 0.75;
    Picture across = beside < whole ? words(whole) : Picture{};
    const bool below = beside < least_words ||
                       (across.height > 0 &&
                        pictures.height + card_gap + across.height < much_lower * text.height);
    if (below) text = std::move(across);
    const double top = depth_ + card_pad;
    const double height =
        below ? pictures.height + card_gap + text.height : std::max(pictures.height, text.height);
    const double pictures_top = below ? top : top + (height - pictures.height) / 2;
    const Vec2 words_at =
        below ? Vec2{card_pad, -top - pictures.height - card_gap} : Vec2{left, -top};
    drafting::append(items_, drafting::moved(std::move(pictures.items), {card_pad, -pictures_top}));
    drafting::append(items_, drafting::moved(text.items, words_at));
    depth_ = top + height + card_pad;
  }

  Picture words(double width) const {
    drafting::Story story;
    const auto say = [&](const std::string& text, ink::Face face = ink::Face::regular) {
      if (text.empty()) return;
      story.push_back(drafting::body_text(kit_, text, width, face));
      story.back().space_after = 1.4;
    };
    if (fields_.size() == 1 && !place_.as_before)
      say(joined({fields_[0].name + " " + fields_[0].value, fields_[0].note}) + ".",
          ink::Face::bold);
    std::string how = lying_words(context_, work_);
    if (const std::string waste = waste_words(work_); !waste.empty()) how += " " + waste;
    say(how + " " + turn_words(work_));
    say(mark_words(context_, work_));
    say(way_words(context_, work_));
    std::string mind;
    for (const fabrication::Flag flag : step_.flags)
      if (std::ranges::find(place_.said, flag) == place_.said.end())
        if (const std::string caution = caution_words(step_, flag); !caution.empty())
          mind += (mind.empty() ? "Mind: " : " ") + caution;
    say(mind, ink::Face::bold);
    if (!work_.why.empty()) say("Not drawn: " + work_.why + ".", ink::Face::bold);
    say(proof_words(context_, step_), step_.proven ? ink::Face::italic : ink::Face::bold);
    return drafting::as_picture(story, width);
  }

  const Context& context_;
  const Kit& kit_;
  const StepWork& work_;
  const Step& step_;
  std::string ids_;
  double width_;
  const CardPlace& place_;
  std::vector<SettingField> fields_;
  double depth_ = 0;
  ink::Group table_{"table", {}};
  Items items_;
};

// All that the first part's steps on this card take, one after the other, is drawn at once.
StepWork drawn_together(const JoinedSteps& steps) {
  StepWork drawn = *steps.front();
  if (!told_by_marks(*drawn.step) || sawn(*drawn.step) || !drawn.why.empty()) return drawn;
  const Step* last = drawn.step;
  for (const StepWork* work : steps) {
    if (work->step->row != drawn.step->row || work->step != last + 1) continue;
    if (work->step->face != drawn.step->face) break;
    last = work->step;
    drawn.after = work->after;
  }
  return drawn;
}

}  // namespace

drafting::Story step_cards(const Context& context, const JoinedSteps& steps, double width,
                           const CardPlace& place) {
  constexpr double between_cards = 2.5;
  const std::vector<JoinedSteps> runs = runs_of(context, steps);
  const StepWork drawn = drawn_together(steps);
  drafting::Story story{
      drafting::of_picture(Card(context, drawn, ids_of(runs.front()), width, place).draw(), 0)};
  story.front().head = place.head;
  drafting::Story rows = run_rows(context, runs, width, *place.head);
  if (!rows.empty()) story.front().keep_with_next = true;
  drafting::add(story, std::move(rows));
  story.back().space_after = between_cards;
  return story;
}

}  // namespace splay::sheets
