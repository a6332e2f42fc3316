// Names and signs on a part's views: what each side is called, which face is shown, the grain, what
// a trench is for.
#pragma once

#include "drafting/callout.h"
#include "drafting/room.h"
#include "sheets/part_view_set.h"

namespace splay::sheets {

class Names {
 public:
  // `room` knows of all that is drawn and learns of each name.
  Names(const PartSheet& sheet, drafting::Room& room) : sheet_(sheet), room_(room) {}

  // A text as near to a place as can be, left out when nothing is free within `reach` mm.
  bool near(Vec2 place, const std::string& words, double reach);
  // On a face view: its own name with the face mark, its four sides, its trenches, the grain.
  void on_face(const SideView& face, const drafting::Placement& placement);
  // What is worked into a side: each opening named with what it is for.
  void trenches(const SideView& face, const drafting::Placement& placement);
  // Beside an edge or end view, off the side away from the face view.
  void beside(const SideView& side, ink::Rect box, Vec2 to);

  drafting::Items take() { return std::move(items_); }

 private:
  void title(const SideView& face, ink::Rect box);
  void sides(const SideView& face, ink::Rect box);
  void grain(const SideView& face, ink::Rect box);
  void label(const drafting::Callout& words, const std::string& mark);
  std::optional<ink::Group> labelled(const drafting::Callout& callout) const;
  bool leads_clear(const ink::Group& group) const;
  // The free place for something of this size nearest to `wanted`, inside `within`.
  std::optional<ink::Rect> find(Vec2 wanted, Vec2 size, ink::Rect within) const;
  void put(ink::Group group);

  const PartSheet& sheet_;
  drafting::Room& room_;
  drafting::Items items_;
};

}  // namespace splay::sheets
