// SPDX-License-Identifier: MIT
#include "clampbook/base/decimal.hpp"

#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <cstdint>

namespace clampbook {
namespace {

std::size_t digits_at(std::string_view text, std::size_t at) noexcept {
    std::size_t n = 0;
    while (at + n < text.size() && is_digit(text[at + n])) {
        ++n;
    }
    return n;
}

double to_double(const std::string& text) {
    double value = 0;
    const auto [end, code] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (code == std::errc::result_out_of_range || !std::isfinite(value)) {
        throw error(ErrorKind::usage, "'{}' is too large or too small a number to work with", text);
    }
    if (code != std::errc{} || end != text.data() + text.size()) {
        throw error(ErrorKind::internal, "'{}' passed as a number but does not read as one", text);
    }
    return value;
}

// What a workshop could mean: far inside what a double holds, so that a product of two and any unit's factor stay there too.
constexpr double k_largest = 1e100;
constexpr double k_smallest = 1e-100;

double within_reason(double value, std::string_view text) {
    if (value != 0 && (value > k_largest || value < k_smallest)) {
        throw error(ErrorKind::usage, "'{}' is too large or too small a number to work with", text);
    }
    return value;
}

int count_significant(std::string_view digits) noexcept {
    int n = 0;
    bool leading = true;
    for (const char c : digits) {
        if (is_digit(c) && (!leading || c != '0')) {
            leading = false;
            ++n;
        }
    }
    return std::clamp(n, 1, k_most_digits);
}

// "3/8" at `at`: value and length, or nothing. A fraction needs a denominator other than zero.
struct Fraction {
    double value;
    std::size_t length;
};

std::optional<Fraction> fraction_at(std::string_view text, std::size_t at) {
    const std::size_t top = digits_at(text, at);
    if (top == 0 || top > 4 || at + top >= text.size() || text[at + top] != '/') {
        return std::nullopt;
    }
    const std::size_t bottom = digits_at(text, at + top + 1);
    if (bottom == 0 || bottom > 4) {
        return std::nullopt;
    }
    const double numerator = to_double(std::string{text.substr(at, top)});
    const double denominator = to_double(std::string{text.substr(at + top + 1, bottom)});
    if (denominator == 0) {
        throw error(ErrorKind::usage, "'{}' divides by zero", text.substr(at, top + 1 + bottom));
    }
    return Fraction{numerator / denominator, top + 1 + bottom};
}

constexpr std::array<std::uint64_t, 16> k_powers{
    1,         10,         100,         1000,         10000,         100000,         1000000,         10000000,
    100000000, 1000000000, 10000000000, 100000000000, 1000000000000, 10000000000000, 100000000000000, 1000000000000000};

double power_of_ten(int exponent) noexcept { return static_cast<double>(k_powers.at(static_cast<std::size_t>(exponent))); }

// What most lines hold: up to fifteen digits with at most one point, nothing behind them that could belong to the number. Digits
// and power of ten are whole numbers below 2^53, so that the one division rounds as reading the text would. Nothing for all else.
std::optional<Decimal> plain_decimal(std::string_view text) noexcept {
    constexpr std::size_t k_most = 15;
    std::uint64_t digits = 0;
    std::size_t at = 0;
    std::size_t whole = 0;
    std::size_t decimals = 0;
    int significant = 0;
    const auto take = [&] {
        const std::size_t begin = at;
        for (; at < text.size() && is_digit(text[at]); ++at) {
            digits = digits * 10 + static_cast<std::uint64_t>(text[at] - '0');
            significant += digits > 0 ? 1 : 0;
            if (at - begin > k_most) {
                break;
            }
        }
        return at - begin;
    };
    whole = take();
    if (at < text.size() && text[at] == '.') {
        ++at;
        decimals = take();
        if (decimals == 0) {
            return std::nullopt;
        }
    }
    if (whole == 0 || whole + decimals > k_most) {
        return std::nullopt;
    }
    if (at < text.size()) {
        const char next = text[at];
        const bool mixed = next == ' ' && at + 1 < text.size() && is_digit(text[at + 1]);
        if (mixed || next == '.' || next == ',' || next == '/' || next == '-' || next == 'e' || next == 'E') {
            return std::nullopt;
        }
    }
    return Decimal{static_cast<double>(digits) / power_of_ten(static_cast<int>(decimals)), std::max(significant, 1), at, false};
}

// Digits of the size that workshops write, by whole numbers; false for all else, and where the value lies so near to the middle
// between two neighbours that only its exact digits can tell.
bool append_plainly(std::string& out, double value, int significant) {
    constexpr int k_most = 9;
    constexpr double k_doubt = 1e-6; // ten times what the multiplication can be off by
    const double size = std::fabs(value);
    if (!(size >= 1e-3 && size < 1e9) || significant > k_most) {
        return false;
    }
    int exponent = -3;
    double next = 1e-2;
    while (size >= next && exponent < 8) {
        next *= 10;
        ++exponent;
    }
    const int decimals = significant - 1 - exponent;
    const double scaled = decimals >= 0 ? size * power_of_ten(decimals) : size / power_of_ten(-decimals);
    const double below = std::floor(scaled);
    if (std::fabs(scaled - below - 0.5) < k_doubt) {
        return false;
    }
    const std::uint64_t digits = static_cast<std::uint64_t>(below) + (scaled - below > 0.5 ? 1U : 0U);
    if (digits < k_powers.at(static_cast<std::size_t>(significant) - 1) ||
        digits >= k_powers.at(static_cast<std::size_t>(significant))) {
        return false; // rounded up to another number of digits
    }
    std::array<char, 32> text{};
    char* const end = text.data() + text.size();
    char* at = end;
    std::uint64_t left = decimals >= 0 ? digits : digits * k_powers.at(static_cast<std::size_t>(-decimals));
    for (int i = 0; i < decimals || left > 0 || i == 0 || (i == decimals && decimals > 0); ++i) {
        if (i == decimals && decimals > 0) {
            *--at = '.';
        }
        *--at = static_cast<char>('0' + left % 10);
        left /= 10;
    }
    if (value < 0) {
        *--at = '-';
    }
    out.append(at, end);
    return true;
}

void refuse_two_readings(std::string_view text, std::string_view first, std::string_view second) {
    throw error(ErrorKind::usage, "'{}' can be read two ways, as {} or as {}; write it without a grouping sign", text, first,
                second);
}

} // namespace

std::optional<Decimal> read_decimal(std::string_view text) {
    if (auto plain = plain_decimal(text)) {
        return plain;
    }
    std::size_t at = 0;
    double sign = 1;
    bool is_signed = false;
    if (text.starts_with('-') || text.starts_with('+')) {
        sign = text[0] == '-' ? -1 : 1;
        is_signed = true;
        at = 1;
    } else if (text.starts_with("\u2212")) {
        sign = -1;
        is_signed = true;
        at = 3;
    }
    if (const auto fraction = fraction_at(text, at)) {
        return Decimal{sign * fraction->value, 4, at + fraction->length, is_signed};
    }
    const std::size_t start = at;
    const std::size_t whole = digits_at(text, at);
    at += whole;
    if (whole > 0 && at + 1 < text.size() && (text[at] == ' ' || text[at] == '-')) {
        if (const auto fraction = fraction_at(text, at + 1); fraction && fraction->value < 1) {
            const double value = to_double(std::string{text.substr(start, whole)}) + fraction->value;
            return Decimal{sign * within_reason(value, text.substr(start, at - start)), 4, at + 1 + fraction->length, is_signed};
        }
    }
    std::string plain{text.substr(start, whole)};
    if (at < text.size() && (text[at] == '.' || text[at] == ',')) {
        const char mark = text[at];
        const std::size_t decimals = digits_at(text, at + 1);
        if (decimals == 0 && whole == 0) {
            return std::nullopt;
        }
        if (decimals > 0) {
            const std::string after{text.substr(at + 1, decimals)};
            const std::size_t end = at + 1 + decimals;
            const bool more_groups = end + 1 < text.size() && (text[end] == '.' || text[end] == ',') && is_digit(text[end + 1]);
            if (more_groups) {
                const std::size_t length = end + 1 + digits_at(text, end + 1);
                throw error(ErrorKind::usage, "'{}' holds more than one decimal sign; write it with a single point",
                            text.substr(start, length - start));
            }
            if (mark == ',' && decimals == 3 && whole >= 1 && whole <= 3 && plain != "0") {
                refuse_two_readings(text.substr(start, end - start), plain + after, plain + "." + after);
            }
            plain += "." + after;
            at = end;
        }
    }
    if (plain.empty()) {
        return std::nullopt;
    }
    const int significant = count_significant(plain);
    if (at < text.size() && (text[at] == 'e' || text[at] == 'E')) {
        std::size_t exponent = at + 1;
        if (exponent < text.size() && (text[exponent] == '-' || text[exponent] == '+')) {
            ++exponent;
        }
        if (const std::size_t n = digits_at(text, exponent); n > 0) {
            std::string power{text.substr(at + 1, exponent + n - at - 1)};
            if (power.starts_with('+')) {
                power.erase(0, 1);
            }
            plain += "e" + power;
            at = exponent + n;
        }
    }
    if (plain.starts_with('.')) {
        plain = "0" + plain;
    }
    return Decimal{sign * within_reason(to_double(plain), plain), significant, at, is_signed};
}

std::string print_fixed(double value, int decimals) {
    std::array<char, 400> buffer{};
    const auto [end, code] =
        std::to_chars(buffer.data(), buffer.data() + buffer.size(), value, std::chars_format::fixed, decimals);
    if (code != std::errc{} || !std::isfinite(value)) {
        throw error(ErrorKind::internal, "a number that is not finite reached the printer");
    }
    std::string out{buffer.data(), end};
    // "-0.0" is no number that a workshop writes
    if (out.starts_with('-') && out.find_first_not_of("-0.") == std::string::npos) {
        out.erase(0, 1);
    }
    return out;
}

std::optional<Decimal> read_whole_decimal(std::string_view text) {
    const std::string_view trimmed = trim(text);
    auto number = read_decimal(trimmed);
    return number && number->length == trimmed.size() ? number : std::nullopt;
}

namespace {

// By the exact digits of the value.
std::string print_exactly(double value, int significant) {
    if (value == 0) {
        return print_fixed(0, significant > 1 ? significant - 1 : 0);
    }
    // The exponent after rounding decides how many decimals are shown: 9.996 to 3 digits is 10.0.
    std::array<char, 64> buffer{};
    const auto [end, code] =
        std::to_chars(buffer.data(), buffer.data() + buffer.size(), value, std::chars_format::scientific, significant - 1);
    if (code != std::errc{} || !std::isfinite(value)) {
        throw error(ErrorKind::internal, "a number that is not finite reached the printer");
    }
    std::string scientific{buffer.data(), end};
    const std::size_t mark = scientific.find('e');
    const int exponent = static_cast<int>(to_double(scientific.substr(mark + (scientific[mark + 1] == '+' ? 2 : 1))));
    if (exponent < -6 || exponent > 15) {
        return scientific;
    }
    const int decimals = significant - 1 - exponent;
    if (decimals >= 0) {
        return print_fixed(value, decimals);
    }
    // Round to the left of the point by way of the scientific text, whose digits are already rounded.
    return print_fixed(to_double(scientific), 0);
}

} // namespace

std::string print_significant(double value, int significant) {
    std::string out;
    append_significant(out, value, significant);
    return out;
}

void append_significant(std::string& out, double value, int significant) {
    if (!append_plainly(out, value, significant)) {
        out += print_exactly(value, significant);
    }
}

std::string print_shortest(double value) {
    std::array<char, 64> buffer{};
    const auto [end, code] = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value);
    if (code != std::errc{} || !std::isfinite(value)) {
        throw error(ErrorKind::internal, "a number that is not finite reached the printer");
    }
    return {buffer.data(), end};
}

} // namespace clampbook
