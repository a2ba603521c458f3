// SPDX-License-Identifier: MIT
#pragma once

// The one failure type of clampbook. Every floor throws it; only the program's outermost frame turns its kind into an
// exit code. The message is one sentence for the person at the keyboard: what was wrong, the value as typed, the limit
// or the nearest right spelling.

#include <fmt/core.h>

#include <stdexcept>
#include <string>
#include <utility>

namespace clampbook {

/// What sort of failure. Stable: programs and scripts see it as an exit code (see `exit_code`).
enum class ErrorKind {
    internal,        ///< a fault of ours, or of the machine in a way nobody could have asked for
    usage,           ///< the words typed were not understood
    not_found,       ///< the question was good, the answer is nowhere
    invalid_data,    ///< a file, book or value does not hold what it should
    out_of_validity, ///< outside the validity of a formula or table
    conflict,        ///< exists already, stale, or contradicts what is there
    interrupted,     ///< somebody stopped it; nothing of it was kept
};

class Error : public std::runtime_error {
public:
    /// Bytes of a file or a book that a message repeats may be anything: what is no UTF-8 or a control character other than a
    /// line end becomes U+FFFD, so that no message steers a terminal.
    Error(ErrorKind kind, const std::string& message);

    [[nodiscard]] ErrorKind kind() const noexcept { return kind_; }

    /// The process exit code of this kind: 1, 2, 3, 4, 5, 6 in the order of `ErrorKind`, and 130 for interrupted.
    [[nodiscard]] int exit_code() const noexcept;

private:
    ErrorKind kind_;
};

/// Builds an error with its message; the format is checked at compile time.
template <typename... Args>
[[nodiscard]] Error error(ErrorKind kind, fmt::format_string<Args...> format, Args&&... args) {
    return {kind, fmt::format(format, std::forward<Args>(args)...)};
}

} // namespace clampbook
