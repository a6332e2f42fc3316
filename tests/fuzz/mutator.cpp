// libFuzzer's mutations: half of them slips of an author, half its own.
#include <algorithm>
#include <cstring>

#include "fuzz/target.h"

extern "C" std::size_t LLVMFuzzerMutate(std::uint8_t* data, std::size_t size, std::size_t most);

extern "C" std::size_t LLVMFuzzerCustomMutator(std::uint8_t* data, std::size_t size,
                                               std::size_t most, unsigned int seed) {
  if (seed % 4 == 0 || size == 0) return LLVMFuzzerMutate(data, size, most);
  const std::string text = with_slip({reinterpret_cast<const char*>(data), size}, seed);
  const std::size_t length = std::min(most, text.size());
  std::memcpy(data, text.data(), length);
  return length;
}
