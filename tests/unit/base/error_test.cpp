// SPDX-License-Identifier: MIT
// Each kind of failure has its own exit code, and a message is built from its parts.

#include "support.hpp"

#include <catch2/catch.hpp>

#include <utility>

using clampbook::Error;
using clampbook::ErrorKind;

TEST_CASE("exit codes are stable") {
    const std::pair<ErrorKind, int> codes[] = {
        {ErrorKind::internal, 1},        {ErrorKind::usage, 2},    {ErrorKind::not_found, 3},     {ErrorKind::invalid_data, 4},
        {ErrorKind::out_of_validity, 5}, {ErrorKind::conflict, 6}, {ErrorKind::interrupted, 130},
    };
    for (const auto& [kind, code] : codes) {
        CHECK(Error(kind, "x").exit_code() == code);
        CHECK(Error(kind, "x").kind() == kind);
    }
}

TEST_CASE("a message holds what was put into it") {
    const Error fault = clampbook::error(ErrorKind::usage, "'{}' is {} of {}", "a", 1, 2.5);
    CHECK(std::string{fault.what()} == "'a' is 1 of 2.5");
    CHECK(std::string{Error(ErrorKind::usage, "{}").what()} == "{}");
}

TEST_CASE("a message that repeats what is no text can be shown all the same") {
    const auto said = [](const std::string& message) { return std::string{Error(ErrorKind::invalid_data, message).what()}; };
    CHECK(said("'\x1b[31mred\a' \xc2\x9b \x7f") == "'\uFFFD[31mred\uFFFD' \uFFFD \uFFFD");
    CHECK(said("'\xc3(' and \xff") == "'\uFFFD(' and \uFFFD");
    CHECK(said("\xef\xbf\xbe\xef\xbf\xbf") == "\uFFFD\uFFFD");
    CHECK(said("one of:\n  ä") == "one of:\n  ä");
}
