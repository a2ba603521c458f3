// SPDX-License-Identifier: MIT
// Reads *.test files, runs their commands and compares what came with what was expected.

#include "runner.hpp"

#include <fcntl.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <charconv>
#include <cstdlib>
#include <cstring>
#include <fstream>
#include <ostream>
#include <regex>
#include <sstream>
#include <stdexcept>
#include <system_error>
#include <utility>

extern char** environ; // NOLINT: the C library's name

namespace clampbook::cli_test {
namespace {

namespace fs = std::filesystem;

std::string read_whole(const fs::path& file) {
    std::ifstream in{file, std::ios::binary};
    if (!in) {
        throw std::runtime_error("cannot read " + file.string());
    }
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

// A folder of its own for one file's runs, gone at the end.
class Scratch {
public:
    Scratch() {
        std::string name = (fs::temp_directory_path() / "clampbook-cli-XXXXXX").string();
        if (mkdtemp(name.data()) == nullptr) {
            throw std::system_error(errno, std::generic_category(), "no scratch folder " + name);
        }
        folder_ = name;
        fs::create_directory(work());
        fs::create_directory(home());
        fs::create_directory(streams());
    }
    ~Scratch() {
        std::error_code ignored;
        fs::remove_all(folder_, ignored);
    }
    Scratch(const Scratch&) = delete;
    Scratch& operator=(const Scratch&) = delete;

    [[nodiscard]] fs::path work() const { return folder_ / "work"; }
    [[nodiscard]] fs::path home() const { return folder_ / "home"; }
    [[nodiscard]] fs::path streams() const { return folder_ / "streams"; }

private:
    fs::path folder_;
};

std::vector<std::string> environment(const Surroundings& surroundings, const Scratch& scratch) {
    const char* path = std::getenv("PATH");
    std::vector<std::string> out{
        "PATH=" + surroundings.program_folder.string() + ":" + (path == nullptr ? "/usr/bin:/bin" : path),
        "HOME=" + scratch.home().string(),
        "TMPDIR=" + scratch.streams().string(),
        "SOURCE_DIR=" + surroundings.source_folder.string(),
        "LC_ALL=C",
        "TZ=UTC",
    };
    // What the sanitizers, the coverage and a faked clock go by.
    static const std::regex kept{"[A-Z]*SAN_OPTIONS=.*|GCOV_[A-Z_]*=.*|LD_PRELOAD=.*|FAKETIME[A-Z_]*=.*"};
    for (char** entry = environ; *entry != nullptr; ++entry) {
        if (std::regex_match(*entry, kept)) {
            out.emplace_back(*entry);
        }
    }
    return out;
}

struct Outcome {
    int exit_code = 0;
    std::string out;
    std::string err;
};

// In the child, where nothing may be thrown any more: puts a file in the place of a standard stream.
void redirect(const char* file, int flags, int stream) {
    const int opened = open(file, flags, 0600);
    if (opened < 0 || dup2(opened, stream) < 0) {
        _exit(126);
    }
    close(opened);
}

Outcome execute(const Run& run, const Surroundings& surroundings, const Scratch& scratch) {
    const std::string in = (scratch.streams() / "in").string();
    const std::string out = (scratch.streams() / "out").string();
    const std::string err = (scratch.streams() / "err").string();
    std::ofstream{in, std::ios::binary} << run.input;
    const char* stdin_file = run.input.empty() ? "/dev/null" : in.c_str();
    const std::string work = scratch.work().string();
    std::string shell = "sh";
    std::string option = "-c";
    std::string command = run.command;
    const std::array<char*, 4> arguments{shell.data(), option.data(), command.data(), nullptr};
    std::vector<std::string> variables = environment(surroundings, scratch);
    std::vector<char*> pointers;
    for (std::string& variable : variables) {
        pointers.push_back(variable.data());
    }
    pointers.push_back(nullptr);

    const pid_t child = fork();
    if (child < 0) {
        throw std::system_error(errno, std::generic_category(), "fork");
    }
    if (child == 0) {
        setsid(); // leaves the terminal
        if (chdir(work.c_str()) != 0) {
            _exit(126);
        }
        redirect(stdin_file, O_RDONLY, STDIN_FILENO);
        redirect(out.c_str(), O_WRONLY | O_CREAT | O_TRUNC, STDOUT_FILENO);
        redirect(err.c_str(), O_WRONLY | O_CREAT | O_TRUNC, STDERR_FILENO);
        execve("/bin/sh", arguments.data(), pointers.data());
        _exit(126);
    }
    int status = 0;
    while (waitpid(child, &status, 0) < 0) {
        if (errno != EINTR) {
            throw std::system_error(errno, std::generic_category(), "waitpid");
        }
    }
    const int code = WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
    return {code, read_whole(out), read_whole(err)};
}

std::vector<std::string> lines_of(std::string_view text) {
    std::vector<std::string> lines;
    while (!text.empty()) {
        const std::size_t end = text.find('\n');
        lines.emplace_back(text.substr(0, end));
        text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
    }
    return lines;
}

using Expected = std::vector<ExpectedLine>::const_iterator;
using Got = std::vector<std::string>::const_iterator;

bool matches_from(Expected expected, Expected expected_end, Got got, Got got_end) {
    for (; expected != expected_end; ++expected, ++got) {
        if (expected->kind == LineKind::any) {
            for (Got rest = got;; ++rest) {
                if (matches_from(expected + 1, expected_end, rest, got_end)) {
                    return true;
                }
                if (rest == got_end) {
                    return false;
                }
            }
        }
        if (got == got_end) {
            return false;
        }
        if (expected->kind == LineKind::exact ? *got != expected->text : !std::regex_match(*got, std::regex{expected->text})) {
            return false;
        }
    }
    return got == got_end;
}

void tell(std::ostream& report, std::string_view title, std::string_view text) {
    report << "  " << title << '\n';
    if (text.empty()) {
        report << "    (nothing)\n";
    }
    for (const std::string& line : lines_of(text)) {
        report << "    |" << line << '\n';
    }
    if (!text.empty() && text.back() != '\n') {
        report << "    (the last line is not ended)\n";
    }
}

void tell(std::ostream& report, std::string_view title, const std::vector<ExpectedLine>& lines) {
    std::string text;
    for (const ExpectedLine& line : lines) {
        text += line.kind == LineKind::any ? "..." : line.kind == LineKind::pattern ? "~ " + line.text : line.text;
        text += '\n';
    }
    tell(report, title, text);
}

[[noreturn]] void refuse(std::string_view name, std::size_t line, const std::string& what) {
    throw std::runtime_error(std::string{name} + ":" + std::to_string(line) + ": " + what);
}

int exit_code_of(const std::string& text, std::string_view name, std::size_t line) {
    int code = 0;
    const char* const end = text.data() + text.size();
    const auto [stopped, fault] = std::from_chars(text.data(), end, code);
    if (fault != std::errc{} || stopped != end || code < 0 || code > 255) {
        refuse(name, line, "'" + text + "' is no exit code");
    }
    return code;
}

void expect_line(Run& run, const std::string& word, const std::string& text, std::string_view name, std::size_t line) {
    std::vector<ExpectedLine>& stream = word.starts_with("out") ? run.out : run.err;
    const std::string form = word.substr(3);
    if (form == "...") {
        if (!text.empty()) {
            refuse(name, line, "'" + word + "' takes no text");
        }
        stream.push_back({LineKind::any, {}});
        return;
    }
    if (form == "~") {
        try {
            const std::regex trial{text};
        } catch (const std::regex_error& fault) {
            refuse(name, line, "'" + text + "' is no regular expression: " + fault.what());
        }
        stream.push_back({LineKind::pattern, text});
    } else {
        stream.push_back({LineKind::exact, text});
    }
    run.asserts = true;
}

} // namespace

std::vector<Run> read_script(std::string_view text, std::string_view name) {
    std::vector<Run> runs;
    std::size_t number = 0;
    bool exit_seen = false;
    const auto finish = [&] {
        if (!runs.empty() && !runs.back().asserts) {
            refuse(name, runs.back().line, "this run asserts nothing: no exit, no line of out or err");
        }
    };
    for (const std::string& line : lines_of(text)) {
        ++number;
        if (line.find_first_not_of(' ') == std::string::npos || line.front() == '#') {
            continue;
        }
        const std::size_t blank = line.find(' ');
        const std::string word = line.substr(0, blank);
        const std::string rest = blank == std::string::npos ? std::string{} : line.substr(blank + 1);
        if (word == "run") {
            finish();
            if (rest.find_first_not_of(' ') == std::string::npos) {
                refuse(name, number, "'run' without a command");
            }
            runs.push_back({});
            runs.back().line = number;
            runs.back().command = rest;
            exit_seen = false;
            continue;
        }
        static const std::regex known{"in|exit|(out|err)(~|\\.\\.\\.)?"};
        if (!std::regex_match(word, known)) {
            refuse(name, number, "'" + word + "' is none of run, in, exit, out, out~, out..., err, err~, err...");
        }
        if (runs.empty()) {
            refuse(name, number, "'" + word + "' before the first run");
        }
        Run& run = runs.back();
        if (word == "in") {
            run.input += rest + '\n';
        } else if (word == "exit") {
            if (exit_seen) {
                refuse(name, number, "a second exit for one run");
            }
            exit_seen = true;
            run.exit_code = exit_code_of(rest, name, number);
            run.asserts = true;
        } else {
            expect_line(run, word, rest, name, number);
        }
    }
    finish();
    if (runs.empty()) {
        refuse(name, 1, "no run in this file");
    }
    return runs;
}

bool matches(const std::vector<ExpectedLine>& expected, std::string_view text) {
    const bool open_end = !expected.empty() && expected.back().kind == LineKind::any;
    if (!text.empty() && text.back() != '\n' && !open_end) {
        return false;
    }
    const std::vector<std::string> got = lines_of(text);
    return matches_from(expected.begin(), expected.end(), got.begin(), got.end());
}

bool run_file(const std::filesystem::path& file, const Surroundings& surroundings, std::ostream& report) {
    const std::vector<Run> runs = read_script(read_whole(file), file.filename().string());
    const Scratch scratch;
    bool all = true;
    for (const Run& run : runs) {
        const Outcome outcome = execute(run, surroundings, scratch);
        const bool out_fits = matches(run.out, outcome.out);
        const bool err_fits = matches(run.err, outcome.err);
        if (outcome.exit_code == run.exit_code && out_fits && err_fits) {
            continue;
        }
        all = false;
        report << file.filename().string() << ':' << run.line << ": run " << run.command << '\n';
        if (outcome.exit_code != run.exit_code) {
            report << "  expected exit " << run.exit_code << ", got exit " << outcome.exit_code << '\n';
        }
        if (!out_fits) {
            tell(report, "expected on standard output:", run.out);
        }
        tell(report, out_fits ? "standard output, as expected:" : "got:", outcome.out);
        if (!err_fits) {
            tell(report, "expected on standard error:", run.err);
        }
        tell(report, err_fits ? "standard error, as expected:" : "got:", outcome.err);
    }
    return all;
}

} // namespace clampbook::cli_test
