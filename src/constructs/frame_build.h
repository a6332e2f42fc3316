// Building a frame, step by step.
#pragma once

#include <array>

#include "constructs/corners.h"
#include "constructs/frame.h"
#include "constructs/section.h"
#include "joinery/draft.h"

namespace splay::constructs {

class FrameBuild {
 public:
  FrameBuild(parts::Builder& builder, const FrameChoice& choice, const FramePlace& place,
             const model::Item& owner)
      : builder_(builder), choice_(choice), place_(place), owner_(owner) {
    thick_ = stock_thickness(builder, *choice.stock);
  }
  std::vector<int> run();

 private:
  std::size_t count() const { return place_.sides.size(); }
  std::size_t before(std::size_t corner) const { return (corner + count() - 1) % count(); }
  bool stop(std::string code, std::string text, std::string remedy) const;
  Plane world(const Line2& line) const { return place_.place.plane(lift(line)); }
  Plane depth_plane(double y, double sense) const {  // at y in the frame's own plane
    return place_.place.plane({{0, sense, 0}, sense * y});
  }
  // frame.cpp
  bool lay_out();
  bool lay_corners();
  bool check_sizes() const;
  std::array<double, 2> reach(std::size_t side) const;  // of the member's blank
  void add_member(std::size_t side);
  bool join_corner(std::size_t corner);
  std::string cut_joint(int host, int guest, std::size_t guest_side) const;
  void add_measures();
  void add_loop(const std::string& what, const Polygon& polygon, double y);
  // frame_panel.cpp
  std::vector<Plane> stops(std::size_t side, double into) const;
  double into() const;  // how far the rebate or groove goes outwards from the inside edge
  double rise(std::size_t side) const;  // of the arch in its inside edge
  bool cut_arches();
  void cut_rebates();
  bool add_panel();
  void seat_panel(std::size_t side, int panel, double front, double back);

  parts::Builder& builder_;
  const FrameChoice& choice_;
  const FramePlace& place_;
  const model::Item& owner_;
  double thick_ = 0;
  Ring ring_;
  std::vector<RingCorner> corners_;
  std::vector<int> parts_;
};

}  // namespace splay::constructs
