// SPDX-License-Identifier: MIT
// The program: hands the real streams, clock and environment to `run`.

#include "cli.hpp"

#include <chrono>
#include <csignal>
#include <cstdlib>
#include <fmt/chrono.h>
#include <iostream>

int main(int argc, char** argv) {
    std::ios::sync_with_stdio(false);
    // A reader that closes the pipe, and a limit on the size of files, shall be told in a sentence, not by a signal.
    std::signal(SIGPIPE, SIG_IGN);
    std::signal(SIGXFSZ, SIG_IGN);
    const auto clock = [] {
        const std::time_t now = std::chrono::system_clock::to_time_t(std::chrono::system_clock::now());
        return fmt::format("{:%Y-%m-%dT%H:%M:%SZ}", fmt::gmtime(now));
    };
    const auto environment = [](const std::string& name) -> std::optional<std::string> {
        const char* value = std::getenv(name.c_str());
        return value == nullptr || *value == '\0' ? std::nullopt : std::optional<std::string>{value};
    };
    return clampbook::cli::run({argv + 1, argv + argc}, {std::cin, std::cout, std::cerr, clock, environment});
}
