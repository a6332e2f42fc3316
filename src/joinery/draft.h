// A joint on paper: its cuts, mates and fittings, tried on copies of the parts before any wood
// goes.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "parts/builder.h"

namespace splay::joinery {

class Draft {
 public:
  Draft(const parts::Builder& builder, std::string_view kind, int host, int guest);

  // All planes are in the world; the joint's name is filled in. `rounds`: the planes of `removed`
  // that stand for curved surfaces, a list for each.
  void shape(int part, parts::Operation operation, std::vector<std::vector<Plane>> rounds = {});
  void cut_end(int part, const Plane& plane, std::string name);
  void cut_edge(int part, const Plane& plane, std::string name);
  void remove(int part, parts::OperationKind kind, Region region, std::string name,
              std::vector<std::vector<Plane>> rounds = {});
  // Wood beside a tenon, inside `region`, down to the shoulder plane (normal out of what stays).
  void shoulder(int part, Region region, const Plane& plane, std::string name);
  void trench(int part, parts::OperationKind kind, Region region, parts::Trench trench,
              std::string name);

  // Surfaces that must close; `plane` points out of a, into b. `what` names them in a refusal.
  void must_meet(int a, int b, const Plane& plane, std::string_view what);
  // Recorded only where the two parts do have surface in common.
  void may_meet(int a, int b, const Plane& plane);
  const std::string& kind() const { return record_.kind; }
  void dihedral(double radians) { record_.dihedral = radians; }
  void made(parts::Made made) { record_.made = made; }
  // The same parts can have more joints than one: added to the joint's name.
  void distinguish(std::string_view word);
  void fit(parts::Fitting fitting);

  // The two parts as the cuts so far leave them, in the world; "" or why a cut can't be.
  std::string try_cuts(const parts::Builder& builder);
  const Solid& body(int part) const { return bodies_.at(part); }

  // Tries the joint: when every mate closes and the two parts share no space, all of it is done on
  // the builder and the answer is "". Otherwise nothing is done and the answer says why.
  std::string carry_out(parts::Builder& builder);
  // The same without a trial: the caller vouches for it, and the audit will see.
  void carry_out_untried(parts::Builder& builder);

 private:
  struct Cut {
    int part;
    parts::Operation operation;
    std::vector<std::vector<Plane>> rounds;
  };
  struct Wish {
    parts::Mate mate;
    bool needed;
    std::string what;
  };
  std::string try_mates(const parts::Builder& builder);
  void commit(parts::Builder& builder);

  parts::Joint record_;
  std::vector<Cut> cuts_;
  std::vector<Wish> wishes_;
  std::vector<parts::Fitting> fittings_;
  std::map<int, Solid> bodies_;  // in the world, as the cuts leave them
};

// A length with its unit, in the job's figures.
std::string figure(const parts::Builder& builder, double mm);

}  // namespace splay::joinery
