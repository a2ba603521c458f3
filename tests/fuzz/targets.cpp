// SPDX-License-Identifier: MIT
// What the targets share.

#include "targets.hpp"

#include "clampbook/base/text.hpp"

#include <cstdio>
#include <cstdlib>

namespace fuzz {

std::string& running() {
    static std::string name;
    return name;
}

void breach(std::string_view what) {
    std::fprintf(stderr, "%s: does not hold: %.*s\n", running().c_str(), static_cast<int>(what.size()), what.data());
    std::abort();
}

void require_sentence(const clampbook::Error& fault) {
    const std::string_view message = fault.what();
    require(!message.empty(), "a refusal says why");
    require(clampbook::is_utf8(message), "a message is UTF-8 text");
    require(!clampbook::has_control(message), std::string{"a message is one line without control characters: "} + fault.what());
}

} // namespace fuzz
