#include "joinery/joint.h"

namespace splay::joinery {

const std::vector<JointWord>& joint_words() {
  static const std::vector<JointWord> words = {
      {"mitre", "two ends cut on the plane that halves the corner"},
      {"butt", "one part ends against the face of another"},
      {"housing", "a trench across a face that takes another part's end"},
      {"rabbet", "a step along an edge that takes another part's edge"},
      {"groove", "a trench along a face that takes another part's edge"},
      {"glued", "faces or edges glued as they are"},
  };
  return words;
}

}  // namespace splay::joinery
