#include "properties/pencil.h"

namespace splay::test {

namespace {

using Words = std::initializer_list<const char*>;

std::string said(const std::string& name, const std::string& value) {
  return name + " = " + value + "\n";
}
std::string quoted(const std::string& name, const std::string& word) {
  return said(name, "\"" + word + "\"");
}
std::string chosen(Chance& chance, const std::string& name, Words words) {
  return quoted(name, chance.word(words));
}

}  // namespace

std::string Pencil::shop() const {
  Chance own(seed_ + 0x5eed);
  Pencil draw(seed_ + 0x5a3, unit_, false);
  std::string text = job(unit_) + chosen(own, "paper", {"a4", "letter", "a3", "tabloid"});
  const std::string fraction = said("fraction", own.word({"16", "32", "64"}));
  const std::string decimals = said("decimals", own.word({"0", "1", "1", "2"}));
  text += unit_ == "in" ? fraction : decimals;
  text += said("two_sided", own.word({"true", "false"}));

  text += "[shop]\n" + said("blank_allowance", draw.mm(0, 15));
  text += "[shop.saw]\n" + chosen(own, "tilts", {"left", "right"});
  text += chosen(own, "tilt", {"45 deg", "45 deg", "46 deg", "47 deg", "50 deg"});
  text += said("kerf", draw.mm(2.2, 3.6)) + said("widest_stack", own.coin() ? draw.mm(20) : "0");
  text += said("longest_crosscut", draw.mm(500, 1600));
  text += said("longest_on_end", draw.mm(300, 1200));
  text +=
      said("rip_right", draw.mm(500, 1300)) + said("tall_fence", own.coin() ? draw.mm(200) : "0");
  text += chosen(own, "tilt_scale", {"0 is square", "90 is square"});
  text += chosen(own, "gauge_scale", {"0 is square", "90 is square"});
  text += chosen(own, "beyond", {"propose", "propose", "track saw", "hand", "split"});
  if (own.coin()) text += "[shop.mitre_saw]\n" + said("widest", draw.mm(150, 320));
  if (own.coin()) text += "[shop.track_saw]\n" + said("longest", draw.mm(1000, 2600));
  if (own.coin()) text += "[shop.band_saw]\n" + said("height", draw.mm(150, 300));

  if (own.coin())
    text += "[room]\n" + said("driest", own.word({"20", "30", "40"})) +
            said("dampest", own.word({"55", "65", "75"})) +
            chosen(own, "standing", {"floor", "wall"}) + "[room.way.door]\n" +
            said("width", draw.mm(620, 900)) + said("height", draw.mm(1950, 2100));
  if (own.coin()) {
    text += "[glue_up]\n" + chosen(own, "glue",
                                   {"white", "yellow", "long open", "liquid hide", "polyurethane",
                                    "epoxy", "urea formaldehyde"});
    for (const char* kind : {"bar", "screw", "band"})
      if (own.coin())
        text += std::string("[glue_up.clamp.\"") + kind + "s\"]\n" + quoted("kind", kind) +
                said("reach", draw.mm(200, 1500)) + said("count", own.word({"2", "6", "12"}));
  }
  if (own.coin())
    text += "[finish.it]\n" +
            chosen(own, "kind",
                   {"oil", "wax", "shellac", "varnish", "lacquer", "water based", "two part",
                    "paint", "soap"}) +
            said("coverage", "11");

  text += sheet("panel", plain_number(own.between(15, 22), 3) + " mm") + sheet("back", "6 mm");
  for (const auto& [name, thickness] : {std::pair{"leg", "120 mm"},
                                        {"thick", "60 mm"},
                                        {"oak", "20 mm"},
                                        {"thin", "16 mm"},
                                        {"lip", "5 mm"}})
    text += board(name, thickness) + (own.coin() ? quoted("species", "white oak") : "");
  return text + "[stock.band]\nkind = \"edge band\"\nthickness = \"0.9 mm\"\n";
}

}  // namespace splay::test
