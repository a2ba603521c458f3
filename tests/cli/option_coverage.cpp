// SPDX-License-Identifier: MIT
// Every long option of every subcommand, as the program itself builds them, occurs in a `run` line of a *.test file, and stands in the
// manual page of its command; and of every value it is settled whether the shells offer something for it. What is left out is noticed.

#include "command.hpp"
#include "complete.hpp"
#include "manual/manual.hpp"
#include "runner.hpp"

#include <CLI/CLI.hpp>
#include <catch2/catch.hpp>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <set>
#include <sstream>
#include <string>
#include <utility>
#include <vector>

namespace {

namespace fs = std::filesystem;
using Words = std::vector<std::string>;

/// An option and the subcommand that takes it: `assembly add`, `--machine`.
using Need = std::pair<std::string, std::string>;

void collect(const CLI::App& app, const std::string& name, std::set<Need>& needs) {
    for (const CLI::Option* option : app.get_options()) {
        for (const std::string& long_name : option->get_lnames()) {
            if (long_name != "help") {
                needs.insert({name, "--" + long_name});
            }
        }
    }
    for (const CLI::App* sub : app.get_subcommands([](const CLI::App*) { return true; })) {
        collect(*sub, name + " " + sub->get_name(), needs);
    }
}

std::set<Need> needs_of_program() {
    std::set<Need> needs;
    clampbook::cli::World world{std::cin, std::cout, std::cerr, [] { return std::string{}; }, {}};
    for (const clampbook::cli::Command& command : clampbook::cli::commands()) {
        clampbook::cli::Context context{world, {}, {}, {}, false, false};
        CLI::App app;
        (void)command.setup(app, context);
        collect(app, command.name, needs);
    }
    return needs;
}

// The commands of a shell line, each cut into words; quotes are not looked at.
std::vector<Words> commands_of(const std::string& line) {
    std::vector<Words> commands{{}};
    std::string word;
    const auto finish = [&] {
        if (!word.empty()) {
            commands.back().push_back(std::exchange(word, {}));
        }
    };
    for (const char c : line) {
        const bool divides = c == '|' || c == '&' || c == ';' || c == '(' || c == ')';
        if (c == ' ' || divides) {
            finish();
        } else if (c == '=' && word.starts_with("--")) {
            finish(); // --scale=0.5
        } else {
            word += c;
        }
        if (divides) {
            commands.emplace_back();
        }
    }
    finish();
    return commands;
}

bool tries(const Words& command, const Need& need) {
    const Words name = commands_of(need.first).front();
    return std::ranges::find(command, "clampbook") != command.end() && !std::ranges::search(command, name).empty() &&
           std::ranges::find(command, need.second) != command.end();
}

std::string missing(const std::set<Need>& needs, const std::vector<clampbook::cli_test::Run>& runs) {
    std::vector<Words> commands;
    for (const clampbook::cli_test::Run& run : runs) {
        std::ranges::copy(commands_of(run.command), std::back_inserter(commands));
    }
    std::string out;
    for (const Need& need : needs) {
        if (std::ranges::none_of(commands, [&](const Words& command) { return tries(command, need); })) {
            out += need.first + " " + need.second + "\n";
        }
    }
    return out;
}

std::vector<clampbook::cli_test::Run> runs_in(const fs::path& folder) {
    std::vector<clampbook::cli_test::Run> runs;
    for (const fs::directory_entry& entry : fs::directory_iterator{folder}) {
        if (entry.path().extension() == ".test") {
            std::ifstream in{entry.path()};
            REQUIRE(in);
            std::ostringstream text;
            text << in.rdbuf();
            std::ranges::copy(clampbook::cli_test::read_script(text.str(), entry.path().filename().string()),
                              std::back_inserter(runs));
        }
    }
    return runs;
}

} // namespace

TEST_CASE("every long option of the program is tried by a command test") {
    const std::set<Need> needs = needs_of_program();
    CHECK(needs.contains({"convert", "--to"}));
    CHECK(needs.contains({"book info", "--book"}));
    CHECK(needs.size() > 40);
    CHECK(missing(needs, runs_in(fs::path{CLAMPBOOK_SOURCE_DIR} / "tests/cli")) == "");
}

namespace {

// What a value is called, or a positional's name, where nobody can offer anything: the reader's own numbers and words.
const std::set<std::string> k_own_words{"TEXT",   "NAME", "DATE", "REASON",      "LENGTH",  "TORQUE", "FORCE",     "ANGLE",
                                        "SHARE",  "MU",   "K",    "TEMPERATURE", "MU[,MU]", "STEP",   "MIN..MAX",  "REVISION",
                                        "NUMBER", "N",    "name", "quantity",    "torque",  "word",   "tightening"};

void collect_unsettled(const CLI::App& app, const std::string& name, const std::set<std::string>& own, std::set<std::string>& out,
                       std::set<std::string>& places) {
    for (const CLI::Option* option : app.get_options()) {
        const std::string type = option->get_type_name();
        const std::string called = option->get_positional() ? option->get_single_name() : type.substr(0, type.find(':'));
        const std::string place = clampbook::cli::completion_place(*option);
        if (option->get_items_expected_max() > 0 && place.empty() && !own.contains(called)) {
            out.insert(name + " " + option->get_single_name() + " " + called);
        }
        places.insert(place);
    }
    for (const CLI::App* sub : app.get_subcommands([](const CLI::App*) { return true; })) {
        collect_unsettled(*sub, name + " " + sub->get_name(), own, out, places);
    }
}

std::set<std::string> unsettled(const std::set<std::string>& own, std::set<std::string>& places) {
    std::set<std::string> out;
    clampbook::cli::World world{std::cin, std::cout, std::cerr, [] { return std::string{}; }, {}};
    for (const clampbook::cli::Command& command : clampbook::cli::commands()) {
        clampbook::cli::Context context{world, {}, {}, {}, false, false};
        CLI::App app;
        (void)command.setup(app, context);
        collect_unsettled(app, command.name, own, out, places);
    }
    return out;
}

// As a manual page writes what is typed.
std::string in_groff(std::string option) {
    for (std::size_t at = option.find('-'); at != std::string::npos; at = option.find('-', at + 2)) {
        option.replace(at, 1, "\\-");
    }
    return "\\fB" + option + "\\fR";
}

} // namespace

TEST_CASE("of every value it is settled whether the shells offer something for it") {
    std::set<std::string> places;
    CHECK(unsettled(k_own_words, places) == std::set<std::string>{});
    for (const char* place : {"screw", "THREAD", "CLASS", "MATERIAL", "RING", "--condition", "--joint", "SOURCE", "ROLE", "LABEL",
                              "lesson", "FILE"}) {
        CHECK(places.contains(place));
    }
    // Of each of them somebody decided: without the list they would stand here.
    CHECK(unsettled({}, places).contains("check tightening tightening"));
}

TEST_CASE("every option and every word of a command stands in its manual page") {
    const std::set<Need> needs = needs_of_program();
    for (const clampbook::cli::Command& command : clampbook::cli::commands()) {
        const std::string page = clampbook::manual::command_page(command, {"1.0.0", "2026-01-01"});
        CHECK(page.find(std::string{"clampbook\\-"} + command.name + " \\- ") != std::string::npos);
        for (const Need& need : needs) {
            if (need.first == command.name || need.first.starts_with(std::string{command.name} + " ")) {
                INFO(need.first << " " << need.second);
                CHECK(page.find(in_groff(need.second)) != std::string::npos);
            }
        }
    }
    const std::string page = clampbook::manual::program_page({"1.0.0", "2026-01-01"});
    for (const clampbook::cli::Command& command : clampbook::cli::commands()) {
        CHECK(page.find(std::string{"\\fBclampbook\\-"} + command.name + "\\fR(1)") != std::string::npos);
    }
}

TEST_CASE("an untried option is noticed") {
    const std::set<Need> needs{{"derive", "--json"}, {"derive", "--nut-factor"}, {"joint add", "--json"}};
    const auto missing_in = [&](const std::string& script) {
        return missing(needs, clampbook::cli_test::read_script(script, "case.test"));
    };
    const std::string derive = "run clampbook derive M10 8.8 --nut-factor=0.2 --json\nexit 0\n";
    CHECK(missing_in(derive + "run clampbook --book b joint add plug --json\nexit 0\n") == "");
    CHECK(missing_in(derive) == "joint add --json\n");
    CHECK(missing_in(derive + "run clampbook joint list --json\nexit 0\n") == "joint add --json\n");
    CHECK(missing_in(derive + "run clampbook joint add --json-lines\nexit 0\n") == "joint add --json\n");
    CHECK(missing_in(derive + "run clampbook joint add x && clampbook joint list --json\nexit 0\n") == "joint add --json\n");
    CHECK(missing_in(derive + "run echo joint add --json\nexit 0\n") == "joint add --json\n");
    // What is expected of a command, and a comment, try nothing.
    CHECK(missing_in(derive + "# run clampbook joint add --json\nout clampbook joint add --json\n") == "joint add --json\n");
    CHECK(missing_in("run true\nexit 0\n") == "derive --json\nderive --nut-factor\njoint add --json\n");
}
