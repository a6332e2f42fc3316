// Building a case, step by step. Each step is one file.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "constructs/case.h"
#include "constructs/plate.h"
#include "constructs/section.h"

namespace splay::constructs {

// A face that the end of a shelf, partition, rail or stile can meet, as a segment of the section.
struct HostFace {
  std::string name;  // of what it belongs to, the author's word
  int part = 0;
  Vec2 from, to;
  Line2 face;       // normal out of the host
  int edging = -1;  // part on the host's front edge, if any
};

// The two faces that a level or upright strip (low to high across it) runs between. `between` names
// them, or is empty for the outermost ones. On failure `fault` says why.
struct Ends {
  const HostFace* first = nullptr;
  const HostFace* second = nullptr;
};
Ends find_ends(const std::vector<HostFace>& hosts, const std::vector<std::string>& between,
               std::size_t outer_count, bool upright, double low, double high, std::string& fault);

class CaseBuild {
 public:
  CaseBuild(const Case& spec, parts::Builder& builder) : case_(spec), builder_(builder) {}
  void run();

 private:
  // case_build.cpp
  bool lay_out();
  void stop(std::string code, std::string about, std::string text, std::string remedy,
            SourceSpan span) const;
  std::string part_name(const std::string& name) const;
  double thickness(const std::string& stock) const;
  std::string stock_of(const model::Given<std::string>& choice) const;
  // case_panels.cpp
  void build_panels();
  int add_panel(std::size_t side);
  void join_corner(std::size_t corner);
  void add_measures();
  // case_edging.cpp: the edging in front of a part whose core's front edge stands at y; the part's
  // frame and section are taken over. Returns its index, or -1 when the author wants none.
  int add_edging(const FrontEdge& edge, int core, double y, const Polygon& section);
  // case_back.cpp
  void build_back();
  std::vector<Plane> seat_stops(std::size_t side, double into) const;
  double inside_back() const;  // y of the back's front face, or of the case's back
  // case_slabs.cpp
  void build_slabs();
  struct Placed;  // a shelf or partition with its place
  std::vector<Placed> placed_slabs() const;
  void build_slab(const Placed& slab);
  void join_end(const Placed& slab, const EndChoice& end, const HostFace& host,
                const std::vector<int>& guests);
  void build_blocks(const Partition& partition, int part, const Ends& ends);
  void add_block(const Partition& partition, int part, const HostFace& host, bool left);
  // case_frame.cpp
  void build_frame();
  int add_frame_member(const Ring& ring, std::size_t side, double thick);
  void join_frame_corner(const Ring& ring, const std::vector<int>& members, std::size_t corner,
                         const RingCorner& choice);
  void add_frame_bar(const FrameBar& bar, std::vector<HostFace>& hosts);
  // From one end of the edge to the other, `in` into the wood.
  void arch_edge(const EdgeArch& arch, int part, const std::array<Vec2, 2>& edge, Vec2 in,
                 double width, const std::string& name);

  const Case& case_;
  parts::Builder& builder_;
  std::vector<std::string> sides_;
  Ring ring_;
  std::vector<RingCorner> corners_;
  std::vector<std::vector<int>> panel_parts_;  // for each side: the panel, then its edging
  std::vector<HostFace> hosts_;
  int back_part_ = -1;
};

// The line a butted side ends on at corner i, normal out of that side's wood; and whether that side
// is the one before the corner.
Line2 butt_end(const Ring& ring, std::size_t corner, bool before, bool through);

}  // namespace splay::constructs
