#include "model/top_tables.h"

namespace splay::model {

std::vector<TopTable> top_tables(Project& project) {
  return {
      {"job", "what the binder is for and how it is printed", &project.job},
      {"shop", "what the machines can do", &project.shop},
      {"buying", "what things cost, and what goes on a quote", &project.buying},
      {"room", "where the piece will stand and how it gets there", &project.room},
      {"glue_up", "the glue, the clamps there are, and the order of assembly", &project.glue_up},
      {"client", "what the client's set says", &project.client},
      {"approval", "the record that the client's set was signed", &project.approval},
      {"hardware", "hardware that no construct or joint brings by itself", nullptr,
       &project.hardware},
      {"finish", "what is put on the wood, on which parts", nullptr, &project.finishes},
      {"stock", "what parts are made of", nullptr, &project.stocks},
  };
}

}  // namespace splay::model
