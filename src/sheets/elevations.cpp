#include <algorithm>

#include "drafting/table.h"
#include "sheets/elevation_layout.h"
#include "sheets/kinds.h"
#include "sheets/piece_picture.h"

namespace splay::sheets {

namespace {

constexpr const char* sheet_title = "Elevations and sections";

// Angles of one kind ("taper of ...", "corner ...") that print alike share a row.
struct AngleRow {
  std::string kind, name;
  double radians = 0, degrees = 0;
};

std::vector<AngleRow> angle_rows(const parts::Assembly& assembly) {
  std::vector<AngleRow> rows;
  for (const parts::NamedAngle& angle : assembly.angles) {
    const std::size_t of = angle.name.find(" of ");
    const std::size_t end = of == std::string::npos ? angle.name.find(' ') : of + 3;
    const std::string kind = end == std::string::npos ? "" : angle.name.substr(0, end);
    const double degrees = Angle{angle.radians}.degrees();
    constexpr std::size_t long_row = 400;  // bytes: then another row goes on
    const auto same = std::ranges::find_if(rows, [&](const AngleRow& row) {
      return !kind.empty() && row.kind == kind && std::abs(row.radians - angle.radians) < 1e-9 &&
             row.name.size() < long_row;
    });
    if (same == rows.end())
      rows.push_back({kind, angle.name, angle.radians, degrees});
    else
      same->name += "; " + angle.name.substr(end + 1);
  }
  return rows;
}

drafting::Story angle_table(const Context& context, double width) {
  const std::vector<parts::NamedAngle>& all = context.plan.assembly.angles;
  if (!all.empty() && std::ranges::all_of(all, is_square))
    return {drafting::body_text(context.kit, "Every angle between sides is square, 90°.", width)};
  drafting::Table table;
  table.columns = {{.head = "Angle"},
                   {.head = "Degrees", .align = ink::Align::right, .share = 0, .wrap = false},
                   {.head = "Rise", .align = ink::Align::right, .share = 0, .wrap = false},
                   {.head = "From 90°", .align = ink::Align::right, .share = 0, .wrap = false}};
  for (const AngleRow& row : angle_rows(context.plan.assembly))
    table.rows.push_back(
        {{row.name, degrees_text(row.degrees), drafting::angle_rise(context.kit, row.radians),
          degrees_text(std::abs(90 - row.degrees))},
         {},
         false});
  if (table.rows.empty()) return {};
  return drafting::table(context.kit, table, width);
}

// The table of angles as one picture.
drafting::Picture angle_picture(const Context& context) {
  constexpr double width = 110;
  const drafting::Story story = angle_table(context, width);
  return story.empty() ? drafting::Picture{} : drafting::as_picture(story, width);
}

// Puts a picture where the views leave room, at the foot or at the right, and takes that off the
// area. False when it fits nowhere.
bool put_aside(const drafting::Picture& picture, const Arranged& views, ink::Rect& area,
               drafting::Items& items) {
  const double gap = 2 * between_views;
  double width = 0;
  for (const ArrangedRow& row : views.rows)
    width = std::max(width, views.width(row) + gap * static_cast<double>(row.views.size()));
  const double height = views.height() + gap * static_cast<double>(views.rows.size());
  if (area.height() - height >= picture.height) {
    const double x = drafting::middle(area).x - picture.width / 2;
    drafting::append(items, drafting::moved(picture.items, {x, area.low.y + picture.height}));
    area.low.y += picture.height;
    return true;
  }
  if (area.width() - width >= picture.width && area.height() >= picture.height) {
    const Vec2 corner{area.high.x - picture.width, drafting::middle(area).y + picture.height / 2};
    drafting::append(items, drafting::moved(picture.items, corner));
    area.high.x -= picture.width;
    return true;
  }
  return false;
}

ink::Page view_page(const Context& context, const Sheet& sheet, const drafting::Picture& angles,
                    bool& angles_shown) {
  ink::Page page =
      start_page(context, sheet_title, drafting::text(sheet.scale, *context.job().units), true);
  ink::Rect area = context.area();
  if (!angles_shown) angles_shown = put_aside(angles, sheet.arranged, area, page.items);
  const ink::Rect corner = place(sheet.arranged, area, page.items);
  constexpr double worth_a_picture = 50;
  if (std::min(corner.width(), corner.height()) > worth_a_picture)
    draw_piece(context, drafting::grown(corner, -between_views), page.items);
  return page;
}

// The angles on pages of their own, with a picture of the piece above or beside them when there is
// room for one.
void add_angle_pages(const Context& context, std::vector<ink::Page>& pages) {
  const ink::Rect area = context.area();
  const drafting::Story story = angle_table(context, story_width(context));
  const double height = drafting::height(story);
  constexpr double least_picture = 60;
  if (height > area.height() - (context.wide() ? 0 : least_picture)) {
    for (ink::Page& page : story_pages(context, sheet_title, story))
      pages.push_back(std::move(page));
    return;
  }
  pages.push_back(start_page(context, sheet_title));
  ink::Rect table = drafting::columns(area, context.wide() ? 2 : 1).back(), picture = area;
  if (context.wide()) {
    picture.high.x = table.low.x - 2 * between_views;
  } else {
    table.high.y = table.low.y + height + 1;
    picture.low.y = table.high.y + between_views;
  }
  for (drafting::Items& items : drafting::flow(story, {table}, {table}))
    drafting::append(pages.back().items, std::move(items));
  draw_piece(context, picture, pages.back().items);
}

}  // namespace

std::vector<ink::Page> make_elevations(const Context& context) {
  const ElevationSet set = elevations_of(context);
  Drawings drawings(context);
  const drafting::Picture angles = angle_picture(context);
  bool angles_shown = angles.items.empty();
  std::vector<ink::Page> pages;
  const Choice choice = choose(drawings, set);
  for (const Sheet& sheet : choice.sheets)
    pages.push_back(view_page(context, sheet, angles, angles_shown));
  if (!angles_shown) add_angle_pages(context, pages);
  return pages;
}

}  // namespace splay::sheets
