// SPDX-License-Identifier: MIT
#pragma once

// Where a figure comes from and how far it may be trusted. Every figure that clampbook prints carries one of these
// labels, and either a citation of a curated source or the shop's own source.

#include <optional>
#include <string>
#include <string_view>

namespace clampbook {

/// In the order of trust. Stored in books by name: do not rename.
enum class Label { maker, standard, shop, derived, practice, demo };

[[nodiscard]] std::string_view label_name(Label label) noexcept;

/// What the label says in words, for the reader who meets it the first time.
[[nodiscard]] std::string_view label_meaning(Label label) noexcept;

/// Throws usage for a word that is no label, with the nearest.
[[nodiscard]] Label read_label(std::string_view text);

/// A row of the curated database names its source, the place in it, how the figure stands there, and how it was keyed.
struct Citation {
    std::string source; ///< key of the source, as `clampbook list sources` shows it
    std::string title;  ///< number, edition and title in one line
    std::string place;  ///< table, clause or page
    std::string basis;  ///< published, derived or practice
    std::string keyed;  ///< document, reproduction, memory or computed

    /// "ISO 898-1:2013, Table 4 (published, keyed from a reproduction)"
    [[nodiscard]] std::string line() const;
    friend bool operator==(const Citation&, const Citation&) = default;
};

/// Words that stand beside a figure because somebody could get hurt. `code` is stable.
struct Caution {
    std::string code;
    std::string text;
    friend bool operator==(const Caution&, const Caution&) = default;
};

} // namespace clampbook
