// SPDX-License-Identifier: MIT
#pragma once

// What the tests of the engine share: figures that are none, and the words in which a formula names its limit.

#include "support.hpp"

#include <limits>
#include <string>
#include <utility>

namespace unit_tests {

inline constexpr double k_nan = std::numeric_limits<double>::quiet_NaN();
inline constexpr double k_infinity = std::numeric_limits<double>::infinity();

/// The message of the out_of_validity that the call throws; "accepted" where it throws none.
template <typename F>
std::string outside(F&& call) {
    return refusal(clampbook::ErrorKind::out_of_validity, std::forward<F>(call));
}

} // namespace unit_tests
