// Each part's outlines as DXF of release 12, which every reader of the format takes (group codes
// from the published DXF reference, from memory). Millimetres, true size, seen from the show face;
// the show face is at height 0 and floors lie at minus their depth, so that a layer's name says
// what kind of line it is and the height how deep.
//
// Layers: SHOW_FACE, BACK_FACE, FLOOR_FROM_SHOW, FLOOR_FROM_BACK, HOLE (circles), EDGE (every edge
// that is seen; a bevel or a tilted floor has no other line), HIDDEN, MARK (the part's mark).
#include <array>

#include "base/figure.h"
#include "writers/formats.h"
#include "writers/part_outline.h"

namespace splay::writers {

namespace {

constexpr int dxf_places = 6;

constexpr std::array<const char*, 8> layers{"SHOW_FACE",       "BACK_FACE", "FLOOR_FROM_SHOW",
                                            "FLOOR_FROM_BACK", "HOLE",      "EDGE",
                                            "HIDDEN",          "MARK"};

class Dxf {
 public:
  void pair(int code, const std::string& value) {
    text_ += std::to_string(code) + "\r\n" + value + "\r\n";
  }
  void number(int code, double value) { pair(code, plain_number(value, dxf_places)); }
  void point(int code, Vec2 p, double z) {
    number(code, p.x);
    number(code + 10, p.y);
    number(code + 20, z);
  }
  void section(const char* name) {
    pair(0, "SECTION");
    pair(2, name);
  }
  void entity(const char* kind, const char* layer) {
    pair(0, kind);
    pair(8, layer);
  }
  std::string finish() {
    pair(0, "EOF");
    return std::move(text_);
  }

 private:
  std::string text_;
};

void header(Dxf& file, Vec2 size, double thickness) {
  file.section("HEADER");
  file.pair(9, "$ACADVER");
  file.pair(1, "AC1009");  // release 12
  file.pair(9, "$EXTMIN");
  file.point(10, {0, 0}, -thickness);
  file.pair(9, "$EXTMAX");
  file.point(10, size, 0);
  file.pair(0, "ENDSEC");
}

void line_types(Dxf& file) {
  file.pair(0, "TABLE");
  file.pair(2, "LTYPE");
  file.pair(70, "2");
  for (const bool dashed : {false, true}) {
    file.pair(0, "LTYPE");
    file.pair(2, dashed ? "DASHED" : "CONTINUOUS");
    file.pair(70, "0");
    file.pair(3, dashed ? "hidden edges" : "seen edges");
    file.pair(72, "65");
    file.pair(73, dashed ? "2" : "0");
    file.number(40, dashed ? 3.75 : 0);
    if (dashed) {
      file.number(49, 3);
      file.number(49, -0.75);
    }
  }
  file.pair(0, "ENDTAB");
}

void tables(Dxf& file) {
  file.section("TABLES");
  line_types(file);
  file.pair(0, "TABLE");
  file.pair(2, "LAYER");
  file.pair(70, std::to_string(layers.size()));
  int colour = 0;
  for (const char* layer : layers) {
    file.pair(0, "LAYER");
    file.pair(2, layer);
    file.pair(70, "0");
    file.pair(62, std::to_string(++colour));
    file.pair(6, std::string(layer) == "HIDDEN" ? "DASHED" : "CONTINUOUS");
  }
  file.pair(0, "ENDTAB");
  file.pair(0, "ENDSEC");
}

void polyline(Dxf& file, const Loop& loop) {
  const char* layer = layers[static_cast<std::size_t>(loop.kind)];
  file.entity("POLYLINE", layer);
  file.pair(66, "1");  // vertices follow
  file.point(10, {0, 0}, loop.height);
  file.pair(70, "1");  // closed
  for (const Vec2 corner : loop.corners) {
    file.entity("VERTEX", layer);
    file.point(10, corner, loop.height);
  }
  file.entity("SEQEND", layer);
}

void entities(Dxf& file, const PartOutline& outline, const std::string& mark) {
  file.section("ENTITIES");
  for (const Loop& loop : outline.loops) polyline(file, loop);
  for (const Round& round : outline.rounds) {
    file.entity("CIRCLE", round.hole ? "HOLE" : layers[static_cast<std::size_t>(round.kind)]);
    file.point(10, round.centre, round.height);
    file.number(40, round.radius);
  }
  for (const ViewLine& line : outline.lines) {
    file.entity("LINE", line.hidden ? "HIDDEN" : "EDGE");
    file.point(10, line.a, 0);
    file.point(11, line.b, 0);
  }
  constexpr double capitals = 5, below = 10;
  file.entity("TEXT", "MARK");
  file.point(10, {0, -below}, 0);
  file.number(40, capitals);
  file.pair(1, mark);
  file.pair(0, "ENDSEC");
}

std::string plain_text(const std::string& text) {
  std::string plain;
  for (const char c : text) plain += c >= ' ' && c < 127 ? c : '_';
  return plain;
}

}  // namespace

Files write_part_dxf(const Subject& subject) {
  Files files;
  for (const fabrication::PartRow& row : subject.plan.rows) {
    const parts::Part& part =
        subject.plan.assembly.parts[static_cast<std::size_t>(row.members.front())];
    const PartOutline outline = outline_of(part);
    Dxf file;
    header(file, outline.size, part.size.z);
    tables(file);
    entities(file, outline, plain_text(row.mark + " rev " + *subject.plan.project->job.revision));
    files[subject.name + "-part-" + plain_file_name(row.mark) + ".dxf"] = file.finish();
  }
  return files;
}

}  // namespace splay::writers
