// SPDX-License-Identifier: MIT
#pragma once

// What every formula of this floor asks of its inputs. Not installed.

#include "clampbook/base/error.hpp"

#include <cmath>

namespace clampbook::engine {

/// Throws out_of_validity unless `value` is finite and more than zero; `what` is its name in the message.
inline void require_positive(double value, const char* what) {
    if (!(value > 0) || !std::isfinite(value)) {
        throw error(ErrorKind::out_of_validity, "{} must be more than zero", what);
    }
}

} // namespace clampbook::engine
