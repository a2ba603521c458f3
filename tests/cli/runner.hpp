// SPDX-License-Identifier: MIT
#pragma once

// Tests of the command line as text. A *.test file is read line by line:
//
//     # a comment; empty lines mean nothing
//     run clampbook convert "24 lbf·ft" --to N·m
//     in  a line for standard input (nothing is there otherwise)
//     exit 0
//     out 32.5 N·m
//     out~ a regular expression for a whole line
//     out...
//
// `run` takes a line for /bin/sh and begins a run; what follows up to the next `run` says what is expected of it. `out`
// lines are the whole standard output, in order and letter for letter; `out~` stands for one line that the ECMAScript
// expression matches wholly; `out...` for any number of lines, none included. `err`, `err~`, `err...` say the same of
// standard error. A stream with no line of its own must stay empty. Without `exit` the exit code is 0. One blank divides
// the word from its text; further blanks belong to the text. A run with neither a line of text nor `exit` is refused: it
// would assert nothing.
//
// The runs of one file share a new, empty working folder and an empty HOME. Nothing of the caller's environment is seen
// but the sanitizers' and the coverage's own variables: PATH begins with the program's folder, LC_ALL is C, TZ is UTC,
// SOURCE_DIR names the source tree. There is no terminal.

#include <cstddef>
#include <filesystem>
#include <iosfwd>
#include <string>
#include <string_view>
#include <vector>

namespace clampbook::cli_test {

enum class LineKind { exact, pattern, any };

/// One expected line of a stream.
struct ExpectedLine {
    LineKind kind = LineKind::exact;
    std::string text;
};

/// One `run` and what is expected of it.
struct Run {
    std::size_t line = 0; ///< of the file, counted from 1
    std::string command;
    std::string input;
    int exit_code = 0;
    std::vector<ExpectedLine> out;
    std::vector<ExpectedLine> err;
    bool asserts = false; ///< an exit, or a line of text for a stream
};

/// Reads a file's text. Throws std::runtime_error with `name:line: what` for anything that is not of the form above.
[[nodiscard]] std::vector<Run> read_script(std::string_view text, std::string_view name);

/// True where the text is what the lines ask for: each line ended, nothing over, nothing missing.
[[nodiscard]] bool matches(const std::vector<ExpectedLine>& expected, std::string_view text);

struct Surroundings {
    std::filesystem::path program_folder; ///< comes first in PATH
    std::filesystem::path source_folder;  ///< SOURCE_DIR
};

/// Runs the file and tells on `report` each run that went otherwise: the command, what was expected, what came. True
/// where all went as expected. Throws std::runtime_error where the file cannot be read or is not of the form above.
[[nodiscard]] bool run_file(const std::filesystem::path& file, const Surroundings& surroundings, std::ostream& report);

} // namespace clampbook::cli_test
