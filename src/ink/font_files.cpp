#include "ink/font_files.h"

#include <fontconfig/fontconfig.h>

#include <cmath>
#include <memory>
#include <stdexcept>
#include <utility>

namespace splay::ink {

namespace {

template <auto destroy>
struct Destroy {
  template <class T>
  void operator()(T* thing) const {
    destroy(thing);
  }
};
using Config = std::unique_ptr<FcConfig, Destroy<FcConfigDestroy>>;
using Pattern = std::unique_ptr<FcPattern, Destroy<FcPatternDestroy>>;
using Objects = std::unique_ptr<FcObjectSet, Destroy<FcObjectSetDestroy>>;
using Fonts = std::unique_ptr<FcFontSet, Destroy<FcFontSetDestroy>>;

const FcChar8* fc_text(const char* text) { return reinterpret_cast<const FcChar8*>(text); }

const char* word(Cut cut) {
  return cut == Cut::bold ? "bold" : cut == Cut::italic ? "italic" : "upright";
}

Pattern pattern_of(const FontWanted& wanted, int slant) {
  Pattern pattern(FcPatternCreate());
  FcPatternAddString(pattern.get(), FC_FAMILY, fc_text(wanted.family.c_str()));
  FcPatternAddString(pattern.get(), FC_FONTFORMAT, fc_text("TrueType"));
  FcPatternAddInteger(pattern.get(), FC_WEIGHT,
                      wanted.cut == Cut::bold ? FC_WEIGHT_BOLD : FC_WEIGHT_REGULAR);
  FcPatternAddInteger(pattern.get(), FC_SLANT, slant);
  // A file of many weights in one would be drawn in its first.
  FcPatternAddBool(pattern.get(), FC_VARIABLE, FcFalse);
  return pattern;
}

// A list, not a match: a match would put another family in place of a missing one.
std::string find_slanted(FcConfig* config, const FontWanted& wanted, int slant) {
  const Pattern pattern = pattern_of(wanted, slant);
  const Objects objects(FcObjectSetBuild(FC_FILE, FC_WIDTH, static_cast<char*>(nullptr)));
  const Fonts fonts(FcFontList(config, pattern.get(), objects.get()));
  std::pair<int, std::string> best;  // how far from the usual width, and the path
  for (int i = 0; fonts && i < fonts->nfont; ++i) {
    FcChar8* file = nullptr;
    int width = FC_WIDTH_NORMAL;
    if (FcPatternGetString(fonts->fonts[i], FC_FILE, 0, &file) != FcResultMatch) continue;
    FcPatternGetInteger(fonts->fonts[i], FC_WIDTH, 0, &width);
    const std::pair<int, std::string> found{std::abs(width - FC_WIDTH_NORMAL),
                                            reinterpret_cast<const char*>(file)};
    if (best.second.empty() || found < best) best = found;
  }
  return best.second;
}

std::string find_one(FcConfig* config, const FontWanted& wanted) {
  if (wanted.cut != Cut::italic) return find_slanted(config, wanted, FC_SLANT_ROMAN);
  const std::string italic = find_slanted(config, wanted, FC_SLANT_ITALIC);
  return italic.empty() ? find_slanted(config, wanted, FC_SLANT_OBLIQUE) : italic;
}

}  // namespace

std::vector<std::string> find_font_files(const std::vector<FontWanted>& wanted) {
  const Config config(FcInitLoadConfigAndFonts());
  if (!config) throw std::runtime_error("fontconfig can't read its configuration");
  std::vector<std::string> paths;
  for (const FontWanted& one : wanted) {
    paths.push_back(find_one(config.get(), one));
    if (paths.back().empty())
      throw std::runtime_error(
          "no TrueType font \"" + one.family + "\" (" + word(one.cut) + ") is installed" +
          (one.debian_package.empty() ? ""
                                      : "; Debian has it in the package " + one.debian_package));
  }
  return paths;
}

}  // namespace splay::ink
