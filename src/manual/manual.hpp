// SPDX-License-Identifier: MIT
#pragma once

// The manual pages, made while the program is built, of the very texts that --help shows: one of the program, one of each command
// and one of the press. The same program gives the same bytes.

#include "cli/command.hpp"

#include <string>

namespace clampbook::manual {

/// What stands in the head and foot of each page.
struct Issue {
    std::string version;
    std::string date; ///< ISO 8601
};

// Each is a page for man(1), in the language of groff's man macros.
[[nodiscard]] std::string program_page(const Issue& issue);
[[nodiscard]] std::string command_page(const cli::Command& command, const Issue& issue);
[[nodiscard]] std::string press_page(const Issue& issue);

} // namespace clampbook::manual
