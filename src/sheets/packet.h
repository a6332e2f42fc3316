// All pages of a plan.
#pragma once

#include "fabrication/plan.h"
#include "ink/fonts.h"
#include "ink/ink.h"
#include "ink/lint.h"
#include "model/as_built.h"
#include "model/style.h"
#include "sheets/sheet.h"

namespace splay::sheets {

struct Issue {
  ForWhom whom = ForWhom::shop;
  std::string check_figure{};  // SHA-256 of what the client signs (reading/signed_text.h)
  const model::AsBuilt* as_built = nullptr;  // null: the record is blank
};

// What the sheets of a packet are made from; the plan, the fonts and the record outlive it.
Context context_of(const fabrication::Plan& plan, const model::Style& style,
                   const ink::FontSet& fonts, const Issue& issue);

// One packet of the kinds of page that the style wants, on the job's paper, else the style's. The
// plan must not be stopped (std::invalid_argument). Pages for the shop say NOT APPROVED when the
// author wants a sign-off or there is one, and no approval of exactly this check figure stands in
// the file.
ink::Packet make_packet(const fabrication::Plan& plan, const model::Style& style,
                        const ink::FontSet& fonts, const Issue& issue = {});

// What the page lint must find of parts in such a packet: in the shop's, all that the style does
// not leave out.
ink::PartsWanted parts_wanted(const fabrication::Plan& plan, const model::Style& style,
                              ForWhom whom);

}  // namespace splay::sheets
