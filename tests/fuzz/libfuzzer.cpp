// SPDX-License-Identifier: MIT
// What libFuzzer calls; compiled once a target, which CLAMPBOOK_FUZZ_TARGET names.

#include "targets.hpp"

#include <cstddef>
#include <cstdint>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    fuzz::CLAMPBOOK_FUZZ_TARGET({reinterpret_cast<const char*>(data), size});
    return 0;
}
