#include "writers/step_file.h"

#include <array>
#include <charconv>

#include "base/utf8.h"

namespace splay::writers {

namespace {

std::string hex(char32_t code, int digits) {
  std::string text;
  for (int shift = 4 * (digits - 1); shift >= 0; shift -= 4)
    text += "0123456789ABCDEF"[(code >> shift) & 0xFU];
  return text;
}

std::string triple(Vec3 v) {
  return "(" + step_real(v.x) + "," + step_real(v.y) + "," + step_real(v.z) + ")";
}

}  // namespace

std::string step_text(std::string_view utf8) {
  std::string text = "'";
  while (!utf8.empty()) {
    const Character next = first_character(utf8);
    if (next.code >= 0x10000)
      text += "\\X4\\" + hex(next.code, 8) + "\\X0\\";
    else if (next.code < 0x20 || next.code > 0x7E)
      text += "\\X2\\" + hex(next.code, 4) + "\\X0\\";
    else if (next.code == '\'' || next.code == '\\')
      text.append(2, static_cast<char>(next.code));
    else
      text += static_cast<char>(next.code);
    utf8.remove_prefix(next.bytes == 0 ? 1 : next.bytes);
  }
  return text + "'";
}

std::string step_real(double value) {
  if (value == 0) return "0.";  // never "-0."
  std::array<char, 40> buffer{};
  const char* end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value).ptr;
  std::string text(buffer.data(), static_cast<std::size_t>(end - buffer.data()));
  const std::size_t exponent = text.find('e');
  std::string mantissa = text.substr(0, exponent);
  if (mantissa.find('.') == std::string::npos) mantissa += '.';
  return exponent == std::string::npos ? mantissa : mantissa + "E" + text.substr(exponent + 1);
}

int StepFile::add(std::string_view entity) {
  data_ += ref(++last_) + "=";
  data_ += entity;
  data_ += ";\n";
  return last_;
}

std::string StepFile::refs(const std::vector<int>& numbers) {
  std::string text;
  for (const int number : numbers) text += (text.empty() ? "(" : ",") + ref(number);
  return text + ")";
}

int StepFile::point(Vec3 p) { return add("CARTESIAN_POINT(''," + triple(p) + ")"); }
int StepFile::direction(Vec3 d) { return add("DIRECTION(''," + triple(d) + ")"); }

int StepFile::placement(Vec3 origin, Vec3 axis, Vec3 reference) {
  const int at = point(origin), up = direction(axis), along = direction(reference);
  return add("AXIS2_PLACEMENT_3D(''," + ref(at) + "," + ref(up) + "," + ref(along) + ")");
}

std::string StepFile::finish(std::string_view description, std::string_view name,
                             std::string_view when, std::string_view system,
                             std::string_view schema) const {
  return "ISO-10303-21;\nHEADER;\nFILE_DESCRIPTION((" + step_text(description) +
         "),'2;1');\nFILE_NAME(" + step_text(name) + "," + step_text(when) + ",(''),('')," +
         step_text(system) + "," + step_text(system) + ",'');\nFILE_SCHEMA((" + step_text(schema) +
         "));\nENDSEC;\nDATA;\n" + data_ + "ENDSEC;\nEND-ISO-10303-21;\n";
}

}  // namespace splay::writers
