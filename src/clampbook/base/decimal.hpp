// SPDX-License-Identifier: MIT
#pragma once

// Numbers as people write them on a label or in a manual: decimal point or comma, fractions of an inch, and how many
// digits were written. Independent of locale. Not a calculator: it reads and prints, no more.

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace clampbook {

/// Decimal digits that a double keeps, whatever they are.
inline constexpr int k_most_digits = 15;

/// Whatever the locale.
[[nodiscard]] constexpr bool is_digit(char c) noexcept { return c >= '0' && c <= '9'; }

/// A number that was read, with what its spelling tells of its precision.
struct Decimal {
    double value = 0;
    int significant = 1;    ///< digits written, leading zeros left out, at most k_most_digits; a fraction counts as 4
    std::size_t length = 0; ///< bytes of the input that belong to the number
    bool signed_ = false;   ///< a sign was written
};

/// Reads a number at the front of `text`: `32`, `1.25`, `1,25`, `1.5e3`, `3/8`, `1 3/8`, `1-3/8`, with an optional
/// sign (ASCII or U+2212). Returns nothing where no number stands there.
/// Throws usage where it could be read two ways, giving both (`1,250`), where it holds two decimal signs (`1.250,5`),
/// and where it is not 0 and lies outside of 1e-100 to 1e100.
[[nodiscard]] std::optional<Decimal> read_decimal(std::string_view text);

/// The whole of `text`, blanks at its ends aside, as a number. Returns nothing where it is none or more stands there;
/// throws as `read_decimal` does.
[[nodiscard]] std::optional<Decimal> read_whole_decimal(std::string_view text);

/// `value` with `significant` digits, never in exponent form for magnitudes from 1e-6 to 1e15; trailing zeros kept.
/// Requires a finite value and 1 to 17 digits.
[[nodiscard]] std::string print_significant(double value, int significant);
/// The same at the end of `out`.
void append_significant(std::string& out, double value, int significant);

/// `value` with `decimals` digits after the point. Requires a finite value.
[[nodiscard]] std::string print_fixed(double value, int decimals);

/// The shortest text that reads back as the same double.
[[nodiscard]] std::string print_shortest(double value);

} // namespace clampbook
