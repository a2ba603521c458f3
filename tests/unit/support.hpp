// SPDX-License-Identifier: MIT
#pragma once

// How the unit tests look at a refusal: its kind and its words.

#include "clampbook/base/error.hpp"

#include <catch2/catch.hpp>

#include <string>

namespace unit_tests {

/// The message of the clampbook::Error that the call throws, which must be of this kind; "accepted" where it throws none.
template <typename F>
std::string refusal(clampbook::ErrorKind kind, F&& call) {
    try {
        static_cast<void>(call());
    } catch (const clampbook::Error& fault) {
        INFO(fault.what());
        CHECK(fault.kind() == kind);
        return fault.what();
    }
    return "accepted";
}

} // namespace unit_tests
