// SPDX-License-Identifier: MIT
#pragma once

// How text is laid out on 80 columns; shared by the text forms of this floor. Not installed.

#include "clampbook/base/text.hpp"

#include <cstddef>
#include <string>
#include <string_view>

namespace clampbook::present {

inline constexpr std::size_t k_width = 80;

/// `body` wrapped behind `first`, further lines indented to stand under its first word.
inline void paragraph(std::string& out, std::string_view first, std::string_view body) {
    std::string lead{first};
    const std::string indent(display_width(first), ' ');
    for (const std::string& line : wrap(body, k_width - indent.size())) {
        out += lead + line + "\n";
        lead = indent;
    }
}

/// A line kept as it is, its inner blanks too, where it fits; else wrapped.
inline void line_or_paragraph(std::string& out, std::string_view first, const std::string& body) {
    if (display_width(first) + display_width(body) <= k_width) {
        out += std::string{first} + body + "\n";
    } else {
        paragraph(out, first, body);
    }
}

} // namespace clampbook::present
