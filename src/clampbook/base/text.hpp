// SPDX-License-Identifier: MIT
#pragma once

// Small helps for UTF-8 text that do not depend on the machine's locale: trimming, splitting, folding for comparison
// and search, the width on a terminal, and the nearest known spelling.

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace clampbook {

/// True where `text` is well-formed UTF-8 (no overlong forms, no surrogates, at most U+10FFFF).
[[nodiscard]] bool is_utf8(std::string_view text) noexcept;

/// True where `text` holds a control character (line ends and tabs among them): no name, figure or note does.
[[nodiscard]] bool has_control(std::string_view text) noexcept;

/// `text` with U+FFFD for each malformed byte, each control character but line ends, and U+FFFE and U+FFFF.
[[nodiscard]] std::string printable(std::string_view text);

/// The Unicode code points of well-formed `text`; a malformed byte counts as U+FFFD.
[[nodiscard]] std::u32string code_points(std::string_view text);

/// The UTF-8 form of one code point.
[[nodiscard]] std::string utf8(char32_t point);

/// Without white space (ASCII, no-break space U+00A0, thin spaces U+2000..U+200A, U+202F) at both ends.
[[nodiscard]] std::string_view trim(std::string_view text) noexcept;

/// `text` in lower case, accents taken off, ß as ss, æ as ae, ø as o, runs of white space as one blank: two spellings
/// of one word in the five trade languages fold to the same text. For comparison only, never shown.
[[nodiscard]] std::string fold(std::string_view text);

/// The words of `fold(text)`: runs of letters and digits.
[[nodiscard]] std::vector<std::string> folded_words(std::string_view text);

/// True where `a` comes before `b` in a list for people: folded, and runs of digits by their number, so that `screw 2` comes before
/// `screw 10`.
[[nodiscard]] bool comes_before(std::string_view a, std::string_view b);

/// The parts of `text` between the separator, empty ones included.
[[nodiscard]] std::vector<std::string> split(std::string_view text, char separator);

[[nodiscard]] std::string join(std::span<const std::string> parts, std::string_view separator);

/// Columns that `text` takes on a terminal (combining marks take none, East Asian wide characters two).
[[nodiscard]] std::size_t display_width(std::string_view text);

/// `text` filled with blanks to `width` columns; left as it is where it is wider.
[[nodiscard]] std::string pad_right(std::string_view text, std::size_t width);
[[nodiscard]] std::string pad_left(std::string_view text, std::size_t width);

/// `text` broken at blanks into lines of at most `width` columns; a longer word stands on a line of its own.
[[nodiscard]] std::vector<std::string> wrap(std::string_view text, std::size_t width);

/// Edits (insert, delete, replace, swap neighbours) that turn one folded text into the other.
[[nodiscard]] std::size_t edit_distance(std::string_view a, std::string_view b);

/// The candidate nearest to `typed`, if it is near enough that a slip of the fingers explains it.
[[nodiscard]] std::optional<std::string> nearest(std::string_view typed, std::span<const std::string> candidates);

/// ` (did you mean 'X'?)` for the nearest candidate, or nothing.
[[nodiscard]] std::string did_you_mean(std::string_view typed, std::span<const std::string> candidates);

} // namespace clampbook
