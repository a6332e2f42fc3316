// The makers of all sheets, for register.cpp.
#pragma once

#include "sheets/sheet.h"

namespace splay::sheets {

std::vector<ink::Page> make_cover(const Context& context);
std::vector<ink::Page> make_elevations(const Context& context);
std::vector<ink::Page> make_part_views(const Context& context);
std::vector<ink::Page> make_joint_details(const Context& context);
std::vector<ink::Page> make_saw_steps(const Context& context);
std::vector<ink::Page> make_cut_list(const Context& context);
std::vector<ink::Page> make_labels(const Context& context);
std::vector<ink::Page> make_stock(const Context& context);
std::vector<ink::Page> make_buying(const Context& context);
std::vector<ink::Page> make_quote(const Context& context);
std::vector<ink::Page> make_hold(const Context& context);
std::vector<ink::Page> make_exploded(const Context& context);
std::vector<ink::Page> make_glue_up(const Context& context);
std::vector<ink::Page> make_rods(const Context& context);
std::vector<ink::Page> make_templates(const Context& context);
std::vector<ink::Page> make_checks(const Context& context);
std::vector<ink::Page> make_record(const Context& context);
std::vector<ink::Page> make_signs(const Context& context);
// The client's set.
std::vector<ink::Page> make_client_cover(const Context& context);
std::vector<ink::Page> make_client_views(const Context& context);
std::vector<ink::Page> make_client_open(const Context& context);
std::vector<ink::Page> make_client_materials(const Context& context);
std::vector<ink::Page> make_client_price(const Context& context);
std::vector<ink::Page> make_client_sign_off(const Context& context);

}  // namespace splay::sheets
