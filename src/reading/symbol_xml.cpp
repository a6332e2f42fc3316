#include "reading/symbol_xml.h"

#include "base/utf8.h"
#include "reading/guards.h"
#include "reading/in_order.h"
#include "reading/symbol_reader.h"

namespace splay::reading {

namespace {

constexpr const char* save_hint = "save it as a plain SVG of paths and shapes";

// The first byte that no sign needs, or npos: XML has no control characters but these.
std::size_t control_at(std::string_view text) {
  for (std::size_t i = 0; i < text.size(); ++i) {
    const auto c = static_cast<unsigned char>(text[i]);
    if (c < 0x20 && c != '\t' && c != '\n' && c != '\r') return i;
  }
  return std::string_view::npos;
}

std::optional<Diagnostic> unreadable(const SourceText& source) {
  if (auto refusal = refuse_bytes(source, largest_symbol, "draw the sign with fewer points"))
    return refusal;
  if (const std::size_t at = control_at(source.text()); at != std::string_view::npos)
    return Diagnostic{source.at_offset(at), "control-character", "a control character",
                      "text without control characters", save_hint};
  return std::nullopt;
}

// "XML_ERROR_MISMATCHED_ELEMENT" as words.
std::string words_of(std::string name) {
  constexpr std::string_view head = "XML_ERROR_";
  if (name.starts_with(head)) name.erase(0, head.size());
  for (char& c : name)
    c = c == '_' ? ' ' : c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  return name;
}

bool in_name(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' ||
         c == '_' || c == ':' || c == '.';
}

// Where the word stands by itself, or npos.
std::size_t find_word(std::string_view row, std::string_view word, std::size_t from) {
  while (true) {
    const std::size_t at = row.find(word, from);
    if (at == std::string_view::npos) return at;
    const std::size_t end = at + word.size();
    const bool starts = at == 0 || !in_name(row[at - 1]);
    if (starts && (end == row.size() || !in_name(row[end]) || word.back() == '=')) return at;
    from = at + 1;
  }
}

bool blank(std::string_view text) {
  return text.find_first_not_of(" \t\r\n") == std::string_view::npos;
}

}  // namespace

SymbolXml::SymbolXml(std::string_view source, Faults& faults) : text_(source), faults_(faults) {
  if (auto refusal = unreadable(text_)) {
    faults_.complain(std::move(*refusal));
    return;
  }
  const std::string_view text = text_.text();
  if (document_.Parse(text.data(), text.size()) != tinyxml2::XML_SUCCESS) {
    complain(document_.ErrorLineNum(), "", "bad-xml", "no XML: " + words_of(document_.ErrorName()),
             "one element svg, every element closed", save_hint);
    return;
  }
  root_ = document_.RootElement();
  look_over();
}

void SymbolXml::complain(int line, std::string_view word, std::string code, std::string found,
                         std::string allowed, std::string hint) {
  faults_.complain(
      {place(line, word), std::move(code), std::move(found), std::move(allowed), std::move(hint)});
}

SourceSpan SymbolXml::place(int line, std::string_view word) const {
  const std::string_view row = text_.line(line);
  const std::size_t first = row.find_first_not_of(" \t");
  if (first == std::string_view::npos) return {line, 1, 1};
  std::size_t at = word.empty() ? std::string_view::npos : find_word(row, word, 0);
  if (at != std::string_view::npos && find_word(row, word, at + 1) != std::string_view::npos)
    at = std::string_view::npos;
  const std::size_t from = at == std::string_view::npos ? first : at;
  const std::string_view marked =
      at == std::string_view::npos ? row.substr(first) : row.substr(at, word.size());
  return {line, static_cast<int>(character_count(row.substr(0, from))) + 1,
          static_cast<int>(character_count(marked))};
}

void SymbolXml::look_over() {
  for (const auto* node = document_.FirstChild(); node != nullptr; node = node->NextSibling()) {
    const std::string_view value = node->Value() == nullptr ? "" : node->Value();
    const int line = node->GetLineNum();
    const bool xml = value == "xml" || value.starts_with("xml ");
    if (node->ToUnknown() != nullptr || (node->ToDeclaration() != nullptr && !xml))
      complain(line, "", "unknown-instruction", "<" + shown(value.substr(0, 20)) + " ...>",
               "comments and the one element svg", "leave it out");
    else if (node->ToText() != nullptr || (node->ToElement() != nullptr && node != root_))
      complain(line, "", "bad-xml", "more than one element", "the one element svg", save_hint);
  }
  if (root_ == nullptr)
    complain(1, "", "bad-xml", "no element at all", "the one element svg", save_hint);
}

void SymbolXml::refuse_text(const tinyxml2::XMLElement& element) {
  for (const auto* node = element.FirstChild(); node != nullptr; node = node->NextSibling()) {
    const bool bad = node->ToUnknown() != nullptr || node->ToDeclaration() != nullptr ||
                     (node->ToText() != nullptr && !blank(node->Value()));
    if (bad)
      complain(node->GetLineNum(), "", "stray-text",
               "text in " + shown(element.Name()) + ": \"" + shown(node->Value()) + "\"",
               "elements and comments", "turn lettering into paths");
  }
}

}  // namespace splay::reading
