// SPDX-License-Identifier: MIT
#include "clampbook/base/cells.hpp"

#include <algorithm>
#include <array>
#include <optional>

namespace clampbook {

std::string csv_cell(std::string_view text) {
    std::string out;
    append_csv_cell(out, text);
    return out;
}

void append_csv_cell(std::string& out, std::string_view text) {
    const auto blank = [](char c) { return c == ' ' || c == '\t'; };
    const auto quoted = [](char c) { return c == ',' || c == ';' || c == '"' || c == '\r' || c == '\n'; };
    const bool blank_end = !text.empty() && (blank(text.front()) || blank(text.back())); // readers take those off
    if (!blank_end && std::ranges::none_of(text, quoted)) {
        out += text;
        return;
    }
    out += '"';
    for (const char c : text) {
        out += c;
        if (c == '"') {
            out += '"';
        }
    }
    out += '"';
}

namespace {

// Position of the first character that is no apostrophe, where a spreadsheet takes that for the beginning of a formula.
std::optional<std::size_t> formula_start(std::string_view text) {
    const auto plain = [](char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9'); };
    if (text.empty() || plain(text.front())) {
        return std::nullopt;
    }
    const std::size_t at = std::min(text.find_first_not_of('\''), text.size());
    const auto begins = [&](std::string_view sign) { return text.substr(at).starts_with(sign); };
    constexpr std::array<std::string_view, 10> k_signs{"=", "+", "-", "@", "\t", "\r", "＝", "＋", "－", "＠"};
    return std::ranges::any_of(k_signs, begins) ? std::optional{at} : std::nullopt;
}

} // namespace

std::string spreadsheet_text(std::string_view text) { return (formula_start(text) ? "'" : "") + std::string{text}; }

std::string from_spreadsheet_text(std::string_view text) {
    const auto start = formula_start(text);
    return std::string{start && *start > 0 ? text.substr(1) : text};
}

} // namespace clampbook
