// SPDX-License-Identifier: MIT
#pragma once

// The command line as a test calls it: in a folder of its own, with streams, a clock and an environment of its own.

#include "../../data/support.hpp"
#include "cli.hpp"

#include <catch2/catch.hpp>

#include <functional>
#include <optional>
#include <sstream>

namespace unit_tests {

using Words = std::vector<std::string>;

// A world of our own: what was written to it, and what it says of itself.
struct Stage {
    data_tests::TemporaryFolder folder;
    std::istringstream in;
    std::ostringstream out;
    std::ostringstream err;
    std::function<std::string()> clock = [] { return std::string{"2026-11-25T10:15:00Z"}; };
    std::map<std::string, std::string> variables{{"CLAMPBOOK_BOOK", path("book.db")}, {"CLAMPBOOK_BY", "Ann"}};

    [[nodiscard]] std::string path(const std::string& name) const { return (folder / name).string(); }
    int run(const Words& words) { return run_to(words, out); }
    int run_to(const Words& words, std::ostream& to) {
        out.str({});
        err.str({});
        return clampbook::cli::run(words, {in, to, err, clock, [this](const std::string& name) -> std::optional<std::string> {
                                               const auto found = variables.find(name);
                                               return found == variables.end() ? std::nullopt : std::optional{found->second};
                                           }});
    }
    // A book with one joint.
    void furnish() {
        REQUIRE(run({"book", "new"}) == 0);
        REQUIRE(run({"machine", "add", "--maker", "Maker", "--model", "X"}) == 0);
        REQUIRE(run({"assembly", "add", "box", "--machine", "X"}) == 0);
        REQUIRE(run({"joint", "add", "cover", "screws", "--machine", "X", "--assembly", "box", "--role", "cover", "--thread",
                     "M8", "--class", "8.8"}) == 0);
    }
};

} // namespace unit_tests
