// SPDX-License-Identifier: MIT
// What the targets share.

#include "targets.hpp"

#include "clampbook/base/text.hpp"

#include <algorithm>
#include <cstdio>
#include <cstdlib>

namespace fuzz {

std::string& running() {
    static std::string name;
    return name;
}

std::size_t& taken() {
    static std::size_t count = 0;
    return count;
}

void breach(std::string_view what) {
    std::fprintf(stderr, "%s: does not hold: %.*s\n", running().c_str(), static_cast<int>(what.size()), what.data());
    std::abort();
}

void require_sentence(const clampbook::Error& fault) {
    require(std::string_view{fault.what()}.size() > 1, "a refusal says why");
    require_shown(fault.what(), "a message");
}

void require_shown(std::string_view text, std::string_view what) {
    require(clampbook::is_utf8(text), std::string{what} + " is UTF-8 text");
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = std::min(text.find('\n', at), text.size());
        require(!clampbook::has_control(text.substr(at, end - at)),
                std::string{what} + " has no control characters: " + std::string{text.substr(at, end - at)});
        at = end + 1;
    }
}

} // namespace fuzz
