// SPDX-License-Identifier: MIT
#pragma once

// What every formula of this floor asks of its inputs. Not installed.

#include "clampbook/base/error.hpp"

#include <bit>
#include <cstdint>
#include <limits>

namespace clampbook::engine {

/// The refusal itself, out of the way of what is computed.
[[noreturn]] void refuse_not_positive(const char* what);

/// Whether a value lies between two positive limits or is one of them. The bits of positive doubles, read as numbers, stand in the order
/// of the doubles, and those of all others beyond the last: one comparison, since a draw asks a million times.
[[nodiscard]] constexpr bool within(double value, double low, double high) noexcept {
    const auto first = std::bit_cast<std::uint64_t>(low);
    return std::bit_cast<std::uint64_t>(value) - first <= std::bit_cast<std::uint64_t>(high) - first;
}

/// The smallest and the largest that is more than zero and finite.
inline constexpr double k_least = std::numeric_limits<double>::denorm_min();
inline constexpr double k_most = std::numeric_limits<double>::max();

/// Throws out_of_validity unless `value` is finite and more than zero; `what` is its name in the message.
inline void require_positive(double value, const char* what) {
    if (!within(value, k_least, k_most)) {
        refuse_not_positive(what);
    }
}

} // namespace clampbook::engine
