// SPDX-License-Identifier: MIT
#pragma once

// What is fuzzed: one function a way into clampbook, each given bytes that nobody has looked at. A function ends quietly where the
// bytes are taken or refused with an Error, and ends the process where what it asserts does not hold. The fuzzer and the replay
// of kept files call the same functions.

#include "clampbook/base/error.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

namespace fuzz {

void quantity(std::string_view bytes);   ///< units: a quantity as typed
void thread(std::string_view bytes);     ///< model and reference: a thread's name
void tightening(std::string_view bytes); ///< model: a tightening as written
void rows(std::string_view bytes);       ///< exchange, intake, book: a CSV file that is imported
void story(std::string_view bytes);      ///< the same for a JSON export
void press(std::string_view bytes);      ///< press: JSON of a sheet or of pages to a drawing
void book(std::string_view bytes);       ///< book, answer, present: a book file, opened and asked

/// What is being run, for messages: a file's name in a replay.
std::string& running();

/// How many inputs were taken so far. A target whose inputs are all refused asserts hardly anything.
std::size_t& taken();

/// Says what does not hold and ends the process.
[[noreturn]] void breach(std::string_view what);

inline void require(bool holds, std::string_view what) {
    if (!holds) {
        breach(what);
    }
}

/// Asserts that this can be shown: UTF-8 without control characters but line ends.
void require_shown(std::string_view text, std::string_view what);

/// Asserts that the message is there and can be shown.
void require_sentence(const clampbook::Error& fault);

/// Runs `body`; gives the Error that refused it. Anything else that is thrown goes on, and ends the process.
template <typename F>
std::optional<clampbook::Error> refused(F&& body) {
    try {
        std::forward<F>(body)();
        return std::nullopt;
    } catch (const clampbook::Error& fault) {
        require_sentence(fault);
        return fault;
    }
}

} // namespace fuzz
