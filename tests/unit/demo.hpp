// SPDX-License-Identifier: MIT
#pragma once

// The invented demo book, written once for a whole test program.

#include "../data/support.hpp"
#include "clampbook/intake/intake.hpp"
#include "curated.hpp"

namespace unit_tests {

inline const clampbook::book::Book& demo() {
    static const data_tests::TemporaryFolder folder;
    static const clampbook::book::Book book = [] {
        const std::string path = (folder / "demo.db").string();
        clampbook::intake::write_demo(path, curated());
        return clampbook::book::Book{path, clampbook::book::Access::read};
    }();
    return book;
}

} // namespace unit_tests
