// SPDX-License-Identifier: MIT
#pragma once

// Which values are offered where: apart from the command, so that a test can ask it of every option.

#include <string>

namespace CLI {
class Option;
} // namespace CLI

namespace clampbook::cli {

/// The name of an option or positional, or of what its value is called, by which `complete` offers values for it. Empty where nothing
/// is offered.
[[nodiscard]] std::string completion_place(const CLI::Option& option);

} // namespace clampbook::cli
