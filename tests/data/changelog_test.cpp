// SPDX-License-Identifier: MIT
// Whoever changes the data says so: the changelog names the content that the review gate let through.

#include "support.hpp"

#include <catch2/catch.hpp>

TEST_CASE("the changelog has a line for the reviewed data") {
    using namespace data_tests;
    const std::string digits = read_file(k_hash_file).substr(0, 12);
    REQUIRE(digits.size() == 12);
    std::istringstream changelog{read_file(k_source / "CHANGELOG.md")};
    bool found = false;
    for (std::string line; std::getline(changelog, line);) {
        found = found || (line.starts_with("- Data") && line.find(digits) != std::string::npos);
    }
    INFO("CHANGELOG.md needs a line '- Data ... " << digits << " ...'");
    CHECK(found);
}
