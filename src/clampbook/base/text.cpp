// SPDX-License-Identifier: MIT
#include "clampbook/base/text.hpp"

#include <algorithm>
#include <array>
#include <limits>

namespace clampbook {
namespace {

constexpr char32_t k_malformed = 0xFFFD;
constexpr std::size_t k_longest_slip = 200; // bytes; nobody mistypes a name longer than that

// One code point from the front of `text`, and how many bytes it took; malformed input takes one byte.
struct Decoded {
    char32_t point;
    std::size_t size;
};

Decoded decode(std::string_view text) noexcept {
    const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
    const unsigned char lead = byte(0);
    if (lead < 0x80) {
        return {lead, 1};
    }
    std::size_t size = 0;
    char32_t point = 0;
    char32_t least = 0;
    if (lead >= 0xC2 && lead <= 0xDF) {
        size = 2, point = lead & 0x1FU, least = 0x80;
    } else if (lead >= 0xE0 && lead <= 0xEF) {
        size = 3, point = lead & 0x0FU, least = 0x800;
    } else if (lead >= 0xF0 && lead <= 0xF4) {
        size = 4, point = lead & 0x07U, least = 0x10000;
    } else {
        return {k_malformed, 1};
    }
    if (text.size() < size) {
        return {k_malformed, 1};
    }
    for (std::size_t i = 1; i < size; ++i) {
        if ((byte(i) & 0xC0U) != 0x80U) {
            return {k_malformed, 1};
        }
        point = (point << 6U) | (byte(i) & 0x3FU);
    }
    if (point < least || point > 0x10FFFF || (point >= 0xD800 && point <= 0xDFFF)) {
        return {k_malformed, 1};
    }
    return {point, size};
}

bool is_space(char32_t c) noexcept {
    return c == U' ' || (c >= U'\t' && c <= U'\r') || c == 0xA0 || (c >= 0x2000 && c <= 0x200A) || c == 0x202F;
}

// Base letters of U+00C0..U+017F; '?' marks a character that `fold_point` spells out or keeps.
constexpr std::string_view k_latin1 = "aaaaaa?ceeeeiiiidnooooo?ouuuuy??"
                                      "aaaaaa?ceeeeiiiidnooooo?ouuuuy?y";
constexpr std::string_view k_latin_a = "aaaaaaccccccccddddeeeeeeeeeegggggggghhhhiiiiiiiiii??jjkkklllllll"
                                       "lllnnnnnnnnnoooooo??rrrrrrssssssssttttttuuuuuuuuuuuuwwyyyzzzzzzs";
static_assert(k_latin1.size() == 64 && k_latin_a.size() == 128);

void fold_point(char32_t c, std::string& out) {
    if (c < 0x80) {
        out += static_cast<char>(c >= U'A' && c <= U'Z' ? c - U'A' + U'a' : c);
    } else if (c == 0xC6 || c == 0xE6) {
        out += "ae";
    } else if (c == 0xDF || c == 0x1E9E) {
        out += "ss";
    } else if (c == 0x152 || c == 0x153) {
        out += "oe";
    } else if (c >= 0xC0 && c <= 0xFF && k_latin1[c - 0xC0] != '?') {
        out += k_latin1[c - 0xC0];
    } else if (c == 0x132 || c == 0x133) {
        out += "ij";
    } else if (c >= 0x100 && c <= 0x17F && k_latin_a[c - 0x100] != '?') {
        out += k_latin_a[c - 0x100];
    } else if (c >= 0x300 && c <= 0x36F) {
        // a combining accent: dropped
    } else if (c == 0x2212 || (c >= 0x2010 && c <= 0x2015)) {
        out += '-';
    } else if (c == 0x2018 || c == 0x2019) {
        out += '\'';
    } else {
        out += utf8(c);
    }
}

std::size_t width_of(char32_t c) noexcept {
    if ((c >= 0x300 && c <= 0x36F) || (c >= 0x200B && c <= 0x200F) || c < 0x20) {
        return 0;
    }
    const bool wide = (c >= 0x1100 && c <= 0x115F) || (c >= 0x2E80 && c <= 0xA4CF) || (c >= 0xAC00 && c <= 0xD7A3) ||
                      (c >= 0xF900 && c <= 0xFAFF) || (c >= 0xFE30 && c <= 0xFE6F) || (c >= 0xFF00 && c <= 0xFF60) ||
                      (c >= 0x1F300 && c <= 0x1FAFF);
    return wide ? 2 : 1;
}

} // namespace

bool is_utf8(std::string_view text) noexcept {
    while (!text.empty()) {
        const Decoded d = decode(text);
        if (d.point == k_malformed && d.size == 1) {
            return false;
        }
        text.remove_prefix(d.size);
    }
    return true;
}

bool has_control(std::string_view text) noexcept {
    for (std::size_t i = 0; i < text.size(); ++i) {
        const auto byte = static_cast<unsigned char>(text[i]);
        const bool c1 = byte == 0xC2 && i + 1 < text.size() && static_cast<unsigned char>(text[i + 1]) < 0xA0;
        if (byte < 0x20 || byte == 0x7F || c1) {
            return true;
        }
    }
    return false;
}

std::string printable(std::string_view text) {
    std::string out;
    for (const char32_t p : code_points(text)) {
        const bool control = (p < 0x20 && p != U'\n') || (p >= 0x7F && p < 0xA0);
        const bool none = p == 0xFFFE || p == 0xFFFF; // no characters, which XML and cairo refuse
        out += utf8(control || none ? U'\uFFFD' : p);
    }
    return out;
}

std::u32string code_points(std::string_view text) {
    std::u32string out;
    out.reserve(text.size());
    while (!text.empty()) {
        const Decoded d = decode(text);
        out += d.point;
        text.remove_prefix(d.size);
    }
    return out;
}

std::string utf8(char32_t point) {
    std::string out;
    const auto add = [&](char32_t bits) { out += static_cast<char>(static_cast<unsigned char>(bits)); };
    if (point < 0x80) {
        add(point);
    } else if (point < 0x800) {
        add(0xC0U | (point >> 6U));
        add(0x80U | (point & 0x3FU));
    } else if (point < 0x10000) {
        add(0xE0U | (point >> 12U));
        add(0x80U | ((point >> 6U) & 0x3FU));
        add(0x80U | (point & 0x3FU));
    } else {
        add(0xF0U | (point >> 18U));
        add(0x80U | ((point >> 12U) & 0x3FU));
        add(0x80U | ((point >> 6U) & 0x3FU));
        add(0x80U | (point & 0x3FU));
    }
    return out;
}

std::string_view trim(std::string_view text) noexcept {
    while (!text.empty()) {
        const Decoded d = decode(text);
        if (!is_space(d.point)) {
            break;
        }
        text.remove_prefix(d.size);
    }
    while (!text.empty()) {
        std::size_t start = text.size() - 1;
        while (start > 0 && (static_cast<unsigned char>(text[start]) & 0xC0U) == 0x80U) {
            --start;
        }
        if (!is_space(decode(text.substr(start)).point)) {
            break;
        }
        text.remove_suffix(text.size() - start);
    }
    return text;
}

std::string fold(std::string_view text) {
    std::string out;
    out.reserve(text.size());
    bool blank = false;
    for (text = trim(text); !text.empty();) {
        const Decoded d = decode(text);
        text.remove_prefix(d.size);
        if (is_space(d.point)) {
            blank = true;
            continue;
        }
        if (blank) {
            out += ' ';
            blank = false;
        }
        fold_point(d.point, out);
    }
    return out;
}

std::vector<std::string> folded_words(std::string_view text) {
    std::vector<std::string> words;
    std::string word;
    for (const char c : fold(text) + ' ') {
        const auto byte = static_cast<unsigned char>(c);
        if ((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || byte >= 0x80) {
            word += c;
        } else if (!word.empty()) {
            words.push_back(std::move(word));
            word.clear();
        }
    }
    return words;
}

bool comes_before(std::string_view a, std::string_view b) {
    const std::string x = fold(a);
    const std::string y = fold(b);
    const auto is_digit = [](char c) { return c >= '0' && c <= '9'; };
    // A run of digits without its leading zeros; a longer one is the greater number.
    const auto number_at = [&](const std::string& text, std::size_t& at) {
        const std::size_t first = std::min(text.find_first_not_of('0', at), text.size());
        at = first;
        while (at < text.size() && is_digit(text[at])) {
            ++at;
        }
        return std::string_view{text}.substr(first, at - first);
    };
    std::size_t i = 0;
    std::size_t j = 0;
    while (i < x.size() && j < y.size()) {
        if (is_digit(x[i]) && is_digit(y[j])) {
            const std::string_view m = number_at(x, i);
            const std::string_view n = number_at(y, j);
            if (m != n) {
                return m.size() != n.size() ? m.size() < n.size() : m < n;
            }
        } else if (x[i] != y[j]) {
            return static_cast<unsigned char>(x[i]) < static_cast<unsigned char>(y[j]);
        } else {
            ++i;
            ++j;
        }
    }
    return x.size() - i < y.size() - j;
}

std::vector<std::string> split(std::string_view text, char separator) {
    std::vector<std::string> parts;
    while (true) {
        const std::size_t at = text.find(separator);
        parts.emplace_back(text.substr(0, at));
        if (at == std::string_view::npos) {
            return parts;
        }
        text.remove_prefix(at + 1);
    }
}

std::string join(std::span<const std::string> parts, std::string_view separator) {
    std::string out;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        if (i > 0) {
            out += separator;
        }
        out += parts[i];
    }
    return out;
}

std::size_t display_width(std::string_view text) {
    std::size_t width = 0;
    for (const char32_t c : code_points(text)) {
        width += width_of(c);
    }
    return width;
}

std::string pad_right(std::string_view text, std::size_t width) {
    std::string out{text};
    const std::size_t have = display_width(text);
    out.append(width > have ? width - have : 0, ' ');
    return out;
}

std::string pad_left(std::string_view text, std::size_t width) {
    const std::size_t have = display_width(text);
    return std::string(width > have ? width - have : 0, ' ') + std::string{text};
}

std::vector<std::string> wrap(std::string_view text, std::size_t width) {
    std::vector<std::string> lines;
    std::string line;
    for (const std::string& word : split(text, ' ')) {
        if (word.empty()) {
            continue;
        }
        if (!line.empty() && display_width(line) + 1 + display_width(word) > width) {
            lines.push_back(std::move(line));
            line.clear();
        }
        line += (line.empty() ? "" : " ") + word;
    }
    if (!line.empty() || lines.empty()) {
        lines.push_back(std::move(line));
    }
    return lines;
}

std::size_t edit_distance(std::string_view a, std::string_view b) {
    const std::u32string x = code_points(fold(a));
    const std::u32string y = code_points(fold(b));
    std::array<std::vector<std::size_t>, 3> rows;
    for (auto& row : rows) {
        row.resize(y.size() + 1);
    }
    for (std::size_t j = 0; j <= y.size(); ++j) {
        rows[0][j] = j;
    }
    for (std::size_t i = 1; i <= x.size(); ++i) {
        auto& now = rows[i % 3];
        const auto& above = rows[(i + 2) % 3];
        const auto& two_above = rows[(i + 1) % 3];
        now[0] = i;
        for (std::size_t j = 1; j <= y.size(); ++j) {
            const std::size_t replace = above[j - 1] + (x[i - 1] == y[j - 1] ? 0U : 1U);
            now[j] = std::min({above[j] + 1, now[j - 1] + 1, replace});
            if (i > 1 && j > 1 && x[i - 1] == y[j - 2] && x[i - 2] == y[j - 1]) {
                now[j] = std::min(now[j], two_above[j - 2] + 1);
            }
        }
    }
    return rows[x.size() % 3][y.size()];
}

std::optional<std::string> nearest(std::string_view typed, std::span<const std::string> candidates) {
    std::size_t best = std::numeric_limits<std::size_t>::max();
    std::optional<std::string> found;
    if (typed.size() > k_longest_slip) {
        return found;
    }
    for (const std::string& candidate : candidates) {
        const std::size_t allowed = std::max<std::size_t>(1, std::max(typed.size(), candidate.size()) / 3);
        const std::size_t distance = edit_distance(typed, candidate);
        if (distance < best && distance <= allowed) {
            best = distance;
            found = candidate;
        }
    }
    return found;
}

std::string did_you_mean(std::string_view typed, std::span<const std::string> candidates) {
    const auto found = nearest(typed, candidates);
    return found ? " (did you mean '" + *found + "'?)" : std::string{};
}

} // namespace clampbook
