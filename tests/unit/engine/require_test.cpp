// SPDX-License-Identifier: MIT
// What lies between two positive limits, told by the bits of a double: each edge, its neighbours, and all that is no such number.

#include "clampbook/engine/require.hpp"
#include "outside.hpp"

#include <catch2/catch.hpp>

#include <cmath>

namespace {

using namespace clampbook::engine;
using namespace unit_tests;

} // namespace

TEST_CASE("limits belong to what lies between them, their neighbours beyond don't") {
    for (const auto& [low, high] : {std::pair{0.02, 0.5}, {1.0, 1.0}, {k_least, 1.0}, {0.5, k_most}}) {
        CAPTURE(low, high);
        CHECK(within(low, low, high));
        CHECK(within(high, low, high));
        CHECK(within(low / 2 + high / 2, low, high));
        CHECK_FALSE(within(std::nextafter(low, 0.0), low, high));
        CHECK_FALSE(within(std::nextafter(high, k_infinity), low, high));
        for (const double stranger : {0.0, -0.0, -low, -high, k_infinity, -k_infinity, k_nan, -k_nan}) {
            CHECK_FALSE(within(stranger, low, high));
        }
    }
}

TEST_CASE("what must be more than zero is so from the smallest to the largest") {
    for (const double good : {5e-324, 1.0, k_most}) {
        CHECK(outside([&] { require_positive(good, "it"); }) == "accepted");
    }
    for (const double wrong : {0.0, -0.0, -k_least, -k_most, k_nan, k_infinity, -k_infinity}) {
        CHECK(outside([&] { require_positive(wrong, "it"); }) == "it must be more than zero");
    }
}
