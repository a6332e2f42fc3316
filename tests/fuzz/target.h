// A fuzz target: one function for libFuzzer, or for the plain driver where there is no libFuzzer.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

// A project file with one slip: a figure changed, a line left out, doubled or moved, a word put in
// another's place. The same seed makes the same slip.
std::string with_slip(const std::string& project, std::uint32_t seed);
