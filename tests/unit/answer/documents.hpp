// SPDX-License-Identifier: MIT
#pragma once

// How the tests of the answers look into a document.

#include "clampbook/answer/document.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <string_view>

namespace unit_tests {

inline const clampbook::answer::Item* item(const clampbook::answer::Document& document, std::string_view key) {
    for (const auto& section : document.sections) {
        for (const auto& one : section.items) {
            if (one.key == key) {
                return &one;
            }
        }
    }
    return nullptr;
}

inline clampbook::answer::Figure figure(const clampbook::answer::Document& document, std::string_view key) {
    const auto* found = item(document, key);
    INFO(key);
    REQUIRE(found != nullptr);
    REQUIRE(found->figure);
    return *found->figure;
}

inline bool cautions(const clampbook::answer::Document& document, std::string_view code) {
    return std::ranges::find(document.cautions, code, &clampbook::Caution::code) != document.cautions.end();
}

/// Every figure has a label and says where it comes from: a citation, or a basis in words.
inline void check_origins(const clampbook::answer::Document& document) {
    std::size_t figures = 0;
    for (const auto& section : document.sections) {
        for (const auto& one : section.items) {
            if (one.figure) {
                INFO(one.key << ": " << one.figure->print);
                if (one.key == "draws" || one.key == "seed") {
                    continue; // how it was drawn: no figure of the trade
                }
                CHECK(one.figure->label);
                CHECK((one.figure->citation || !one.figure->basis.empty()));
                CHECK_FALSE(one.figure->print.empty());
                CHECK(std::isfinite(one.figure->value));
                ++figures;
            }
        }
    }
    CHECK(figures > 3);
}

} // namespace unit_tests
