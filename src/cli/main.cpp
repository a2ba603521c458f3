// SPDX-License-Identifier: MIT
// The program: hands the real streams, clock and environment to `run`.

#include "cli.hpp"

#include "clampbook/book/book.hpp"

#include <unistd.h>

#include <array>
#include <chrono>
#include <csignal>
#include <cstdlib>
#include <ctime>
#include <exception>
#include <iostream>
#include <stdexcept>

namespace {
// The one thing that a signal handler may write to.
volatile std::sig_atomic_t stop_asked_for = 0; // NOLINT(cppcoreguidelines-avoid-non-const-global-variables)
} // namespace

int main(int argc, char** argv) try {
    clampbook::book::expect_one_thread();
    std::ios::sync_with_stdio(false);
    // A reader that closes the pipe, and a limit on the size of files, shall be told in a sentence, not by a signal.
    (void)std::signal(SIGPIPE, SIG_IGN);
    (void)std::signal(SIGXFSZ, SIG_IGN);
    const auto clock = [] {
        const auto now = std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now());
        const std::time_t seconds = std::chrono::system_clock::to_time_t(now);
        std::tm utc{};
        std::array<char, 32> text{};
        if (gmtime_r(&seconds, &utc) == nullptr || std::strftime(text.data(), text.size(), "%Y-%m-%dT%H:%M:%SZ", &utc) == 0) {
            throw std::runtime_error{"the clock of this machine gives no time"};
        }
        return std::string{text.data()};
    };
    const auto environment = [](const std::string& name) -> std::optional<std::string> {
        const char* value = std::getenv(name.c_str());
        return value == nullptr || *value == '\0' ? std::nullopt : std::optional<std::string>{value};
    };
    // Watched from the first question on, and once: a second Ctrl-C ends the program where it stands.
    const auto interrupted = [] {
        static const bool watched = [] {
            struct sigaction action {};
            action.sa_handler = [](int) { stop_asked_for = 1; };
            action.sa_flags = static_cast<int>(SA_RESETHAND);
            return sigaction(SIGINT, &action, nullptr) == 0;
        }();
        return watched && stop_asked_for != 0;
    };
    return clampbook::cli::run({argv + 1, argv + argc},
                               {std::cin, std::cout, std::cerr, clock, environment, interrupted, isatty(STDERR_FILENO) != 0});
} catch (const std::exception& fault) {
    // Only what fails before `run` can tell it: no memory for the arguments.
    std::cerr << fault.what() << "\n";
    return 1;
}
