// SPDX-License-Identifier: MIT
#pragma once

// The embedded curated database, opened once for a whole test program.

#include "clampbook/reference/reference.hpp"

namespace unit_tests {

inline const clampbook::reference::Reference& curated() {
    static const clampbook::reference::Reference reference;
    return reference;
}

} // namespace unit_tests
