// SPDX-License-Identifier: MIT
// The nth read, write, sync, allocation, ... of every command that writes fails, for every n until the command has no nth: the
// book is as it was before or as it is after, whole, and what the program says of it is true.
// CLAMPBOOK_FAULTS=all: every n, as documented in DEVELOPERS.md; without it some of them.

#include "command.hpp"
#include "shim.hpp"
#include "writing.hpp"

#include <CLI/CLI.hpp>
#include <catch2/catch.hpp>

#include <chrono>
#include <cstdlib>
#include <iostream>
#include <set>

namespace {

using namespace fault_tests;

bool every_one() {
    const char* asked = std::getenv("CLAMPBOOK_FAULTS");
    return asked != nullptr && std::string_view{asked} == "all";
}

// The next n: each of the first ones, then further and further apart. The demo alone takes a thousand times longer than the
// shortest, and its calls are all of a kind.
std::int64_t after(std::int64_t n, const std::string& command) {
    const bool is_long = command == "demo";
    if (every_one()) {
        return is_long && n > 400 ? n + n / 100 : n + 1;
    }
    return n < 10 ? n + 1 : n + 1 + n / (is_long ? 1 : 4);
}

// The first line of one text that the other hasn't.
std::string difference(const std::string& a, const std::string& b) {
    std::istringstream lines{b};
    for (std::string line; std::getline(lines, line);) {
        if (a.find(line + "\n") == std::string::npos) {
            return line;
        }
    }
    return "something is missing";
}

struct Tally {
    std::int64_t runs = 0;
    std::int64_t before = 0;
    std::int64_t after = 0;
};

// One command under one kind of fault, from the first call to the last.
class Trial {
public:
    Trial(Shop& shop, const WritingCommand& command) : shop_(shop), command_(command) {
        shop_.put_back();
        before_ = shop_.state();
        REQUIRE(shop_.faults().empty());
        shop_.put_back();
        REQUIRE(shop_.run(command_) == 0);
        after_ = shop_.state();
        REQUIRE(after_ != before_);
        REQUIRE(shop_.faults().empty());
    }

    Tally go(Fault fault, bool lasts) {
        Tally tally;
        for (std::int64_t n = 1;; n = after(n, command_.name)) {
            INFO(command_.name << " with " << fault.name << " " << n << (lasts ? " and each later one" : "") << " failing");
            shop_.put_back();
            let_fail(fault.kind, n, lasts);
            const int code = shop_.run(command_);
            const std::int64_t failed = let_pass();
            const std::string said = shop_.said();
            INFO("exits with " << code << " and says: " << said);
            const std::string now = shop_.state();
            const std::string faults = shop_.faults();
            INFO(faults);
            const bool kept = now == after_;
            const bool sound = faults.empty() && (kept || now == before_);
            const bool told = code == 0 ? kept : code == 1 && said.starts_with("clampbook: ");
            const auto says = [&](const char* words) { return said.find(words) != std::string::npos; };
            const bool true_word = kept ? !says("nothing was changed") && (code == 0 || says("; but it cannot be shown: "))
                                        : code != 0 && !says("; but it cannot be shown: ");
            if (!sound || !told || !true_word) {
                FAIL_CHECK((kept ? "as after" : now == before_ ? "as before" : "between: " + difference(before_, now)));
                REQUIRE(++wrong_ < 20);
            }
            if (failed == 0) {
                CHECK(code == 0);
                return tally;
            }
            ++tally.runs;
            ++(kept ? tally.after : tally.before);
        }
    }

private:
    Shop& shop_;
    const WritingCommand& command_;
    std::string before_;
    std::string after_;
    int wrong_ = 0;
};

// Commands and subcommands that ask who tells them something.
void collect_tellers(const CLI::App& app, const std::string& name, std::set<std::string>& tellers) {
    if (app.get_option_no_throw("--by") != nullptr) {
        tellers.insert(name);
    }
    for (const CLI::App* sub : app.get_subcommands([](const CLI::App*) { return true; })) {
        collect_tellers(*sub, name + " " + sub->get_name(), tellers);
    }
}

} // namespace

TEST_CASE("every command that writes is on trial") {
    std::set<std::string> tried;
    for (const WritingCommand& command : writing_commands()) {
        tried.insert(command.name.substr(0, command.name.find(" (")));
    }
    std::set<std::string> writing{"demo", "book backup"}; // these ask for no name: see below
    clampbook::cli::World world{std::cin, std::cout, std::cerr, [] { return std::string{}; }, {}};
    for (const clampbook::cli::Command& command : clampbook::cli::commands()) {
        clampbook::cli::Context context{world, {}, {}, {}, false, false};
        CLI::App app;
        (void)command.setup(app, context);
        collect_tellers(app, command.name, writing);
    }
    writing.erase("doctor"); // shows the name that others would write
    CHECK(writing == tried);
    // Whoever opens a book for writing, or makes one, without asking for a name is found by its words.
    std::set<std::string> files;
    for (const fs::path& file : data_tests::files_in(fs::path{CLAMPBOOK_SOURCE_DIR} / "src/cli", ".cpp")) {
        const std::string text = data_tests::read_file(file);
        for (const char* word : {"Access::write)", "Book::create", ".backup(", "write_demo("}) {
            if (text.find(word) != std::string::npos) {
                files.insert(file.stem());
            }
        }
    }
    // enter.cpp opens the book for check, supersede and withdraw too
    CHECK(files == std::set<std::string>{"assembly", "book", "demo", "enter", "import", "joint", "machine", "merge", "source"});
    // No book has changed its layout yet; the first migration has to be put on trial here.
    CHECK(data_tests::files_in(fs::path{CLAMPBOOK_SOURCE_DIR} / "schema/book", ".sql").size() == 1);
}

TEST_CASE("whatever fails of the disk or the memory, a book is as before or as after") {
    Shop shop;
    const char* only = std::getenv("CLAMPBOOK_FAULTS_OF");
    for (const WritingCommand& command : writing_commands()) {
        if (only != nullptr && command.name != only) {
            continue;
        }
        Trial trial{shop, command};
        for (const Fault& fault : k_faults) {
            const auto began = std::chrono::steady_clock::now();
            Tally all;
            for (const bool lasts : {false, true}) {
                const Tally tally = trial.go(fault, lasts);
                all.runs += tally.runs;
                all.before += tally.before;
                all.after += tally.after;
            }
            const std::chrono::duration<double> took = std::chrono::steady_clock::now() - began;
            std::cout << command.name << " | " << fault.name << " | " << all.runs << " | " << all.before << " | " << all.after
                      << " | " << took.count() << " s" << std::endl;
        }
    }
}
