#include "sheets/saw_steps_card.h"

#include <algorithm>
#include <cmath>
#include <memory>

#include "drafting/text_block.h"
#include "sheets/part_view_facts.h"
#include "sheets/saw_steps_draw.h"
#include "sheets/saw_steps_words.h"

namespace splay::sheets {

namespace {

using drafting::Items;
using drafting::Kit;
using drafting::Picture;
using fabrication::Step;

constexpr double band = 8, pad = 1.5, gap = 3;
constexpr double box = 5;  // to tick
constexpr std::size_t most_boxes = 4;
constexpr double least_words = 46;

class Card {
 public:
  Card(const Context& context, const StepWork& work, double width, bool as_before)
      : context_(context),
        kit_(context.kit),
        work_(work),
        step_(*work.step),
        width_(width),
        as_before_(as_before) {}

  Picture draw() {
    head();
    if (!as_before_) strip();
    body();
    ink::Path frame, rule;
    frame.rect({{0, -depth_}, {width_, 0}});
    rule.move({0, -band}).line({width_, -band});
    table_.items.emplace_back(ink::Stroke{std::move(rule), kit_.thin()});
    table_.items.emplace_back(ink::Stroke{std::move(frame), {kit_.look.middle}});
    items_.insert(items_.begin(), std::move(table_));
    return {std::move(items_), width_, depth_};
  }

 private:
  const fabrication::PartRow& row() const {
    return context_.plan.rows[static_cast<std::size_t>(step_.row)];
  }

  void write(Vec2 at, std::string words, double letter, ink::Face face = ink::Face::regular,
             ink::Align align = ink::Align::left) {
    table_.items.emplace_back(ink::Text{at, std::move(words), letter, 0, align, face});
  }

  // Boxes to tick, the step, what is done, of which part.
  void head() {
    const std::size_t boxes = std::min(row().quantity(), most_boxes);
    double x = pad;
    for (std::size_t i = 0; i < boxes; ++i, x += box + 1) {
      const double low = -band / 2 - box / 2;
      table_.items.emplace_back(
          ink::Stroke{ink::Path{}.rect({{x, low}, {x + box, low + box}}), {kit_.look.middle}});
    }
    x += 1;
    const double id = kit_.look.heading, base = -band / 2;
    write({x, base - id / 2}, step_.id, id, ink::Face::bold);
    const double id_width = kit_.width(step_.id, id, ink::Face::bold);
    table_.items.emplace_back(
        ink::Link{{{x, -band + 0.5}, {x + id_width, -0.5}}, part_anchor(row().mark)});
    x += id_width + gap;
    const std::string part =
        row_name(context_, row()) + ", " + std::to_string(row().quantity()) + " off";
    const double letter = kit_.look.lettering;
    const double room = width_ - pad - x;
    const double part_width = std::min(kit_.width(part, letter), 0.5 * room);
    write({width_ - pad, base - letter / 2},
          drafting::shortened(kit_, part, part_width + 0.1, letter), letter, ink::Face::regular,
          ink::Align::right);
    table_.items.emplace_back(drafting::fitted(
        kit_, capitalised(step_.name), {{x, -band + 0.4}, {width_ - pad - part_width - gap, -0.4}},
        {.height = kit_.look.figures, .face = ink::Face::bold}));
    depth_ = band;
  }

  // The settings in boxes beside each other, each as wide as it needs; the rest is shared.
  void strip() {
    const std::vector<SettingField> fields = setting_fields(context_, work_);
    if (fields.empty()) return;
    const double letter = kit_.look.lettering, figure = kit_.look.figures;
    std::vector<double> widths;
    double sum = 0;
    for (const SettingField& field : fields) {
      widths.push_back(2 * pad + std::max({kit_.width(field.name, letter, ink::Face::italic),
                                           kit_.width(field.value, figure, ink::Face::bold),
                                           kit_.width(field.note, letter)}));
      sum += widths.back();
    }
    const double more = (width_ - sum) / static_cast<double>(fields.size());
    const double height = 2 * pad + 2 * letter + figure + 3.2;
    double x = 0;
    for (std::size_t i = 0; i < fields.size(); ++i) {
      const double wide = more > 0 ? widths[i] + more : widths[i] * width_ / sum;
      field(fields[i], {{x, -depth_ - height}, {x + wide, -depth_}});
      x += wide;
    }
    depth_ += height;
  }

  void field(const SettingField& field, ink::Rect area) {
    const double letter = kit_.look.lettering, figure = kit_.look.figures;
    const double left = area.low.x + pad, room = area.width() - 2 * pad;
    table_.items.emplace_back(ink::Stroke{ink::Path{}.rect(area), kit_.thin()});
    double base = area.high.y - pad - letter;
    write({left, base}, drafting::shortened(kit_, field.name, room, letter, ink::Face::italic),
          letter, ink::Face::italic);
    base -= figure + 1.6;
    write({left, base}, drafting::shortened(kit_, field.value, room, figure, ink::Face::bold),
          figure, ink::Face::bold);
    base -= letter + 1.6;
    write({left, base}, drafting::shortened(kit_, field.note, room, letter), letter);
  }

  void body() {
    Picture pictures{{}, 0, 0};
    if (work_.why.empty()) {
      pictures = end_picture(context_, work_);
      pictures = drafting::side_by_side(std::move(pictures), plan_picture(context_, work_), gap);
    }
    const double left = pictures.width > 0 ? pad + pictures.width + gap : pad;
    const bool below = width_ - pad - left < least_words;
    const double words_width = below ? width_ - 2 * pad : width_ - pad - left;
    const Picture text = words(words_width);
    const double top = depth_ + pad;
    const double height =
        below ? pictures.height + gap + text.height : std::max(pictures.height, text.height);
    const double pictures_top = below ? top : top + (height - pictures.height) / 2;
    const Vec2 words_at = below ? Vec2{pad, -top - pictures.height - gap} : Vec2{left, -top};
    drafting::append(items_, drafting::moved(std::move(pictures.items), {pad, -pictures_top}));
    drafting::append(items_, drafting::moved(text.items, words_at));
    depth_ = top + height + pad;
  }

  Picture words(double width) const {
    drafting::Story story;
    const auto say = [&](const std::string& text, ink::Face face = ink::Face::regular) {
      if (text.empty()) return;
      story.push_back(drafting::body_text(kit_, text, width, face));
      story.back().space_after = 1.4;
    };
    std::string how = lying_words(context_, work_);
    if (const std::string waste = waste_words(work_); !waste.empty()) how += " " + waste;
    say(how);
    say(turn_words(work_));
    say(mark_words(context_, work_));
    say(way_words(context_, work_));
    for (const std::string& caution : caution_words(work_))
      say("Mind: " + caution, ink::Face::bold);
    if (!work_.why.empty()) say("Not drawn: " + work_.why + ".", ink::Face::bold);
    say(proof_words(context_, step_), step_.proven ? ink::Face::italic : ink::Face::bold);
    return drafting::as_picture(story, width);
  }

  const Context& context_;
  const Kit& kit_;
  const StepWork& work_;
  const Step& step_;
  double width_;
  bool as_before_;
  double depth_ = 0;
  ink::Group table_{"table", {}};
  Items items_;
};

// Its own fence or stop, where it isn't the one drawn.
std::string own_setting(const Context& context, const StepWork& work, const StepWork& first) {
  if (std::abs(work.step->printed.distance - first.step->printed.distance) < 1e-3) return {};
  for (const SettingField& field : setting_fields(context, work))
    if (field.name == "Fence to line" || field.name == "Stop to line")
      return field.name + " " + field.value + ", " + field.note + ". ";
  return {};
}

// A step that is the same cut as the card's: boxes to tick, what is done of which part, and what
// differs from the first.
Picture step_row(const Context& context, const StepWork& work, const StepWork& first,
                 double width) {
  const Kit& kit = context.kit;
  const fabrication::PartRow& row = context.plan.rows[static_cast<std::size_t>(work.step->row)];
  constexpr double line = 6.4, small_box = 4;
  ink::Group table{"table", {}};
  double x = pad;
  for (std::size_t i = 0; i < std::min(row.quantity(), most_boxes); ++i, x += small_box + 1)
    table.items.emplace_back(
        ink::Stroke{ink::Path{}.rect({{x, -line / 2 - small_box / 2},
                                      {x + small_box, -line / 2 + small_box / 2}}),
                    {kit.look.middle}});
  const double id = kit.look.figures, letter = kit.look.lettering, base = -line / 2;
  x += 1;
  table.items.emplace_back(
      ink::Text{{x, base - id / 2}, work.step->id, id, 0, ink::Align::left, ink::Face::bold});
  const double id_width = kit.width(work.step->id, id, ink::Face::bold);
  table.items.emplace_back(
      ink::Link{{{x, -line + 0.3}, {x + id_width, -0.3}}, part_anchor(row.mark)});
  x += id_width + gap;
  const double room = width - pad - x;
  const std::string part = row_name(context, row) + ", " + std::to_string(row.quantity()) + " off";
  const double part_width = std::min(kit.width(part, letter), 0.5 * room);
  table.items.emplace_back(ink::Text{{width - pad, base - letter / 2},
                                     drafting::shortened(kit, part, part_width + 0.1, letter),
                                     letter,
                                     0,
                                     ink::Align::right});
  table.items.emplace_back(drafting::fitted(
      kit, capitalised(work.step->name), {{x, -line + 0.3}, {width - pad - part_width - gap, -0.3}},
      {.height = letter, .face = ink::Face::bold}));
  const std::string laid = laid_words(context, work);
  std::string words = own_setting(context, work, first);
  words += laid == laid_words(context, first) ? "Lies as drawn." : laid;
  words += " " + turn_words(work);
  if (const std::string proof = proof_words(context, *work.step);
      proof != proof_words(context, *first.step))
    words += " " + proof;
  const Picture text =
      drafting::paragraph(kit, words, width - 2 * pad, {.height = kit.look.lettering});
  const double depth = line + text.height + pad;
  table.items.emplace_back(ink::Stroke{ink::Path{}.rect({{0, -depth}, {width, 0}}), kit.thin()});
  Items items{std::move(table)};
  drafting::append(items, drafting::moved(text.items, {pad, -line}));
  return {std::move(items), width, depth};
}

Picture going_on(const Context& context, const Step& first, double width) {
  const Kit& kit = context.kit;
  constexpr double high = 6;
  ink::Group table{"table", {}};
  table.items.emplace_back(ink::Stroke{ink::Path{}.rect({{0, -high}, {width, 0}}), kit.thin()});
  table.items.emplace_back(
      ink::Text{{pad, -high / 2 - kit.look.lettering / 2},
                "Set as for " + first.id + " but for what a row says, and as it is drawn there",
                kit.look.lettering,
                0,
                ink::Align::left,
                ink::Face::italic});
  return {{std::move(table)}, width, high};
}

}  // namespace

drafting::Story step_cards(const Context& context, const JoinedSteps& steps, double width,
                           bool as_before) {
  constexpr double between_cards = 3;
  const StepWork& first = *steps.front();
  drafting::Story story{drafting::of_picture(Card(context, first, width, as_before).draw(), 0)};
  const auto head = std::make_shared<const Picture>(going_on(context, *first.step, width));
  for (std::size_t i = 1; i < steps.size(); ++i) {
    drafting::Block block = drafting::of_picture(step_row(context, *steps[i], first, width), 0);
    block.head = head;
    story.push_back(std::move(block));
  }
  story.back().space_after = between_cards;
  return story;
}

}  // namespace splay::sheets
