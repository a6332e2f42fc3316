// Runs a target without libFuzzer: each file named, and so many slips of each. A crash, a sanitizer
// or an exception that escapes ends the run; the input that was tried last is then in the file
// named first.
//
//   fuzz_whole LAST-INPUT SLIPS FILE...
#include <fstream>
#include <iostream>
#include <iterator>

#include "fuzz/target.h"

namespace {

void run(const std::string& text, const std::string& keep) {
  std::ofstream(keep, std::ios::binary) << text << std::flush;
  LLVMFuzzerTestOneInput(reinterpret_cast<const std::uint8_t*>(text.data()), text.size());
}

}  // namespace

int main(int count, char** words) {
  if (count < 4) {
    std::cerr << "fuzz LAST-INPUT SLIPS FILE...\n";
    return 2;
  }
  const auto slips = static_cast<std::uint32_t>(std::stoul(words[2]));
  std::uint32_t tried = 0;
  for (int i = 3; i < count; ++i) {
    std::ifstream in(words[i], std::ios::binary);
    if (!in) {
      std::cerr << "can't read " << words[i] << '\n';
      return 3;
    }
    const std::string text{std::istreambuf_iterator<char>(in), {}};
    run(text, words[1]);
    for (std::uint32_t slip = 0; slip < slips; ++slip)
      run(with_slip(text, slip * 7919 + static_cast<std::uint32_t>(i)), words[1]);
    tried += slips + 1;
  }
  std::cout << tried << " inputs, none breaks it\n";
  return 0;
}
