// SPDX-License-Identifier: MIT
#pragma once

// What every formula of this floor asks of its inputs. Not installed.

#include "clampbook/base/error.hpp"

#include <cmath>

namespace clampbook::engine {

/// The refusal itself, out of the way of what is computed.
[[noreturn]] void refuse_not_positive(const char* what);

/// Throws out_of_validity unless `value` is finite and more than zero; `what` is its name in the message.
inline void require_positive(double value, const char* what) {
    if (!(value > 0) || !std::isfinite(value)) {
        refuse_not_positive(what);
    }
}

} // namespace clampbook::engine
