// SPDX-License-Identifier: MIT
#pragma once

// The command line as a function: arguments and streams in, exit code out. main.cpp calls it with the real ones, the
// tests with their own.

#include <functional>
#include <iosfwd>
#include <optional>
#include <string>
#include <vector>

namespace clampbook::cli {

/// The world outside the program, as it is handed in.
struct World {
    std::istream& in;
    std::ostream& out;                                                         ///< answers alone
    std::ostream& err;                                                         ///< everything else
    std::function<std::string()> clock;                                        ///< UTC now: 2026-11-25T10:15:00Z
    std::function<std::optional<std::string>(const std::string&)> environment; ///< a variable, if set and not empty
    std::function<bool()> interrupted = {}; ///< did somebody stop us? From the first call on, that is watched
    bool err_is_terminal = false;           ///< somebody watches: long work may say how far it is
};

/// `arguments` without the program's name. Exit codes: 0 done, 1 unexpected failure, 2 not understood, 3 nothing found,
/// 4 data, file or book not valid, 5 outside validity, 6 conflict, 130 interrupted. Throws nothing.
int run(const std::vector<std::string>& arguments, World world);

} // namespace clampbook::cli
