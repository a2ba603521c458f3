// SPDX-License-Identifier: MIT
#pragma once

// Answers that go into files of their own.

#include "clampbook/answer/doctor.hpp"
#include "command.hpp"

#include <string>
#include <vector>

namespace clampbook::cli {

/// Throws conflict where the file to be written is the book that is open.
void require_other_file(const std::string& target, const std::string& book);

/// The press, the program that sets pages: named in CLAMPBOOK_PRESS, else beside the running program, else in PATH. Nothing, with
/// a sentence, where it isn't there.
[[nodiscard]] answer::Chosen find_press(const World& world);

/// Runs the press with these arguments and this on its standard input. Throws invalid_data where it isn't there, and what it said
/// where it failed.
/// Where the file is `-`, gives what it would write there.
std::string pressed(Context& context, const std::vector<std::string>& arguments, const std::string& input);
void press(Context& context, const std::vector<std::string>& arguments, const std::string& input);

} // namespace clampbook::cli
