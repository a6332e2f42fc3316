#include "ink/font_files.h"

#include <fontconfig/fontconfig.h>

#include <memory>
#include <stdexcept>

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

Pattern pattern_of(const FontWanted& wanted) {
  Pattern pattern(FcPatternCreate());
  FcPatternAddString(pattern.get(), FC_FAMILY, fc_text(wanted.family.c_str()));
  FcPatternAddString(pattern.get(), FC_FONTFORMAT, fc_text("TrueType"));
  FcPatternAddInteger(pattern.get(), FC_WEIGHT,
                      wanted.cut == Cut::bold ? FC_WEIGHT_BOLD : FC_WEIGHT_REGULAR);
  FcPatternAddInteger(pattern.get(), FC_SLANT,
                      wanted.cut == Cut::italic ? FC_SLANT_ITALIC : FC_SLANT_ROMAN);
  return pattern;
}

// A list, not a match: a match would put another family in place of a missing one.
std::string find_one(FcConfig* config, const FontWanted& wanted) {
  const Pattern pattern = pattern_of(wanted);
  const Objects objects(FcObjectSetBuild(FC_FILE, static_cast<char*>(nullptr)));
  const Fonts fonts(FcFontList(config, pattern.get(), objects.get()));
  std::string found;
  for (int i = 0; fonts && i < fonts->nfont; ++i) {
    FcChar8* file = nullptr;
    if (FcPatternGetString(fonts->fonts[i], FC_FILE, 0, &file) != FcResultMatch) continue;
    const std::string path = reinterpret_cast<const char*>(file);
    if (found.empty() || path < found) found = path;
  }
  return found;
}

}  // namespace

std::vector<std::string> find_font_files(const std::vector<FontWanted>& wanted) {
  const Config config(FcInitLoadConfigAndFonts());
  if (!config) throw std::runtime_error("fontconfig can't read its configuration");
  std::vector<std::string> paths;
  for (const FontWanted& one : wanted) {
    paths.push_back(find_one(config.get(), one));
    if (paths.back().empty())
      throw std::runtime_error("no TrueType font \"" + one.family + "\" (" + word(one.cut) +
                               ") is installed; Debian has it in the package " +
                               one.debian_package);
  }
  return paths;
}

}  // namespace splay::ink
