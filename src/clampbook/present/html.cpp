// SPDX-License-Identifier: MIT
#include "clampbook/present/html.hpp"

#include "clampbook/base/digest.hpp"

namespace clampbook::present {

std::string escaped(std::string_view text) {
    std::string out;
    for (const char c : text) {
        switch (c) {
        case '&':
            out += "&amp;";
            break;
        case '<':
            out += "&lt;";
            break;
        case '>':
            out += "&gt;";
            break;
        case '"':
            out += "&quot;";
            break;
        case '\'':
            out += "&#39;";
            break;
        default:
            out += c;
        }
    }
    return out;
}

std::string hash_of(std::string_view text) { return "'sha256-" + base64_of(sha256(text)) + "'"; }

std::string data_address(std::string_view type, std::string_view bytes) {
    return "data:" + std::string{type} + ";base64," + base64_of(bytes);
}

} // namespace clampbook::present
