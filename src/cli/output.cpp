// SPDX-License-Identifier: MIT
#include "output.hpp"

#include "clampbook/base/error.hpp"
#include "clampbook/base/text.hpp"

#include <fcntl.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstring>
#include <filesystem>
#include <system_error>

namespace clampbook::cli {
namespace {

namespace fs = std::filesystem;

// A pipe whose ends close when nobody needs them any more.
struct Pipe {
    std::array<int, 2> ends{-1, -1};
    Pipe() {
        if (pipe2(ends.data(), O_CLOEXEC) != 0) {
            throw error(ErrorKind::internal, "no pipe to the press: {}", std::strerror(errno));
        }
    }
    ~Pipe() {
        shut(0);
        shut(1);
    }
    Pipe(const Pipe&) = delete;
    Pipe& operator=(const Pipe&) = delete;
    void shut(std::size_t end) {
        if (ends.at(end) >= 0) {
            close(ends.at(end));
            ends.at(end) = -1;
        }
    }
};

// Where the press stops reading early, it says why; what was not read is no fault of ours.
void feed(int to, const std::string& input) {
    std::size_t at = 0;
    while (at < input.size()) {
        const ssize_t n = write(to, input.data() + at, input.size() - at);
        if (n < 0 && errno == EINTR) {
            continue;
        }
        if (n <= 0) {
            return;
        }
        at += static_cast<std::size_t>(n);
    }
}

std::string read_all(int from) {
    std::string out;
    std::array<char, 4096> part{};
    for (;;) {
        const ssize_t n = read(from, part.data(), part.size());
        if (n < 0 && errno == EINTR) {
            continue;
        }
        if (n <= 0) {
            return out;
        }
        out.append(part.data(), static_cast<std::size_t>(n));
    }
}

ErrorKind kind_of(int code) { return code == 2 ? ErrorKind::usage : code == 4 ? ErrorKind::invalid_data : ErrorKind::internal; }

} // namespace

answer::Chosen find_press(const World& world) {
    if (const auto named = world.environment("CLAMPBOOK_PRESS")) {
        return {*named, "CLAMPBOOK_PRESS"};
    }
    std::error_code problem;
    const fs::path self = fs::read_symlink("/proc/self/exe", problem);
    if (!problem && fs::exists(self.parent_path() / "clampbook-press", problem)) {
        return {(self.parent_path() / "clampbook-press").string(), "standing beside clampbook"};
    }
    for (const std::string& folder : split(world.environment("PATH").value_or(""), ':')) {
        const fs::path program = fs::path{folder} / "clampbook-press";
        if (!folder.empty() && access(program.c_str(), X_OK) == 0) {
            return {program.string(), "PATH"};
        }
    }
    return {
        {},
        {},
        "the program clampbook-press isn't here: it sets PDF, SVG and spreadsheets; install the package clampbook-press, or name "
        "the program in CLAMPBOOK_PRESS"};
}

void require_other_file(const std::string& target, const std::string& book) {
    std::error_code problem;
    if (!target.empty() && fs::equivalent(target, book, problem)) {
        throw error(ErrorKind::conflict, "'{}' is the book; a sheet needs another name", target);
    }
}

std::string pressed(Context& context, const std::vector<std::string>& arguments, const std::string& input) {
    const answer::Chosen found = find_press(context.world);
    if (found.what.empty()) {
        throw error(ErrorKind::invalid_data, "{}", found.problem);
    }
    const std::string& program = found.what;
    Pipe in;
    Pipe out;
    Pipe err;
    std::vector<std::string> words{program};
    words.insert(words.end(), arguments.begin(), arguments.end());
    std::vector<char*> argv;
    for (std::string& word : words) {
        argv.push_back(word.data());
    }
    argv.push_back(nullptr);
    posix_spawn_file_actions_t actions;
    posix_spawn_file_actions_init(&actions);
    posix_spawn_file_actions_adddup2(&actions, in.ends[0], STDIN_FILENO);
    posix_spawn_file_actions_adddup2(&actions, out.ends[1], STDOUT_FILENO);
    posix_spawn_file_actions_adddup2(&actions, err.ends[1], STDERR_FILENO);
    pid_t child = 0;
    const int failed = posix_spawn(&child, program.c_str(), &actions, nullptr, argv.data(), environ);
    posix_spawn_file_actions_destroy(&actions);
    if (failed != 0) {
        throw error(ErrorKind::invalid_data, "the press '{}' cannot be started: {}", program, std::strerror(failed));
    }
    in.shut(0);
    out.shut(1);
    err.shut(1);
    feed(in.ends[1], input);
    in.shut(1);
    std::string made = read_all(out.ends[0]); // of its errors it writes a sentence, which the pipe holds meanwhile
    const std::string said = read_all(err.ends[0]);
    int status = 0;
    while (waitpid(child, &status, 0) < 0 && errno == EINTR) {
    }
    if (WIFEXITED(status) && WEXITSTATUS(status) == 0) {
        return made;
    }
    std::string_view sentence = trim(said);
    constexpr std::string_view k_name = "clampbook-press: ";
    sentence.remove_prefix(sentence.starts_with(k_name) ? k_name.size() : 0);
    throw error(WIFEXITED(status) ? kind_of(WEXITSTATUS(status)) : ErrorKind::internal, "the press: {}",
                sentence.empty() ? "it ended without a word" : sentence);
}

void press(Context& context, const std::vector<std::string>& arguments, const std::string& input) {
    (void)pressed(context, arguments, input);
}

} // namespace clampbook::cli
