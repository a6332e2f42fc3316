#include "sheets/packet.h"

#include <algorithm>
#include <array>
#include <iterator>
#include <numeric>
#include <stdexcept>

#include "base/parallel.h"
#include "sheets/sheet.h"

namespace splay::sheets {

namespace {

using Pages = std::vector<ink::Page>;

constexpr std::array<std::string_view, 4> paper_names{"A4", "Letter", "A3", "Tabloid"};

std::string_view paper_of(const model::Job& job, const model::Style& style) {
  const bool by_style = style.paper.given && !job.paper.given;
  return paper_names[static_cast<std::size_t>(by_style ? *style.paper : *job.paper)];
}

// What all pages of one kind have in common: "Part views" of "Part views: D, E".
std::string common_title(const std::string& title) { return title.substr(0, title.find(':')); }

// One entry for each run of pages of one kind, labels as the pages will get them.
std::vector<IndexEntry> index_of(const std::vector<Pages>& sheets) {
  std::vector<IndexEntry> index;
  int number = 0;
  for (const Pages& pages : sheets) {
    for (const ink::Page& page : pages) {
      const std::string label = std::to_string(++number), title = common_title(page.title);
      if (!index.empty() && index.back().title == title)
        index.back().last = label;
      else
        index.push_back({title, label, label});
    }
  }
  return index;
}

bool same(const std::vector<IndexEntry>& a, const std::vector<IndexEntry>& b) {
  return std::ranges::equal(a, b, [](const IndexEntry& x, const IndexEntry& y) {
    return x.title == y.title && x.first == y.first && x.last == y.last;
  });
}

// Kinds that list the others are made last, and again when their own pages moved the others.
void make_indexed(const Context& context, const std::vector<SheetKind>& kinds,
                  std::vector<Pages>& sheets) {
  Context indexed = context;
  indexed.index = index_of(sheets);
  constexpr int most_times = 3;
  for (int time = 0; time < most_times; ++time) {
    for (std::size_t i = 0; i < kinds.size(); ++i)
      if (kinds[i].needs_index) sheets[i] = kinds[i].make(indexed);
    std::vector<IndexEntry> index = index_of(sheets);
    if (same(index, indexed.index)) return;
    indexed.index = std::move(index);
  }
  throw std::logic_error("the index changed its length while it was numbered");
}

std::vector<Pages> make_sheets(const Context& context, const std::vector<SheetKind>& kinds) {
  std::vector<std::size_t> turns(kinds.size());
  std::iota(turns.begin(), turns.end(), std::size_t{0});
  std::stable_partition(turns.begin(), turns.end(),
                        [&](std::size_t i) { return kinds[i].takes_long; });
  std::vector<Pages> sheets(kinds.size());
  in_parallel(kinds.size(), [&](std::size_t turn) {
    const SheetKind& kind = kinds[turns[turn]];
    sheets[turns[turn]] =
        kind.needs_index ? Pages(1, ink::Page{context.paper, std::string(kind.title), {}, 0, {}})
                         : kind.make(context);
  });
  make_indexed(context, kinds, sheets);
  return sheets;
}

// The kinds of a packet: those its style wants, or those it leaves out.
std::vector<SheetKind> kinds_of(ForWhom whom, const model::Style& style, bool left_out) {
  std::vector<SheetKind> kinds;
  std::ranges::copy_if(registry(), std::back_inserter(kinds), [&](const SheetKind& kind) {
    return kind.whom == whom && style.leaves_out(kind.word) == left_out;
  });
  return kinds;
}

// Links to what would stand on pages of these kinds.
void drop_links(std::vector<ink::Item>& items, const std::vector<SheetKind>& left_out) {
  std::erase_if(items, [&](const ink::Item& item) {
    const auto* link = std::get_if<ink::Link>(&item);
    return link != nullptr && std::ranges::any_of(left_out, [&](const SheetKind& kind) {
             return !kind.anchors.empty() && link->target.starts_with(kind.anchors);
           });
  });
  for (ink::Item& item : items)
    if (auto* group = std::get_if<ink::Group>(&item)) drop_links(group->items, left_out);
}

// What stands over every page of a revision that nobody signed; "" when nothing does.
std::string warning_of(const model::Project& project, const Issue& issue) {
  const bool wanted = project.approval.given || *project.client.sign_off;
  const bool stands = project.approval.given && *project.approval.sha256 == issue.check_figure;
  if (issue.whom != ForWhom::shop || !wanted || stands) return {};
  return "NOT APPROVED – revision " + *project.job.revision + " is not signed: do not cut from it";
}

}  // namespace

Context context_of(const fabrication::Plan& plan, const model::Style& style,
                   const ink::FontSet& fonts, const Issue& issue) {
  const model::Job& job = plan.project->job;
  return {plan,
          {&fonts, look_of(style), job.figures()},
          drafting::paper_named(paper_of(job, style)),
          {},
          issue.check_figure,
          issue.as_built};
}

ink::Packet make_packet(const fabrication::Plan& plan, const model::Style& style,
                        const ink::FontSet& fonts, const Issue& issue) {
  if (plan.stopped()) throw std::invalid_argument("a plan with a stop finding has no binder");
  const model::Job& job = plan.project->job;
  const Context context = context_of(plan, style, fonts, issue);
  std::vector<Pages> sheets = make_sheets(context, kinds_of(issue.whom, style, false));
  const std::vector<SheetKind> left_out = kinds_of(issue.whom, style, true);
  const std::string warning = warning_of(*plan.project, issue);
  ink::Packet packet;
  packet.title = *job.title;
  const bool for_client = issue.whom == ForWhom::client;
  packet.subject =
      (for_client ? "Client set " : "Shop binder ") + *job.number + ", revision " + *job.revision;
  packet.author = *job.maker;
  packet.identity = *job.number + "/" + *job.revision + "/" + (for_client ? "client/" : "") +
                    plan.project->source;
  if (job.date->year > 0) {
    packet.year = job.date->year;
    packet.month = job.date->month;
    packet.day = job.date->day;
  }
  packet.least_text_height = 2.5;
  packet.two_sided = *job.two_sided;
  for (Pages& pages : sheets) std::ranges::move(pages, std::back_inserter(packet.pages));
  const auto count = static_cast<int>(packet.pages.size());
  for (int i = 0; i < count; ++i) {
    ink::Page& page = packet.pages[static_cast<std::size_t>(i)];
    if (!left_out.empty()) drop_links(page.items, left_out);
    if (!warning.empty()) drafting::put_warning(context.kit, page, warning);
    drafting::number_page(context.kit, page, i + 1, count, *job.two_sided && i % 2 == 1);
  }
  return packet;
}

ink::PartsWanted parts_wanted(const fabrication::Plan& plan, const model::Style& style,
                              ForWhom whom) {
  ink::PartsWanted wanted;
  if (whom == ForWhom::shop)
    for (const fabrication::PartRow& row : plan.rows) wanted.marks.push_back(row.mark);
  for (const SheetKind& kind : kinds_of(whom, style, true)) {
    wanted.drawn = wanted.drawn && kind.claim != "view";
    wanted.listed = wanted.listed && kind.claim != "row";
  }
  return wanted;
}

}  // namespace splay::sheets
