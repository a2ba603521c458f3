// SPDX-License-Identifier: MIT
// The runner of the *.test files under test itself: a right file passes, and each way to be wrong is noticed.

#include "runner.hpp"

#include <catch2/catch.hpp>
#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <stdexcept>
#include <string>
#include <utility>

namespace {

namespace fs = std::filesystem;
using namespace clampbook::cli_test;

// A scratch folder with a program `greet` in it, and the file under test.
class Bench {
public:
    Bench() {
        std::string name = (fs::temp_directory_path() / "clampbook-runner-XXXXXX").string();
        REQUIRE(mkdtemp(name.data()) != nullptr);
        folder_ = name;
        std::ofstream{folder_ / "greet"} << "#!/bin/sh\necho \"hello $1\"\necho \"note for $1\" >&2\nexit 3\n";
        fs::permissions(folder_ / "greet", fs::perms::owner_all);
    }
    ~Bench() { fs::remove_all(folder_); }
    Bench(const Bench&) = delete;
    Bench& operator=(const Bench&) = delete;

    // Whether the text passes, and what the runner said.
    [[nodiscard]] std::pair<bool, std::string> run(const std::string& text) const {
        std::ofstream{folder_ / "case.test"} << text;
        std::ostringstream report;
        const bool passed = run_file(folder_ / "case.test", {folder_, "/source/tree"}, report);
        return {passed, report.str()};
    }
    [[nodiscard]] bool passes(const std::string& text) const { return run(text).first; }

private:
    fs::path folder_;
};

std::string refusal(const std::string& text) {
    try {
        (void)read_script(text, "case.test");
    } catch (const std::runtime_error& fault) {
        return fault.what();
    }
    return "accepted";
}

} // namespace

TEST_CASE("a right file passes") {
    const Bench bench;
    const auto [passed, report] = bench.run("# a comment\n"
                                            "run greet \"two  words\"\n"
                                            "exit 3\n"
                                            "out hello two  words\n"
                                            "err note for two  words\n"
                                            "\n"
                                            "run cat; echo kept > file\n"
                                            "in one\n"
                                            "in\n"
                                            "in   three\n"
                                            "out one\n"
                                            "out\n"
                                            "out   three\n"
                                            "run cat file\n"
                                            "out kept\n");
    INFO(report);
    CHECK(passed);
    CHECK(report.empty());
}

TEST_CASE("a wrong exit code is noticed and told") {
    const Bench bench;
    const std::string streams = "out hello x\nerr note for x\n";
    CHECK(bench.passes("run greet x\nexit 3\n" + streams));
    const auto [passed, report] = bench.run("run greet x\n" + streams);
    CHECK_FALSE(passed);
    CHECK(report.find("case.test:1: run greet x\n") != std::string::npos);
    CHECK(report.find("expected exit 0, got exit 3") != std::string::npos);
    CHECK_FALSE(bench.passes("run greet x\nexit 4\n" + streams));
    CHECK(bench.passes("run kill -9 $$\nexit 137\n"));
    CHECK_FALSE(bench.passes("run kill -9 $$\nexit 0\n"));
}

TEST_CASE("wrong standard output is noticed and told") {
    const Bench bench;
    const std::string head = "run printf 'a\\nb\\n'\n";
    CHECK(bench.passes(head + "out a\nout b\n"));
    CHECK_FALSE(bench.passes(head + "out a\n"));               // one line too few
    CHECK_FALSE(bench.passes(head + "out a\nout b\nout c\n")); // one too many
    CHECK_FALSE(bench.passes(head + "out b\nout a\n"));        // another order
    CHECK_FALSE(bench.passes(head + "out a\nout b \n"));       // a blank at the end
    CHECK_FALSE(bench.passes(head + "exit 0\n"));              // nothing expected
    CHECK_FALSE(bench.passes("run true\nout a\n"));            // nothing came
    CHECK_FALSE(bench.passes("run printf 'a\\nb'\nout a\nout b\n"));
    const auto [passed, report] = bench.run(head + "out a\nout c\n");
    CHECK_FALSE(passed);
    CHECK(report.find("expected on standard output:\n    |a\n    |c\n  got:\n    |a\n    |b\n") != std::string::npos);
}

TEST_CASE("wrong standard error is noticed and told") {
    const Bench bench;
    const std::string head = "run printf 'a\\nb\\n' >&2\n";
    CHECK(bench.passes(head + "err a\nerr b\n"));
    CHECK_FALSE(bench.passes(head + "err a\n"));
    CHECK_FALSE(bench.passes(head + "out a\nout b\n"));
    CHECK_FALSE(bench.passes(head + "exit 0\n"));
    const auto [passed, report] = bench.run(head + "err a\nerr c\n");
    CHECK_FALSE(passed);
    CHECK(report.find("expected on standard error:\n    |a\n    |c\n  got:\n    |a\n    |b\n") != std::string::npos);
}

TEST_CASE("patterns match whole lines") {
    const Bench bench;
    CHECK(bench.passes("run echo torque 49.3 N·m\nout~ torque [0-9.]+ N·m\n"));
    CHECK_FALSE(bench.passes("run echo torque 49.3 N·m\nout~ torque [0-9.]+\n"));
    CHECK_FALSE(bench.passes("run echo torque x N·m\nout~ torque [0-9.]+ N·m\n"));
    CHECK(bench.passes("run echo 7 >&2\nerr~ [0-9]\n"));
    CHECK_FALSE(bench.passes("run echo 77 >&2\nerr~ [0-9]\n"));
}

TEST_CASE("skipped lines") {
    const Bench bench;
    const std::string head = "run printf '1\\n2\\n3\\n2\\n4\\n'\n";
    CHECK(bench.passes(head + "out...\nout 4\n"));
    CHECK(bench.passes(head + "out 1\nout...\n"));
    CHECK(bench.passes(head + "out...\nout 2\nout 4\nout...\n"));
    CHECK(bench.passes(head + "out 1\nout 2\nout...\nout 3\nout 2\nout 4\n"));
    CHECK_FALSE(bench.passes(head + "out...\nout 5\nout...\n"));
    CHECK_FALSE(bench.passes(head + "out...\nout 3\n"));
    CHECK_FALSE(bench.passes(head + "out...\nout 4\nout...\nout 3\nout...\n"));
    CHECK_FALSE(bench.passes("run echo x >&2\nout...\nexit 0\n"));
}

TEST_CASE("what a command sees") {
    const Bench bench;
    CHECK(bench.passes("run ls -A; ls -A \"$HOME\"\nexit 0\n"));
    CHECK(bench.passes("run case $PATH in */clampbook-runner-*:*) echo first;; esac\nout first\n"));
    CHECK(bench.passes("run echo $LC_ALL $TZ $SOURCE_DIR\nout C UTC /source/tree\n"));
    CHECK(bench.passes("run LC_ALL=C.UTF-8 sh -c 'echo $LC_ALL'\nout C.UTF-8\n"));
    CHECK(bench.passes("run if read line; then echo input; else echo none; fi\nout none\n"));
    CHECK(bench.passes("run (exec </dev/tty) 2>/dev/null || exit 9\nexit 9\n"));
    REQUIRE(setenv("CLAMPBOOK_BOOK", "/elsewhere/book.db", 1) == 0);
    REQUIRE(setenv("XDG_DATA_HOME", "/elsewhere", 1) == 0);
    CHECK(bench.passes("run echo \"${CLAMPBOOK_BOOK-unset} ${XDG_DATA_HOME-unset}\"\nout unset unset\n"));
    CHECK(bench.passes("run cat left-over\nexit 1\nerr...\n"));
    CHECK(bench.passes("run echo > left-over; echo > \"$HOME/left-over\"\nexit 0\n"));
    CHECK(bench.passes("run cat left-over\nexit 1\nerr...\n"));
}

TEST_CASE("what is not of the form is refused with its line") {
    CHECK(refusal("run true\nexit 0\n") == "accepted");
    CHECK(refusal("run true\n") == "case.test:1: this run asserts nothing: no exit, no line of out or err");
    CHECK(refusal("run a\nout x\nrun b\nout...\nerr...\n") ==
          "case.test:3: this run asserts nothing: no exit, no line of out or err");
    CHECK(refusal("") == "case.test:1: no run in this file");
    CHECK(refusal("# nothing but this\n") == "case.test:1: no run in this file");
    CHECK(refusal("out x\nrun true\n") == "case.test:1: 'out' before the first run");
    CHECK(refusal("run\nexit 0\n") == "case.test:1: 'run' without a command");
    CHECK(refusal("run true\nexit zero\n") == "case.test:2: 'zero' is no exit code");
    CHECK(refusal("run true\nexit\n") == "case.test:2: '' is no exit code");
    CHECK(refusal("run true\nexit 256\n") == "case.test:2: '256' is no exit code");
    CHECK(refusal("run true\nexit 0\nexit 1\n") == "case.test:3: a second exit for one run");
    CHECK(refusal("run true\nout... x\n") == "case.test:2: 'out...' takes no text");
    CHECK(refusal("run true\nstdout x\n").starts_with("case.test:2: 'stdout' is none of run, in, exit"));
    CHECK(refusal("run true\n out x\n").starts_with("case.test:2: '' is none of run, in, exit"));
    CHECK(refusal("run true\nout~ (\n").starts_with("case.test:2: '(' is no regular expression"));
}

TEST_CASE("a file that is not there is a failure") {
    std::ostringstream report;
    CHECK_THROWS_AS((void)run_file("/no/such/file.test", {"/", "/"}, report), std::runtime_error);
}
