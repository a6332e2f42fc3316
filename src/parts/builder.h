// The bench on which constructs and joints shape parts.
//
// A construct lays down an oversize blank, joints cut it; finish() shifts every part to its own
// bounding box and audits the whole.
#pragma once

#include <algorithm>
#include <string_view>

#include "model/project.h"
#include "parts/part.h"

namespace splay::parts {

struct Blank {
  std::string name;
  std::string stock;
  Rigid place;  // part frame to world, any origin: finish() moves it to the low corner
  Solid body;   // part frame, at least as large as the finished part
  ShowFace show = ShowFace::high_z;
  Grain grain = Grain::along_x;
  std::array<std::string, 6> side_names;
};

class Builder {
 public:
  explicit Builder(const model::Project& project) : project_(project) {}
  const model::Project& project() const { return project_; }
  void start_item(int index) { item_ = index; }

  int add(Blank blank);  // index of the new part
  const Part& part(int index) const { return assembly_.parts[static_cast<std::size_t>(index)]; }
  int find(std::string_view name) const;  // -1 when there is none
  int count() const { return static_cast<int>(assembly_.parts.size()); }

  // Cuts along a plane given in the world (normal out of the wood that stays).
  void cut_end(int part, const Plane& world, std::string name, std::string joint);
  void cut_edge(int part, const Plane& world, std::string name, std::string joint);
  // Removes a world region and records it as a trench whose planes are given in the world.
  void cut_trench(int part, OperationKind kind, const Region& world, const Trench& world_trench,
                  std::string name, std::string joint);

  // Removes a convex region that is no trench: a hole, a mortise, the waste of a lap or round a
  // tenon. `facets`: those of its planes that stand for one curved surface.
  void cut_region(int part, OperationKind kind, const Region& world, std::string name,
                  std::string joint, const std::vector<Plane>& facets = {});

  // Any operation, its planes all given in the world. `rounds`: for each curved surface the planes
  // that stand for it.
  void shape(int part, const Operation& world, const std::vector<std::vector<Plane>>& rounds = {});

  void add_joint(Joint joint);
  void add_fitting(Fitting fitting) { assembly_.fittings.push_back(std::move(fitting)); }
  void add_swing(Swing swing) { assembly_.swings.push_back(std::move(swing)); }
  void add_slide(Slide slide) { assembly_.slides.push_back(std::move(slide)); }
  const std::vector<Swing>& swings() const { return assembly_.swings; }
  void add_loop(CheckLoop loop) { assembly_.loops.push_back(std::move(loop)); }
  void add_angle(NamedAngle angle) { assembly_.angles.push_back(std::move(angle)); }
  void add_length(KeyLength length) { assembly_.lengths.push_back(std::move(length)); }
  void remark(int part, std::string text);
  void measure(int part, std::string name, double mm);
  // A joint of these can't be made; who asked for it says why.
  void leave_apart(int a, int b) {
    assembly_.left_apart.insert(assembly_.left_apart.end(), {a, b});
  }
  bool left_apart(int part) const {
    return std::ranges::find(assembly_.left_apart, part) != assembly_.left_apart.end();
  }
  void report(Finding finding) { assembly_.findings.push_back(std::move(finding)); }

  // Every part on its own bounding box, placed in the world, audited (see audit.h). What is cut
  // into a panel whose edging was on before goes through the edging too.
  Assembly finish() &&;

 private:
  void cut(int part, Operation operation);
  void cut_edging(const Joint& joint);
  const model::Project& project_;
  Assembly assembly_;
  int item_ = 0;
};

}  // namespace splay::parts
