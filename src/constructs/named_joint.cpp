#include "constructs/named_joint.h"

namespace splay::constructs {

using model::may;
using model::need;

void NamedJoint::fields(model::FieldVisitor& visit) {
  std::vector<std::string_view> words;
  for (const joinery::JointEntry& entry : joinery::registry()) words.push_back(entry.word);
  visit.word(need("kind", "the joint"), kind_index, words);
  visit.text(need("host", "the part that keeps its face or runs through, by name"), host);
  visit.text(need("guest", "the part that ends, enters or crosses, by name"), guest);
  if (kind_index.given) {
    joint = joinery::registry()[static_cast<std::size_t>(*kind_index)].make();
    joint->span = span;
    joint->given = true;
    joint->fields(visit);
    return;
  }
  // Without a kind there are no options yet: the descriptions list those of every kind.
  for (const joinery::JointEntry& entry : joinery::registry()) {
    const std::unique_ptr<joinery::JointKind> any = entry.make();
    const std::string help = "options of kind = \"" + std::string(entry.word) +
                             "\", written beside host and guest: " + std::string(entry.help);
    visit.table(may(entry.word, help, "other kinds"), *any);
  }
}

void NamedJoint::check(model::Complaints& complaints) const {
  if (joint) joint->check(complaints);
}

void NamedJoint::build(parts::Builder& builder) const {
  const int a = find_part(builder, *host, name, host.span);
  const int b = find_part(builder, *guest, name, guest.span);
  if (a < 0 || b < 0) return;
  const std::string remedy = "Move or lengthen one of the parts, or choose another joint.";
  if (a == b) {
    refuse(builder, {"no-joint", name, *host + " can't be joined to itself.", "Name two parts.",
                     guest.span});
    return;
  }
  const std::string fault = joint->make(builder, a, b);
  if (!fault.empty()) refuse(builder, {"no-joint", name, fault, remedy, span});
}

}  // namespace splay::constructs
