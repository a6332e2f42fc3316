#include "sheets/part_view_detail.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <span>

#include "drafting/conventions.h"
#include "drafting/hatch.h"
#include "drafting/text_block.h"
#include "sheets/part_view_draw.h"
#include "sheets/part_view_names.h"
#include "sheets/part_view_rows.h"

namespace splay::sheets {

namespace {

using drafting::Placement;
using Loop = std::vector<Vec2>;

constexpr double beside_width = 38;  // of a caption beside the drawing
constexpr double row_off = 7;

ink::Rect seen_box(const View& view, const Box& box) {
  ink::Rect seen = drafting::no_rect();
  for (const double x : {box.low.x, box.high.x})
    for (const double y : {box.low.y, box.high.y})
      for (const double z : {box.low.z, box.high.z}) {
        const Vec2 p = view.project({x, y, z});
        seen = drafting::joined(seen, {p, p});
      }
  return seen;
}

struct Border {
  Vec2 inward;
  double at;
};

std::vector<Border> borders(ink::Rect window) {
  return {{{1, 0}, window.low.x},
          {{-1, 0}, -window.high.x},
          {{0, 1}, window.low.y},
          {{0, -1}, -window.high.y}};
}

bool on_border(const std::vector<Border>& borders, Vec2 a, Vec2 b) {
  return std::ranges::any_of(borders, [&](const Border& border) {
    return std::abs(dot(border.inward, a) - border.at) < 1e-9 &&
           std::abs(dot(border.inward, b) - border.at) < 1e-9;
  });
}

class Drawing {
 public:
  Drawing(const PartSheet& sheet, const Detail& detail, double most_up)
      : sheet_(sheet), kit_(sheet.kit()), detail_(detail) {
    const ink::Rect seen = seen_box(detail.view, detail.of);
    scale_ = drafting::largest_scale(*sheet.context.job().units, {seen.width(), seen.height()},
                                     {detail.across, most_up}, true);
    placement_ = {scale_.ratio(), {0, 0}};
    window_ = drafting::grown(seen, detail.air / scale_.ratio());
  }

  DetailDrawing draw() {
    if (detail_.cut)
      section();
    else
      lines();
    const drafting::Items picture = items_;
    // Figures stand best next to the wood; where they are in the way of the angles these go first.
    for (const bool angles_first : {false, true}) {
      items_ = picture;
      reach_.clear();
      texts_.clear();
      room_.emplace(drafting::grown(wood_, 120));
      room_->take(kit_, items_);
      if (!angles_first) rows();
      const bool clear = angles();
      if (angles_first) rows();
      if (clear) break;
    }
    names();
    return {cut_out(kit_, std::move(items_)), scale_};
  }

 private:
  void section() {
    const std::vector<Border> edges = borders(window_);
    std::vector<ViewLine> outline;
    drafting::Loops cut_loops;
    ink::Path broken;
    for (const Face& face : sheet_.part.body.section({detail_.view.toward, detail_.cut_at}))
      for (const std::vector<Vec3>& points : face.loops) {
        Loop loop;
        for (const Vec3 p : points) loop.push_back(detail_.view.project(p));
        for (const Border& border : edges) loop = clipped(loop, border.inward, border.at);
        Loop on_paper;
        for (std::size_t i = 0; i < loop.size(); ++i) {
          const Vec2 a = loop[i], b = loop[(i + 1) % loop.size()];
          on_paper.push_back(placement_.paper(a));
          wood_ = drafting::joined(wood_, {on_paper.back(), on_paper.back()});
          if (on_border(edges, a, b))
            drafting::break_line(broken, placement_.paper(a), placement_.paper(b));
          else
            outline.push_back({a, b});
        }
        if (on_paper.size() > 2) cut_loops.push_back(std::move(on_paper));
      }
    ink::Group group{"hatching", {}};
    ink::Path hatching = drafting::hatch(cut_loops, {.degrees = 45, .spacing = 1.6});
    if (!hatching.verbs.empty())
      group.items.emplace_back(ink::Stroke{std::move(hatching), kit_.thin()});
    add_outline(std::move(group), outline, std::move(broken));
  }

  void lines() {
    std::vector<ViewLine> inside;
    for (const ViewLine& line : hidden_lines(std::span(&sheet_.part.body, 1), detail_.view)) {
      if (line.hidden && !detail_.with_hidden) continue;
      const Loop frame = {window_.low,
                          {window_.high.x, window_.low.y},
                          window_.high,
                          {window_.low.x, window_.high.y}};
      for (const Interval& part : clip_segment(frame, line.a, line.b)) {
        const Vec2 run = line.b - line.a;
        inside.push_back({line.a + run * part.from, line.a + run * part.to, line.hidden});
        for (const Vec2 p : {inside.back().a, inside.back().b}) {
          const Vec2 on_paper = placement_.paper(p);
          wood_ = drafting::joined(wood_, {on_paper, on_paper});
        }
      }
    }
    ink::Path broken;
    break_sides(broken);
    add_outline({"view", {}}, inside, std::move(broken));
  }

  // The window's sides that the part reaches past.
  void break_sides(ink::Path& broken) {
    const ink::Rect whole = drafting::view_box(std::span(&sheet_.part.body, 1), detail_.view);
    const double low = wood_.low.y, high = wood_.high.y;
    if (whole.low.x < window_.low.x - 1e-9)
      drafting::break_line(broken, {wood_.low.x, low}, {wood_.low.x, high});
    if (whole.high.x > window_.high.x + 1e-9)
      drafting::break_line(broken, {wood_.high.x, low}, {wood_.high.x, high});
    const double left = wood_.low.x, right = wood_.high.x;
    if (whole.low.y < window_.low.y - 1e-9)
      drafting::break_line(broken, {left, wood_.low.y}, {right, wood_.low.y});
    if (whole.high.y > window_.high.y + 1e-9)
      drafting::break_line(broken, {left, wood_.high.y}, {right, wood_.high.y});
  }

  void add_outline(ink::Group group, std::span<const ViewLine> outline, ink::Path broken) {
    for (const bool hidden : {true, false}) {
      ink::Path path = drafting::joined_lines(outline, hidden, placement_);
      if (!path.verbs.empty())
        group.items.emplace_back(
            ink::Stroke{std::move(path), hidden ? kit_.hidden() : kit_.visible()});
    }
    if (!broken.verbs.empty())
      group.items.emplace_back(ink::Stroke{std::move(broken), kit_.thin()});
    items_.emplace_back(std::move(group));
  }

  void draw_row(const DetailRow& wanted) {
    drafting::Row row;
    row.kind = wanted.kind;
    for (const Vec3 p : wanted.stations) row.stations.push_back(detail_.view.project(p));
    row.along = detail_.view.project(wanted.along);
    row.out = detail_.view.project(wanted.out);
    row.note = wanted.note;
    const std::pair key{std::lround(row.out.x), std::lround(row.out.y)};
    const double edge = std::max(dot(row.out, wood_.low), dot(row.out, wood_.high));
    double& reach = reach_.try_emplace(key, edge).first->second;
    ClearRow drawn =
        draw_clear(kit_, placement_, row, reach + row_off + wanted.further, *room_, texts_);
    reach = drawn.row.reach + 2;
    items_.emplace_back(std::move(drawn.row.group));
  }

  void rows() {
    for (const DetailRow& row : detail_.rows) draw_row(row);
  }

  // False when an angle runs over a figure.
  bool angles() {
    bool clear = true;
    for (const DetailAngle& angle : detail_.angles) {
      drafting::AngleMark mark;
      mark.at = placement_.paper(detail_.view.project(angle.at));
      mark.from = detail_.view.project(angle.from);
      mark.to = detail_.view.project(angle.to);
      mark.radians = angle.radians;
      mark.name = angle.name;
      mark.radius = 11;
      ink::Group group = drafting::draw_angle(kit_, *room_, mark);
      std::vector<drafting::Quad> words;
      for (const ink::Item& item : group.items)
        if (const auto* text = std::get_if<ink::Text>(&item))
          words.push_back(kit_.fonts->box(*text));
      for (const drafting::Quad& word : words)
        for (const drafting::Quad& text : texts_) clear = clear && !drafting::touch(word, text);
      clear = clear && !runs_over(group, texts_);
      texts_.insert(texts_.end(), words.begin(), words.end());
      items_.emplace_back(std::move(group));
    }
    return clear;
  }

  void names() {
    Names names(sheet_, *room_);
    const double x = drafting::middle(wood_).x;
    for (const std::string& words : detail_.above) names.near({x, wood_.high.y + 3}, words, 14);
    for (const std::string& words : detail_.below) names.near({x, wood_.low.y - 3}, words, 14);
    drafting::append(items_, names.take());
  }

  const PartSheet& sheet_;
  const drafting::Kit& kit_;
  const Detail& detail_;
  drafting::Scale scale_;
  Placement placement_;
  ink::Rect window_;                      // view plane
  ink::Rect wood_ = drafting::no_rect();  // paper
  std::map<std::pair<long, long>, double> reach_;
  std::optional<drafting::Room> room_;  // all that is drawn
  std::vector<drafting::Quad> texts_;   // of all rows: extension lines stop short of them
  drafting::Items items_;
};

}  // namespace

DetailDrawing draw_detail(const PartSheet& sheet, const Detail& detail, double most_up) {
  return Drawing(sheet, detail, most_up).draw();
}

drafting::Picture worded(const drafting::Kit& kit, const Detail& detail,
                         const DetailDrawing& drawing, const DetailStyle& style) {
  constexpr double air = 2;
  const double letter = kit.look.lettering;
  const drafting::Picture& picture = drawing.picture;
  const bool beside = style.beside && !detail.caption.empty();
  drafting::Picture whole{{}, std::max(picture.width, beside ? 0.0 : style.least_width), 0};
  const double caption_at = beside ? picture.width + 2 * air : 0;
  const double caption_width = beside ? beside_width : whole.width;
  if (beside) whole.width = caption_at + caption_width;
  const auto put = [&](drafting::Picture more, Vec2 at) {
    drafting::append(whole.items, drafting::moved(std::move(more.items), {at.x, -at.y}));
    whole.height = std::max(whole.height, at.y + more.height);
  };
  put(drafting::paragraph(kit, detail.title + "  " + drafting::short_text(drawing.scale),
                          whole.width, {.height = letter, .face = ink::Face::bold}),
      {0, 0});
  const double below_title = whole.height + air;
  put(picture, {beside ? 0 : (whole.width - picture.width) / 2, below_title});
  if (!detail.caption.empty())
    put(drafting::paragraph(kit, detail.caption, caption_width, {.height = letter}),
        {caption_at, beside ? below_title : whole.height + air});
  return whole;
}

}  // namespace splay::sheets
