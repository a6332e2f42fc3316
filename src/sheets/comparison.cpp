#include "sheets/comparison.h"

#include <algorithm>
#include <array>
#include <iterator>
#include <map>

namespace splay::sheets {

namespace {

using Key = std::pair<std::string, int>;  // title, and the place among pages of that title

std::vector<Key> keys_of(const ink::Packet& packet) {
  std::map<std::string, int> seen;
  std::vector<Key> keys;
  for (const ink::Page& page : packet.pages) keys.emplace_back(page.title, seen[page.title]++);
  return keys;
}

std::string roman(std::size_t number) {
  constexpr std::array<std::pair<std::size_t, const char*>, 5> signs{
      {{10, "x"}, {9, "ix"}, {5, "v"}, {4, "iv"}, {1, "i"}}};
  std::string text;
  for (const auto& [value, sign] : signs)
    for (; number >= value; number -= value) text += sign;
  return text;
}

// Links to pages that are left out lead nowhere: they go.
void drop_dead_links(ink::Packet& packet) {
  std::vector<std::string> anchors;
  const auto collect = [&](auto&& self, const std::vector<ink::Item>& items) -> void {
    for (const ink::Item& item : items) {
      if (const auto* anchor = std::get_if<ink::Anchor>(&item)) anchors.push_back(anchor->name);
      if (const auto* group = std::get_if<ink::Group>(&item)) self(self, group->items);
    }
  };
  for (const ink::Page& page : packet.pages) collect(collect, page.items);
  std::ranges::sort(anchors);
  const auto drop = [&](auto&& self, std::vector<ink::Item>& items) -> void {
    std::erase_if(items, [&](const ink::Item& item) {
      const auto* link = std::get_if<ink::Link>(&item);
      return link != nullptr && !std::ranges::binary_search(anchors, link->target);
    });
    for (ink::Item& item : items)
      if (auto* group = std::get_if<ink::Group>(&item)) self(self, group->items);
  };
  for (ink::Page& page : packet.pages) drop(drop, page.items);
}

}  // namespace

Comparison compare(const Edition& before, const Edition& now, std::vector<model::Changed> said,
                   const ink::FontSet& fonts) {
  Comparison all;
  const model::Job& job = before.plan.project->job;
  all.revision_before = *job.revision;
  all.date_before = model::iso_date(*job.date);
  all.said = std::move(said);
  all.parts = fabrication::part_changes(before.plan, now.plan);
  std::map<Key, const ink::Page*> old;
  const std::vector<Key> old_keys = keys_of(before.packet), keys = keys_of(now.packet);
  for (std::size_t i = 0; i < old_keys.size(); ++i) old[old_keys[i]] = &before.packet.pages[i];
  for (std::size_t i = 0; i < keys.size(); ++i) {
    const ink::Page& page = now.packet.pages[i];
    const auto found = old.find(keys[i]);
    if (found == old.end()) {
      all.pages.push_back({page.label, page.title, true, {}});
      continue;
    }
    std::vector<ink::Span> spans = ink::changed_spans(*found->second, page, fonts);
    if (!spans.empty()) all.pages.push_back({page.label, page.title, false, std::move(spans)});
    old.erase(found);
  }
  for (const Key& key : old_keys)
    if (old.contains(key)) all.gone_pages.push_back(key.first);
  return all;
}

ink::Packet marked_packet(const Context& context, const Comparison& comparison, ink::Packet packet,
                          ForWhom whom, bool only_changed) {
  std::vector<ink::Page> pages = make_changes(context, comparison, whom);
  const std::size_t in_front = pages.size();
  for (std::size_t i = 0; i < in_front; ++i) {
    const std::string label = roman(i + 1);
    drafting::label_page(context.kit, pages[i], label, label + " of " + roman(in_front),
                         packet.two_sided && i % 2 == 1);
  }
  for (ink::Page& page : packet.pages) {
    const auto change = std::ranges::find_if(
        comparison.pages, [&](const PageChange& c) { return c.label == page.label; });
    const bool changed = change != comparison.pages.end();
    if (changed && change->is_new) {
      const ink::Rect area = drafting::free_area(page.paper);
      drafting::put_change_bar(page, area.low.y, area.high.y);
    } else if (changed) {
      constexpr double least = 3;  // mm: a bar that can be seen
      for (const ink::Span& span : change->spans)
        drafting::put_change_bar(page, span.low, std::max(span.high, span.low + least));
    }
    if (changed || !only_changed) pages.push_back(std::move(page));
  }
  packet.pages = std::move(pages);
  packet.subject += ", changes since revision " + comparison.revision_before;
  packet.identity += "/since " + comparison.revision_before + (only_changed ? "/changed" : "");
  drop_dead_links(packet);
  return packet;
}

ink::Packet void_packet(const Context& context, ink::Packet packet, const model::Job& replaced_by) {
  for (ink::Page& page : packet.pages)
    drafting::put_warning(context.kit, page,
                          "VOID – replaced by revision " + *replaced_by.revision + " of " +
                              model::iso_date(*replaced_by.date) + ": do not cut from it");
  packet.subject += ", void";
  packet.identity += "/void";
  return packet;
}

}  // namespace splay::sheets
