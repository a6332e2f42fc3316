// The XML of a sign: parsed by tinyxml2, with the places of what is wrong in it.
#pragma once

#include <tinyxml2.h>

#include <string>
#include <string_view>

#include "reading/faults.h"
#include "reading/source_text.h"

namespace splay::reading {

class SymbolXml {
 public:
  // Complains of what can't be parsed, and of what is no element and no text: declarations of
  // document types, processing instructions.
  SymbolXml(std::string_view source, Faults& faults);

  const tinyxml2::XMLElement* root() const { return root_; }  // null when there is none
  void complain(int line, std::string_view word, std::string code, std::string found,
                std::string allowed, std::string hint = "");
  // The element with nothing beside its elements in it but comments and blank text.
  void refuse_text(const tinyxml2::XMLElement& element);

 private:
  // The word in that line where it stands there once, else the line.
  SourceSpan place(int line, std::string_view word) const;
  void look_over();

  SourceText text_;
  Faults& faults_;
  tinyxml2::XMLDocument document_;
  const tinyxml2::XMLElement* root_ = nullptr;
};

}  // namespace splay::reading
