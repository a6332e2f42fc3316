// How two parts come to lie against each other before anything holds them: the cuts of a butt and
// of a mitre, or a contact they have already. Used by those joints themselves and by the ones that
// add dowels, splines, loose tenons and screws.
#pragma once

#include <string>

#include "joinery/draft.h"
#include "joinery/stick.h"

namespace splay::joinery {

// Each lays its cuts and its mate on the draft and gives the plane they share, out of the host.
// "" or why not.
std::string lay_butt(const Stick& host, const Stick& guest, Draft& draft, Plane& plane);
std::string lay_mitre(const Stick& host, const Stick& guest, Draft& draft, Plane& plane);
std::string lay_contact(const Stick& host, const Stick& guest, Draft& draft, Plane& plane);

}  // namespace splay::joinery
