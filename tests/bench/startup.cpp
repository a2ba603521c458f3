// SPDX-License-Identifier: MIT
// How long a lookup and a million draws take from start to end, beside another program that people start without thinking: medians
// of interleaved runs, wall clock. Usage: startup_bench CLAMPBOOK SQLITE3 [RUNS]; exit 1 where clampbook is slower.

#include <fcntl.h>
#include <spawn.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <charconv>
#include <cstddef>
#include <cstdio>
#include <cstring>
#include <exception>
#include <stdexcept>
#include <string>
#include <system_error>
#include <utility>
#include <vector>

extern char** environ; // NOLINT: the C library's name

namespace {

double now_ms() {
    timespec time{};
    clock_gettime(CLOCK_MONOTONIC, &time);
    return static_cast<double>(time.tv_sec) * 1e3 + static_cast<double>(time.tv_nsec) / 1e6;
}

// A command that is started again and again, with nothing on its standard input and its output thrown away.
class Command {
public:
    explicit Command(std::vector<std::string> words) : words_(std::move(words)) {
        for (std::string& word : words_) {
            arguments_.push_back(word.data());
        }
        arguments_.push_back(nullptr);
        posix_spawn_file_actions_init(&actions_);
        posix_spawn_file_actions_addopen(&actions_, STDIN_FILENO, "/dev/null", O_RDONLY, 0);
        posix_spawn_file_actions_addopen(&actions_, STDOUT_FILENO, "/dev/null", O_WRONLY, 0);
    }
    ~Command() { posix_spawn_file_actions_destroy(&actions_); }
    Command(const Command&) = delete;
    Command& operator=(const Command&) = delete;

    // Milliseconds of one run. Throws where it cannot be started or does not exit with 0.
    [[nodiscard]] double run() {
        const double begin = now_ms();
        pid_t child = 0;
        if (const int fault = posix_spawn(&child, words_[0].c_str(), &actions_, nullptr, arguments_.data(), environ);
            fault != 0) {
            throw std::system_error(fault, std::generic_category(), words_[0]);
        }
        int status = 0;
        while (waitpid(child, &status, 0) < 0) {
            if (errno != EINTR) {
                throw std::system_error(errno, std::generic_category(), "waitpid");
            }
        }
        const double end = now_ms();
        if (status != 0) {
            throw std::runtime_error(words_[0] + " fails");
        }
        return end - begin;
    }

private:
    std::vector<std::string> words_;
    std::vector<char*> arguments_;
    posix_spawn_file_actions_t actions_{};
};

double median(std::vector<double> values) {
    std::sort(values.begin(), values.end());
    const std::size_t half = values.size() / 2;
    return values.size() % 2 == 1 ? values[half] : (values[half - 1] + values[half]) / 2;
}

// Two commands that do as much.
struct Pair {
    const char* title;
    std::vector<std::string> ours;
    std::vector<std::string> theirs;
    std::size_t runs;
};

// True where clampbook is no slower.
bool compare(const Pair& pair) {
    Command ours{pair.ours};
    Command theirs{pair.theirs};
    constexpr std::size_t k_warm_up = 10;
    std::vector<double> our_times;
    std::vector<double> their_times;
    for (std::size_t i = 0; i < pair.runs + k_warm_up; ++i) {
        // By turns, and who begins changes too, so that whatever else the machine does falls on both.
        const double first = i % 2 == 0 ? ours.run() : theirs.run();
        const double second = i % 2 == 0 ? theirs.run() : ours.run();
        if (i >= k_warm_up) {
            our_times.push_back(i % 2 == 0 ? first : second);
            their_times.push_back(i % 2 == 0 ? second : first);
        }
    }
    const double ratio = median(our_times) / median(their_times);
    std::printf("%s: clampbook %.3f ms, sqlite3 %.3f ms, ratio %.2f over %zu runs each\n", pair.title, median(our_times),
                median(their_times), ratio, pair.runs);
    return ratio <= 1.0;
}

int compare_all(const std::string& clampbook, const std::string& sqlite3, std::size_t runs) {
    const bool start = compare(
        {"convert, and select 1", {clampbook, "convert", "24 lbf·ft", "--to", "N·m"}, {sqlite3, ":memory:", "select 1"}, runs});
    const bool draws =
        compare({"a million draws of scatter, and the mean of a million random()",
                 {clampbook, "scatter", "M10", "8.8", "--torque", "40 N·m", "--friction", "0.10..0.16", "--tool", "4%"},
                 {sqlite3, ":memory:",
                  "WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 1000000) "
                  "SELECT avg(random()) FROM n"},
                 runs / 10});
    return start && draws ? 0 : 1;
}

} // namespace

int main(int argc, char** argv) {
    constexpr std::size_t k_fewest_runs = 200;
    std::size_t runs = 2 * k_fewest_runs;
    if (argc == 4) {
        const char* end = argv[3] + std::strlen(argv[3]);
        const auto [stopped, fault] = std::from_chars(argv[3], end, runs);
        runs = fault == std::errc{} && stopped == end ? runs : 0;
    }
    if ((argc != 3 && argc != 4) || runs < k_fewest_runs) {
        std::fprintf(stderr, "usage: startup_bench CLAMPBOOK SQLITE3 [RUNS, at least %zu]\n", k_fewest_runs);
        return 2;
    }
    try {
        return compare_all(argv[1], argv[2], runs);
    } catch (const std::exception& fault) {
        std::fprintf(stderr, "startup_bench: %s\n", fault.what());
        return 2;
    }
}
