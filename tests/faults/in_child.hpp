// SPDX-License-Identifier: MIT
#pragma once

// Work in a process of its own, for what might end it, fill the memory or never come back.

#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <functional>
#include <iostream>
#include <string>

// Of a build that counts executed lines: the child's count too. Elsewhere there is no such function.
extern "C" __attribute__((weak)) void __gcov_dump();

namespace fault_tests {

/// What the work gave back; "signal N" where a signal ended it, which after `seconds` one does.
inline std::string in_child(const std::function<std::string()>& work, unsigned seconds = 60) {
    std::array<int, 2> ends{};
    std::cout.flush();
    if (pipe(ends.data()) != 0) {
        return "no pipe";
    }
    const pid_t child = fork();
    if (child == 0) {
        close(ends[0]);
        alarm(seconds);
#ifndef __SANITIZE_ADDRESS__
        const rlimit room{std::uint64_t{2} << 30U, std::uint64_t{2} << 30U};
        (void)setrlimit(RLIMIT_AS, &room);
#endif
        std::string said;
        try {
            said = work();
        } catch (const std::exception& fault) {
            said = std::string{"thrown: "} + fault.what();
        }
        for (std::size_t at = 0; at < said.size();) {
            const ssize_t written = write(ends[1], said.data() + at, said.size() - at);
            if (written <= 0) {
                break;
            }
            at += static_cast<std::size_t>(written);
        }
        if (__gcov_dump != nullptr) {
            __gcov_dump();
        }
        _exit(0);
    }
    close(ends[1]);
    std::string said;
    std::array<char, 4096> part{};
    for (ssize_t got = 0; (got = read(ends[0], part.data(), part.size())) > 0;) {
        said.append(part.data(), static_cast<std::size_t>(got));
    }
    close(ends[0]);
    int status = 0;
    waitpid(child, &status, 0);
    return WIFSIGNALED(status) ? "signal " + std::to_string(WTERMSIG(status)) : WEXITSTATUS(status) != 0 ? "exit" : said;
}

} // namespace fault_tests
